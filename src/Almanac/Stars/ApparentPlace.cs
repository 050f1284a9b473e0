using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Stars;

/// <summary>From the fixed places of a catalogue to where a star is seen at a date: precession, aberration, nutation.</summary>
public static class ApparentPlace
{
    private const double Radian = Math.PI / 180;
    private const double Arcsecond = Radian / 3600;

    // The constant of aberration: Meeus, Astronomical Algorithms (2nd ed.), chapter 23.
    private const double Aberration = 20.49552 * Arcsecond;

    /// <summary>
    /// Apparent place in the true equator and equinox of the date, for a star without motion of its own: within 0.5″ from
    /// 1950 to 2100. Precession by the IAU's angles of 1976 (Meeus formula 21.3 and 21.4), aberration by the Earth's
    /// velocity on its ellipse, nutation as for the sun.
    /// </summary>
    /// <param name="j2000">Mean place of J2000.0 or ICRS (they differ by 0.02″).</param>
    /// <param name="centuries">Centuries of terrestrial time from J2000.0.</param>
    public static Equatorial Of(Equatorial j2000, double centuries)
    {
        var (x, y, z) = VectorOf(j2000, centuries, Nutation.At(centuries));
        return new Equatorial(Bearing.FromDegrees(Math.Atan2(y, x) / Radian).Degrees, Math.Asin(Math.Clamp(z, -1, 1)) / Radian);
    }

    /// <summary>The mean place of another date: precession alone.</summary>
    public static Equatorial Precessed(Equatorial j2000, double centuries)
    {
        var (x, y, z) = Mean(j2000, centuries);
        return new Equatorial(Bearing.FromDegrees(Math.Atan2(y, x) / Radian).Degrees, Math.Asin(Math.Clamp(z, -1, 1)) / Radian);
    }

    internal static (double X, double Y, double Z) VectorOf(Equatorial j2000, double t, Nutation nutation)
    {
        var (x, y, z) = Mean(j2000, t);
        // To the ecliptic of the date.
        var (sin, cos) = Math.SinCos(nutation.MeanObliquityDegrees * Radian);
        (y, z) = (y * cos + z * sin, z * cos - y * sin);

        var (eastward, northward) = Velocity(t);
        (x, y) = (x + Aberration * eastward, y + Aberration * northward);
        var shrink = 1 / Math.Sqrt(x * x + y * y + z * z);

        var (sinShift, cosShift) = Math.SinCos(nutation.LongitudeDegrees * Radian);
        (x, y, z) = ((x * cosShift - y * sinShift) * shrink, (x * sinShift + y * cosShift) * shrink, z * shrink);
        (sin, cos) = Math.SinCos(nutation.TrueObliquityDegrees * Radian);
        return (x, y * cos - z * sin, y * sin + z * cos);
    }

    private static (double X, double Y, double Z) Mean(Equatorial j2000, double t)
    {
        var zeta = t * (2306.2181 + t * (0.30188 + t * 0.017998)) * Arcsecond;
        var zed = t * (2306.2181 + t * (1.09468 + t * 0.018203)) * Arcsecond;
        var theta = t * (2004.3109 + t * (-0.42665 - t * 0.041833)) * Arcsecond;
        var (sinDeclination, cosDeclination) = Math.SinCos(j2000.DeclinationDegrees * Radian);
        var (sinTurn, cosTurn) = Math.SinCos(j2000.RightAscensionDegrees * Radian + zeta);
        var (sinTheta, cosTheta) = Math.SinCos(theta);

        var a = cosDeclination * sinTurn;
        var b = cosTheta * cosDeclination * cosTurn - sinTheta * sinDeclination;
        var c = sinTheta * cosDeclination * cosTurn + cosTheta * sinDeclination;
        var (sinZed, cosZed) = Math.SinCos(zed);
        return (b * cosZed - a * sinZed, b * sinZed + a * cosZed, c);
    }

    /// <summary>The Earth's velocity in the plane of the ecliptic, in units of its mean: Meeus, chapters 23 and 25.</summary>
    private static (double X, double Y) Velocity(double t)
    {
        var mean = 280.46646 + t * (36000.76983 + t * 0.0003032);
        var anomaly = (357.52911 + t * (35999.05029 - t * 0.0001537)) * Radian;
        var centre = (1.914602 - t * 0.004817) * Math.Sin(anomaly) + 0.019993 * Math.Sin(2 * anomaly) + 0.000289 * Math.Sin(3 * anomaly);
        var (sinSun, cosSun) = Math.SinCos((mean + centre) % 360 * Radian);
        var eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
        var (sinPerihelion, cosPerihelion) = Math.SinCos((102.93735 + t * (1.71946 + t * 0.00046)) * Radian);
        return (sinSun - eccentricity * sinPerihelion, -cosSun + eccentricity * cosPerihelion);
    }
}
