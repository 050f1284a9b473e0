using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using SkiaSharp;

namespace Foreshore.Guide.Photos;

/// <summary>Files for the tests, made by hand where no ordinary program would write them.</summary>
internal static class MadePicture
{
    public static readonly SKColor[] Corners = [SKColors.Red, SKColors.Lime, SKColors.Blue, SKColors.Yellow];

    /// <summary>Four coloured corners: red, green above; blue, yellow below.</summary>
    public static byte[] Encoded(SKEncodedImageFormat format, int width = 96, int height = 64, int salt = 0)
    {
        using var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(bitmap);
        for (var i = 0; i < 4; i++)
        {
            using var paint = new SKPaint { Color = Corners[i] };
            canvas.DrawRect(SKRect.Create(i % 2 * width / 2, i / 2 * height / 2, width / 2, height / 2), paint);
        }
        using var mark = new SKPaint { Color = new SKColor(0xFF000000 | (uint)(salt * 40503)) };
        canvas.DrawRect(SKRect.Create(width / 2 - 4, height / 2 - 4, 8, 8), mark);
        return bitmap.Encode(format, 92).ToArray();
    }

    public static byte[] Jpeg(int salt = 0, int width = 96, int height = 64) => Encoded(SKEncodedImageFormat.Jpeg, width, height, salt);

    /// <summary>With an orientation, a position, XMP, IPTC, a comment and a note of its maker.</summary>
    public static byte[] Tagged(int orientation, int salt = 0)
    {
        var plain = Jpeg(salt);
        return [.. plain[..2], .. Segment(0xE1, Exif(orientation)),
            .. Segment(0xE1, Encoding.ASCII.GetBytes("http://ns.adobe.com/xap/1.0/\0<x:xmpmeta><GPSLatitude>44,38.9N</GPSLatitude></x:xmpmeta>")),
            .. Segment(0xED, Encoding.ASCII.GetBytes("Photoshop 3.0\08BIM\u0004\u0004 Herring slip, by Ana")),
            .. Segment(0xFE, Encoding.ASCII.GetBytes("secret ledge below the light")), .. plain[2..]];
    }

    /// <summary>What a JPEG file says besides its pixels: the markers before the picture, with the words that begin them.</summary>
    public static IReadOnlyList<string> Markers(byte[] jpeg)
    {
        List<string> found = [];
        for (var at = 2; at + 4 <= jpeg.Length && jpeg[at + 1] != 0xDA;)
        {
            var length = BinaryPrimitives.ReadUInt16BigEndian(jpeg.AsSpan(at + 2));
            found.Add(jpeg[at + 1] is >= 0xE0 and <= 0xFE ? $"{jpeg[at + 1]:X2} {Encoding.ASCII.GetString(jpeg, at + 4, Math.Min(4, length - 2))}" : $"{jpeg[at + 1]:X2}");
            at += 2 + length;
        }
        return found;
    }

    /// <summary>Sixteen bits a channel, which cameras' programs write.</summary>
    public static byte[] DeepPng(int width, int height)
    {
        var rows = new byte[height * (1 + 6 * width)];
        for (var y = 0; y < height; y++)
            for (var x = 0; x < width; x++)
                BinaryPrimitives.WriteUInt16BigEndian(rows.AsSpan(y * (1 + 6 * width) + 1 + 6 * x), ushort.MaxValue);
        return Png(width, height, 16, rows);
    }

