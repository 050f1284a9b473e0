using Foreshore.Almanac.Earth;

namespace Foreshore.Guide.Locations;

/// <summary>
/// The coast between two neighbours of the guide, turned so that one goes down the page with the sea on the left hand –
/// the page's right. Measured along the way as a share of it, and to the left of it in metres.
/// </summary>
internal sealed class CoastStretch
{
    private const double LeastMetres = 400;

    private readonly (double East, double North) start, down;
    private readonly double metres;
    private readonly IReadOnlyList<CoastOutline> outlines;
    private readonly List<((double Along, double Left) From, (double Along, double Left) To)> shore = [];

    public CoastStretch(CoastPlane plane, Position from, Bearing way, double metres)
    {
        (outlines, start, this.metres) = (plane.Outlines, plane.Of(from), Math.Max(LeastMetres, metres));
        down = Math.SinCos(way.Degrees * Math.PI / 180);
        foreach (var outline in outlines)
            for (var i = 0; i < outline.Points.Length; i++)
            {
                var (a, b) = (Turned(outline.Points[i]), Turned(outline.Points[(i + 1) % outline.Points.Length]));
                // Only where land ends towards the sea on the left: with the land on its left such an outline comes up the page.
                if (outline.LandIsOnItsLeft == b.Along < a.Along
                    && Math.Max(a.Along, b.Along) >= 0 && Math.Min(a.Along, b.Along) <= 1
                    && Math.Min(Math.Abs(a.Left), Math.Abs(b.Left)) < SearchMetres) shore.Add((a, b));
            }
    }

    /// <summary>How far to either side the shore is looked for.</summary>
    private double SearchMetres => Math.Clamp(metres * 0.5, 800, 6000);

    /// <summary>How far left of the straight way the nearest seaward shore lies at a share of it; 0 when there is none near.</summary>
    public double ShoreLeftMetres(double share)
    {
        double? nearest = null;
        foreach (var (a, b) in shore)
        {
            if (a.Along < share == b.Along < share) continue;
            var left = a.Left + (b.Left - a.Left) * (share - a.Along) / (b.Along - a.Along);
            if (Math.Abs(left) < SearchMetres && (nearest is null || Math.Abs(left) < Math.Abs(nearest.Value))) nearest = left;
        }
        return nearest ?? 0;
    }

    /// <summary>Islands off the shore: outlines in metres down and left of their own middle, and where that middle lies.</summary>
    public IEnumerable<CoastIslet> Islets()
    {
        foreach (var outline in outlines)
        {
            if (outline.IsCut || outline.Size > Math.Min(6000, 0.7 * metres)) continue;
            var (along, left) = Turned(outline.Middle);
            if (along is < 0.02 or > 0.98 || left is < 250 or > 9000) continue;
            yield return new(along, left, outline.Size, [.. outline.Points.Select(p => Turned(p)).Select(p => ((p.Along - along) * metres, p.Left - left))]);
        }
    }

    private (double Along, double Left) Turned((double East, double North) point)
    {
        var (east, north) = (point.East - start.East, point.North - start.North);
        return ((east * down.East + north * down.North) / metres, north * down.East - east * down.North);
    }
}

/// <summary>An island beside a stretch.</summary>
internal sealed record CoastIslet(double Along, double LeftMetres, double SizeMetres, IReadOnlyList<(double Down, double Left)> Outline);
