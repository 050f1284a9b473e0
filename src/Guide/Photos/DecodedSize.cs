using System.Buffers.Binary;
using SkiaSharp;

namespace Foreshore.Guide.Photos;

/// <summary>How much memory a file takes while it is decoded, told from its head: pixels, and what its format keeps besides them.</summary>
internal static class DecodedSize
{
    private const int BytesOfPixel = 4;
    private const int BytesOfCoefficient = 2;
    private const int BlockSide = 8;
    private const int PngInterlaceAt = 28;

    /// <param name="file">As it was sent.</param>
    /// <param name="format">What its first bytes say.</param>
    /// <param name="stated">Width and height in its head.</param>
    /// <param name="decoded">Those of the bitmap it is decoded into, which can be smaller.</param>
    public static long Of(ReadOnlySpan<byte> file, SKEncodedImageFormat format, SKSizeI stated, SKSizeI decoded)
    {
        var pixels = (long)decoded.Width * decoded.Height * BytesOfPixel;
        var besides = format switch
        {
            SKEncodedImageFormat.Jpeg => Coefficients(file),
            // A picture in passes, and a lossless one, are put together whole before they are handed over.
            SKEncodedImageFormat.Png when file.Length > PngInterlaceAt && file[PngInterlaceAt] != 0 => (long)stated.Width * stated.Height * BytesOfPixel,
            SKEncodedImageFormat.Webp when file[..Math.Min(file.Length, 64)].IndexOf("VP8L"u8) >= 0 => (long)stated.Width * stated.Height * BytesOfPixel,
            _ => 0,
        };
        // Scaled down it gets copies of half, a quarter … of its size; by then the decoder's own memory is free again.
        return Math.Max(pixels + besides, pixels * 4 / 3);
    }

    /// <summary>
    /// A progressive JPEG keeps every coefficient until its last scan: two bytes each, blocks of 8 × 8 of each component at its own
    /// sampling (ITU-T T.81, B.2.2). A sequential one is decoded row by row.
    /// </summary>
    private static long Coefficients(ReadOnlySpan<byte> file)
    {
        for (var at = 2; at + 4 <= file.Length && file[at] == 0xFF;)
        {
            var marker = file[at + 1];
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            var length = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            if (marker is 0xC2 or 0xC6 or 0xCA or 0xCE && at + 2 + length <= file.Length && length >= 8)
                return OfFrame(file.Slice(at + 4, length - 2));
            if (marker is 0xDA or 0xD9)
                return 0;
            at += 2 + length;
        }

        return 0;
    }

    private static long OfFrame(ReadOnlySpan<byte> frame)
    {
        var (height, width, count) = (BinaryPrimitives.ReadUInt16BigEndian(frame[1..]), BinaryPrimitives.ReadUInt16BigEndian(frame[3..]), frame[5]);
        if (frame.Length < 6 + 3 * count)
            return 0;
        var (widest, highest, sum) = (1, 1, 0L);
        for (var i = 0; i < count; i++)
            (widest, highest) = (Math.Max(widest, frame[7 + 3 * i] >> 4), Math.Max(highest, frame[7 + 3 * i] & 15));
        for (var i = 0; i < count; i++)
            sum += Blocks(width * (frame[7 + 3 * i] >> 4), widest) * Blocks(height * (frame[7 + 3 * i] & 15), highest);
        return sum * BlockSide * BlockSide * BytesOfCoefficient;

        static long Blocks(int samples, int most) => ((long)samples + most * BlockSide - 1) / (most * BlockSide);
    }
}
