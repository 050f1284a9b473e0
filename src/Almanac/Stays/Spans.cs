using Foreshore.Almanac.Light;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>Sets of time: stretches apart and in order. What the rules of a stay are put together from.</summary>
internal static class Spans
{
    private const double MillisecondsPerDay = 86_400_000;
    private static readonly long J2000Milliseconds = JulianDay.FromDays(0).ToUnixTimeMilliseconds();

    internal static List<Stretch> Of(IEnumerable<Interval> intervals) =>
        [.. intervals.Select(span => new Stretch(JulianDay.DaysFromJ2000(span.Start), JulianDay.DaysFromJ2000(span.End)))];

    internal static Interval AsInterval(this Stretch stretch) => new(At(stretch.Start), At(stretch.End));

    /// <summary>The instant to the millisecond, so that what was rounded to five minutes reads so.</summary>
    internal static Instant At(double days) => Instant.FromUnixTimeMilliseconds(J2000Milliseconds + (long)Math.Round(days * MillisecondsPerDay));

    /// <summary>Whether one stretch holds all of a span of time.</summary>
    internal static bool Hold(this IReadOnlyList<Stretch> spans, double start, double end) =>
        spans.LastStartingBy(start) is { } span && span.End >= end;

    /// <summary>The last stretch that begins at or before a time; null where there is none.</summary>
    internal static Stretch? LastStartingBy(this IReadOnlyList<Stretch> spans, double time) =>
        spans.CountStartingBy(time) is var count and > 0 ? spans[count - 1] : null;

    /// <summary>The first stretch that begins after a time; null where there is none.</summary>
    internal static Stretch? FirstStartingAfter(this IReadOnlyList<Stretch> spans, double time)
    {
        var at = spans.CountStartingBy(time);
        return at < spans.Count ? spans[at] : null;
    }

    /// <summary>Those that no other holds whole, by start and so by end.</summary>
    internal static List<Stretch> Outermost(this IEnumerable<Stretch> spans)
    {
        var outermost = new List<Stretch>();
        foreach (var span in spans.OrderBy(span => span.Start).ThenByDescending(span => span.End))
            if (outermost.Count == 0 || span.End > outermost[^1].End) outermost.Add(span);
        return outermost;
    }

    /// <summary>Those that share time with a span; they come by start and by end.</summary>
    internal static List<Stretch> Touching(this IReadOnlyList<Stretch> spans, double start, double end)
    {
        var touching = new List<Stretch>();
        for (var i = spans.CountStartingBy(end) - 1; i >= 0 && spans[i].End > start; i--) touching.Add(spans[i]);
        touching.Reverse();
        return touching;
    }

    private static int CountStartingBy(this IReadOnlyList<Stretch> spans, double time)
    {
        var (low, high) = (0, spans.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (spans[middle].Start <= time) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
