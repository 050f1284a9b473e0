using Foreshore.Guide.Locations;
using SkiaSharp;

namespace Foreshore.Guide.Photos;

/// <summary>
/// Makes new pictures from a stranger's file: the pixels are decoded, turned upright and encoded afresh, so that no byte of the file
/// – position, names, comments, thumbnails, other formats hidden inside – comes through. Runs in a process of its own, see <see cref="Darkroom"/>.
/// </summary>
internal static class Developing
{
    public const int MostBytes = 25 << 20;
    public const int LongestFull = 2400;
    public const int LongestSmall = 640;

    /// <summary>80 megapixels: the largest sensors of hand-held cameras and phones but a few.</summary>
    public const long MostPixels = 80_000_000;

    /// <summary>
    /// What pixels and decoder may take at once: a PNG of 50 megapixels, a progressive JPEG of 30 to 60, an ordinary JPEG of 80. Counted in
    /// the memory that compose and the systemd unit give the site (docs/reliability.md).
    /// </summary>
    public const long MostAtOnce = 256L << 20;

    /// <summary>With the smaller pictures, the encoder and what the library takes for itself.</summary>
    public const long MostNative = MostAtOnce + (72L << 20);

    private const string TooMuchMemory = "The picture takes more memory than there is for one photo. Export it as an ordinary JPEG, not a progressive one, or smaller, then choose it again.";
    private const int FullQuality = 86;
    private const int SmallQuality = 80;

    /// <exception cref="NotAcceptedException">The file is not taken; the words say why and what to do.</exception>
    public static (int Width, int Height, byte[] Full, byte[] Small) Develop(byte[] file)
    {
        Require.That(file.Length <= MostBytes, "The file is larger than 25 MB. Export it smaller; the long side is brought to 2400 pixels anyway.");
        var format = PhotoFormat.Of(file);
        Require.That(format is not null, PhotoFormat.WhyNot(file));
        var (decoded, origin) = Decoded(file, format!.Value);
        using var whole = decoded;
        using var upright = Upright(decoded, origin, LongestFull);
        using var small = Upright(upright, SKEncodedOrigin.TopLeft, LongestSmall);
        return (upright.Width, upright.Height, Encoded(upright, FullQuality), Encoded(small, SmallQuality));
    }

    /// <summary>Width and height brought down to the longest side, never up.</summary>
    public static (int Width, int Height) Fitted(int width, int height, int longest)
    {
        var scale = Math.Min(1, longest / (double)Math.Max(width, height));
        return (Math.Max(1, (int)Math.Round(width * scale)), Math.Max(1, (int)Math.Round(height * scale)));
    }

    /// <summary>The decoder and its memory are gone when it returns.</summary>
    private static (SKBitmap Bitmap, SKEncodedOrigin Origin) Decoded(byte[] file, SKEncodedImageFormat format)
    {
        using var source = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(source);
        Require.That(codec is not null && codec.EncodedFormat == format, "The file begins like a photo, but holds none that can be read. Export it again from the program it was made with.");

        var stated = codec.Info;
        Require.That(stated is { Width: > 0, Height: > 0 } && (long)stated.Width * stated.Height <= MostPixels,
            $"The picture says it is {stated.Width} × {stated.Height} pixels; at most 80 megapixels are read. Export it smaller.");
        // Formats that can leave detail out while decoding do so, as long as more is left than is needed.
        var needed = Math.Min(1f, 2f * LongestFull / Math.Max(codec.Info.Width, codec.Info.Height));
        var size = codec.GetScaledDimensions(needed);
        Require.That(DecodedSize.Of(file, format, new SKSizeI(stated.Width, stated.Height), size) <= MostAtOnce, TooMuchMemory);
        var info = new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, SKColorSpace.CreateSrgb());
        var bitmap = new SKBitmap();
        Require.That(bitmap.TryAllocPixels(info), TooMuchMemory);
        var outcome = codec.GetPixels(info, bitmap.GetPixels());
        if (outcome != SKCodecResult.Success)
            bitmap.Dispose();
        Require.That(outcome == SKCodecResult.Success, outcome == SKCodecResult.IncompleteInput
            ? "The picture is cut short. Copy it from the camera again, then choose it again."
            : "The picture is damaged and cannot be read to its end. Export it again from the program it was made with.");
        // What never changes again is drawn from where it lies, not from a copy.
        bitmap.SetImmutable();
        return (bitmap, codec.EncodedOrigin);
    }

    /// <summary>On white, since JPEG has no transparency; turned as the camera was held.</summary>
    private static SKBitmap Upright(SKBitmap from, SKEncodedOrigin origin, int longest)
    {
        var isTurned = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var (width, height) = isTurned ? Fitted(from.Height, from.Width, longest) : Fitted(from.Width, from.Height, longest);
        // The colours are sRGB by now. Nothing says so: then no profile is written into the file, and sRGB is what is read.
        var upright = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(upright);
        using var image = SKImage.FromBitmap(from);
        canvas.Clear(SKColors.White);
        var (w, h) = isTurned ? (height, width) : (width, height);
        canvas.Concat(Turn(origin, w, h));
        canvas.DrawImage(image, new SKRect(0, 0, w, h), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        canvas.Flush();
        upright.SetImmutable();
        return upright;
    }

    /// <summary>From the eight ways in which EXIF 2.32 (4.6.4, tag 274) says a picture lies to the way it is seen; width and height as stored.</summary>
    private static SKMatrix Turn(SKEncodedOrigin origin, float w, float h) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    private static byte[] Encoded(SKBitmap picture, int quality)
    {
        using var pixels = picture.PeekPixels();
        using var file = pixels.Encode(new SKJpegEncoderOptions(quality, SKJpegEncoderDownsample.Downsample420, SKJpegEncoderAlphaOption.Ignore))
            ?? throw new InvalidOperationException("The picture could not be written.");
        return file.ToArray();
    }
}
