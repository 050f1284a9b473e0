namespace Foreshore.Almanac.Time;

/// <summary>How far the Earth has turned under the stars.</summary>
public static class SiderealTime
{
    /// <summary>
    /// Mean sidereal time at Greenwich, degrees, [0, 360): the IAU 1982 expression; Meeus, Astronomical Algorithms
    /// (2nd ed.) formula 12.4.
    /// </summary>
    /// <param name="daysFromJ2000">Days on UT since 2000 January 1, 12 h: see <see cref="JulianDay.DaysFromJ2000"/>.</param>
    public static double MeanDegrees(double daysFromJ2000)
    {
        var t = daysFromJ2000 / 36525;
        // Whole days turn by whole circles, so only their fraction needs the large factor.
        var turn = 360 * (daysFromJ2000 - Math.Floor(daysFromJ2000)) + 0.98564736629 * daysFromJ2000;
        var degrees = (280.46061837 + turn + t * t * (0.000387933 - t / 38710000)) % 360;
        return degrees < 0 ? degrees + 360 : degrees;
    }
}
