using Foreshore.Almanac.Earth;
using Foreshore.Guide.Shell.Maps;

namespace Foreshore.Guide.Locations;

/// <summary>How a way may be used, as far as a line can tell it.</summary>
public enum SketchWayKind { Right, Used, AskFirst, Closed }

public enum SketchMarkKind { Vantage, Parking, Hazard }

/// <summary>A facing from a vantage point and how wide the lens sees.</summary>
public sealed record SketchFacing(Bearing Facing, double AngleDegrees);

/// <summary>Something that stands on the sketch: the sign is the letter or number its list is kept by.</summary>
public sealed record SketchPlace(SketchMarkKind Kind, string Sign, string Name, Position Position, IReadOnlyList<SketchFacing> Facings);

public sealed record SketchWay(SketchWayKind Kind, string Name, IReadOnlyList<Position> Line);

/// <summary>A mark and where its sign stands: aside from the true place, with a leader, where two would touch.</summary>
public sealed record SketchMark(SketchPlace Place, double X, double Y, double SignX, double SignY);

/// <summary>A location's vantage points, ways, parking and hazards to scale, north up, in units of a 360 × 270 sheet.</summary>
public sealed record SketchDrawing(
    IReadOnlyList<IReadOnlyList<(double X, double Y)>> Land,
    IReadOnlyList<IReadOnlyList<(double X, double Y)>> Shore,
    IReadOnlyList<(SketchWay Way, IReadOnlyList<(double X, double Y)> Line)> Ways,
    IReadOnlyList<(SketchFacing Facing, string Path)> Wedges,
    IReadOnlyList<SketchMark> Marks,
    double BarMetres,
    double BarUnits)
{
    public const double Width = 360, Height = 270;
    public const double SignApart = 19;

    private const double LeastMetres = 500, FilledFromMetres = 8000, MetresPerDegree = 111_195;

    public static SketchDrawing Of(IReadOnlyList<SketchPlace> places, IReadOnlyList<SketchWay> ways)
    {
        if (places.Count == 0) throw new ArgumentException("A sketch shows at least one place.", nameof(places));
        var first = places[0].Position;
        // A way may come from far; the sheet is cut to what stands on it.
        var local = places.Select(p => Local(p.Position)).ToList();
        var room = SketchRoom.Beside(places);
        var metres = new[]
        {
            LeastMetres,
            (local.Max(p => p.East) - local.Min(p => p.East)) * Width / (Width - room.Left - room.Right),
            (local.Max(p => p.North) - local.Min(p => p.North)) * Width / (Height - room.Top - room.Bottom),
        }.Max();
        var scale = Width / metres;
        var east = (local.Min(p => p.East) + local.Max(p => p.East) + (room.Right - room.Left) / scale) / 2;
        var north = (local.Min(p => p.North) + local.Max(p => p.North) + (room.Top - room.Bottom) / scale) / 2;
        var coast = Coastline.ClippedTo(MapBox.Around(first.LatitudeDegrees + north / MetresPerDegree, LongitudeOf(east), metres * Height / Width, Width / Height), 0);
        var bar = Bar(metres / 3);

        return new(
            // A coast good to a kilometre would put ledges out at sea on a smaller sheet: there it is a broken line, and nothing is filled.
            metres < FilledFromMetres ? [] : [.. coast.Land.Select(l => l.Outer.Select(OnMap).ToList())],
            [.. coast.Shore.Select(l => l.Select(OnMap).ToList())],
            [.. ways.Where(w => w.Line.Count > 1).Select(w => (w, (IReadOnlyList<(double, double)>)[.. w.Line.Select(On)]))],
            [.. places.SelectMany(p => p.Facings.Select(f => (f, SketchWedge.Path(On(p.Position), f))))],
            SketchSigns.Apart([.. places.Select(p => (p, On(p.Position)))]),
            bar, bar * scale);

        (double East, double North) Local(Position p) => (
            Bearing.FromDegrees(first.LongitudeDegrees).SignedTo(Bearing.FromDegrees(p.LongitudeDegrees)) * MetresPerDegree * Math.Cos(first.LatitudeDegrees * Math.PI / 180),
            (p.LatitudeDegrees - first.LatitudeDegrees) * MetresPerDegree);

        (double X, double Y) On(Position p)
        {
            var at = Local(p);
            return (Width / 2 + (at.East - east) * scale, Height / 2 - (at.North - north) * scale);
        }

        (double X, double Y) OnMap(MapPoint p) =>
            On(new Position(p.LatitudeDegrees, p.LongitudeDegrees >= 180 ? p.LongitudeDegrees - 360 : p.LongitudeDegrees));

        double LongitudeOf(double eastMetres) =>
            Math.IEEERemainder(first.LongitudeDegrees + eastMetres / MetresPerDegree / Math.Cos(first.LatitudeDegrees * Math.PI / 180), 360);
    }

    /// <summary>The greatest of 1, 2, 5 × 10ⁿ metres that is not longer than the room.</summary>
    private static double Bar(double room)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(room)));
        return room >= 5 * ten ? 5 * ten : room >= 2 * ten ? 2 * ten : ten;
    }
}
