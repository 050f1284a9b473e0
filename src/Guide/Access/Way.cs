using Foreshore.Almanac.Stays;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>One way to a stance, with the car left in one car park: what the almanac reckons with, and what nobody knows of it.</summary>
/// <param name="Plan">Walks that nobody has timed count as nothing here, so that light and tide can be told beside what is missing.</param>
/// <param name="NotKnown">In words ready to print; while there is one the way is not judged.</param>
public sealed record Way(StayPlan Plan, IReadOnlyList<string> NotKnown)
{
    /// <summary>Whether turn back can be told at all: not while a limit, a height or a timed walk is missing that could bring it forward.</summary>
    public bool TellsTurnBack { get; init; } = true;

    /// <summary>The way in; null where there is none that the club may recommend.</summary>
    public AccessRoute? Route { get; init; }

    /// <summary>Where the car is left; null where no car park is recorded, or none is open.</summary>
    public ParkingArea? Lot { get; init; }

    /// <summary>For example "Over the bar, the car at Bar Road".</summary>
    public string Name => $"{Route?.Name ?? StopWords.NoWayIn}{(Lot is { } lot ? $", the car at {lot.Name}" : "")}";

    /// <summary>Waves at a crossing are left out, so that it closes earlier than told.</summary>
    public bool IsAtTheLatest { get; init; }

    /// <summary>Each open way in, with the car in each open car park, once for every set of gates. A car that stays inside over night is not among them.</summary>
    public static IReadOnlyList<Way> Choices(VantagePoint stance, Location place, PlaceWater water, IReadOnlyList<LocalDate> dates, bool tideIsKnown)
    {
        var ways = new List<Way>();
        foreach (var route in place.OpenRoutes(dates).Cast<AccessRoute?>().DefaultIfEmpty())
        {
            // Car parks that are never locked, or alike, make the same way.
            foreach (var lot in place.OpenParking(dates).DistinctBy(lot => (lot.LockedFrom, lot.LockedUntil)).Cast<ParkingArea?>().DefaultIfEmpty())
                ways.Add(Of(route, lot, stance, place, water, tideIsKnown));
        }

        return ways;
    }

    private static Way Of(AccessRoute? route, ParkingArea? lot, VantagePoint stance, Location place, PlaceWater water, bool tideIsKnown)
    {
        List<string> unknown = [];
        var legs = route?.Legs ?? [];
        var onFoot = legs.Where(leg => leg.Kind == LegKind.Walk).Sum(leg => leg.Minutes ?? 0);
        var plan = new StayPlan(stance.Position, place.Zone)
        {
            IsWaveExposed = stance.IsWaveExposed,
            IsReachedByWater = stance.Reach != Reach.None || stance.HighestUsableTide is not null,
            CutOffIsRecorded = stance.PathCutOff is not null || stance.IsNeverCutOff || stance.Reach == Reach.None,
            LedgeLimitMetres = stance.HighestUsableTide is { } limit ? water.Metres(limit) : null,
            TideGates = [.. TideGates()],
            ClockGates = Gates.Of(legs, lot, stance),
            WalkInMinutes = stance.WalkInMinutes is { } walkIn ? Math.Max(onFoot, walkIn) : null,
            WalkOutMinutes = stance.WalkOutMinutes is { } walkOut ? Math.Max(onFoot, walkOut) : null,
            // Nothing to walk and a cut-off on the way contradict each other: then the whole walk out counts.
            BeyondReachMinutes = stance is { MinutesToBeyondReach: 0, PathCutOff: not null } ? null : stance.MinutesToBeyondReach,
            KnownInTheDark = stance.WalkedInTheDark,
            WatchPlaceMinutes = stance.WatchPlace?.MinutesToStance,
            DarkStanceMinutes = stance.DarkStance?.MinutesToStance,
        };

        var missing = plan.Unknown(tideIsKnown, seaIsLeftOut: false);
        unknown.AddRange(missing.Select(one => Words(one, stance, water)).Distinct());
        if (plan.ClockGates.Count > 0 && legs.FirstOrDefault(leg => leg.Minutes is null) is { } untimed)
            unknown.Add($"nobody has timed \"{untimed.Name}\"");
        if (legs.FirstOrDefault(leg => leg.OpensAt is null != leg.ClosesAt is null) is { } half)
            unknown.Add($"the hours of \"{half.Name}\" are known by half");

        return new(Reckoned(plan, tideIsKnown), unknown)
        {
            TellsTurnBack = unknown.Count == missing.Count && missing.All(one => one == StayUnknown.WavesAtCrossing),
            IsAtTheLatest = missing.Contains(StayUnknown.WavesAtCrossing),
            Route = route,
            Lot = lot,
        };

        IEnumerable<TideGate> TideGates()
        {
            var crossings = legs.Where(leg => leg.Crossing is not null).ToList();
            for (var i = 0; i < crossings.Count; i++)
            {
                var crossing = crossings[i].Crossing!;
                if (water.Metres(crossing.PassableBelow) is not { } height)
                    unknown.Add($"the height of the crossing \"{crossings[i].Name}\" {PlaceWater.NotCurrent}");
                else
                    yield return new(crossings[i].Name, height, crossing.MinutesFromStance, crossing.ShelteredBecause is null);
            }

            if (stance.PathCutOff is not { } cutOff)
                yield break;
            if (water.Metres(cutOff) is not { } metres)
                unknown.Add($"the height at which the path is cut off {PlaceWater.NotCurrent}");
            // A cut-off that repeats a crossing of this way is that crossing.
            else if (!crossings.Exists(leg => leg.Crossing!.PassableBelow.Metres == cutOff.Metres && leg.Crossing.PassableBelow.StationId == cutOff.StationId))
                yield return new("the path", metres, null, stance.Reach != Reach.StillWaterOnly);
        }
    }

    /// <summary>What can be reckoned with all the same: no tide limits without a tide, and no minutes where none were timed.</summary>
    private static StayPlan Reckoned(StayPlan plan, bool tideIsKnown) => (tideIsKnown ? plan : plan with { LedgeLimitMetres = null, TideGates = [] }) with
    {
        WalkInMinutes = plan.WalkInMinutes ?? 0,
        WalkOutMinutes = plan.WalkOutMinutes ?? 0,
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
