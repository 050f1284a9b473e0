namespace Foreshore.Guide.Shell.Maps;

internal sealed record CoastPolygon(CoastRing Outer, IReadOnlyList<CoastRing> Lakes);

/// <summary>
/// A closed ring with, for each point, the detail in degrees below which it is kept: Douglas and Peucker's line
/// generalisation (1973) run once for all scales, so that drawing at any scale is a filter.
/// </summary>
internal sealed class CoastRing
{
    private readonly MapPoint[] points;
    private readonly float[] keptBelow;
    private readonly double west, south, east, north;

    public CoastRing(MapPoint[] points)
    {
        this.points = points;
        west = points.Min(p => p.LongitudeDegrees);
        east = points.Max(p => p.LongitudeDegrees);
        south = points.Min(p => p.LatitudeDegrees);
        north = points.Max(p => p.LatitudeDegrees);
        keptBelow = new float[points.Length];

        // The ring is opened at its first point and the point farthest from it; these stay for as long as the ring is seen at all.
        var far = 1;
        for (var i = 1; i < points.Length; i++)
            if (Away(points[i], points[0], points[0]) > Away(points[far], points[0], points[0])) far = i;
        var size = (float)Away(points[far], points[0], points[0]);
        keptBelow[0] = keptBelow[far] = keptBelow[^1] = size;
        Rank(0, far, size);
        Rank(far, points.Length - 1, size);
    }

    public bool Meets(MapBox box, double turn) =>
        west + turn <= box.East && east + turn >= box.West && south <= box.North && north >= box.South;

    public List<MapPoint> Drawn(double detail, double turn)
    {
        var drawn = new List<MapPoint>();
        for (var i = 0; i < points.Length; i++)
            if (keptBelow[i] >= detail)
                drawn.Add(points[i] with { LongitudeDegrees = points[i].LongitudeDegrees + turn });
        return drawn;
    }

    private void Rank(int firstIndex, int lastIndex, float cap)
    {
        var spans = new Stack<(int First, int Last, float Cap)>();
        spans.Push((firstIndex, lastIndex, cap));
        while (spans.TryPop(out var span))
        {
            if (span.Last - span.First < 2) continue;
            var (farthest, distance) = (span.First + 1, -1.0);
            for (var i = span.First + 1; i < span.Last; i++)
            {
                var away = Away(points[i], points[span.First], points[span.Last]);
                if (away > distance) (farthest, distance) = (i, away);
            }
            // Never more than its parent, or a filter would keep a point whose chord it was measured from is gone.
            var rank = Math.Min(span.Cap, (float)distance);
            keptBelow[farthest] = rank;
            spans.Push((span.First, farthest, rank));
            spans.Push((farthest, span.Last, rank));
        }
    }

    /// <summary>Distance of a point from a chord in degrees of latitude, longitudes narrowed by the chord's latitude.</summary>
    private static double Away(MapPoint p, MapPoint a, MapPoint b)
    {
        var narrow = Math.Cos((a.LatitudeDegrees + b.LatitudeDegrees) / 2 * Math.PI / 180);
        var (abX, abY) = ((b.LongitudeDegrees - a.LongitudeDegrees) * narrow, b.LatitudeDegrees - a.LatitudeDegrees);
        var (apX, apY) = ((p.LongitudeDegrees - a.LongitudeDegrees) * narrow, p.LatitudeDegrees - a.LatitudeDegrees);
        var length = abX * abX + abY * abY;
        var along = length == 0 ? 0 : Math.Clamp((apX * abX + apY * abY) / length, 0, 1);
        var (x, y) = (apX - along * abX, apY - along * abY);
        return Math.Sqrt(x * x + y * y);
    }
}
