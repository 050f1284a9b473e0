using System.Collections.Concurrent;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>
/// Tide made ready for many questions, computed once and kept under its stamp. Nothing here may be wrong when lost; when it
/// grows too large it starts afresh.
/// </summary>
public sealed class TideCurves
{
    /// <summary>A year and more of a station takes some hundred kilobytes.</summary>
    private const int MostYears = 200;

    private const int MostSpans = 400;

    /// <summary>As far as the shared table of the sun: from before the first of the month to 400 days on.</summary>
    private static readonly Duration Back = Duration.FromDays(33);
    private static readonly Duration Ahead = Duration.FromDays(403);

    private readonly ConcurrentDictionary<(TideStamp, Instant), TideCurve> years = new();
    private readonly ConcurrentDictionary<(TideStamp, Instant, Instant), TideCurve> spans = new();
    private readonly ConcurrentDictionary<(TideStamp, int), TideYear> ranges = new();

    /// <summary>
    /// The curve that season tables, dates and boards ask: 33 days back to 403 days on from the day of <paramref name="now"/> on
    /// UTC. A table may cover less of it, and null means that it covers nothing: ask the curve where it begins and ends.
    /// </summary>
    public TideCurve? Around(PlaceTide tide, Instant now)
    {
        var midnight = now.InUtc().Date.AtMidnight().InUtc().ToInstant();
        return Within(tide, midnight - Back, midnight + Ahead) is var (from, to)
            ? Get(years, (tide.Stamp, midnight), MostYears, () => tide.Source.Between(from, to))
            : null;
    }

    /// <summary>The curve of a span, as far as the tide is known in it; null where it is not.</summary>
    public TideCurve? Between(PlaceTide tide, Instant from, Instant to) =>
        Within(tide, from, to) is var (first, last) ? Get(spans, (tide.Stamp, first, last), MostSpans, () => tide.Source.Between(first, last)) : null;

    /// <summary>Highest, lowest and the thirds of the ranges of a year on UTC; null where the tide is not known in it.</summary>
    public TideYear? Year(PlaceTide tide, int year) =>
        Within(tide, Instant.FromUtc(year, 1, 1, 0, 0), Instant.FromUtc(year + 1, 1, 1, 0, 0)) is null ? null
            : Get(ranges, (tide.Stamp, year), MostSpans, () => TideYear.Of(tide.Source, year));

    private static (Instant From, Instant To)? Within(PlaceTide tide, Instant from, Instant to)
    {
        var first = Instant.Max(from, tide.Source.Valid.Start);
        var last = Instant.Min(to, tide.Source.Valid.End);
        return first < last ? (first, last) : null;
    }

    private static TValue Get<TKey, TValue>(ConcurrentDictionary<TKey, TValue> kept, TKey key, int most, Func<TValue> compute) where TKey : notnull
    {
        if (kept.TryGetValue(key, out var held))
            return held;
        if (kept.Count >= most)
            kept.Clear();
        return kept.GetOrAdd(key, _ => compute());
    }
}
