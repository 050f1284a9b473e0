using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Moon;

/// <summary>
/// The moon's place after Meeus, Astronomical Algorithms (2nd ed.), chapter 47 (ELP-2000/82, cut): about 0.003 degrees
/// from 1950 to 2100. This is the readable form; <see cref="MoonEphemeris"/> gives the same numbers fast.
/// </summary>
public static class MoonPosition
{
    private const double Radian = Math.PI / 180;

    /// <summary>The moon's apparent geocentric place.</summary>
    public static GeocentricMoon At(Instant instant) => At(JulianDay.DaysFromJ2000(instant), DeltaT.Seconds(instant));

    /// <summary>The moon's apparent geocentric place.</summary>
    /// <param name="daysFromJ2000">Days on UT since 2000 January 1, 12 h.</param>
    /// <param name="deltaTSeconds">TT − UT, seconds.</param>
    public static GeocentricMoon At(double daysFromJ2000, double deltaTSeconds)
    {
        var centuries = (daysFromJ2000 + deltaTSeconds / 86400) / 36525;
        var (mean, latitude, distance) = MoonSeries.At(centuries);
        var nutation = Nutation.At(centuries);
        var longitude = mean + nutation.LongitudeDegrees;

        var (sinLongitude, cosLongitude) = Math.SinCos(longitude * Radian);
        var (sinObliquity, cosObliquity) = Math.SinCos(nutation.TrueObliquityDegrees * Radian);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitude * Radian);
        var rightAscension = Math.Atan2(sinLongitude * cosObliquity - sinLatitude / cosLatitude * sinObliquity, cosLongitude);
        var declination = Math.Asin(sinLatitude * cosObliquity + cosLatitude * sinObliquity * sinLongitude);
        var sidereal = SiderealTime.MeanDegrees(daysFromJ2000) + nutation.EquationOfEquinoxesDegrees;

        return new GeocentricMoon(
            Fold(longitude), latitude, distance, Fold(rightAscension / Radian), declination / Radian, Fold(sidereal));
    }

    /// <summary>The moon in the sky of a place, without air, parallax counted.</summary>
    /// <param name="instant">When.</param>
    /// <param name="position">Where.</param>
    /// <param name="metresAboveSea">Height above the ellipsoid, metres; 100 m matter by 0.00002 degrees.</param>
    public static Horizontal At(Instant instant, Position position, double metresAboveSea = 0) =>
        Seen(At(instant), position, metresAboveSea).Horizontal;

    /// <summary>
    /// From the Earth's centre to a place on its surface: Meeus, chapter 40 (formulas 40.6 and 40.7), then chapter 13.
    /// </summary>
    public static TopocentricMoon Seen(GeocentricMoon moon, Position position, double metresAboveSea)
    {
        var site = SiteRadii.Of(position.LatitudeDegrees, metresAboveSea);
        var (sinHour, cosHour) = Math.SinCos((moon.SiderealDegrees + position.LongitudeDegrees - moon.RightAscensionDegrees) * Radian);
        var (sinDeclination, cosDeclination) = Math.SinCos(moon.DeclinationDegrees * Radian);
        var sinParallax = Math.Sin(moon.ParallaxDegrees * Radian);

        var across = cosDeclination * sinHour;
        var along = cosDeclination * cosHour - site.RhoCosPhi * sinParallax;
        var up = sinDeclination - site.RhoSinPhi * sinParallax;
        var length = Math.Sqrt(across * across + along * along + up * up);

        var (sinLatitude, cosLatitude) = Math.SinCos(position.LatitudeDegrees * Radian);
        var direction = new Direction(-across / length, (cosLatitude * up - sinLatitude * along) / length, (sinLatitude * up + cosLatitude * along) / length);
        return new TopocentricMoon(direction.Horizontal, length * moon.DistanceKm);
    }

    private static double Fold(double degrees) => Bearing.FromDegrees(degrees).Degrees;
}

/// <summary>The moon seen from the Earth's surface.</summary>
/// <param name="Horizontal">Azimuth and airless altitude.</param>
/// <param name="DistanceKm">Distance of its centre from the place, kilometres.</param>
public readonly record struct TopocentricMoon(Horizontal Horizontal, double DistanceKm);
