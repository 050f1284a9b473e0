using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>
/// The sun's place, step by step as in Reda and Andreas, Solar Position Algorithm for Solar Radiation Applications
/// (NREL/TP-560-34302, 2008): within 0.0003 degrees from −2000 to 6000. This is the readable form;
/// <see cref="SunEphemeris"/> gives the same numbers fast.
/// </summary>
public static class SunPosition
{
    private const double Radian = Math.PI / 180;

    /// <summary>The sun's apparent geocentric place.</summary>
    public static GeocentricSun At(Instant instant) => At(JulianDay.DaysFromJ2000(instant), DeltaT.Seconds(instant));

    /// <summary>The sun's apparent geocentric place.</summary>
    /// <param name="daysFromJ2000">Days on UT since 2000 January 1, 12 h.</param>
    /// <param name="deltaTSeconds">TT − UT, seconds.</param>
    public static GeocentricSun At(double daysFromJ2000, double deltaTSeconds)
    {
        var centuries = (daysFromJ2000 + deltaTSeconds / 86400) / 36525;
        var earth = EarthOrbit.At(centuries);
        var nutation = Nutation.At(centuries);

        // Light takes its time over one astronomical unit: the constant of aberration, 20.4898″ (section 3.6).
        var aberration = -20.4898 / 3600 / earth.DistanceAu;
        var longitude = Fold(earth.LongitudeDegrees + 180 + nutation.LongitudeDegrees + aberration);
        var latitude = -earth.LatitudeDegrees;

        var (sinLongitude, cosLongitude) = Math.SinCos(longitude * Radian);
        var (sinObliquity, cosObliquity) = Math.SinCos(nutation.TrueObliquityDegrees * Radian);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitude * Radian);
        var rightAscension = Math.Atan2(sinLongitude * cosObliquity - sinLatitude / cosLatitude * sinObliquity, cosLongitude);
        var declination = Math.Asin(sinLatitude * cosObliquity + cosLatitude * sinObliquity * sinLongitude);
        var sidereal = SiderealTime.MeanDegrees(daysFromJ2000) + nutation.EquationOfEquinoxesDegrees;

        return new GeocentricSun(longitude, latitude, earth.DistanceAu, Fold(rightAscension / Radian), declination / Radian, Fold(sidereal));
    }

    /// <summary>The sun in the sky of a place, without air, parallax counted.</summary>
    /// <param name="instant">When.</param>
    /// <param name="position">Where.</param>
    /// <param name="metresAboveSea">Height above the ellipsoid, metres; it matters by a millionth of a degree.</param>
    public static Horizontal At(Instant instant, Position position, double metresAboveSea = 0) =>
        Seen(At(instant), position, metresAboveSea).Horizontal;

    /// <summary>The steps from the Earth's centre to a place on its surface (report sections 3.11 to 3.15).</summary>
    public static TopocentricSun Seen(GeocentricSun sun, Position position, double metresAboveSea)
    {
        var site = SiteRadii.Of(position.LatitudeDegrees, metresAboveSea);
        var hourAngle = (sun.SiderealDegrees + position.LongitudeDegrees - sun.RightAscensionDegrees) * Radian;
        var (sinHour, cosHour) = Math.SinCos(hourAngle);
        var (sinDeclination, cosDeclination) = Math.SinCos(sun.DeclinationDegrees * Radian);
        var sinParallax = Math.Sin(sun.ParallaxDegrees * Radian);

        var across = cosDeclination - site.RhoCosPhi * sinParallax * cosHour;
        var shift = Math.Atan2(-site.RhoCosPhi * sinParallax * sinHour, across);
        var declination = Math.Atan2((sinDeclination - site.RhoSinPhi * sinParallax) * Math.Cos(shift), across);

        var (sinTopocentric, cosTopocentric) = Math.SinCos(hourAngle - shift);
        var (sinLatitude, cosLatitude) = Math.SinCos(position.LatitudeDegrees * Radian);
        var altitude = Math.Asin(Math.Clamp(sinLatitude * Math.Sin(declination) + cosLatitude * Math.Cos(declination) * cosTopocentric, -1, 1));
        var fromSouth = Math.Atan2(sinTopocentric, cosTopocentric * sinLatitude - Math.Tan(declination) * cosLatitude);

        return new TopocentricSun(
            Fold(hourAngle / Radian), shift / Radian, declination / Radian,
            new Horizontal(Fold(fromSouth / Radian + 180), altitude / Radian));
    }

    private static double Fold(double degrees) => Bearing.FromDegrees(degrees).Degrees;
}

/// <summary>The sun's place seen from the Earth's surface.</summary>
/// <param name="HourAngleDegrees">Geocentric hour angle, degrees westward from the meridian, [0, 360).</param>
/// <param name="RightAscensionShiftDegrees">What parallax adds to the right ascension, degrees.</param>
/// <param name="DeclinationDegrees">Declination with parallax, degrees.</param>
/// <param name="Horizontal">Azimuth and airless altitude.</param>
public readonly record struct TopocentricSun(double HourAngleDegrees, double RightAscensionShiftDegrees, double DeclinationDegrees, Horizontal Horizontal);
