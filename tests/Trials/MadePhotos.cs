using SkiaSharp;

namespace Foreshore.Trials;

/// <summary>Photos at the limits of what is taken, of the kinds that cost most: few bytes with many pixels, and many of both.</summary>
internal static class MadePhotos
{
    private const int MostBytes = 25 << 20;

    public static IReadOnlyList<byte[]> All(int seed) => [Flat(8640, 5760), Grain(10_300, 7_700, seed), Flat(8256, 5504)];

    /// <summary>A PNG of one colour: some hundred kilobytes that become 200 MB.</summary>
    private static byte[] Flat(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        bitmap.Erase(SKColors.SlateGray);
        return bitmap.Encode(SKEncodedImageFormat.Png, 100).ToArray();
    }

    /// <summary>A JPEG of 79 megapixels, as near to 25 MB as its quality allows.</summary>
    private static byte[] Grain(int width, int height, int seed)
    {
        using var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        var random = new Random(seed);
        var pixels = bitmap.GetPixelSpan().ToArray();
        random.NextBytes(pixels);
        System.Runtime.InteropServices.Marshal.Copy(pixels, 0, bitmap.GetPixels(), pixels.Length);
        for (var quality = 30; ; quality -= 5)
        {
            var file = bitmap.Encode(SKEncodedImageFormat.Jpeg, quality).ToArray();
            if (file.Length <= MostBytes || quality <= 5)
                return file;
        }
    }
}
