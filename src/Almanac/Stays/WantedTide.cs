using Foreshore.Almanac.Light;
using Foreshore.Almanac.Tides;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>The tide a picture wants; every part that is given must hold.</summary>
public sealed record WantedTide
{
    // RangeAt looks half a tidal day either way.
    private static readonly Duration HalfTidalDay = Duration.FromMinutes(745);

    /// <summary>At least so high, metres above the curve's datum.</summary>
    public double? LowestMetres { get; init; }

    /// <summary>At most so high.</summary>
    public double? HighestMetres { get; init; }

    /// <summary>About high (true) or low (false) water, from <see cref="FromMinutes"/> to <see cref="ToMinutes"/> after it; null: at any time.</summary>
    public bool? AboutHighWater { get; init; }

    /// <summary>Minutes after the turn, below zero before it.</summary>
    public double FromMinutes { get; init; }

    /// <summary>Minutes after the turn, below zero before it.</summary>
    public double ToMinutes { get; init; }

    /// <summary>Rising (true) or falling (false); null: either.</summary>
    public bool? Rising { get; init; }

    /// <summary>Springs or neaps: the range lies in that third of its year's; null: any.</summary>
    public RangeThird? Third { get; init; }

    /// <summary>The range is at least so much, metres.</summary>
    public double? LeastRangeMetres { get; init; }

    /// <summary>When the wish holds over a curve's span.</summary>
    /// <param name="tide">The tide.</param>
    /// <param name="years">The thirds of each year on UTC that the curve touches; null where unknown, and then no third holds.</param>
    internal List<Stretch> Over(TideCurve tide, Func<int, TideYear?> years)
    {
        List<Stretch> holds = [new(JulianDay.DaysFromJ2000(tide.From), JulianDay.DaysFromJ2000(tide.To))];
        if (LowestMetres is { } lowest) holds = Stretch.Intersection(holds, Spans.Of(tide.Above(lowest)));
        if (HighestMetres is { } highest) holds = Stretch.Intersection(holds, Spans.Of(tide.Below(highest)));
        if (AboutHighWater is { } high) holds = Stretch.Intersection(holds, AboutTurns(tide, high));
        if (Rising is { } rising) holds = Stretch.Intersection(holds, Flow(tide, rising));
        if (Third is not null || LeastRangeMetres is not null) holds = Stretch.Intersection(holds, Ranges(tide, years));
        return holds;
    }

    private List<Stretch> AboutTurns(TideCurve tide, bool high) => Stretch.Union(
    [
        [
            .. Turns(tide).Where(turn => turn.IsHigh == high).Select(turn => JulianDay.DaysFromJ2000(turn.Time))
                .Select(turn => new Stretch(turn + FromMinutes * Stretch.Minute, turn + ToMinutes * Stretch.Minute)),
        ],
    ]);

    private static List<Stretch> Flow(TideCurve tide, bool rising)
    {
        var turns = Turns(tide).ToList();
        return
        [
            .. turns.Zip(turns.Skip(1)).Where(pair => pair.First.IsHigh != rising)
                .Select(pair => new Stretch(JulianDay.DaysFromJ2000(pair.First.Time), JulianDay.DaysFromJ2000(pair.Second.Time))),
        ];
    }

    private List<Stretch> Ranges(TideCurve tide, Func<int, TideYear?> years)
    {
        // The range about an instant changes only where a water comes within half a tidal day, or leaves it, and the year's thirds at its turn.
        var cuts = tide.Extremes.SelectMany(water => (Instant[])[water.Time - HalfTidalDay, water.Time + HalfTidalDay])
            .Concat(Enumerable.Range(tide.From.InUtc().Year, tide.To.InUtc().Year - tide.From.InUtc().Year + 2).Select(year => Instant.FromUtc(year, 1, 1, 0, 0)))
            .Append(tide.From).Append(tide.To)
            .Where(cut => cut >= tide.From && cut <= tide.To).Distinct().Order().ToList();
        var holds = cuts.Zip(cuts.Skip(1)).Where(piece => HoldsAt(piece.First + (piece.Second - piece.First) / 2))
            .Select(piece => new Stretch(JulianDay.DaysFromJ2000(piece.First), JulianDay.DaysFromJ2000(piece.Second)));
        return Stretch.Union([[.. holds]]);

        bool HoldsAt(Instant middle) => tide.RangeAt(middle) is { } range
            && (LeastRangeMetres is not { } least || range >= least)
            && (Third is not { } third || years(middle.InUtc().Year)?.Third(range) == third);
    }

    /// <summary>High and low waters of the span and the ones next to it.</summary>
    private static IEnumerable<TideExtreme> Turns(TideCurve tide)
    {
        if (tide.Before(tide.From) is { } before && before.Time < tide.From) yield return before;
        foreach (var turn in tide.Extremes) yield return turn;
        if (tide.After(tide.To) is { } after) yield return after;
    }
}
