using System.Globalization;
using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Elevation;

/// <summary>Ground heights of a GeoTIFF in geographic coordinates: one band of 16-bit or 32-bit whole numbers or 32-bit floats, metres.</summary>
internal static class GeoTiff
{
    /// <summary>A little over two squares of a degree at an arc second.</summary>
    private const int MostHeights = 27_000_000;

    private const double LowestMetres = -600, HighestMetres = 9000;
    private const TiffTag NoData = (TiffTag)42113;

    static GeoTiff()
    {
        // The library writes its warnings to the console otherwise.
        Tiff.SetErrorHandler(new Silent());
    }

    public static ElevationGrid Read(byte[] bytes)
    {
        TiffDirectory.Check(bytes, MostHeights);
        try
        {
            using var stream = new MemoryStream(bytes, writable: false);
            using var tiff = Tiff.ClientOpen("uploaded", "r", stream, new TiffStream());
            Require.That(tiff is not null, "The file begins like a TIFF but cannot be read as one. It is damaged or cut short: fetch it again.");
            return Read(tiff);
        }
        catch (Exception damaged) when (damaged is not NotAcceptedException)
        {
            // A lying header can make the library fail in any way; none of them says more than this.
            throw new NotAcceptedException("The file contradicts itself and cannot be read. It is damaged or cut short: fetch it again, or write it anew with GDAL: gdal_translate.", damaged);
        }
    }

    private static ElevationGrid Read(Tiff tiff)
    {
        var (width, height) = (Number(tiff, TiffTag.IMAGEWIDTH), Number(tiff, TiffTag.IMAGELENGTH));
        var (bits, format) = (Number(tiff, TiffTag.BITSPERSAMPLE), (SampleFormat)Number(tiff, TiffTag.SAMPLEFORMAT));
        Require.That((bits, format) is (16 or 32, SampleFormat.INT or SampleFormat.UINT) or (32, SampleFormat.IEEEFP), string.Create(CultureInfo.InvariantCulture,
            $"The file's numbers are of {bits} bits in a format that is not read. Write it anew as Int16 or Float32, for instance with GDAL: gdal_translate -ot Float32."));
        var keys = GeoKeys.Of(tiff);
        var south = keys.NorthDegrees - (height - 1) * keys.LatitudeStepDegrees;
        Require.That(keys.NorthDegrees <= 90 && south >= -90 && keys.WestDegrees is >= -180.01 and < 180 && (width - 1) * keys.LongitudeStepDegrees <= 360,
            string.Create(CultureInfo.InvariantCulture, $"The file says it runs from latitude {south:0.###} to {keys.NorthDegrees:0.###} and from longitude {keys.WestDegrees:0.###}, which leaves the globe. Its place is wrong: fetch it again."));
        return Heights(tiff, width, height, bits, format, keys);
    }

    private static ElevationGrid Heights(Tiff tiff, int width, int height, int bits, SampleFormat format, GeoKeys keys)
    {
        var noData = tiff.GetField(NoData) is [_, var field, ..] && double.TryParse(field.ToString()?.TrimEnd('\0', ' '), NumberStyles.Float, CultureInfo.InvariantCulture, out var declared) ? declared : double.NaN;
        var metres = new float[width * height];
        foreach (var (left, top, across, down, raw) in Pieces(tiff, width, height, bits / 8))
            for (var row = 0; row < down && top + row < height; row++)
                for (var column = 0; column < across && left + column < width; column++)
                    metres[(top + row) * width + left + column] = Metres(raw, row * across + column, bits, format, noData);

        var (lowest, highest) = (float.PositiveInfinity, float.NegativeInfinity);
        foreach (var one in metres)
        {
            if (float.IsFinite(one)) (lowest, highest) = (Math.Min(lowest, one), Math.Max(highest, one));
        }

        Require.That(lowest <= highest, "The file holds no height, only voids. Fetch one with the voids filled, or leave it out.");
        Require.That(lowest >= LowestMetres && highest <= HighestMetres, string.Create(CultureInfo.InvariantCulture,
            $"The file says {(highest > HighestMetres ? highest : lowest):N0} m, which no ground has ({LowestMetres:N0} to {HighestMetres:N0} m is read). Depths of the sea, feet and swapped bytes are not read: bring heights of the land in metres."));
        // As fine as 16 bits allow: about 2 cm for hills of 600 m.
        var unit = Math.Max(0.001, Math.Max(highest, -lowest) / 32000);
        return new ElevationGrid(keys.NorthDegrees, keys.WestDegrees, keys.LatitudeStepDegrees, keys.LongitudeStepDegrees, width, height,
            [.. metres.Select(m => float.IsFinite(m) ? (short)Math.Round(m / unit) : ElevationGrid.Void)], unit);
    }

    /// <summary>Strips or tiles one after the other, in the same room.</summary>
    private static IEnumerable<(int Left, int Top, int Across, int Down, byte[] Raw)> Pieces(Tiff tiff, int width, int height, int bytesEach)
    {
        if (!tiff.IsTiled())
        {
            var line = new byte[Math.Max(tiff.ScanlineSize(), width * bytesEach)];
            for (var row = 0; row < height; row++)
            {
                Require.That(tiff.ReadScanline(line, row), "The file ends before its last row. It was cut short: fetch it again.");
                yield return (0, row, width, 1, line);
            }

            yield break;
        }

        var (across, down) = (Number(tiff, TiffTag.TILEWIDTH), Number(tiff, TiffTag.TILELENGTH));
        var tile = new byte[Math.Max(tiff.TileSize(), across * down * bytesEach)];
        for (var top = 0; top < height; top += down)
            for (var left = 0; left < width; left += across)
            {
                Require.That(tiff.ReadTile(tile, 0, left, top, 0, 0) >= 0, "The file ends before its last tile. It was cut short: fetch it again.");
                yield return (left, top, across, down, tile);
            }
    }

    private static float Metres(byte[] raw, int index, int bits, SampleFormat format, double noData)
    {
        double value = (bits, format) switch
        {
            (16, SampleFormat.INT) => MemoryMarshal.Cast<byte, short>(raw)[index],
            (16, _) => MemoryMarshal.Cast<byte, ushort>(raw)[index],
            (_, SampleFormat.INT) => MemoryMarshal.Cast<byte, int>(raw)[index],
            (_, SampleFormat.UINT) => MemoryMarshal.Cast<byte, uint>(raw)[index],
            _ => MemoryMarshal.Cast<byte, float>(raw)[index],
        };
        // The usual voids of files that do not declare theirs.
        return value == noData || value == (float)noData || value is -32768 or -32767 or -9999 || value < -1e30 || !double.IsFinite(value) ? float.NaN : (float)value;
    }

    private static int Number(Tiff tiff, TiffTag tag) => tiff.GetFieldDefaulted(tag) is [var value, ..] ? value.ToInt() : 0;

    private sealed class Silent : TiffErrorHandler
    {
        public override void ErrorHandler(Tiff tif, string method, string format, params object[] args) { }

        public override void ErrorHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args) { }

        public override void WarningHandler(Tiff tif, string method, string format, params object[] args) { }

        public override void WarningHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args) { }
    }
}
