using System.IO.Compression;

namespace Foreshore.Guide.Shell.Maps;

/// <summary>Reads data/coastline/land-10m.bin.gz; the format is written down in tools/coastline/make.mjs, which makes it.</summary>
internal static class CoastAsset
{
    public static IReadOnlyList<CoastPolygon> Read()
    {
        using var packed = typeof(CoastAsset).Assembly.GetManifestResourceStream("coastline")!;
        using var unpacked = new GZipStream(packed, CompressionMode.Decompress);
        using var reader = new BinaryReader(new BufferedStream(unpacked, 1 << 16));
        var (west, column, south, row) = (reader.ReadDouble(), reader.ReadDouble(), reader.ReadDouble(), reader.ReadDouble());
        var polygons = new CoastPolygon[reader.Read7BitEncodedInt()];
        for (var i = 0; i < polygons.Length; i++)
        {
            var rings = new CoastRing[reader.Read7BitEncodedInt()];
            for (var j = 0; j < rings.Length; j++) rings[j] = new(Points(reader));
            polygons[i] = new(rings[0], rings[1..]);
        }
        return polygons;

        MapPoint[] Points(BinaryReader from)
        {
            var points = new MapPoint[from.Read7BitEncodedInt()];
            var (x, y) = (0, 0);
            for (var i = 0; i < points.Length; i++)
            {
                x += Signed(from.Read7BitEncodedInt());
                y += Signed(from.Read7BitEncodedInt());
                points[i] = new(west + x * column, Math.Max(-90, south + y * row));
            }
            return points;
        }
    }

    private static int Signed(int zigzag) => (int)((uint)zigzag >> 1) ^ -(zigzag & 1);
}
