namespace Foreshore.Almanac.Tides;

/// <summary>
/// Mean longitudes of moon, sun, lunar perigee, node and solar perigee: Schureman, Table 1 (after Brown and Newcomb), counted
/// from noon of 1899 December 31, on UTC. Degrees; good for 1900 to 2100.
/// </summary>
internal readonly struct AstronomicalArguments
{
    private const double HoursPerCentury = 36525 * 24;
    private const double DaysFrom1900ToJ2000 = 36525;

    // Mean motions in degrees a Julian century.
    private const double MoonPerCentury = 481267.89057, SunPerCentury = 36000.76892, PerigeePerCentury = 4069.03403, NodePerCentury = -1934.14201, SolarPerigeePerCentury = 1.71902;

    internal const double MoonPerHour = MoonPerCentury / HoursPerCentury;
    internal const double SunPerHour = SunPerCentury / HoursPerCentury;
    internal const double PerigeePerHour = PerigeePerCentury / HoursPerCentury;
    internal const double SolarPerigeePerHour = SolarPerigeePerCentury / HoursPerCentury;
    internal const double LunarTimePerHour = 15 - MoonPerHour + SunPerHour;

    private AstronomicalArguments(double days)
    {
        var t = (days + DaysFrom1900ToJ2000) / 36525;
        Moon = Turn(270.43659 + t * (MoonPerCentury + t * (0.00198 + t * 0.000002)));
        Sun = Turn(279.69660 + t * (SunPerCentury + t * 0.00030));
        Perigee = Turn(334.32956 + t * (PerigeePerCentury + t * (-0.01032 + t * -0.00001)));
        Node = Turn(259.18328 + t * (NodePerCentury + t * (0.00208 + t * 0.000002)));
        SolarPerigee = Turn(281.22083 + t * (SolarPerigeePerCentury + t * (0.00045 + t * 0.000003)));
        // J2000 is a noon, so that whole days from it have the mean sun on the meridian: T = 0.
        LunarTime = Turn(360 * (days - Math.Floor(days)) - Moon + Sun);
    }

    /// <summary>τ = T − s + h, T being the hour angle of the mean sun.</summary>
    internal double LunarTime { get; }

    /// <summary>s.</summary>
    internal double Moon { get; }

    /// <summary>h.</summary>
    internal double Sun { get; }

    /// <summary>p.</summary>
    internal double Perigee { get; }

    /// <summary>N, which goes backwards.</summary>
    internal double Node { get; }

    /// <summary>p₁.</summary>
    internal double SolarPerigee { get; }

    internal static AstronomicalArguments At(double daysFromJ2000) => new(daysFromJ2000);

    /// <summary>V, degrees, not folded.</summary>
    internal double Of(DoodsonNumbers n) =>
        n.LunarTime * LunarTime + n.Moon * Moon + n.Sun * Sun + n.Perigee * Perigee + n.SolarPerigee * SolarPerigee + 90 * n.QuarterTurns;

    private static double Turn(double degrees) => degrees - 360 * Math.Floor(degrees / 360);
}
