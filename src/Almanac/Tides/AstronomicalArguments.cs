using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// Mean longitudes of moon, sun, lunar perigee, node and solar perigee, referred to the mean equinox of date: Meeus,
/// Astronomical Algorithms, chapters 25 and 47 (after Chapront, Bretagnon), on terrestrial time. Degrees; good for 1900 to
/// 2100. They stay within 0.02 degrees of those in Schureman's Table 1 (Brown, Newcomb), 4 seconds of the tide.
/// </summary>
internal readonly struct AstronomicalArguments
{
    private const double HoursPerCentury = 36525 * 24;

    // Mean motions in degrees a Julian century, at J2000.
    private const double MoonPerCentury = 481267.88123421, SunPerCentury = 36000.76983, PerigeePerCentury = 4069.0137287, NodePerCentury = -1934.1362891, SolarPerigeePerCentury = 1.71946;

    internal const double MoonPerHour = MoonPerCentury / HoursPerCentury;
    internal const double SunPerHour = SunPerCentury / HoursPerCentury;
    internal const double PerigeePerHour = PerigeePerCentury / HoursPerCentury;
    internal const double SolarPerigeePerHour = SolarPerigeePerCentury / HoursPerCentury;
    internal const double LunarTimePerHour = 15 - MoonPerHour + SunPerHour;

    private AstronomicalArguments(double days)
    {
        var t = (days + DeltaT.Seconds(JulianDay.FromDays(days)) / 86400) / 36525;
        Moon = Turn(218.3164477 + t * (MoonPerCentury - t * 0.0015786));
        Sun = Turn(280.46646 + t * (SunPerCentury + t * 0.0003032));
        Perigee = Turn(83.3532465 + t * (PerigeePerCentury - t * 0.0103200));
        Node = Turn(125.0445479 + t * (NodePerCentury + t * 0.0020754));
        SolarPerigee = Turn(282.93735 + t * (SolarPerigeePerCentury + t * 0.00046));
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
