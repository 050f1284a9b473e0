using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>One passage through a value.</summary>
/// <param name="Time">When.</param>
/// <param name="Rising">Whether the value grows then: the sun climbs, or its azimuth turns clockwise.</param>
public readonly record struct Crossing(Instant Time, bool Rising);

/// <summary>A highest or lowest point of the sun's daily way.</summary>
/// <param name="Time">When. Near the highest or lowest point the altitude hardly changes, so this is good to about a second.</param>
/// <param name="AltitudeDegrees">Airless altitude of the centre then, degrees.</param>
/// <param name="IsHighest">Highest of the day, or lowest.</param>
public readonly record struct AltitudeTurn(Instant Time, double AltitudeDegrees, bool IsHighest);

/// <summary>
/// When the sun's direction passes through a value, by root finding: exact to a millisecond against the ephemeris, at any
/// latitude. Nothing found is an empty list. Within 0.1 degrees of a pole two crossings within one half-day may be missed.
/// </summary>
public static class SunCrossings
{
    /// <summary>When the centre passes an airless altitude.</summary>
    /// <param name="altitudeDegrees">Airless altitude, degrees, −90…90.</param>
    /// <param name="position">Where.</param>
    /// <param name="interval">Search from its start (included) to its end (excluded); both must be set.</param>
    /// <param name="ephemeris">Covers the interval.</param>
    /// <exception cref="ArgumentOutOfRangeException">The altitude is out of range, or the interval leaves the ephemeris.</exception>
    public static IReadOnlyList<Crossing> OfAltitude(double altitudeDegrees, Position position, Interval interval, SunEphemeris ephemeris)
    {
        if (!(altitudeDegrees is >= -90 and <= 90))
            throw new ArgumentOutOfRangeException(nameof(altitudeDegrees), altitudeDegrees, "An altitude lies from −90 to 90 degrees.");
        return OfPlane(new Direction(0, 0, 1), Math.Sin(altitudeDegrees * (Math.PI / 180)), position, interval, ephemeris);
    }

    /// <summary>
    /// When the sun stands in a direction over the ground. <see cref="Crossing.Rising"/> tells whether it turns clockwise
    /// then, as it does outside the tropics on the northern half. In the zenith and nadir it has no azimuth.
    /// </summary>
    /// <param name="azimuth">The direction.</param>
    /// <param name="position">Where.</param>
    /// <param name="interval">Search from its start (included) to its end (excluded); both must be set.</param>
    /// <param name="ephemeris">Covers the interval.</param>
    /// <exception cref="ArgumentOutOfRangeException">The interval leaves the ephemeris.</exception>
    public static IReadOnlyList<Crossing> OfAzimuth(Bearing azimuth, Position position, Interval interval, SunEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(ephemeris);
        var (sin, cos) = Math.SinCos(azimuth.Degrees * (Math.PI / 180));
        // Zero on the whole vertical circle, and growing clockwise on the half that is asked for.
        var onCircle = OfPlane(new Direction(cos, -sin, 0), 0, position, interval, ephemeris);
        var path = ephemeris.SeenFrom(position);
        var ahead = new List<Crossing>(onCircle.Count);
        foreach (var crossing in onCircle)
        {
            var sun = path.At(crossing.Time);
            if (sun.East * sin + sun.North * cos > 0) ahead.Add(crossing);
        }

        return ahead;
    }

    /// <summary>
    /// When a straight-line function of the airless direction, normal·direction − level, passes zero: the edge of a
    /// picture is such a plane, and so are altitudes and azimuths.
    /// </summary>
    /// <param name="normal">The factors of the east, north and up parts.</param>
    /// <param name="level">What is taken off; the sine of an angle where the normal has length one.</param>
    /// <param name="position">Where.</param>
    /// <param name="interval">Search from its start (included) to its end (excluded); both must be set.</param>
    /// <param name="ephemeris">Covers the interval.</param>
    /// <exception cref="ArgumentOutOfRangeException">The interval leaves the ephemeris.</exception>
    public static IReadOnlyList<Crossing> OfPlane(Direction normal, double level, Position position, Interval interval, SunEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(ephemeris);
        var (from, to) = (ephemeris.DaysOf(interval.Start), ephemeris.DaysOf(interval.End));
        var swing = new SunSwing(ephemeris.SeenFrom(position), normal, level);
        var found = new List<Crossing>((int)Math.Min(2 * (to - from) + 2, 4096));

        var guess = swing.HighestBefore(from);
        var start = swing.Turning(guess);
        var startValue = swing.At(start);
        while (start < to)
        {
            guess += 0.5;
            // Turning points drift by less than a minute a day: the last one tells where the next will be.
            var end = swing.Turning(guess);
            var endValue = swing.At(end);
            if (startValue < 0 != endValue < 0)
            {
                var root = swing.Root(start, startValue, end, endValue);
                if (root >= from && root < to)
                    found.Add(new Crossing(JulianDay.FromDays(root), endValue > startValue));
            }

            (start, startValue) = (end, endValue);
        }

        return found;
    }

    /// <summary>The highest and lowest points of the sun's daily way.</summary>
    /// <param name="position">Where.</param>
    /// <param name="interval">From its start (included) to its end (excluded); both must be set.</param>
    /// <param name="ephemeris">Covers the interval.</param>
    /// <exception cref="ArgumentOutOfRangeException">The interval leaves the ephemeris.</exception>
    public static IReadOnlyList<AltitudeTurn> AltitudeTurns(Position position, Interval interval, SunEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(ephemeris);
        var (from, to) = (ephemeris.DaysOf(interval.Start), ephemeris.DaysOf(interval.End));
        var swing = new SunSwing(ephemeris.SeenFrom(position), new Direction(0, 0, 1), 0);
        var found = new List<AltitudeTurn>();
        var highest = true;
        for (var guess = swing.HighestBefore(from); guess < to + 0.25; guess += 0.5, highest = !highest)
        {
            var days = swing.Turning(guess);
            if (days >= from && days < to)
                found.Add(new AltitudeTurn(JulianDay.FromDays(days), Math.Asin(Math.Clamp(swing.At(days), -1, 1)) * (180 / Math.PI), highest));
        }

        return found;
    }
}
