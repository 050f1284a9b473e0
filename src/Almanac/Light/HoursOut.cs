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

    /// <summary>
    /// Whether they hold for lights that need the sun below −12 degrees too. If not, such a light counts all night: nobody who is
    /// home by ten would ever see it ranked.
    /// </summary>
    public bool HoldAtNight { get; init; }

    /// <summary>The hours that count for a light, or for sessions of the night.</summary>
    internal HoursOut For(bool ofTheNight) => ofTheNight && !HoldAtNight ? Unrestricted : this;

    /// <summary>How much of a span of time lies within, by a place's clock.</summary>
    public Duration Within(Interval span, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        if (IsUnrestricted) return span.Duration;
        var seconds = 0.0;
        for (var start = span.Start; start < span.End;)
        {
            var local = start.InZone(zone);
            var end = Instant.Min(span.End, Instant.Min(zone.AtStartOfDay(local.Date.PlusDays(1)).ToInstant(), zone.GetZoneInterval(start) is { HasEnd: true } part ? part.End : Instant.MaxValue));
            var from = local.TimeOfDay.NanosecondOfDay / 1e9;
            seconds += SecondsWithin(from, from + (end - start).TotalSeconds);
            start = end;
        }

        return Duration.FromSeconds(seconds);
    }

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
