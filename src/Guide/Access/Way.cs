using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>One way to a stance: a route with the car left in one car park. What the almanac reckons with, and what nobody knows of it.</summary>
/// <param name="Plan">Walks that nobody has timed count as nothing here, so that light and tide can be told beside what is missing.</param>
/// <param name="NotKnown">In words ready to print; while there is one the way is not judged.</param>
public sealed record Way(StayPlan Plan, IReadOnlyList<string> NotKnown)
{
    /// <summary>Whether turn back can be told at all: not while a limit, a height or a timed walk is missing that could bring it forward.</summary>
    public bool TellsTurnBack { get; init; } = true;

    /// <summary>The way in.</summary>
    public required AccessRoute Route { get; init; }

    /// <summary>Where the car is left; null where no car park serves the way.</summary>
    public ParkingArea? Lot { get; init; }

    /// <summary>When nobody knows whether it is open: hours or sailings on request, or not entered yet.</summary>
    public IReadOnlyList<WayGap> Gaps { get; init; } = [];

    /// <summary>For example "Over the bar, car at Bar Road".</summary>
    public string Name => Plan.Name;

    /// <summary>Waves at a crossing are left out, so that it closes earlier than told.</summary>
    public bool IsAtTheLatest => Plan.LeavesWavesOut;

    /// <summary>What the pages say where the ground's lower end rules instead of the recorded limit; null where it does not.</summary>
    public string? GroundRules { get; init; }

