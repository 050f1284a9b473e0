namespace Foreshore.Almanac.Earth;

/// <summary>
/// How far the air lifts what is seen, for a mean pressure and temperature. Good to about 0.1′ above 5 degrees; at the
/// horizon the real air differs by 0.1 to 0.3 degrees from day to day, and no formula knows that.
/// </summary>
public static class Refraction
{
    /// <summary>Pressure the bare formulas are made for, hectopascals.</summary>
    public const double UsualHectopascals = 1010;

    /// <summary>Temperature the bare formulas are made for, degrees Celsius.</summary>
    public const double UsualCelsius = 10;

    // A ray from further below meets sea or ground from any eye below 3,800 m; the formula turns to fiction there.
    private const double LowestAltitude = -2;

    /// <summary>
    /// Refraction at an airless altitude, degrees: Saemundsson, Sky and Telescope 72 (1986) 70; Meeus, Astronomical
    /// Algorithms (2nd ed.) formula 16.4. Below −2 degrees its value at −2 is kept.
    /// </summary>
    /// <param name="airlessDegrees">Altitude without air, degrees, −90…90.</param>
    /// <param name="hectopascals">Pressure at the place (not reduced to the sea), hectopascals.</param>
    /// <param name="celsius">Temperature, degrees Celsius.</param>
    public static double AtAirless(double airlessDegrees, double hectopascals = UsualHectopascals, double celsius = UsualCelsius)
    {
        var h = Math.Max(airlessDegrees, LowestAltitude);
        // The small addend, Meeus's own, brings refraction to nothing in the zenith.
        var minutes = 1.02 / Math.Tan((h + 10.3 / (h + 5.11)) * (Math.PI / 180)) + 0.0019279;
        return minutes / 60 * Density(hectopascals, celsius);
    }

    /// <summary>
    /// Refraction at an apparent altitude, degrees: Bennett, Journal of Navigation 35 (1982) 255; Meeus formula 16.3.
    /// Below −2 degrees its value at −2 is kept.
    /// </summary>
    /// <param name="apparentDegrees">Altitude as seen, degrees, −90…90.</param>
    /// <param name="hectopascals">Pressure at the place, hectopascals.</param>
    /// <param name="celsius">Temperature, degrees Celsius.</param>
    public static double AtApparent(double apparentDegrees, double hectopascals = UsualHectopascals, double celsius = UsualCelsius)
    {
        var h = Math.Max(apparentDegrees, LowestAltitude);
        var minutes = 1 / Math.Tan((h + 7.31 / (h + 4.4)) * (Math.PI / 180)) + 0.0013515;
        return minutes / 60 * Density(hectopascals, celsius);
    }

    /// <summary>Altitude as seen of something whose altitude without air is given, degrees, for the usual air.</summary>
    public static double Apparent(double airlessDegrees) => airlessDegrees + AtAirless(airlessDegrees);

    /// <summary>The airless altitude that is seen at an apparent one, degrees: the exact inverse of <see cref="Apparent"/>.</summary>
    public static double Airless(double apparentDegrees)
    {
        var airless = apparentDegrees - AtApparent(apparentDegrees);
        // Refraction changes by less than a quarter of its altitude, so each round gains more than half a digit.
        for (var round = 0; round < 30; round++)
        {
            var next = apparentDegrees - AtAirless(airless);
            if (Math.Abs(next - airless) < 1e-11) return next;
            airless = next;
        }

        return airless;
    }

    private static double Density(double hectopascals, double celsius) => hectopascals / UsualHectopascals * (283 / (273 + celsius));
}
