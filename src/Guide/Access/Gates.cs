using Foreshore.Almanac.Stays;
using Foreshore.Guide.Compositions;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>What on a way opens and shuts by the clock every day: a leg with hours, a ferry, a car park that is locked.</summary>
internal static class Gates
{
    /// <summary>Everything on a way in, with the car left in one car park, that binds by the clock.</summary>
    public static IReadOnlyList<ClockGate> Of(IReadOnlyList<Leg> legs, ParkingArea? lot, VantagePoint stance)
    {
        List<ClockGate> gates = [];
        for (var i = 0; i < legs.Count; i++)
        {
            var leg = legs[i];
            // Who has passed a road's gate still has that road before them; who has landed has the boat behind them.
            if (leg.OpensAt is not null || leg.ClosesAt is not null)
                gates.Add(Through(legs.Skip(i), leg.OpensAt ?? LocalTime.Midnight, leg.ClosesAt ?? LocalTime.Midnight, $"{leg.Name}: {Hours(leg)}"));
            if (leg.Ferry is { } ferry)
            {
                gates.Add(Through(legs.Skip(i + 1), ferry.FirstSailing.PlusMinutes((long)Math.Ceiling(ferry.CrossingMinutes)),
                    ferry.LastSailing.PlusMinutes(-ferry.LastCheckInMinutes), $"first sailing {ferry.FirstSailing:HH':'mm}, last {ferry.LastSailing:HH':'mm}"));
            }
        }

        if (lot is { LockedFrom: { } locked, LockedUntil: { } unlocked })
            gates.Add(Through([], unlocked, locked, $"{lot.Name} is locked {locked:HH':'mm}–{unlocked:HH':'mm}"));
        return gates;

        ClockGate Through(IEnumerable<Leg> still, LocalTime opens, LocalTime closes, string words)
        {
            var rides = still.Where(leg => leg.Kind != LegKind.Walk).Sum(leg => leg.Minutes ?? 0);
            var onFoot = still.Where(leg => leg.Kind == LegKind.Walk).Sum(leg => leg.Minutes ?? 0);
            return new(opens, closes, rides, Math.Max(onFoot, stance.WalkInMinutes ?? 0), Math.Max(onFoot, stance.WalkOutMinutes ?? 0), words);
        }
    }

    private static string Hours(Leg leg)
    {
        var clock = (leg.OpensAt, leg.ClosesAt) switch
        {
            ({ } opens, { } closes) => $"open {opens:HH':'mm}–{closes:HH':'mm}",
            ({ } opens, null) => $"opens {opens:HH':'mm}",
            (null, { } closes) => $"shuts {closes:HH':'mm}",
            _ => "",
        };
        return leg.HoursText is { } text ? $"{clock} ({text})" : clock;
    }
}
