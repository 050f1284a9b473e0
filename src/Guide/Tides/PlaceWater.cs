using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>The tide of one place over the days of a board, and what its stored heights come to on that curve.</summary>
/// <param name="Tide">Null where the place has no station, or none that is known.</param>
/// <param name="Curve">Null where the tide is not known on any of the days.</param>
/// <param name="Years">The thirds of a year's ranges; null where unknown.</param>
public sealed record PlaceWater(string? StationId, PlaceTide? Tide, TideCurve? Curve, Func<int, TideYear?> Years)
{
    public const string NotCurrent = "was judged by another station or datum and needs checking";

    /// <summary>Ground is dry after six hours, a stay may have opened the day before, ranges look half a tidal day either way.</summary>
    private static readonly Duration Margin = Duration.FromDays(3);

    public static readonly PlaceWater None = new(null, null, null, _ => null);

    public static PlaceWater Of(Location place, PlaceTide? tide, TideCurves curves, Instant from, Instant to) => tide is null
        ? None with { StationId = place.TideStationId }
        : new(place.TideStationId, tide, curves.Over(tide, from - Margin, to + Margin), year => curves.Year(tide, year));

    /// <summary>Why nothing is known of the tide.</summary>
    public string WhyNone => StationId is null ? "no tide station has been chosen for this place" : "the tide of its station is not known for that time";

    /// <summary>The curve where it holds all of a session; null where it does not.</summary>
    public TideCurve? Over(Session span) => Curve is { } curve && curve.From <= span.Start && curve.To >= span.End ? curve : null;

    /// <summary>The height on the curve; null where it was judged by another station, or counts from another datum.</summary>
    public double? Metres(TideHeight height) =>
        height.NeedsChecking(StationId) || height.Datum != TideDatum.ChartDatum ? null : height.Metres;

    /// <summary>The wished tide as the almanac asks for it, or why it can't be.</summary>
    public (WantedTide? Wish, string? Unknown) Of(TideWish wish)
    {
        var (lowest, highest) = (wish.Lowest is { } low ? Metres(low) : null, wish.Highest is { } high ? Metres(high) : null);
        if ((wish.Lowest is not null && lowest is null) || (wish.Highest is not null && highest is null))
            return (null, $"the wished tide {NotCurrent}");
        return (new WantedTide
        {
            LowestMetres = lowest,
            HighestMetres = highest,
            AboutHighWater = wish.Turn is { } turn ? turn == TideTurn.HighWater : null,
            FromMinutes = wish.FromMinutes ?? 0,
            ToMinutes = wish.ToMinutes ?? 0,
            Rising = wish.Flow == TideFlow.Any ? null : wish.Flow == TideFlow.Rising,
            Third = wish.Range switch { TideRange.Springs => RangeThird.Springs, TideRange.Neaps => RangeThird.Neaps, _ => null },
            LeastRangeMetres = wish.RangeAtLeastMetres,
        }, null);
    }

    /// <summary>The same for the ground; nothing where any ground will do.</summary>
    public (WantedGround? Wish, string? Unknown) Of(GroundWish wish) => wish switch
    {
        { State: GroundState.Any } => (null, null),
        { Foreground: null } => (null, "the foreground's height is not recorded"),
        { Foreground: { } height } => Metres(height) is { } metres
            ? (new WantedGround(wish.State == GroundState.FreshlyWashed, metres), null)
            : (null, $"the foreground's height {NotCurrent}"),
    };
}
