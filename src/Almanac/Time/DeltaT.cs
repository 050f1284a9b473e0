using NodaTime;

namespace Foreshore.Almanac.Time;

/// <summary>
/// TT − UT, seconds: the polynomials of Espenak and Meeus, Five Millennium Canon of Solar Eclipses (NASA/TP-2006-214141,
/// section 2.7), for −500 to 2150 and their parabola outside. In the 2020s the Earth has turned faster than they
/// foretold: they give 75 s for 2026 where 69.2 s is observed, 0.0002 degrees of the sun's way and 0.001 of the moon's.
/// </summary>
public static class DeltaT
{
    /// <summary>TT − UT at an instant, seconds.</summary>
    public static double Seconds(Instant instant) => Seconds(2000 + (JulianDay.DaysFromJ2000(instant) + 0.5) / 365.2425);

    /// <summary>TT − UT, seconds.</summary>
    /// <param name="year">Year with fraction, for instance 1990.5.</param>
    public static double Seconds(double year)
    {
        var century = (year - 1820) / 100;
        return year switch
        {
            < -500 => -20 + 32 * century * century,
            < 500 => Polynomial(year / 100, 10583.6, -1014.41, 33.78311, -5.952053, -0.1798452, 0.022174192, 0.0090316521),
            < 1600 => Polynomial((year - 1000) / 100, 1574.2, -556.01, 71.23472, 0.319781, -0.8503463, -0.005050998, 0.0083572073),
            < 1700 => Polynomial(year - 1600, 120, -0.9808, -0.01532, 1.0 / 7129),
            < 1800 => Polynomial(year - 1700, 8.83, 0.1603, -0.0059285, 0.00013336, -1.0 / 1174000),
            < 1860 => Polynomial(year - 1800, 13.72, -0.332447, 0.0068612, 0.0041116, -0.00037436, 0.0000121272, -0.0000001699, 0.000000000875),
            < 1900 => Polynomial(year - 1860, 7.62, 0.5737, -0.251754, 0.01680668, -0.0004473624, 1.0 / 233174),
            < 1920 => Polynomial(year - 1900, -2.79, 1.494119, -0.0598939, 0.0061966, -0.000197),
            < 1941 => Polynomial(year - 1920, 21.20, 0.84493, -0.076100, 0.0020936),
            < 1961 => Polynomial(year - 1950, 29.07, 0.407, -1.0 / 233, 1.0 / 2547),
            < 1986 => Polynomial(year - 1975, 45.45, 1.067, -1.0 / 260, -1.0 / 718),
            < 2005 => Polynomial(year - 2000, 63.86, 0.3345, -0.060374, 0.0017275, 0.000651814, 0.00002373599),
            < 2050 => Polynomial(year - 2000, 62.92, 0.32217, 0.005589),
            < 2150 => -20 + 32 * century * century - 0.5628 * (2150 - year),
            _ => -20 + 32 * century * century,
        };
    }

    private static double Polynomial(double x, params ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
            sum = sum * x + coefficients[i];
        return sum;
    }
}
