namespace Foreshore.Almanac.Sun;

/// <summary>
/// The nodding of the Earth's axis. Reda and Andreas, NREL/TP-560-34302 (2008), sections 3.4 and 3.5; Meeus, Astronomical
/// Algorithms (2nd ed.) chapter 22. Good to about 0.1″.
/// </summary>
/// <param name="LongitudeDegrees">Nutation in longitude, Δψ, degrees, within 0.005 of zero.</param>
/// <param name="ObliquityDegrees">Nutation in obliquity, Δε, degrees, within 0.003 of zero.</param>
/// <param name="MeanObliquityDegrees">Obliquity of the ecliptic without nutation, ε₀, degrees (Laskar 1986).</param>
public readonly partial record struct Nutation(double LongitudeDegrees, double ObliquityDegrees, double MeanObliquityDegrees)
{
    /// <summary>Obliquity of the ecliptic with nutation, ε, degrees.</summary>
    public double TrueObliquityDegrees => MeanObliquityDegrees + ObliquityDegrees;

    /// <summary>What mean sidereal time lacks to apparent sidereal time, degrees.</summary>
    public double EquationOfEquinoxesDegrees => LongitudeDegrees * Math.Cos(TrueObliquityDegrees * (Math.PI / 180));

    /// <summary>Nutation at a time.</summary>
    /// <param name="centuries">Centuries of terrestrial time from J2000.0.</param>
    public static Nutation At(double centuries)
    {
        const double radian = Math.PI / 180;
        var arguments = FundamentalArguments.At(centuries);
        double d = arguments.D * radian, m = arguments.M * radian, mMoon = arguments.MMoon * radian, f = arguments.F * radian, node = arguments.Node * radian;

        double longitude = 0, obliquity = 0;
        var terms = Terms;
        for (var i = 0; i + 8 < terms.Length; i += 9)
        {
            var angle = terms[i] * d + terms[i + 1] * m + terms[i + 2] * mMoon + terms[i + 3] * f + terms[i + 4] * node;
            var (sin, cos) = Math.SinCos(angle);
            longitude += (terms[i + 5] + terms[i + 6] * centuries) * sin;
            obliquity += (terms[i + 7] + terms[i + 8] * centuries) * cos;
        }

        return new Nutation(longitude / 36e6, obliquity / 36e6, MeanObliquity(centuries));
    }

    // Laskar, Astronomy and Astrophysics 157 (1986) 59: arc seconds over ten thousand years.
    private static double MeanObliquity(double centuries)
    {
        var u = centuries / 100;
        var seconds = 84381.448 + u * (-4680.93 + u * (-1.55 + u * (1999.25 + u * (-51.38 + u * (-249.67
            + u * (-39.05 + u * (7.12 + u * (27.87 + u * (5.79 + u * 2.45)))))))));
        return seconds / 3600;
    }
}

/// <summary>
/// The five angles on which nutation is built, degrees, not folded: Reda and Andreas, NREL/TP-560-34302 (2008),
/// formulas 15 to 19, with the values of the IAU 1980 theory.
/// </summary>
/// <param name="D">Mean elongation of the moon from the sun.</param>
/// <param name="M">Mean anomaly of the sun.</param>
/// <param name="MMoon">Mean anomaly of the moon.</param>
/// <param name="F">The moon's argument of latitude.</param>
/// <param name="Node">Longitude of the ascending node of the moon's mean orbit.</param>
public readonly record struct FundamentalArguments(double D, double M, double MMoon, double F, double Node)
{
    /// <summary>The angles at a time.</summary>
    /// <param name="t">Centuries of terrestrial time from J2000.0.</param>
    public static FundamentalArguments At(double t) => new(
        297.85036 + t * (445267.111480 + t * (-0.0019142 + t / 189474)),
        357.52772 + t * (35999.050340 + t * (-0.0001603 - t / 300000)),
        134.96298 + t * (477198.867398 + t * (0.0086972 + t / 56250)),
        93.27191 + t * (483202.017538 + t * (-0.0036825 + t / 327270)),
        125.04452 + t * (-1934.136261 + t * (0.0020708 + t / 450000)));
}
