using NodaTime;

namespace Foreshore.Almanac.Time;

/// <summary>Days counted from noon of 1 January −4712 (Julian calendar), on the clock of UTC or of TT.</summary>
/// <remarks>
/// UTC stands for UT1 throughout: they differ by less than 0.9 s, 0.004 degrees of the sky's turn.
/// A Julian day in a double resolves about 40 microseconds; where that matters, days from J2000 are used.
/// </remarks>
public static class JulianDay
{
    /// <summary>The Julian day of J2000.0, 2000 January 1, 12 h.</summary>
    public const double J2000 = 2451545.0;

    private static readonly Instant J2000Instant = Instant.FromUtc(2000, 1, 1, 12, 0);

    /// <summary>Julian day of an instant, on UTC.</summary>
    public static double Of(Instant instant) => J2000 + DaysFromJ2000(instant);

    /// <summary>Julian day of an instant, on terrestrial time (the JDE of the handbooks).</summary>
    public static double TerrestrialOf(Instant instant) => Of(instant) + DeltaT.Seconds(instant) / 86400;

    /// <summary>The instant of a Julian day on UTC.</summary>
    public static Instant ToInstant(double julianDay) => FromDays(julianDay - J2000);

    /// <summary>The instant that lies some days of 86,400 s on UTC from 2000 January 1, 12 h.</summary>
    public static Instant FromDays(double daysFromJ2000) => J2000Instant + Duration.FromDays(daysFromJ2000);

    /// <summary>Days of 86,400 s on UTC since 2000 January 1, 12 h.</summary>
    public static double DaysFromJ2000(Instant instant) => (instant - J2000Instant).TotalDays;

    /// <summary>Centuries of 36,525 days on terrestrial time since J2000.0: the T of most series.</summary>
    public static double TerrestrialCenturies(Instant instant) => (DaysFromJ2000(instant) + DeltaT.Seconds(instant) / 86400) / 36525;
}