    /// <summary>A head that states a size, with next to nothing behind it.</summary>
    public static byte[] Png(int width, int height, byte bits, byte[] rows)
    {
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        (head[8], head[9]) = (bits, 2);
        using var packed = new MemoryStream();
        using (var deflated = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
            deflated.Write(rows);
        return [0x89, .. "PNG\r\n\u001a\n"u8, .. Chunk("IHDR", head), .. Chunk("IDAT", packed.ToArray()), .. Chunk("IEND", [])];
    }

    /// <summary>The same for JPEG: a frame of any size, and an end.</summary>
    public static byte[] JpegStating(ushort width, ushort height)
    {
        var jpeg = Jpeg();
        var frame = jpeg.AsSpan().IndexOf([(byte)0xFF, (byte)0xC0]);
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(frame + 5), height);
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(frame + 7), width);
        return jpeg;
    }

    /// <summary>Four inks as printers' programs write them (Adobe's marker, values turned over), 24 × 16, every ink half.</summary>
    public static byte[] Cmyk()
    {
        byte[] components = [.. Enumerable.Range(1, 4).SelectMany(i => (byte[])[(byte)i, 0x11, 0])];
        byte[] oneCode = [1, .. new byte[15], 0];
        return [0xFF, 0xD8, .. Segment(0xEE, [.. "Adobe"u8, 0, 100, 0, 0, 0, 0, 0]), .. Segment(0xDB, [0, .. Enumerable.Repeat((byte)1, 64)]),
            .. Segment(0xC0, [8, 0, 16, 0, 24, 4, .. components]), .. Segment(0xC4, [0x00, .. oneCode]), .. Segment(0xC4, [0x10, .. oneCode]),
            .. Segment(0xDA, [4, 1, 0, 2, 0, 3, 0, 4, 0, 0, 63, 0]), .. new byte[6], 0xFF, 0xD9];
    }

    /// <summary>Gray, in passes of which only the first is there, with bytes between its segments that readers skip.</summary>
    public static byte[] Progressive(ushort width, ushort height, params byte[] between)
    {
        byte[] components = [.. Enumerable.Range(1, 3).SelectMany(i => (byte[])[(byte)i, 0x11, 0])];
        byte[] oneCode = [1, .. new byte[15], 0];
        return [0xFF, 0xD8, .. Segment(0xDB, [0, .. Enumerable.Repeat((byte)1, 64)]), .. between,
            .. Segment(0xC2, [8, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, 3, .. components]),
            .. Segment(0xC4, [0x00, .. oneCode]), .. Segment(0xC4, [0x10, .. oneCode]), .. Segment(0xDA, [3, 1, 0, 2, 0, 3, 0, 0, 0, 0]), .. new byte[64], 0xFF, 0xD9];
    }

    /// <summary>Two pictures, one after the other, in one WebP file.</summary>
    public static byte[] Animated()
    {
        byte[][] frames = [.. new[] { 1, 2 }.Select(salt => Encoded(SKEncodedImageFormat.Webp, 32, 32, salt)[12..])];
        byte[] body = [.. "WEBP"u8, .. Riff("VP8X", [0x02, 0, 0, 0, 31, 0, 0, 31, 0, 0]), .. Riff("ANIM", [0, 0, 0, 0, 0, 0]),
            .. frames.SelectMany(frame => Riff("ANMF", [0, 0, 0, 0, 0, 0, 31, 0, 0, 31, 0, 0, 100, 0, 0, 0, .. frame]))];
        return Riff("RIFF", body);
    }

    private static byte[] Exif(int orientation)
    {
        // Big-endian TIFF: an orientation and a pointer to a GPS directory with one latitude.
        byte[] tiff = [.. "MM"u8, 0, 42, 0, 0, 0, 8, 0, 2,
            0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0,
            0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 38, 0, 0, 0, 0,
            0, 1, 0, 2, 0, 5, 0, 0, 0, 3, 0, 0, 0, 56, 0, 0, 0, 0, 0, 0, 0, 44, 0, 0, 0, 1, 0, 0, 0, 39, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 1];
        return [.. "Exif\0\0"u8, .. tiff];
    }

    private static byte[] Segment(byte marker, byte[] content) => [0xFF, marker, (byte)((content.Length + 2) >> 8), (byte)(content.Length + 2), .. content];

    private static byte[] Riff(string name, byte[] content)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, content.Length);
        return [.. Encoding.ASCII.GetBytes(name), .. length, .. content, .. new byte[content.Length % 2]];
    }

    private static byte[] Chunk(string name, byte[] content)
    {
        byte[] named = [.. Encoding.ASCII.GetBytes(name), .. content];
        var (length, sum) = (new byte[4], new byte[4]);
        BinaryPrimitives.WriteInt32BigEndian(length, content.Length);
        BinaryPrimitives.WriteUInt32BigEndian(sum, Crc(named));
        return [.. length, .. named, .. sum];
    }

    /// <summary>The check sum of PNG's specification, annex D.</summary>
    private static uint Crc(byte[] bytes)
    {
        var crc = uint.MaxValue;
        foreach (var each in bytes)
        {
            crc ^= each;
            for (var bit = 0; bit < 8; bit++)
                crc = (crc & 1) != 0 ? 0xEDB88320 ^ (crc >> 1) : crc >> 1;
        }
        return ~crc;
    }
}
