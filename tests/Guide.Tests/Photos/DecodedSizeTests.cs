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
        Assert.Equal(96 * 64 * 4 + coefficients, DecodedSize.Of(Progressive(96, 64, sampling), SKEncodedImageFormat.Jpeg, new(96, 64), new(96, 64)));

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
        var file = Progressive(96, 64, 0x11);
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

    /// <summary>Up to its frame: what comes behind is not looked at.</summary>
    private static byte[] Progressive(ushort width, ushort height, byte sampling) =>
    [
        0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 0, 0, 0xFF, 0xC2, 0, 17, 8, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, 3,
        1, sampling, 0, 2, 0x11, 1, 3, 0x11, 1, 0xFF, 0xDA, 0, 2,
    ];
}
