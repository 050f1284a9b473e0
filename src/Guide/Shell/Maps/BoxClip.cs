namespace Foreshore.Guide.Shell.Maps;

/// <summary>
/// Cuts rings and lines to a box. Rings by Sutherland and Hodgman, "Reentrant polygon clipping" (Communications of the ACM 17, 1974):
/// a ring that enters a box several times stays one ring joined along the box's edges, which fills rightly. Lines by
/// Liang and Barsky, "A new concept and method for line clipping" (ACM Transactions on Graphics 3, 1984).
/// </summary>
internal static class BoxClip
{
    // The asset closes the ring round the South Pole along −90; nothing drawn below this is a shore.
    private const double SouthOfEveryShore = -86;

    /// <summary>The part of a closed ring within the box, closed; empty when there is none.</summary>
    public static List<MapPoint> Ring(List<MapPoint> ring, MapBox box)
    {
        var cut = Half(ring, p => p.LongitudeDegrees - box.West, (a, b) => AtLongitude(a, b, box.West));
        cut = Half(cut, p => box.East - p.LongitudeDegrees, (a, b) => AtLongitude(a, b, box.East));
        cut = Half(cut, p => p.LatitudeDegrees - box.South, (a, b) => AtLatitude(a, b, box.South));
        return Half(cut, p => box.North - p.LatitudeDegrees, (a, b) => AtLatitude(a, b, box.North));
    }

    /// <summary>Adds the runs of the ring within the box to the lines.</summary>
    public static void Shore(List<MapPoint> ring, MapBox box, List<IReadOnlyList<MapPoint>> lines)
    {
        List<MapPoint>? run = null;
        for (var i = 1; i < ring.Count; i++)
        {
            var piece = Segment(ring[i - 1], ring[i], box);
            if (piece is not var (from, to) || Math.Min(from.LatitudeDegrees, to.LatitudeDegrees) < SouthOfEveryShore)
            {
                run = null;
                continue;
            }
            if (run is null || run[^1] != from) lines.Add(run = [from]);
            run.Add(to);
        }
    }

    private static List<MapPoint> Half(List<MapPoint> ring, Func<MapPoint, double> inside, Func<MapPoint, MapPoint, MapPoint> edge)
    {
        var cut = new List<MapPoint>(ring.Count);
        for (var i = 1; i < ring.Count; i++)
        {
            var (a, b) = (ring[i - 1], ring[i]);
            var (aInside, bInside) = (inside(a) >= 0, inside(b) >= 0);
            if (aInside != bInside) cut.Add(edge(a, b));
            if (bInside) cut.Add(b);
        }
        if (cut.Count > 0 && cut[0] != cut[^1]) cut.Add(cut[0]);
        return cut;
    }

    private static (MapPoint From, MapPoint To)? Segment(MapPoint a, MapPoint b, MapBox box)
    {
        var (dx, dy) = (b.LongitudeDegrees - a.LongitudeDegrees, b.LatitudeDegrees - a.LatitudeDegrees);
        var (enter, leave) = (0.0, 1.0);
        if (!Narrow(-dx, a.LongitudeDegrees - box.West, ref enter, ref leave)
            || !Narrow(dx, box.East - a.LongitudeDegrees, ref enter, ref leave)
            || !Narrow(-dy, a.LatitudeDegrees - box.South, ref enter, ref leave)
            || !Narrow(dy, box.North - a.LatitudeDegrees, ref enter, ref leave)
            || enter >= leave) return null;
        return (enter == 0 ? a : Along(enter), leave == 1 ? b : Along(leave));

        MapPoint Along(double t) => new(
            Math.Clamp(a.LongitudeDegrees + t * dx, box.West, box.East),
            Math.Clamp(a.LatitudeDegrees + t * dy, box.South, box.North));
    }

    private static bool Narrow(double denominator, double numerator, ref double enter, ref double leave)
    {
        if (denominator == 0) return numerator >= 0;
        var t = numerator / denominator;
        if (denominator < 0) enter = Math.Max(enter, t);
        else leave = Math.Min(leave, t);
        return true;
    }

    private static MapPoint AtLongitude(MapPoint a, MapPoint b, double longitude) =>
        new(longitude, a.LatitudeDegrees + (longitude - a.LongitudeDegrees) / (b.LongitudeDegrees - a.LongitudeDegrees) * (b.LatitudeDegrees - a.LatitudeDegrees));

    private static MapPoint AtLatitude(MapPoint a, MapPoint b, double latitude) =>
        new(a.LongitudeDegrees + (latitude - a.LatitudeDegrees) / (b.LatitudeDegrees - a.LatitudeDegrees) * (b.LongitudeDegrees - a.LongitudeDegrees), latitude);
}
