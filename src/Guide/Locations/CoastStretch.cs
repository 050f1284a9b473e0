using Foreshore.Almanac.Earth;
using Foreshore.Guide.Shell.Maps;

namespace Foreshore.Guide.Locations;

/// <summary>
/// The coast between two neighbours of the guide, turned so that one goes down the page with the sea on the left hand –
/// the page's right. Measured along the way as a share of it, and to the left of it in metres.
/// </summary>
internal sealed class CoastStretch
{
    private const double MetresPerDegree = 111_195; // mean Earth radius (IUGG) × π/180: a drawing's accuracy
    private const double LeastMetres = 400;

    private readonly Position from;
    private readonly (double East, double North) down;
    private readonly double narrow, metres;
    private readonly DrawnCoast coast;
    private readonly List<List<(double Along, double Left)>> rings;

    public CoastStretch(Position from, Bearing way, double metres)
    {
        (this.from, this.metres) = (from, Math.Max(LeastMetres, metres));
        var (sin, cos) = Math.SinCos(way.Degrees * Math.PI / 180);
        (down, narrow) = ((sin, cos), Math.Cos(from.LatitudeDegrees * Math.PI / 180));
        var middle = Geodesic.Along(from, way, this.metres / 2).Position;
        coast = Coastline.ClippedTo(MapBox.Around(middle.LatitudeDegrees, middle.LongitudeDegrees, this.metres * 1.2 + 2 * SearchMetres + 4000), 0.0005);
        rings = [.. coast.Land.Select(land => land.Outer.Select(Local).ToList())];
    }

    /// <summary>How far to either side the shore is looked for.</summary>
    private double SearchMetres => Math.Clamp(metres * 0.5, 800, 6000);

    /// <summary>How far left of the straight way the nearest seaward shore lies at a share of it; 0 when there is none near.</summary>
    public double ShoreLeftMetres(double share)
    {
        double? nearest = null;
        foreach (var ring in rings)
        {
            var cuts = Cuts(ring, share);
            // Sorted from right to left, every second cut is where land ends towards the sea.
            for (var i = 1; i < cuts.Count; i += 2)
                if (Math.Abs(cuts[i]) < SearchMetres && (nearest is null || Math.Abs(cuts[i]) < Math.Abs(nearest.Value))) nearest = cuts[i];
        }
        return nearest ?? 0;
    }

    /// <summary>Islands off the shore: outlines in metres down and left of their own middle, and where that middle lies.</summary>
    public IEnumerable<CoastIslet> Islets()
    {
        foreach (var ring in rings)
        {
            var (along, left) = (ring.Average(p => p.Along), ring.Average(p => p.Left));
            var size = Math.Max((ring.Max(p => p.Along) - ring.Min(p => p.Along)) * metres, ring.Max(p => p.Left) - ring.Min(p => p.Left));
            if (along is < 0.02 or > 0.98 || left < 250 || left > 9000 || size > Math.Min(6000, 0.7 * metres) || OnBoxEdge(ring)) continue;
            yield return new(along, left, size, [.. ring.Select(p => ((p.Along - along) * metres, p.Left - left))]);
        }
    }

    private bool OnBoxEdge(List<(double Along, double Left)> ring)
    {
        var piece = coast.Land[rings.IndexOf(ring)].Outer;
        return piece.Any(p => p.LongitudeDegrees <= coast.Box.West || p.LongitudeDegrees >= coast.Box.East
            || p.LatitudeDegrees <= coast.Box.South || p.LatitudeDegrees >= coast.Box.North);
    }

    private (double Along, double Left) Local(MapPoint point)
    {
        var turn = Bearing.FromDegrees(from.LongitudeDegrees).SignedTo(Bearing.FromDegrees(point.LongitudeDegrees));
        var (east, north) = (turn * narrow * MetresPerDegree, (point.LatitudeDegrees - from.LatitudeDegrees) * MetresPerDegree);
        return ((east * down.East + north * down.North) / metres, north * down.East - east * down.North);
    }

    private static List<double> Cuts(List<(double Along, double Left)> ring, double share)
    {
        var cuts = new List<double>();
        for (var i = 1; i < ring.Count; i++)
        {
            var (a, b) = (ring[i - 1], ring[i]);
            if (a.Along < share == b.Along < share) continue;
            cuts.Add(a.Left + (b.Left - a.Left) * (share - a.Along) / (b.Along - a.Along));
        }
        cuts.Sort();
        return cuts;
    }
}

/// <summary>An island beside a stretch.</summary>
internal sealed record CoastIslet(double Along, double LeftMetres, double SizeMetres, IReadOnlyList<(double Down, double Left)> Outline);
