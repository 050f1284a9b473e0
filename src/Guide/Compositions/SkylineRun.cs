using Foreshore.Almanac.Earth;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// A stretch of skyline of one kind, ready to be drawn: corners as degrees to the right of where the drawing begins, and
/// altitude in degrees as seen.
/// </summary>
public sealed record SkylineRun(SkylineKind Kind, IReadOnlyList<(double Right, double Altitude)> Corners)
{
    /// <summary>The skyline from a bearing clockwise over a span of at most 360 degrees, in runs that meet each other.</summary>
    public static IReadOnlyList<SkylineRun> Across(Observer observer, Bearing from, double spanDegrees)
    {
        var points = observer.Skyline.Points;
        var runs = new List<SkylineRun>();
        // Once round before and once after covers every start; pieces outside the span fall away.
        for (var turn = -1; turn <= 1; turn++)
            for (var i = 0; i < points.Count; i++)
            {
                var start = points[i].AzimuthDegrees - from.Degrees + 360 * turn;
                var width = points.Count == 1 ? 360 : (points[(i + 1) % points.Count].AzimuthDegrees - points[i].AzimuthDegrees + 360) % 360;
                var (left, right) = (Math.Max(0, start), Math.Min(spanDegrees, start + width));
                if (right <= left) continue;
                var (low, high) = Ends(observer, i, (left - start) / width, (right - start) / width);
                Add(runs, points[i].Kind, (left, low), (right, high));
            }
        return runs;
    }

    private static (double, double) Ends(Observer observer, int piece, double from, double to)
    {
        var points = observer.Skyline.Points;
        if (points[piece].Kind == SkylineKind.Sea) return (-observer.DipDegrees, -observer.DipDegrees);
        if (points[piece].Kind == SkylineKind.Unknown) return (0, 0);
        var (a, b) = (points[piece].AltitudeDegrees, points[(piece + 1) % points.Count].AltitudeDegrees);
        return (a + (b - a) * from, a + (b - a) * to);
    }

    private static void Add(List<SkylineRun> runs, SkylineKind kind, (double, double) from, (double, double) to)
    {
        if (runs.Count > 0 && runs[^1].Kind == kind)
        {
            var corners = (List<(double, double)>)runs[^1].Corners;
            if (corners[^1] != from) corners.Add(from);
            corners.Add(to);
        }
        else runs.Add(new(kind, new List<(double, double)> { from, to }));
    }
}
