namespace Foreshore.Almanac.Moon;

/// <summary>
/// How much light the moon throws. Allen, Astrophysical Quantities (3rd ed., 1973, section 66), as Krisciunas and Schaefer,
/// PASP 103 (1991) 1033, use it: V = V₀ + 5 log(r Δ) + 0.026 |i| + 4·10⁻⁹ i⁴, i in degrees; the two coefficients as public programs
/// carry them, neither book nor paper was at hand. A half moon gives an eleventh of a full one's light, not a half. The surge within
/// 7 degrees of full, a third more, is left out.
/// </summary>
public static class MoonBrightness
{
    private const double AstronomicalUnitKm = 149597870.7;

    /// <summary>Mean distance, kilometres: relative brightness is one for a full moon there.</summary>
    public const double MeanDistanceKm = 385000.56;

    /// <summary>Below this share of a full moon's light the sky counts as dark: common practice, no source.</summary>
    public const double Little = 0.05;

    /// <summary>Light as a share of that of a full moon at mean distance, with the Earth one astronomical unit from the sun.</summary>
    /// <param name="phaseAngleDegrees">Angle Sun – Moon – Earth, degrees, 0…180.</param>
    /// <param name="distanceKm">Distance of the moon, kilometres.</param>
    /// <param name="sunDistanceAu">Distance of the sun, astronomical units.</param>
    public static double Relative(double phaseAngleDegrees, double distanceKm, double sunDistanceAu)
    {
        var square = phaseAngleDegrees * phaseAngleDegrees;
        var fainter = 0.026 * phaseAngleDegrees + 4e-9 * square * square;
        var nearer = MeanDistanceKm / (distanceKm * sunDistanceAu);
        return Math.Pow(10, -0.4 * fainter) * nearer * nearer;
    }

    /// <summary>Phase angle, radians, by Meeus formula 48.3.</summary>
    internal static double PhaseAngle(double cosElongation, double distanceKm, double sunDistanceAu)
    {
        var sun = sunDistanceAu * AstronomicalUnitKm;
        var sinElongation = Math.Sqrt(Math.Max(0, 1 - cosElongation * cosElongation));
        return Math.Atan2(sun * sinElongation, distanceKm - sun * cosElongation);
    }
}
