using System.Globalization;
using System.Text;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>What of tide and way can keep a picture from being taken though the light holds.</summary>
public enum UseAsk { WishedTide, WishedGround, HighestUsableTide, PathCutOff, Crossing, Way }

/// <summary>
/// What tide and the way there leave of a picture's year, by the same ways, sessions and stays as the weekend board: wishes,
/// limits, hours, sailings, daylight, and the closures known by now. The usual allowance and a party of one count; the sea is left
/// out, and pages say so.
/// </summary>
public sealed class PictureUse
{
    private readonly StanceView view;
    private readonly Composition picture;
    private readonly TideWishes wishes;
    private readonly PlaceWater water;

    private PictureUse(StanceView view, Composition picture, TideWishes wishes, PlaceWater water, IReadOnlyList<UseAsk> asks, Way? first, string stamp)
    {
        (this.view, this.picture, this.wishes, this.water, Asks, Stamp) = (view, picture, wishes, water, asks, stamp);
        (FirstWay, Missing) = (first?.Name, WhyNot(first));
    }

    /// <summary>What of tide and way limits the picture.</summary>
    public IReadOnlyList<UseAsk> Asks { get; }

    /// <summary>The club's first way to it; null where it may recommend none.</summary>
    public string? FirstWay { get; }

    /// <summary>Why it can't be told, in words; null where it can.</summary>
    public string? Missing { get; }

    /// <summary>What it is made from, besides place, stance and picture: the tide, and all that is stored of ways, car parks, closures and notes.</summary>
    public string Stamp { get; }

    public static PictureUse Of(StanceView view, Composition picture, TideCurves curves, Instant now)
    {
        var (place, stance) = (view.Place, view.Stance);
        var tide = view.At.Tide;
        var water = tide is null ? PlaceWater.None with { StationId = place.TideStationId }
            : new PlaceWater(place.TideStationId, tide, curves.Around(tide, now), year => curves.Year(tide, year));
        var wishes = TideWishes.Of(picture, water);
        var asks = AsksOf(place, stance, picture);
        return new(view, picture, wishes, water, asks, Way.First(stance, place, water), StampOf(place, stance, tide));
    }

    /// <summary>The usable time; null where it can't be told.</summary>
    /// <param name="sky">Covers the span.</param>
    public UsableTime? Over(Instant from, Instant to, SkyEphemeris sky)
    {
        if (Missing is not null)
            return null;
        var (place, stance) = (view.Place, view.Stance);
        var ways = new StanceWays(stance, place, water, from, to, sky.Sun);
        // Which way holds hangs on the light only where there are several.
        var light = ways.All.Count > 1 ? LightRuns.Between(picture.ToScene(stance, place), from, to, sky) : null;
        List<(Interval, UsableTime?)> parts =
        [
            .. Sessions.Between(from, to, stance.Position, place.Zone, sky.Sun).Select(session => (session.Span, In(session))),
        ];
        return UsableTime.Joined(parts, water.Curve);

        UsableTime? In(Session session) =>
            ways.In(session) is { Stops.Count: 0, FloodKeepsOff: false } && ways.Shown(session, wishes, light?.During(session.Span).Runs ?? []) is { } way && way.TellsTurnBackIn(session.Span)
                ? ways.Time(way, wishes) : null;
    }

    /// <summary>
    /// Whether one may go in a session at all, for dates by light alone: none is listed that a closure, a warning, a flooded car, no
    /// way in, or no place to watch the sea from rules out.
    /// </summary>
    /// <param name="sky">Covers the span.</param>
    public Predicate<Session>? Goes(Instant from, Instant to, SkyEphemeris sky)
    {
        if (Missing is null)
            return null;
        var ways = new StanceWays(view.Stance, view.Place, water, from, to, sky.Sun);
        return session => view.Stance is not { IsWaveExposed: true, WatchPlace: null } && ways.In(session) is { Stops.Count: 0, FloodKeepsOff: false, NoWayIn: null };
    }

    /// <summary>What the table and the dates count, in words.</summary>
    public string Words => Missing is { } missing ? $"Light alone: {missing}, so the tide and the way back are not in it."
        : $"These minutes have the wanted light and tide, with the tide at least 0.3 m below every limit and the way there and back open{(FirstWay is null ? "" : $": by {FirstWay}, unless that is closed or leaves no window")}. "
        + "The sea is left out. Dates on which hours or sailings are not known do not count.";

    private string? WhyNot(Way? first)
    {
        if (water.Curve is null && Asks.Any(ask => ask != UseAsk.Way))
            return water.WhyNone;
        if (wishes.NotKnown.Count > 0)
            return wishes.NotKnown[0];
        // Waves at a crossing are the sea's, which is left out here; any other gap keeps a way from being reckoned with.
        return first is { TellsTurnBack: false } ? first.NotKnown[0] : null;
    }

    private static string StampOf(Location place, VantagePoint stance, PlaceTide? tide)
    {
        var text = new StringBuilder().Append(tide?.Stamp);
        foreach (var route in place.Routes)
        {
            text.Append(CultureInfo.InvariantCulture, $" r{route.Id}.{route.Version}.{route.Order}");
            foreach (var leg in route.Legs) text.Append(CultureInfo.InvariantCulture, $" {leg.Id}.{leg.Version}");
            foreach (var lot in route.Parking) text.Append(CultureInfo.InvariantCulture, $" p{lot.ParkingAreaId}.{lot.Version}");
        }

        foreach (var way in stance.Ways) text.Append(CultureInfo.InvariantCulture, $" w{way.RouteId}.{way.Version}");
        foreach (var lot in place.Parking) text.Append(CultureInfo.InvariantCulture, $" l{lot.Id}.{lot.Version}");
        foreach (var closure in place.Closures) text.Append(CultureInfo.InvariantCulture, $" c{closure.Id}.{closure.Version}");
        foreach (var note in place.HazardNotes) text.Append(CultureInfo.InvariantCulture, $" n{note.Id}.{note.Version}");
        foreach (var letter in place.PermissionLetters) text.Append(CultureInfo.InvariantCulture, $" e{letter.Id}.{letter.Version}");
        return text.ToString();
    }

    private static List<UseAsk> AsksOf(Location place, VantagePoint stance, Composition picture)
    {
        var asks = new List<UseAsk>();
        if (picture.Tide is not null) asks.Add(UseAsk.WishedTide);
        if (picture.Ground is { State: not GroundState.Any }) asks.Add(UseAsk.WishedGround);
        if (stance.HighestUsableTide is not null) asks.Add(UseAsk.HighestUsableTide);
        if (stance.PathCutOff is not null) asks.Add(UseAsk.PathCutOff);
        var routes = stance.Ways.Count > 0 ? stance.Ways.Select(way => way.Route) : place.Routes;
        if (routes.Any(route => route.MayBeRecommended && route.Legs.Any(leg => leg.Crossing is not null))) asks.Add(UseAsk.Crossing);
        asks.Add(UseAsk.Way);
        return asks;
    }
}
