namespace Foreshore.Almanac.Earth;

/// <summary>The shortest line between two positions.</summary>
/// <param name="Metres">Length, metres.</param>
/// <param name="Initial">Bearing at the first position.</param>
/// <param name="Final">Bearing on arriving at the second one, still pointing onward.</param>
public readonly record struct GeodesicSegment(double Metres, Bearing Initial, Bearing Final);

/// <summary>Where a line ends.</summary>
/// <param name="Position">The end.</param>
/// <param name="Final">Bearing there, pointing onward.</param>
public readonly record struct GeodesicEnd(Position Position, Bearing Final);

/// <summary>Shortest lines over the ground, for now on a sphere of 6,371,008.8 m (0.5 % and 0.2 degrees coarse).</summary>
public static class Geodesic
{
    private const double Radius = 6371008.8;
    private const double Radian = Math.PI / 180;

    /// <summary>Distance and bearings between two positions.</summary>
    public static GeodesicSegment Between(Position a, Position b)
    {
        var turn = (b.LongitudeDegrees - a.LongitudeDegrees) * Radian;
        var (sin1, cos1) = Math.SinCos(a.LatitudeDegrees * Radian);
        var (sin2, cos2) = Math.SinCos(b.LatitudeDegrees * Radian);
        var (sinTurn, cosTurn) = Math.SinCos(turn);
        var y = cos2 * sinTurn;
        var x = cos1 * sin2 - sin1 * cos2 * cosTurn;
        var metres = Radius * Math.Atan2(Math.Sqrt(x * x + y * y), sin1 * sin2 + cos1 * cos2 * cosTurn);
        return new GeodesicSegment(metres, Degrees(Math.Atan2(y, x)), Degrees(Math.Atan2(cos1 * sinTurn, cos1 * sin2 * cosTurn - sin1 * cos2)));
    }

    /// <summary>The end of a line from a position.</summary>
    public static GeodesicEnd Along(Position from, Bearing initial, double metres)
    {
        var (sin1, cos1) = Math.SinCos(from.LatitudeDegrees * Radian);
        var (sinBearing, cosBearing) = Math.SinCos(initial.Degrees * Radian);
        var (sinArc, cosArc) = Math.SinCos(metres / Radius);
        var latitude = Math.Asin(Math.Clamp(sin1 * cosArc + cos1 * sinArc * cosBearing, -1, 1));
        var turn = Math.Atan2(sinArc * sinBearing, cos1 * cosArc - sin1 * sinArc * cosBearing);
        var longitude = Math.IEEERemainder(from.LongitudeDegrees + turn / Radian, 360);
        var final = Math.Atan2(cos1 * sinBearing, cos1 * cosArc * cosBearing - sin1 * sinArc);
        return new GeodesicEnd(new Position(latitude / Radian, longitude), Degrees(final));
    }

    private static Bearing Degrees(double radians) => Bearing.FromDegrees(radians / Radian);
}
