using Foreshore.Guide.Shell.Ink;

namespace Foreshore.Guide.Locations;

/// <summary>The wedge a lens sees from a point of the sketch.</summary>
internal static class SketchWedge
{
    private const double Radius = 58;

    public static string Path((double X, double Y) from, SketchFacing facing) => InkPath.Area([from, .. Arc(facing).Select(a => (from.X + a.X, from.Y + a.Y))]);

    /// <summary>The wedge's outer corners, seen from its point.</summary>
    public static IEnumerable<(double X, double Y)> Arc(SketchFacing facing)
    {
        var half = Math.Min(facing.AngleDegrees, 179) / 2;
        for (var step = 0; step <= 8; step++)
        {
            var (sin, cos) = Math.SinCos((facing.Facing.Degrees - half + 2 * half * step / 8) * Math.PI / 180);
            yield return (Radius * sin, -Radius * cos);
        }
    }
}

/// <summary>
/// Paper kept free on each side of the outermost places, so that a wedge is never cut off: a wedge keeps its length on a
/// sheet of any scale. At least a sign, its name's halo and the bar.
/// </summary>
internal readonly record struct SketchRoom(double Left, double Top, double Right, double Bottom)
{
    private const double Least = 36, Hem = 4;

    public static SketchRoom Beside(IReadOnlyList<SketchPlace> places)
    {
        var corners = places.SelectMany(p => p.Facings).SelectMany(SketchWedge.Arc).Append((X: 0, Y: 0)).ToList();
        return new(Side(-corners.Min(c => c.X)), Side(-corners.Min(c => c.Y)), Side(corners.Max(c => c.X)), Side(corners.Max(c => c.Y)));

        static double Side(double reach) => Math.Max(Least, reach + Hem);
    }
}

/// <summary>Moves the signs of neighbouring places apart, the least that leaves all of them readable.</summary>
internal static class SketchSigns
{
    private const double Edge = 12;

    public static IReadOnlyList<SketchMark> Apart(IReadOnlyList<(SketchPlace Place, (double X, double Y) At)> places)
    {
        var signs = places.Select(p => p.At).ToArray();
        for (var round = 0; round < 400; round++)
        {
            var moved = false;
            for (var i = 0; i < signs.Length; i++)
                for (var j = i + 1; j < signs.Length; j++)
                {
                    var (dx, dy) = (signs[j].X - signs[i].X, signs[j].Y - signs[i].Y);
                    var away = Math.Sqrt(dx * dx + dy * dy);
                    if (away >= SketchDrawing.SignApart) continue;
                    // Two signs on one spot part in a direction of their own, or they would for ever push along one line.
                    if (away < 1e-6) (dx, dy, away) = (Math.Cos(i + 2.4 * j), Math.Sin(i + 2.4 * j), 1);
                    var push = (SketchDrawing.SignApart - away) / 2 + 0.05;
                    signs[i] = Within(signs[i].X - dx / away * push, signs[i].Y - dy / away * push);
                    signs[j] = Within(signs[j].X + dx / away * push, signs[j].Y + dy / away * push);
                    moved = true;
                }
            if (!moved) break;
        }
        return [.. places.Select((p, i) => new SketchMark(p.Place, p.At.X, p.At.Y, signs[i].X, signs[i].Y))];
    }

    private static (double X, double Y) Within(double x, double y) =>
        (Math.Clamp(x, Edge, SketchDrawing.Width - Edge), Math.Clamp(y, Edge, SketchDrawing.Height - Edge));
}
