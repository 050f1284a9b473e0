using Foreshore.Almanac.Light;
using Foreshore.Almanac.Time;
using NodaTime;
using NodaTime.TimeZones;

namespace Foreshore.Almanac.Stays;

/// <summary>What gates, sailings and daylight leave of a day.</summary>
internal static class ClockRules
{
    // When the clock is put on or back: a time that it skips is the moment of the change, and of one that it shows twice the
    // later opens and the earlier shuts.
    private static readonly ZoneLocalMappingResolver Opening = Resolvers.CreateMappingResolver(Resolvers.ReturnLater, Resolvers.ReturnStartOfIntervalAfter);
    private static readonly ZoneLocalMappingResolver Closing = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);

    /// <summary>Every day's opening of a gate: walked in after it, back through it, packed, before it shuts. One that opens as it shuts is never open.</summary>
    internal static List<Presence> AtGate(StayPlan plan, int index, double from, double to, WalkLight light)
    {
        var gate = plan.ClockGates[index];
        var found = new List<Presence>();
        if (gate.Opens == gate.Closes) return found;
        var last = JulianDay.FromDays(to).InZone(plan.Zone).Date.PlusDays(1);
        for (var date = JulianDay.FromDays(from).InZone(plan.Zone).Date.PlusDays(-1); date <= last; date = date.PlusDays(1))
        {
            double opens = Clock(date, gate.Opens, Opening), closes = Clock(gate.Closes <= gate.Opens ? date.PlusDays(1) : date, gate.Closes, Closing);
            var arrival = light.ArrivalAfter(opens, gate.RideMinutes, gate.WalkInMinutes, plan.Party);
            var leave = light.LeaveBefore(closes, gate.RideMinutes, gate.WalkOutMinutes, plan.Party) - plan.Party.PackingMinutes * Stretch.Minute;
            if (arrival < leave)
                found.Add(new Presence(arrival, double.NegativeInfinity, leave, new StayBound(StayCause.ClockGate, opens, index), new StayBound(StayCause.ClockGate, closes, index)));
        }

        return found;

        double Clock(LocalDate date, LocalTime time, ZoneLocalMappingResolver resolver) => JulianDay.DaysFromJ2000(date.At(time).InZone(plan.Zone, resolver).ToInstant());
    }

    /// <summary>A way not known in the dark is neither walked in before civil dawn nor out after civil dusk.</summary>
    internal static List<Presence> ByDaylight(StayPlan plan, WalkLight light)
    {
        var found = new List<Presence>();
        foreach (var lit in light.Lit)
        {
            var factor = plan.Party.Factor(isDark: false) * Stretch.Minute;
            var (arrival, leave) = (lit.Start + (plan.WalkInMinutes ?? 0) * factor, lit.End - (plan.WalkOutMinutes ?? 0) * factor - plan.Party.PackingMinutes * Stretch.Minute);
            if (arrival < leave)
                found.Add(new Presence(arrival, double.NegativeInfinity, leave, new StayBound(StayCause.Dark, lit.Start), new StayBound(StayCause.Dark, lit.End)));
        }

        return found;
    }
}
