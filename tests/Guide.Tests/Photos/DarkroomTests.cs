using Foreshore.Guide.Locations;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit;

namespace Foreshore.Guide.Photos;

/// <summary>The process of its own that photos are developed in.</summary>
public sealed class DarkroomTests : IDisposable
{
    private readonly Darkroom darkroom = new(NullLogger<Darkroom>.Instance);

    [Fact]
    public async Task It_answers_what_developing_here_answers()
    {
        var file = MadePicture.Tagged(8);
        var (width, height, full, small) = Developing.Develop(file);

        var developed = await darkroom.DevelopAsync(file, TestContext.Current.CancellationToken);

        Assert.Equal((width, height), (developed.Width, developed.Height));
        Assert.Equal(full, developed.Full);
        Assert.Equal(small, developed.Small);
        Assert.Equal(System.Security.Cryptography.SHA256.HashData(file), developed.Sha256);
    }

    [Fact]
    public async Task Its_refusals_come_back_word_for_word()
    {
        var file = MadePicture.JpegStating(65500, 65500);
        var here = Assert.Throws<NotAcceptedException>(() => Developing.Develop(file));

        var there = await Assert.ThrowsAsync<NotAcceptedException>(() => darkroom.DevelopAsync(file, TestContext.Current.CancellationToken));

        Assert.Equal(here.Message, there.Message);
    }

    [Fact]
    public async Task Many_at_once_wait_for_each_other_and_all_come_out()
    {
        var files = Enumerable.Range(0, 6).Select(salt => MadePicture.Jpeg(salt)).ToList();

        var developed = await Task.WhenAll(files.Select(file => darkroom.DevelopAsync(file, TestContext.Current.CancellationToken)));

        Assert.Equal(6, developed.Select(each => Convert.ToHexString(each.Sha256)).Distinct().Count());
    }

    [Fact]
    public async Task Whoever_goes_away_leaves_the_room_free()
    {
        using var gone = new CancellationTokenSource();
        await gone.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => darkroom.DevelopAsync(MadePicture.Jpeg(), gone.Token));

        Assert.NotNull(await darkroom.DevelopAsync(MadePicture.Jpeg(), TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData(new byte[0])]
    [InlineData(new byte[] { 1, 0, 0, 0, 1, 0, 0, 0, 4, 0, 0, 0, 4, 0, 0, 0, 0xFF, 0xD8, 0xFF, 0 })]
    [InlineData(new byte[] { 1, 0, 0, 0, 1, 0, 0, 0, 3, 0, 0, 0, 3, 0, 0, 0, (byte)'<', (byte)'h', (byte)'t', 0xFF, 0xD8, 0xFF })]
    [InlineData(new byte[] { 255, 255, 255, 127, 1, 0, 0, 0, 3, 0, 0, 0, 3, 0, 0, 0, 0xFF, 0xD8, 0xFF, 0xFF, 0xD8, 0xFF })]
    [InlineData(new byte[] { 1, 0, 0, 0, 1, 0, 0, 0, 255, 255, 255, 127, 255, 255, 255, 127, 0xFF, 0xD8, 0xFF, 0xFF, 0xD8, 0xFF })]
    public void An_answer_that_is_not_whole_is_none(byte[] answer) => Assert.Null(DevelopedPhoto.Read(answer, []));

    public void Dispose() => darkroom.Dispose();
}
