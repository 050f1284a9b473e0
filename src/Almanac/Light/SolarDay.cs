using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>From one solar midnight over a noon to the next midnight, numbered through.</summary>
internal readonly struct SolarDay
{
    private readonly SunDays.HalfDays halves;

    internal SolarDay(SunPath path, double number)
    {
        var (before, noon, after) = (path.Transit(number - 0.5), path.Transit(number), path.Transit(number + 0.5));
        halves = new SunDays.HalfDays(path, before, noon, after);
        (MidnightBefore, Noon, MidnightAfter) = (JulianDay.FromDays(before), JulianDay.FromDays(noon), JulianDay.FromDays(after));
        LowestBeforeDegrees = path.At(halves.Lowest).AltitudeDegrees;
        HighestDegrees = path.At(halves.Highest).AltitudeDegrees;
        LowestAfterDegrees = path.At(halves.NextLowest).AltitudeDegrees;
    }

    internal Instant MidnightBefore { get; }

    internal Instant Noon { get; }

    internal Instant MidnightAfter { get; }

    internal double LowestBeforeDegrees { get; }

    internal double HighestDegrees { get; }

    internal double LowestAfterDegrees { get; }

    /// <summary>The number of the solar day whose noon lies nearest to twelve by the clock of a date: that noon falls on the date.</summary>
    internal static double NumberOn(LocalDate date, DateTimeZone zone, SunPath path) =>
        NumberNearest(JulianDay.DaysFromJ2000(zone.AtLeniently(date + LocalTime.Noon).ToInstant()), path);

    /// <summary>The number of the solar day whose noon lies nearest to a time, days from J2000.</summary>
    internal static double NumberNearest(double days, SunPath path) =>
        Math.Round(days + path.LongitudeRadians / SunPath.TurnRadiansPerDay);

    internal Instant? Rising(double altitudeDegrees) => halves.Rising(altitudeDegrees);

    internal Instant? Setting(double altitudeDegrees) => halves.Setting(altitudeDegrees);
}
