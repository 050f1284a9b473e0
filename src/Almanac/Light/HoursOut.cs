using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>The hours somebody goes out, by the clock. They may run past midnight; equal times mean all day.</summary>
/// <param name="EarliestAlarm">From.</param>
/// <param name="LatestHome">Until.</param>
public readonly record struct HoursOut(LocalTime EarliestAlarm, LocalTime LatestHome)
{
    private const double SecondsPerDay = 86400;

    /// <summary>At any hour.</summary>
    public static HoursOut Unrestricted => new(LocalTime.Midnight, LocalTime.Midnight);

    /// <summary>Whether every hour counts.</summary>
    public bool IsUnrestricted => EarliestAlarm == LatestHome;

    /// <summary>How much of a piece of one day lies within, seconds.</summary>
    /// <param name="start">Seconds of the clock from midnight.</param>
    /// <param name="end">The same, not before the start.</param>
    internal double SecondsWithin(double start, double end)
    {
        if (IsUnrestricted) return end - start;
        var (from, to) = (SecondsOf(EarliestAlarm), SecondsOf(LatestHome));
        return from < to
            ? Overlap(start, end, from, to)
            : Overlap(start, end, 0, to) + Overlap(start, end, from, SecondsPerDay);
    }

    private static double SecondsOf(LocalTime time) => time.NanosecondOfDay / 1e9;

    private static double Overlap(double start, double end, double from, double to) =>
        Math.Max(0, Math.Min(end, to) - Math.Max(start, from));
}
