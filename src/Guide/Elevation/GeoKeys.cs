using System.Globalization;
using BitMiracle.LibTiff.Classic;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Elevation;

/// <summary>Where a GeoTIFF lies: OGC GeoTIFF Standard 1.1 (OGC 19-008r4), read for geographic coordinates alone.</summary>
internal sealed record GeoKeys(double WestDegrees, double NorthDegrees, double LongitudeStepDegrees, double LatitudeStepDegrees)
{
    private const TiffTag PixelScale = (TiffTag)33550, Tiepoints = (TiffTag)33922, Transformation = (TiffTag)34264, Directory = (TiffTag)34735;
    private const int ModelType = 1024, RasterType = 1025, GeographicType = 2048, AngularUnits = 2054, VerticalUnits = 4099;

    /// <summary>Frames that differ from WGS 84 by a few metres at most: WGS 84 (2D, 3D), NAD83 (and 2011, CSRS), ETRS89, GDA94, GDA2020, NZGD2000, SIRGAS 2000.</summary>
    private static readonly int[] Frames = [4326, 4979, 4269, 6318, 4617, 4258, 4283, 7844, 4167, 4674];

    public static GeoKeys Of(Tiff tiff)
    {
        var keys = Keys(tiff);
        Require.That(keys.GetValueOrDefault(ModelType) == 2,
            "The file is not in geographic coordinates (degrees of latitude and longitude) but projected, or says nothing of where it lies. Turn it into EPSG:4326 first, for instance with GDAL: gdalwarp -t_srs EPSG:4326.");
        var frame = keys.GetValueOrDefault(GeographicType, 4326);
        Require.That(Frames.Contains(frame),
            string.Create(CultureInfo.InvariantCulture, $"The file's coordinates are EPSG:{frame}, which can lie hundreds of metres off. Turn it into EPSG:4326 first, for instance with GDAL: gdalwarp -t_srs EPSG:4326."));
        Require.That(keys.GetValueOrDefault(AngularUnits, 9102) == 9102, "The file's angles are not in degrees. Turn it into EPSG:4326 first.");
        Require.That(keys.GetValueOrDefault(VerticalUnits, 9001) == 9001, "The file's heights are not in metres. Turn them into metres first.");

        var (west, north, right, down) = Placed(tiff);
        Require.That(right > 0 && down > 0, "The file does not run from north to south and west to east. Warp it into EPSG:4326, north up, first.");
        // A pixel may stand for its area: its height is then that of its middle.
        var half = keys.GetValueOrDefault(RasterType, 1) == 2 ? 0 : 0.5;
        return new GeoKeys(west + half * right, north - half * down, right, down);
    }

    private static (double West, double North, double Right, double Down) Placed(Tiff tiff)
    {
        if (Doubles(tiff, Transformation) is [var right, var shear1, _, var x, var shear2, var up, _, var y, ..])
        {
            Require.That(shear1 == 0 && shear2 == 0, "The file is rotated or sheared. Warp it into EPSG:4326, north up, first.");
            return (x, y, right, -up);
        }

        var (scale, tie) = (Doubles(tiff, PixelScale), Doubles(tiff, Tiepoints));
        Require.That(scale.Length >= 2 && tie.Length == 6, "The file does not say where it lies by one corner and the size of a pixel. Warp it into EPSG:4326, north up, first.");
        return (tie[3] - tie[0] * scale[0], tie[4] + tie[1] * scale[1], scale[0], scale[1]);
    }

    private static Dictionary<int, int> Keys(Tiff tiff)
    {
        var words = tiff.GetField(Directory) is [_, var value, ..] ? value.ToUShortArray() ?? [] : [];
        var keys = new Dictionary<int, int>();
        // Four numbers a key: id, where its value lies (0: here), how many, the value.
        for (var i = 4; i + 3 < words.Length; i += 4)
            if (words[i + 1] == 0)
                keys[words[i]] = words[i + 3];
        return keys;
    }

    private static double[] Doubles(Tiff tiff, TiffTag tag)
    {
        var numbers = tiff.GetField(tag) is [_, var value, ..] ? value.ToDoubleArray() ?? [] : [];
        Require.That(numbers.All(double.IsFinite), "The file's place is not a number. It is damaged: fetch it again.");
        return numbers;
    }
}
