using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>What on the way opens and shuts by the clock every day: a leg with hours, a ferry, a car park that is locked.</summary>
/// <param name="Opens">From then on one gets through. A gate that shuts at or before it shuts on the next day.</param>
/// <param name="RidesAfter">Drive, ferry or bus between it and the walk.</param>
/// <param name="WalkIn">On foot from there to the stance, by daylight.</param>
/// <param name="WalkOut">On foot back, by daylight.</param>
internal sealed record Gate(LocalTime Opens, LocalTime Closes, Duration RidesAfter, Duration WalkIn, Duration WalkOut, string Words)
{
    /// <summary>Everything on a way in, with the car left in one car park, that binds by the clock.</summary>
    public static IReadOnlyList<Gate> Of(AccessRoute? route, ParkingArea? lot, VantagePoint stance)
    {
        List<Gate> gates = [];
        var legs = route?.Legs ?? [];
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

        Gate Through(IEnumerable<Leg> still, LocalTime opens, LocalTime closes, string words)
        {
            var rides = still.Where(leg => leg.Kind != LegKind.Walk).Sum(leg => leg.Minutes ?? 0);
            var onFoot = still.Where(leg => leg.Kind == LegKind.Walk).Sum(leg => leg.Minutes ?? 0);
            return new(opens, closes, Duration.FromMinutes(rides), Duration.FromMinutes(Math.Max(onFoot, stance.WalkInMinutes ?? 0)),
                Duration.FromMinutes(Math.Max(onFoot, stance.WalkOutMinutes ?? 0)), words);
        }
    }

    /// <summary>Stretches in which one can be on the stance, from the day before a session to the day after it.</summary>
    public IEnumerable<Interval> OnStance(Session session, DateTimeZone zone, WayLight light)
    {
        var last = session.End.InZone(zone).Date.PlusDays(1);
        for (var date = session.Start.InZone(zone).Date.PlusDays(-1); Opens != Closes && date <= last; date = date.PlusDays(1))
        {
            var opening = Clock(date, Opens);
            var closing = Clock(Closes <= Opens ? date.PlusDays(1) : date, Closes);
            var from = opening + RidesAfter + light.WalkFrom(opening, RidesAfter, WalkIn) + WayHours.SetUp;
            var until = closing - RidesAfter - light.WalkBefore(closing, RidesAfter, WalkOut) - WayHours.Packing;
            if (from < until)
                yield return new(from, until);
        }

        Instant Clock(LocalDate date, LocalTime time) => date.At(time).InZoneLeniently(zone).ToInstant();
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
