namespace Foreshore.Almanac.Earth;

/// <summary>How far the sea horizon lies below level.</summary>
public static class Dip
{
    /// <summary>
    /// Dip of the sea horizon, degrees, with the usual refraction along the line of sight: 1.76′ √h, the rule of the
    /// nautical almanacs (Explanatory Supplement to the Astronomical Almanac, section 9.33). Real dip differs by some
    /// arc minutes when air and water differ in temperature.
    /// </summary>
    /// <param name="eyeMetresAboveSea">Height of the eye above the sea, metres; below zero counts as zero.</param>
    public static double Degrees(double eyeMetresAboveSea) => 1.76 / 60 * Math.Sqrt(Math.Max(0, eyeMetresAboveSea));
}
