using Foreshore.Almanac.Light;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>What gates, sailings and daylight leave of a day.</summary>
internal static class ClockRules
{
    /// <summary>Every opening of a gate: walked in after it, back through it, packed, before it shuts.</summary>
    internal static List<Presence> AtGate(StayPlan plan, int index, double from, double to, WalkLight light)
    {
        var gate = plan.ClockGates[index];
        var found = new List<Presence>();
        foreach (var open in gate.Open)
        {
            var (opens, closes) = Ends(open);
            if (closes <= from || opens >= to) continue;
            var arrival = double.IsFinite(opens) ? light.ArrivalAfter(opens, gate.RideMinutes, gate.WalkIn, plan.Party) : opens;
            var leave = double.IsFinite(closes)
                ? light.LeaveBefore(closes, gate.RideMinutes, gate.WalkOut, plan.Party) - plan.Party.PackingMinutes * Stretch.Minute : closes;
            if (arrival < leave)
                found.Add(new Presence(arrival, double.NegativeInfinity, leave, Bound(opens), Bound(closes)));
        }

        return found;

        StayBound Bound(double days) => double.IsFinite(days) ? new(StayCause.ClockGate, days, index) : new(StayCause.None, days);
    }

    /// <summary>A way not known in the dark is neither walked in before civil dawn nor out after civil dusk.</summary>
    internal static List<Presence> ByDaylight(StayPlan plan, WalkLight light)
    {
        var found = new List<Presence>();
        foreach (var lit in light.Lit)
        {
            var (arrival, leave) = (lit.Start + Minutes(plan.WalkIn ?? 0), lit.End - Minutes(plan.WalkOut ?? 0) - plan.Party.PackingMinutes * Stretch.Minute);
            if (arrival < leave)
                found.Add(new Presence(arrival, double.NegativeInfinity, leave, new StayBound(StayCause.Dark, lit.Start), new StayBound(StayCause.Dark, lit.End)));
        }

        return found;

        double Minutes(Walk walk) => walk.Minutes * plan.Party.Factor(isDark: false, walk.Ground) * Stretch.Minute;
    }

    private static (double Opens, double Closes) Ends(Interval open) => (
        open.HasStart ? JulianDay.DaysFromJ2000(open.Start) : double.NegativeInfinity,
        open.HasEnd ? JulianDay.DaysFromJ2000(open.End) : double.PositiveInfinity);
}
