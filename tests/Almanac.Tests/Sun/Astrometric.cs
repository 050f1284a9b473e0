using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>
/// The sun's place in the mean equator and equinox of J2000 without nutation and aberration, as star catalogues and JPL
/// print it: only to compare with. Precession: Meeus, Astronomical Algorithms (2nd ed.) formulas 21.3 and 21.4, run backward.
/// </summary>
internal static class Astrometric
{
    private const double Radian = Math.PI / 180;

    internal static (double RightAscensionDegrees, double DeclinationDegrees) Of(Instant instant, double deltaTSeconds, Position position)
    {
        var days = JulianDay.DaysFromJ2000(instant);
        var t = (days + deltaTSeconds / 86400) / 36525;
        var earth = EarthOrbit.At(t);
        var (sinLongitude, cosLongitude) = Math.SinCos((earth.LongitudeDegrees + 180) * Radian);
        var (sinLatitude, cosLatitude) = Math.SinCos(-earth.LatitudeDegrees * Radian);
        var (sinObliquity, cosObliquity) = Math.SinCos(Nutation.At(t).MeanObliquityDegrees * Radian);
        var x = cosLatitude * cosLongitude;
        var y = cosLatitude * sinLongitude * cosObliquity - sinLatitude * sinObliquity;
        var z = cosLatitude * sinLongitude * sinObliquity + sinLatitude * cosObliquity;

        var site = SiteRadii.Of(position.LatitudeDegrees, 10);
        var parallax = 8.794 / 3600 * Radian / earth.DistanceAu;
        var (sinSidereal, cosSidereal) = Math.SinCos((SiderealTime.MeanDegrees(days) + position.LongitudeDegrees) * Radian);
        x -= parallax * site.RhoCosPhi * cosSidereal;
        y -= parallax * site.RhoCosPhi * sinSidereal;
        z -= parallax * site.RhoSinPhi;

        var zeta = t * (2306.2181 + t * (0.30188 + t * 0.017998)) / 3600 * Radian;
        var zed = t * (2306.2181 + t * (1.09468 + t * 0.018203)) / 3600 * Radian;
        var theta = t * (2004.3109 + t * (-0.42665 - t * 0.041833)) / 3600 * Radian;
        (x, y) = Turn(x, y, zed);
        (x, z) = (x * Math.Cos(theta) + z * Math.Sin(theta), z * Math.Cos(theta) - x * Math.Sin(theta));
        (x, y) = Turn(x, y, zeta);
        return (Math.Atan2(y, x) / Radian, Math.Atan2(z, Math.Sqrt(x * x + y * y)) / Radian);
    }

    private static (double, double) Turn(double x, double y, double angle) =>
        (x * Math.Cos(angle) + y * Math.Sin(angle), y * Math.Cos(angle) - x * Math.Sin(angle));
}
