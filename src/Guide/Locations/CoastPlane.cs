using Foreshore.Almanac.Earth;
using Foreshore.Guide.Shell.Maps;

namespace Foreshore.Guide.Locations;

/// <summary>A stretch of coast laid flat, metres east and north of its middle: good to about a hundredth, for drawings only.</summary>
internal sealed class CoastPlane
{
    private const double MetresPerDegree = 111_195; // mean Earth radius (IUGG) × π/180

    private readonly double middleLatitude, middleLongitude, narrow;

    public CoastPlane(DrawnCoast coast)
    {
        (middleLatitude, middleLongitude) = ((coast.Box.South + coast.Box.North) / 2, (coast.Box.West + coast.Box.East) / 2);
        narrow = Math.Cos(middleLatitude * Math.PI / 180);
        Outlines = [.. coast.Land.Select(land => new CoastOutline(
            [.. land.Outer.Select(p => Of(p.LatitudeDegrees, p.LongitudeDegrees))],
            land.Outer.Any(p => p.LongitudeDegrees <= coast.Box.West || p.LongitudeDegrees >= coast.Box.East
                || p.LatitudeDegrees <= coast.Box.South || p.LatitudeDegrees >= coast.Box.North)))];
    }

    public IReadOnlyList<CoastOutline> Outlines { get; }

    public (double East, double North) Of(Position position) =>
        Of(position.LatitudeDegrees, middleLongitude + Math.IEEERemainder(position.LongitudeDegrees - middleLongitude, 360));

    private (double East, double North) Of(double latitude, double longitude) =>
        ((longitude - middleLongitude) * MetresPerDegree * narrow, (latitude - middleLatitude) * MetresPerDegree);
}

/// <summary>An outline of land on the plane; cut when it runs along the edge of what was clipped, and so is no whole island.</summary>
internal sealed class CoastOutline
{
    public CoastOutline((double East, double North)[] points, bool isCut)
    {
        (Points, IsCut) = (points, isCut);
        var (west, east, south, north, doubled) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue, 0.0);
        for (var i = 0; i < points.Length; i++)
        {
            var (a, b) = (points[i], points[(i + 1) % points.Length]);
            (west, east) = (Math.Min(west, a.East), Math.Max(east, a.East));
            (south, north) = (Math.Min(south, a.North), Math.Max(north, a.North));
            doubled += a.East * b.North - b.East * a.North;
        }
        Middle = ((west + east) / 2, (south + north) / 2);
        Size = Math.Max(east - west, north - south);
        LandIsOnItsLeft = doubled > 0;
    }

    public (double East, double North)[] Points { get; }
    public bool IsCut { get; }
    public (double East, double North) Middle { get; }
    public double Size { get; }

    /// <summary>Whether one who follows the outline has the land on the left hand: it runs anticlockwise.</summary>
    public bool LandIsOnItsLeft { get; }
}
