using Foreshore.Almanac.Tides;
using Foreshore.Guide.Keeping;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>Tide made ready for many questions. What boards, seasons and dates ask again and again is kept under its stamp.</summary>
public sealed class TideCurves(Kept kept)
{
    private const int BytesOfYear = 250;

    /// <summary>As far as the shared table of the sun: from before the first of the month to 400 days on.</summary>
    private static readonly Duration Back = Duration.FromDays(33);
    private static readonly Duration Ahead = Duration.FromDays(403);

    /// <summary>
    /// The curve that season tables, dates and boards ask: 33 days back to 403 days on from the day of <paramref name="now"/> on
    /// UTC. A table may cover less of it, and null means that it covers nothing: ask the curve where it begins and ends.
    /// </summary>
    public TideCurve? Around(PlaceTide tide, Instant now)
    {
        var midnight = now.InUtc().Date.AtMidnight().InUtc().ToInstant();
        return Within(tide, midnight - Back, midnight + Ahead) is var (from, to)
            ? kept.Get(new YearAroundKey(tide.Stamp, midnight), () => tide.Source.Between(from, to), curve => curve.Bytes)
            : null;
    }

    /// <summary>The curve of a few days that many will ask for, as far as the tide is known in them; null where it is not.</summary>
    public TideCurve? Over(PlaceTide tide, Instant from, Instant to) => Within(tide, from, to) is var (first, last)
        ? kept.Get(new SpanKey(tide.Stamp, first, last), () => tide.Source.Between(first, last), curve => curve.Bytes)
        : null;

    /// <summary>The same for a span that one reader chose: made for them, and not kept.</summary>
    public static TideCurve? Between(PlaceTide tide, Instant from, Instant to) =>
        Within(tide, from, to) is var (first, last) ? tide.Source.Between(first, last) : null;

    /// <summary>Highest, lowest and the thirds of the ranges of a year on UTC; null where the tide is not known in it.</summary>
    public TideYear? Year(PlaceTide tide, int year) =>
        Within(tide, Instant.FromUtc(year, 1, 1, 0, 0), Instant.FromUtc(year + 1, 1, 1, 0, 0)) is null ? null
            : kept.Get(new YearKey(tide.Stamp, year), () => TideYear.Of(tide.Source, year), _ => BytesOfYear);

    private static (Instant From, Instant To)? Within(PlaceTide tide, Instant from, Instant to)
    {
        var first = Instant.Max(from, tide.Source.Valid.Start);
        var last = Instant.Min(to, tide.Source.Valid.End);
        return first < last ? (first, last) : null;
    }

    private sealed record YearAroundKey(TideStamp Of, Instant Midnight);

    private sealed record SpanKey(TideStamp Of, Instant From, Instant To);

    private sealed record YearKey(TideStamp Of, int Year);
}
