namespace Foreshore.Guide.Shell.Maps;

/// <summary>A piece of land cut to a box: the outer ring and any lakes, each ending on the point it began with.</summary>
public sealed record LandPiece(IReadOnlyList<MapPoint> Outer, IReadOnlyList<IReadOnlyList<MapPoint>> Lakes);

/// <summary>
/// The coast within a box. <see cref="Land"/> is for filling: its rings run along the box's edges too.
/// <see cref="Shore"/> is for inking: only where land meets water.
/// </summary>
public sealed record DrawnCoast(MapBox Box, IReadOnlyList<LandPiece> Land, IReadOnlyList<IReadOnlyList<MapPoint>> Shore);

/// <summary>
/// The world's coast, Natural Earth 1:10 million (public domain; see data/coastline). Coarse: good to about a kilometre.
/// Read once, on first use.
/// </summary>
public static class Coastline
{
    /// <summary>The words that stand wherever this coast is drawn.</summary>
    public const string Note = "Drawn from a coarse open coastline (Natural Earth 1:10 million): not for navigation";

    // A detail of a 600th of the view's height is about a pixel and a half of a map 800 px high.
    private const double DetailOfView = 600;

    private static readonly Lazy<IReadOnlyList<CoastPolygon>> Polygons = new(CoastAsset.Read);

    /// <summary>The coast within the box, without detail too small to be seen at that size.</summary>
    public static DrawnCoast ClippedTo(MapBox box) => ClippedTo(box, box.HeightDegrees / DetailOfView);

    /// <summary>The coast within the box, with detail down to the given size in degrees of latitude.</summary>
    public static DrawnCoast ClippedTo(MapBox box, double detailDegrees)
    {
        var land = new List<LandPiece>();
        var shore = new List<IReadOnlyList<MapPoint>>();
        foreach (var polygon in Polygons.Value)
            for (var turn = -360; turn <= 360; turn += 360)
                if (polygon.Outer.Meets(box, turn)) Add(polygon, box, turn, detailDegrees, land, shore);
        return new(box, land, shore);
    }

    private static void Add(CoastPolygon polygon, MapBox box, double turn, double detail,
        List<LandPiece> land, List<IReadOnlyList<MapPoint>> shore)
    {
        var outer = polygon.Outer.Drawn(box, detail, turn);
        var clipped = BoxClip.Ring(outer, box);
        if (clipped.Count < 4) return;
        BoxClip.Shore(outer, box, shore);
        var lakes = new List<IReadOnlyList<MapPoint>>();
        foreach (var lake in polygon.Lakes)
        {
            var ring = lake.Drawn(box, detail, turn);
            var water = BoxClip.Ring(ring, box);
            if (water.Count < 4) continue;
            lakes.Add(water);
            BoxClip.Shore(ring, box, shore);
        }
        land.Add(new(clipped, lakes));
    }
}
