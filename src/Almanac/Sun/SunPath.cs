using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>The sun's way over one place's sky: <see cref="SunEphemeris.SeenFrom"/>.</summary>
public readonly struct SunPath
{
    internal const double TurnRadiansPerDay = 2 * Math.PI;

    internal readonly SunEphemeris Ephemeris;
    internal readonly double LongitudeRadians, SinLatitude, CosLatitude, SiteNorth, SiteUp;

    internal SunPath(SunEphemeris ephemeris, Position position)
    {
        Ephemeris = ephemeris;
        Position = position;
        LongitudeRadians = position.LongitudeDegrees * (Math.PI / 180);
        (SinLatitude, CosLatitude) = Math.SinCos(position.LatitudeDegrees * (Math.PI / 180));
        var site = SiteRadii.Of(position.LatitudeDegrees);
        SiteNorth = site.RhoSinPhi * CosLatitude - site.RhoCosPhi * SinLatitude;
        SiteUp = site.RhoCosPhi * CosLatitude + site.RhoSinPhi * SinLatitude;
    }

    /// <summary>The place.</summary>
    public Position Position { get; }

    /// <summary>Airless direction of the sun's centre, parallax counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the ephemeris.</exception>
    public Direction At(Instant instant) => At(Ephemeris.DaysOf(instant));

    internal Direction At(double days)
    {
        ref readonly var s = ref Ephemeris.SegmentAt(days, out var u);
        var (sin, cos) = Math.SinCos(TurnRadiansPerDay * (days - Math.Floor(days)) + LongitudeRadians);
        var a = s.A0 + u * (s.A1 + u * (s.A2 + u * s.A3));
        var b = s.B0 + u * (s.B1 + u * (s.B2 + u * s.B3));
        var c = s.C0 + u * (s.C1 + u * (s.C2 + u * s.C3));

        // Towards the meridian above the equator, and towards the west.
        var meridian = a * cos - b * sin;
        var west = a * sin + b * cos;
        return Topocentric(-west, CosLatitude * c - SinLatitude * meridian, SinLatitude * c + CosLatitude * meridian, s.Parallax0 + u * s.Parallax1);
    }

    /// <summary>Subtracts the place's own vector; the length is brought back to one within a few billionths.</summary>
    private Direction Topocentric(double east, double north, double up, double parallax)
    {
        var stretch = 1 + parallax * (north * SiteNorth + up * SiteUp);
        return new Direction(east * stretch, (north - parallax * SiteNorth) * stretch, (up - parallax * SiteUp) * stretch);
    }

    /// <summary>The upper transit (whole number) or lower transit (number and a half) nearest to a day count, days.</summary>
    internal double Transit(double number)
    {
        var days = number - LongitudeRadians / TurnRadiansPerDay;
        var clock = days;
        // The equation of time changes by half a minute a day, so each round gains three digits.
        for (var round = 0; round < 4; round++)
        {
            ref readonly var s = ref Ephemeris.SegmentAt(days, out var u);
            var a = s.A0 + u * (s.A1 + u * (s.A2 + u * s.A3));
            var b = s.B0 + u * (s.B1 + u * (s.B2 + u * s.B3));
            days = clock - Math.Atan2(b, a) / TurnRadiansPerDay;
        }

        return days;
    }

    /// <summary>Half the disc's angle at a time, degrees: it goes with the distance, 15.7′ in July and 16.3′ in January.</summary>
    internal double SemidiameterDegrees(double days)
    {
        ref readonly var segment = ref Ephemeris.SegmentAt(days, out var u);
        return SunDisc.SemidiameterDegrees(SunSegment.EquatorialParallaxRadians / (segment.Parallax0 + segment.Parallax1 * u));
    }
}
