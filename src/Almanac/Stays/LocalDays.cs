using NodaTime;
using NodaTime.TimeZones;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// Local dates and clock times of a zone as instants. When the clock is put on, a time that it skips is the moment of the change;
/// of one that it shows twice the later opens and the earlier shuts.
/// </summary>
internal static class LocalDays
{
    private static readonly ZoneLocalMappingResolver Later = Resolvers.CreateMappingResolver(Resolvers.ReturnLater, Resolvers.ReturnStartOfIntervalAfter);
    private static readonly ZoneLocalMappingResolver Earlier = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    internal static Instant Opening(this DateTimeZone zone, LocalDateTime time) => time.InZone(zone, Later).ToInstant();

    internal static Instant Shutting(this DateTimeZone zone, LocalDateTime time) => time.InZone(zone, Earlier).ToInstant();

    /// <summary>From midnight to midnight; empty for a date that the zone skipped.</summary>
    internal static Interval Whole(this DateTimeZone zone, LocalDate date) =>
        new(zone.Shutting(date.AtMidnight()), zone.Shutting(date.PlusDays(1).AtMidnight()));

    /// <summary>Every date that a span touches, with one more at each end: hours may run into the next day, or begin before midnight by the sun.</summary>
    internal static IEnumerable<LocalDate> Around(this Interval span, DateTimeZone zone)
    {
        var last = span.End.InZone(zone).Date.PlusDays(1);
        for (var date = span.Start.InZone(zone).Date.PlusDays(-1); date <= last; date = date.PlusDays(1))
            yield return date;
    }

    /// <summary>What lies within a span, disjoint and in order; what touches is joined.</summary>
    internal static IReadOnlyList<Interval> Joined(this IEnumerable<Interval> intervals, Interval span)
    {
        var joined = new List<Interval>();
        foreach (var one in intervals.Select(each => new { Start = Instant.Max(each.Start, span.Start), End = Instant.Min(each.End, span.End) })
            .Where(each => each.Start < each.End).OrderBy(each => each.Start))
        {
            if (joined.Count > 0 && one.Start <= joined[^1].End)
                joined[^1] = new(joined[^1].Start, Instant.Max(joined[^1].End, one.End));
            else
                joined.Add(new(one.Start, one.End));
        }

        return joined;
    }

    /// <summary>What of some intervals is in none of the others; both disjoint and in order.</summary>
    internal static IReadOnlyList<Interval> Without(this IReadOnlyList<Interval> some, IReadOnlyList<Interval> others)
    {
        var left = new List<Interval>();
        foreach (var one in some)
        {
            var start = one.Start;
            foreach (var other in others.Where(other => other.End > one.Start && other.Start < one.End))
            {
                if (other.Start > start) left.Add(new(start, other.Start));
                start = Instant.Max(start, other.End);
            }

            if (start < one.End) left.Add(new(start, one.End));
        }

        return left;
    }
}
