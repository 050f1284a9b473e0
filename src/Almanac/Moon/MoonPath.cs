using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Moon;

/// <summary>The moon's way over one place's sky: <see cref="MoonEphemeris.SeenFrom"/>.</summary>
public readonly struct MoonPath
{
    internal const double TurnRadiansPerDay = 2 * Math.PI;

    internal readonly MoonEphemeris Ephemeris;
    internal readonly double LongitudeRadians, SinLatitude, CosLatitude, SiteNorth, SiteUp;

    internal MoonPath(MoonEphemeris ephemeris, Position position)
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

    /// <summary>Airless direction of the moon's centre, parallax counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the ephemeris.</exception>
    public Direction At(Instant instant) => At(Ephemeris.DaysOf(instant));

    internal Direction At(double days) => At(days, out _);

    /// <summary>The direction, and how far off the centre is, equatorial radii of the Earth.</summary>
    internal Direction At(double days, out double radii)
    {
        var (a, b, c) = Ephemeris.VectorAt(days);
        var (sin, cos) = Math.SinCos(TurnRadiansPerDay * (days - Math.Floor(days)) + LongitudeRadians);
        // Towards the meridian above the equator, and towards the west.
        var meridian = a * cos - b * sin;
        var east = -(a * sin + b * cos);
        var north = CosLatitude * c - SinLatitude * meridian - SiteNorth;
        var up = SinLatitude * c + CosLatitude * meridian - SiteUp;
        radii = Math.Sqrt(east * east + north * north + up * up);
        var shrink = 1 / radii;
        return new Direction(east * shrink, north * shrink, up * shrink);
    }

    /// <summary>Half the disc's angle seen from the place, degrees.</summary>
    internal static double SemidiameterDegrees(double radii) => Math.Asin(MoonDisc.EarthRadii / radii) * (180 / Math.PI);
}
