using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>The open periods of a stance by one way, on the days drawn.</summary>
/// <param name="Way">The way, with the car left in one car park.</param>
/// <param name="Stays">In order, past ones too; none where turn back can't be told.</param>
/// <param name="Untold">Why turn back can't be told, in words ready to print; empty where it can.</param>
/// <param name="Flood">What the tide does to the car there; null where it stays dry as far as known.</param>
public sealed record WayTurns(Way Way, IReadOnlyList<Stay> Stays, IReadOnlyList<string> Untold, string? Flood);

/// <summary>
/// When one can be at a stance on the days drawn, and when to turn back, for one person at the measured pace. No stay reaches
/// into a date on which something keeps one off, or its way or car park is closed.
/// </summary>
/// <param name="Drawn">The days.</param>
/// <param name="Now">What is over then is not to come.</param>
/// <param name="Stops">Dates drawn on which nobody goes there, with what keeps one off.</param>
/// <param name="Ways">Each way in that is open on one of the other dates; none where all are stopped, or no way may be recommended.</param>
public sealed record StanceTurns(Interval Drawn, Instant Now, IReadOnlyList<(LocalDate Date, string Why)> Stops, IReadOnlyList<WayTurns> Ways)
{
    /// <summary>A turn back of the small hours after the last day still belongs to its evening; a later one is of no use to these days.</summary>
    private static readonly Duration After = Duration.FromHours(12);

    private static readonly Duration Margin = Duration.FromDays(5);

    /// <summary>The way that the curve shows: the preferred one of those whose turn back can be told.</summary>
    public WayTurns? Shown => Ways.FirstOrDefault(way => way.Untold.Count == 0);

    /// <param name="stance">The stance, as the reader may see it.</param>
    /// <param name="place">Its place.</param>
    /// <param name="first">The first of the days drawn.</param>
    /// <param name="water">The tide of the days and three about them.</param>
    /// <param name="now">Stays that are over then are none to come.</param>
    public static StanceTurns Of(VantagePoint stance, Location place, LocalDate first, PlaceWater water, Instant now)
    {
        var zone = place.Zone;
        var (from, to) = TideDrawing.Span(first, zone);
        var drawn = Enumerable.Range(0, TideDrawing.DaysDrawn).Select(first.PlusDays).ToList();
        var ways = new StanceWays(stance, place, water, from, to, SunEphemeris.Covering(from - Margin, to + Margin));
        var going = drawn.Where(date => WhyNot(date) is null).ToList();
        return new(new(from, to), now, [.. drawn.Except(going).Select(date => (date, WhyNot(date)!))],
            [
                .. ways.All.Where(way => going.Any(date => ways.IsOpen(way, [date]))).Select(way => way.TellsTurnBackIn(new(from, to))
                    ? new WayTurns(way, [.. ways.Stays(way).Where(stay => (stay.TurnBack ?? to) > from && (stay.From ?? from) < to)], [], Flood(way))
                    : new WayTurns(way, [], way.NotKnownIn(new(from, to)), Flood(way))),
            ]);

        string? Flood(Way way) => way.Lot is { } lot ? LotFlood.In(lot, new(from, to), water, zone)?.Words : null;

        string? WhyNot(LocalDate date) => place.StopsOn(stance, date) is { Count: > 0 } stops ? string.Join("; ", stops)
            : ways.All.Any(way => ways.IsOpen(way, [date])) ? null : StopWords.NoWayIn;
    }

    /// <summary>Whether waves can come to the stance or to a crossing on the way: they are left out, and pages say so.</summary>
    public bool LeavesWavesOut => Ways.Any(way => way.Way.IsAtTheLatest || way.Way.Plan.IsWaveExposed);

    public bool IsWatched => Ways.Any(way => way.Way.Plan.IsWaveExposed);

    public bool AnyTurnBack => Ways.Any(way => Coming(way).Any(one => one.TurnBack is not null));

    /// <summary>When one can be there, rounded up to five minutes; null where that is before the days drawn.</summary>
    public Instant? NotBefore(Stay stay) => stay.From is { } from && from > Drawn.Start
        ? Instant.FromUnixTimeSeconds((long)Math.Ceiling((from - NodaConstants.UnixEpoch).TotalMinutes / 5) * 300) : null;

    /// <summary>The stays of a way that are not over, each with when to turn back.</summary>
    public IEnumerable<(Stay Stay, Instant? TurnBack)> Coming(WayTurns way) =>
        way.Stays.Select(stay => (stay, TurnBack(stay))).Where(one => one.Item2 is not { } time || time > Now);

    /// <summary>Why none is to come; by a way whose turn back can be told.</summary>
    public string WhyNone(WayTurns way) => Drawn.End <= Now ? "These days are past."
        : way.Way.Plan is { IsWaveExposed: true, WatchPlace: null } ? $"No open period: {StayWords.NoWatchPlace}."
        : way.Stays.Count > 0 ? "No open period is left of these days."
        : "No open period on these days: tide, way and daylight leave no time to be there.";

    /// <summary>When to turn back from a stay; null where nothing calls one back on the days drawn, or in the night after them.</summary>
    public Instant? TurnBack(Stay stay) => stay.TurnBack is { } time && time <= Drawn.End + After ? time : null;
}
