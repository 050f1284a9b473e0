using Foreshore.Guide.Locations;
using SkiaSharp;
using Xunit;

namespace Foreshore.Guide.Photos;

/// <summary>How much memory a file takes, told from its head.</summary>
public sealed class DecodedSizeTests : IDisposable
{
    private const long Mega = 1_000_000;
    private readonly Darkroom darkroom = new(Microsoft.Extensions.Logging.Abstractions.NullLogger<Darkroom>.Instance);

    [Fact]
    public void A_sequential_jpeg_takes_its_pixels_and_their_smaller_copies() =>
        Assert.Equal(96 * 64 * 4 * 4 / 3, DecodedSize.Of(MadePicture.Jpeg(), SKEncodedImageFormat.Jpeg, new(96, 64), new(96, 64)));

    /// <summary>Reckoned by hand from ITU-T T.81: 12 by 8 blocks of luminance, and as many or a quarter of each colour, 128 bytes a block.</summary>
    [Theory]
    [InlineData(0x11, 3 * 12 * 8 * 128)]
    [InlineData(0x22, (12 * 8 + 2 * 6 * 4) * 128)]
    public void A_progressive_jpeg_takes_its_coefficients_too(byte sampling, int coefficients) =>
        Assert.Equal(96 * 64 * 4 + coefficients, DecodedSize.Of(Sampled(sampling), SKEncodedImageFormat.Jpeg, new(96, 64), new(96, 64)));

    [Fact]
    public void A_png_in_passes_takes_its_pixels_twice()
    {
        var png = MadePicture.Png(96, 64, 8, new byte[64]);
        var whole = DecodedSize.Of(png, SKEncodedImageFormat.Png, new(96, 64), new(96, 64));
        png[28] = 1;

        Assert.Equal(96 * 64 * 4 * 4 / 3, whole);
        Assert.Equal(96 * 64 * 4 * 2, DecodedSize.Of(png, SKEncodedImageFormat.Png, new(96, 64), new(96, 64)));
    }

    [Fact]
    public void A_damaged_head_is_no_reason_to_fall()
    {
        var file = Sampled(0x11);
        for (var length = 4; length < file.Length; length++)
            DecodedSize.Of(file.AsSpan(0, length), SKEncodedImageFormat.Jpeg, new(96, 64), new(96, 64));
    }

    /// <summary>Few bytes that become many: refused in words, before the memory is asked for.</summary>
    [Fact]
    public async Task A_small_file_with_too_many_pixels_for_the_memory_is_refused_in_words()
    {
        var file = MadePicture.Png(10_000, 7_900, 8, new byte[64]);
        Assert.InRange(file.Length, 0, Mega);

        var refusal = await Assert.ThrowsAsync<NotAcceptedException>(() => darkroom.DevelopAsync(file, TestContext.Current.CancellationToken));

        Assert.Contains("takes more memory than there is", refusal.Message, StringComparison.Ordinal);
    }

    /// <summary>A head that is not found tells nothing; then the bound of the process holds. The same file with fewer pixels is taken.</summary>
    [Fact]
    public async Task What_the_head_does_not_tell_is_held_by_the_bound_of_the_process()
    {
        byte[] small = MadePicture.Progressive(96, 64, 0, 1, 2), large = MadePicture.Progressive(10_000, 7_900, 0, 1, 2);
        Assert.InRange(DecodedSize.Of(large, SKEncodedImageFormat.Jpeg, new(10_000, 7_900), new(5_000, 3_950)), 1, Developing.MostAtOnce);

        var developed = await darkroom.DevelopAsync(small, TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<NotAcceptedException>(() => darkroom.DevelopAsync(large, TestContext.Current.CancellationToken));

        Assert.Equal((96, 64), (developed.Width, developed.Height));
    }

    [Fact]
    public void Without_garbage_the_same_head_is_found() =>
        Assert.InRange(DecodedSize.Of(MadePicture.Progressive(10_000, 7_900), SKEncodedImageFormat.Jpeg, new(10_000, 7_900), new(5_000, 3_950)), Developing.MostAtOnce, long.MaxValue);

    /// <summary>How the runtime tells of a process that the system ended for its use of a processor: the bound of a shell, one second.</summary>
    [Fact]
    public async Task A_process_that_used_up_its_time_ends_as_the_constant_says()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Signals are Linux's.");
        using var busy = System.Diagnostics.Process.Start("sh", ["-c", "ulimit -St 1; while :; do :; done"]);
        await busy.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal(ProcessBounds.OutOfTime, busy.ExitCode);
    }

    /// <summary>The largest that is taken goes through the process with its bound: 50 megapixels of one colour.</summary>
    [Fact]
    public async Task The_largest_png_that_is_taken_fits_the_bound()
    {
        using var bitmap = new SKBitmap(8640, 5760, SKColorType.Rgba8888, SKAlphaType.Opaque);
        bitmap.Erase(SKColors.SlateGray);

        var developed = await darkroom.DevelopAsync(bitmap.Encode(SKEncodedImageFormat.Png, 100).ToArray(), TestContext.Current.CancellationToken);

        Assert.Equal((2400, 1600), (developed.Width, developed.Height));
    }

    public void Dispose() => darkroom.Dispose();

    private static byte[] Sampled(byte sampling)
    {
        var file = MadePicture.Progressive(96, 64);
        file[file.AsSpan().IndexOf([(byte)0xFF, (byte)0xC2]) + 11] = sampling;
        return file;
    }
}