    /// <summary>Each way is itself alone: what is kept for one is found by which it is.</summary>
    public bool Equals(Way? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(this);

    /// <summary>Everything that can keep it from being judged in a span of time.</summary>
    public IReadOnlyList<string> NotKnownIn(Interval span) =>
        [.. NotKnown, .. Gaps.Where(gap => gap.Span.Start < span.End && gap.Span.End > span.Start).Select(gap => gap.Words).Distinct()];

    /// <summary>Whether turn back can be told in a span of time.</summary>
    public bool TellsTurnBackIn(Interval span) => TellsTurnBack && !Gaps.Any(gap => gap.Span.Start < span.End && gap.Span.End > span.Start);

    /// <summary>Every way to a stance that the club may recommend, open or not: its routes in order, each with its car parks in order.</summary>
    /// <param name="span">The days to be judged; both ends set.</param>
    /// <param name="sun">Covers the span; null leaves out all that opens and shuts by the clock.</param>
    public static IReadOnlyList<Way> All(VantagePoint stance, Location place, PlaceWater water, Interval span, SunEphemeris? sun)
    {
        var routes = stance.Ways.Count > 0
            ? stance.Ways.OrderBy(way => way.Order).Select(way => (way.Route, Own: (StanceWay?)way))
            : place.Routes.OrderBy(route => route.Order).Select(route => (Route: route, Own: (StanceWay?)null));
        var ways = new List<Way>();
        // The figures of the stance were taken along the club's first way, whether or not it may be recommended today.
        var isFirst = true;
        foreach (var (route, own) in routes)
        {
            if (route.MayBeRecommended)
                foreach (var lot in route.Parking.OrderBy(lot => lot.Order).Cast<RouteParking?>().DefaultIfEmpty())
                    ways.Add(Of(route, own, lot, isFirst, stance, place, water, span, sun));
            isFirst = false;
        }

        return ways;
    }

    /// <summary>The club's first way that it may recommend, for what is known of it whatever the date; null where there is none.</summary>
    public static Way? First(VantagePoint stance, Location place, PlaceWater water) => All(stance, place, water, default, null) is [var first, ..] ? first : null;

    private static Way Of(AccessRoute route, StanceWay? own, RouteParking? lot, bool isFirst, VantagePoint stance, Location place, PlaceWater water, Interval span, SunEphemeris? sun)
    {
        var tideIsKnown = water.Curve is not null;
        var walks = WayWalks.Of(stance, own, route, lot, isFirst, place.Parking.Count > 0);
        List<string> unknown = [];
        var legs = route.Legs;
        var (gates, gaps) = sun is null ? ([], []) : WayGates.Of(stance, place, legs, lot, walks, water, span, sun);
        var plan = new StayPlan(stance.Position, place.Zone)
        {
            Name = $"{route.Name}{(lot is null ? "" : $", car at {lot.ParkingArea.Name}")}",
            IsWaveExposed = stance.IsWaveExposed,
            IsReachedByWater = stance.Reach != Reach.None || stance.HighestUsableTide is not null,
            CutOffIsRecorded = stance.PathCutOff is not null || stance.IsNeverCutOff || stance.Reach == Reach.None,
            LedgeLimitMetres = stance.HighestUsableTide is { } limit ? water.Metres(limit) : null,
            GroundMetres = Ground(),
            TideGates = [.. TideGates()],
            ClockGates = gates,
            WalkIn = walks.In,
            WalkOut = walks.Out,
            // Nothing to walk and a cut-off on the way contradict each other: then the whole walk out counts.
            BeyondReach = stance is { MinutesToBeyondReach: 0, PathCutOff: not null } ? null : WayWalks.OffStance(stance.MinutesToBeyondReach, legs),
            KnownInTheDark = stance.WalkedInTheDark && legs.Where(leg => leg.Kind == LegKind.Walk).All(leg => leg.LightAtNight switch
            {
                LightAtNight.Lit or LightAtNight.KnownInTheDark => true,
                LightAtNight.NotKnownInTheDark => false,
                _ => isFirst,
            }),
            WatchPlace = stance.WatchPlace is { } watch ? new Walk(watch.MinutesToStance) : null,
            WatchesFromMinusNine = stance.WatchPlace?.SeenFromMinusNineBecause is not null,
            DarkStance = stance.DarkStance is { } dark ? new Walk(dark.MinutesToStance) : null,
        };

        var missing = plan.Unknown(tideIsKnown, seaIsLeftOut: false);
        unknown.AddRange(walks.Missing);
        // A walk that is missing was named above.
        unknown.AddRange(missing.Where(one => walks.Missing.Count == 0 || one is not (StayUnknown.WalkIn or StayUnknown.WalkOut)).Select(one => Words(one, stance, water)).Distinct());
        if (gates.Count > 0 && legs.FirstOrDefault(leg => leg.Kind != LegKind.Walk && leg.Minutes is null) is { } untimed)
            unknown.Add($"nobody has timed \"{untimed.Name}\"");

        return new(Reckoned(plan, tideIsKnown), unknown)
        {
            TellsTurnBack = unknown.Count == missing.Count(one => one == StayUnknown.WavesAtCrossing),
            Route = route,
            Lot = lot?.ParkingArea,
            Gaps = gaps,
            GroundRules = plan.GroundRules
                ? $"the ground's lower end, {TideWords.Metres(plan.GroundMetres!.Value)}, is below the recorded limit of {TideWords.Metres(plan.LedgeLimitMetres!.Value)} and counts instead" : null,
        };

        double? Ground()
        {
            if (stance.Ground is not { } ground || !(stance.Reach != Reach.None || stance.HighestUsableTide is not null)) return null;
            if (!ground.NeedsChecking(place.TideStationId) && ground.Datum == TideDatum.ChartDatum) return ground.LowerEndMetres;
            if (stance.HighestUsableTide is not null) unknown.Add($"the ground's height {PlaceWater.NotCurrent}");
            return null;
        }

        IEnumerable<TideGate> TideGates()
        {
            for (var i = 0; i < legs.Count; i++)
            {
                var leg = legs[i];
                if (leg.TidalCut == TidalCut.Unknown)
                    unknown.Add($"nobody has said whether the tide cuts off \"{leg.Name}\"");
                if (leg.Crossing is not { } crossing)
                    continue;
                if (water.Metres(crossing.PassableBelow) is not { } height)
                    unknown.Add($"the height of the crossing \"{leg.Name}\" {PlaceWater.NotCurrent}");
                else
                    yield return new(leg.Name, height, WayWalks.Beyond(crossing, [.. legs.Skip(i)]) ?? walks.Out, crossing.ShelteredBecause is null);
            }

            if (stance.PathCutOff is not { } cutOff)
                yield break;
            if (water.Metres(cutOff) is not { } metres)
                unknown.Add($"the height at which the path is cut off {PlaceWater.NotCurrent}");
            else
                yield return new("the path", metres, null, stance.Reach != Reach.StillWaterOnly);
        }
    }

    /// <summary>What can be reckoned with all the same: no tide limits without a tide, and no minutes where none were timed.</summary>
    private static StayPlan Reckoned(StayPlan plan, bool tideIsKnown) => (tideIsKnown ? plan : plan with { LedgeLimitMetres = null, TideGates = [] }) with
    {
        WalkIn = plan.WalkIn ?? 0,
        WalkOut = plan.WalkOut ?? 0,
    };

    private static string Words(StayUnknown unknown, VantagePoint stance, PlaceWater water) => unknown switch
    {
        StayUnknown.Tide => water.WhyNone,
        StayUnknown.LedgeLimit => stance.HighestUsableTide is null ? "no highest usable tide is recorded" : $"the tide limit {PlaceWater.NotCurrent}",
        StayUnknown.CutOff => "nobody has recorded whether the way back is cut off",
        StayUnknown.WalkIn or StayUnknown.WalkOut => "nobody has timed the walk",
        StayUnknown.WavesAtCrossing => "waves at the crossing are not known",
        _ => throw new ArgumentOutOfRangeException(nameof(unknown), unknown, "A way knows nothing of this."),
    };
}
