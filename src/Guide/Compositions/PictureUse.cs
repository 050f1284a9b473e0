using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>What of tide and way can keep a picture from being taken though the light holds.</summary>
public enum UseAsk { WishedTide, WishedGround, HighestUsableTide, PathCutOff, Crossing }

/// <summary>
/// What tide and the way there leave of a picture's year: asked for wherever a wish of tide or ground, a tide limit or a crossing
/// exists. The usual allowance and a party of one count, closures and the sea are left out, and pages say so.
/// </summary>
public sealed class PictureUse
{
    private readonly IReadOnlyList<StayPlan> ways;
    private readonly TideWishes wishes;
    private readonly PlaceWater water;

    private PictureUse(IReadOnlyList<StayPlan> ways, TideWishes wishes, PlaceWater water, IReadOnlyList<UseAsk> asks, string? missing, string stamp) =>
        (this.ways, this.wishes, this.water, Asks, Missing, Stamp) = (ways, wishes, water, asks, missing, stamp);

    /// <summary>What of tide and way limits the picture; empty where light alone tells when it can be taken.</summary>
    public IReadOnlyList<UseAsk> Asks { get; }

    /// <summary>Whether light alone does not tell when the picture can be taken.</summary>
    public bool IsAsked => Asks.Count > 0;

    /// <summary>Why it can't be told, in words; null where it can, or is not asked.</summary>
    public string? Missing { get; }

    /// <summary>What it is made from, besides place, stance and picture: the tide, the ways and the car parks as they are stored.</summary>
    public string Stamp { get; }

    public static PictureUse Of(StanceView view, Composition picture, TideCurves curves, Instant now)
    {
        var (place, stance) = (view.Place, view.Stance);
        var tide = view.At.Tide;
        var asks = AsksOf(place, stance, picture);
        var stamp = $"{tide?.Stamp} {string.Join(',', place.Routes.SelectMany(route => route.Legs).Select(leg => $"{leg.Id}.{leg.Version}"))} "
            + string.Join(',', place.Parking.Select(lot => $"{lot.Id}.{lot.Version}"));
        if (asks.Count == 0)
            return new([], TideWishes.None, PlaceWater.None, asks, null, stamp);

        var water = new PlaceWater(place.TideStationId, tide, tide is null ? null : curves.Around(tide, now), year => tide is null ? null : curves.Year(tide, year));
        var wishes = TideWishes.Of(picture, water);
        if (water.Curve is null)
            return new([], wishes, water, asks, water.WhyNone, stamp);

        var all = Way.Choices(stance, place, water, [], tideIsKnown: true);
        // Waves at a crossing are the sea's, which is left out here; any other gap keeps a way from being reckoned with.
        var told = all.Where(way => way.TellsTurnBack).Select(way => way.Plan).ToList();
        var missing = wishes.NotKnown.Count > 0 ? wishes.NotKnown[0] : told.Count == 0 ? all.SelectMany(way => way.NotKnown).FirstOrDefault() : null;
        return new(told, wishes, water, asks, missing, stamp);
    }

    /// <summary>The usable time; null where it is not asked, or can't be told.</summary>
    public UsableTime? Over(Instant from, Instant to, SunEphemeris sun) => !IsAsked || Missing is not null ? null
        : UsableTime.Of(ways, wishes.Tide, wishes.Ground, water.Curve, wishes.Years, from, to, sun);

    /// <summary>What the table and the dates count, in words; null where they count light alone and nothing else is asked.</summary>
    public string? Words => !IsAsked ? null
        : Missing is { } missing ? $"Light alone: {missing}, so that tide and the way back are not in it."
        : "Minutes count in which light and wished tide hold, the tide is 0.3 m or more below every limit, and the way back is open. The sea is left out.";

    private static List<UseAsk> AsksOf(Location place, VantagePoint stance, Composition picture)
    {
        var asks = new List<UseAsk>();
        if (picture.Tide is not null) asks.Add(UseAsk.WishedTide);
        if (picture.Ground is { State: not GroundState.Any }) asks.Add(UseAsk.WishedGround);
        if (stance.HighestUsableTide is not null) asks.Add(UseAsk.HighestUsableTide);
        if (stance.PathCutOff is not null) asks.Add(UseAsk.PathCutOff);
        if (place.OpenRoutes([]).Any(route => route.Legs.Any(leg => leg.Crossing is not null))) asks.Add(UseAsk.Crossing);
        return asks;
    }
}
