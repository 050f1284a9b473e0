using System.IO.Compression;
using BitMiracle.LibTiff.Classic;
using Foreshore.Almanac.Earth;

namespace Foreshore.Guide.Elevation;

/// <summary>Elevation files made from a formula.</summary>
internal static class MadeFile
{
    /// <summary>A height file at three arc seconds.</summary>
    internal static byte[] Hgt(Func<int, int, short> metres, bool isSwapped = false)
    {
        var bytes = new byte[HeightFile.ThreeSecondBytes];
        for (var i = 0; i < 1201 * 1201; i++)
        {
            var value = metres(i / 1201, i % 1201);
            (bytes[2 * i], bytes[2 * i + 1]) = isSwapped ? ((byte)value, (byte)(value >> 8)) : ((byte)(value >> 8), (byte)value);
        }

        return bytes;
    }

    internal static byte[] Zip(params (string Name, byte[] Bytes)[] files)
    {
        using var all = new MemoryStream();
        using (var archive = new ZipArchive(all, ZipArchiveMode.Create, leaveOpen: true))
            foreach (var (name, bytes) in files)
            {
                using var entry = archive.CreateEntry(name).Open();
                entry.Write(bytes);
            }

        return all.ToArray();
    }

    /// <summary>A GeoTIFF of floating-point heights, 0.01 degrees a pixel from 45° N, 68° W, unless told otherwise.</summary>
    internal static byte[] Tiff(int width = 20, int height = 10, Func<int, int, float>? metres = null, ushort[]? keys = null, double[]? scale = null,
        double[]? tie = null, double[]? transformation = null, int bands = 1, bool isTiled = false)
    {
        BitMiracle.LibTiff.Classic.Tiff.SetTagExtender(tiff => tiff.MergeFieldInfo(
        [
            new TiffFieldInfo((TiffTag)33550, -1, -1, TiffType.DOUBLE, FieldBit.Custom, true, true, "scale"),
            new TiffFieldInfo((TiffTag)33922, -1, -1, TiffType.DOUBLE, FieldBit.Custom, true, true, "tie"),
            new TiffFieldInfo((TiffTag)34264, -1, -1, TiffType.DOUBLE, FieldBit.Custom, true, true, "transformation"),
            new TiffFieldInfo((TiffTag)34735, -1, -1, TiffType.SHORT, FieldBit.Custom, true, true, "keys"),
        ], 4));
        using var stream = new Kept();
        using (var tiff = BitMiracle.LibTiff.Classic.Tiff.ClientOpen("made", "w", stream, new TiffStream()))
        {
            tiff.SetField(TiffTag.IMAGEWIDTH, width);
            tiff.SetField(TiffTag.IMAGELENGTH, height);
            tiff.SetField(TiffTag.SAMPLESPERPIXEL, bands);
            tiff.SetField(TiffTag.BITSPERSAMPLE, 32);
            tiff.SetField(TiffTag.SAMPLEFORMAT, SampleFormat.IEEEFP);
            tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
            tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
            tiff.SetField(TiffTag.COMPRESSION, Compression.ADOBE_DEFLATE);
            keys ??= [1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326];
            tiff.SetField((TiffTag)34735, keys.Length, keys);
            if (transformation is not null) tiff.SetField((TiffTag)34264, transformation.Length, transformation);
            else
            {
                tiff.SetField((TiffTag)33550, 3, scale ?? [0.01, 0.01, 0]);
                tiff.SetField((TiffTag)33922, 6, tie ?? [0, 0, 0, -68, 45, 0]);
            }

            metres ??= (row, column) => 10 * row + column;
            if (isTiled)
            {
                tiff.SetField(TiffTag.TILEWIDTH, 16);
                tiff.SetField(TiffTag.TILELENGTH, 16);
                for (var top = 0; top < height; top += 16)
                    for (var left = 0; left < width; left += 16)
                        tiff.WriteTile(Bytes(16 * 16, i => metres(top + i / 16, left + i % 16)), left, top, 0, 0);
            }
            else
            {
                tiff.SetField(TiffTag.ROWSPERSTRIP, 4);
                for (var row = 0; row < height; row++) tiff.WriteScanline(Bytes(width * bands, i => metres(row, i / bands)), row);
            }

            tiff.WriteDirectory();
        }

        return stream.ToArray();
    }

    /// <summary>One whose header promises thirty thousand million heights.</summary>
    internal static byte[] LyingTiff()
    {
        var lying = Tiff();
        var at = BitConverter.ToInt32(lying, 4) + 2;
        while (BitConverter.ToUInt16(lying, at) is not (256 or 257)) at += 12;
        for (; BitConverter.ToUInt16(lying, at) is 256 or 257; at += 12)
        {
            BitConverter.GetBytes((ushort)4).CopyTo(lying, at + 2);
            BitConverter.GetBytes(170_000).CopyTo(lying, at + 8);
        }

        return lying;
    }

    private static byte[] Bytes(int count, Func<int, float> value) => [.. Enumerable.Range(0, count).SelectMany(i => BitConverter.GetBytes(value(i)))];

    // The library closes what it wrote to.
    private sealed class Kept : MemoryStream;
}
