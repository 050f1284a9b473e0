using Foreshore.Almanac.Light;
using Foreshore.Almanac.Tides;
using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Stays;

/// <summary>What the tide leaves of a day: at crossings and cut-offs, and at the ledge itself, on the rising and the falling tide.</summary>
internal static class TideRules
{
    /// <summary>
    /// Through a crossing one walks in after it has opened, the whole walk, and is back beyond it, packed, with a reserve,
    /// before it closes.
    /// </summary>
    internal static List<Presence> AtGate(StayPlan plan, int index, TideCurve tide, WalkLight light)
    {
        var gate = plan.TideGates[index];
        var beyond = plan.Beyond(gate) ?? 0;
        var found = new List<Presence>();
        foreach (var open in Spans.Of(tide.Below(plan.ClosesAt(gate))))
        {
            var must = open.End - StayPlan.ReserveMinutes * Stretch.Minute;
            var leave = light.LeaveBefore(must, 0, beyond, plan.Party, StayPlan.LeastCutOffFactor) - plan.Party.PackingMinutes * Stretch.Minute;
            Add(found, open, light.ArrivalAfter(open.Start, 0, plan.WalkIn ?? 0, plan.Party), double.NegativeInfinity, leave, tide, StayCause.TideGate, index);
        }

        return found;
    }

    /// <summary>On a ledge one sets up after the tide has fallen below its limit, and is packed and beyond reach of the water, with a reserve, before it is back there.</summary>
    internal static List<Presence> AtLedge(StayPlan plan, double lostAtMetres, TideCurve tide, WalkLight light)
    {
        var found = new List<Presence>();
        foreach (var open in Spans.Of(tide.Below(lostAtMetres)))
        {
            var must = open.End - StayPlan.ReserveMinutes * Stretch.Minute;
            var leave = light.LeaveBefore(must, 0, plan.OffTheLedge ?? 0, plan.Party) - plan.Party.PackingMinutes * Stretch.Minute;
            Add(found, open, double.NegativeInfinity, open.Start, leave, tide, StayCause.Ledge, -1);
        }

        return found;
    }

    private static void Add(List<Presence> found, Stretch open, double arrival, double setUp, double leave, TideCurve tide, StayCause cause, int index)
    {
        if (Math.Max(arrival, setUp) >= leave) return;
        // Where the curve begins or ends the tide is not known to be lower still: it counts as closed there.
        found.Add(new Presence(arrival, setUp, leave,
            new StayBound(open.Start <= JulianDay.DaysFromJ2000(tide.From) ? StayCause.EndOfTide : cause, open.Start, index),
            new StayBound(open.End >= JulianDay.DaysFromJ2000(tide.To) ? StayCause.EndOfTide : cause, open.End, index)));
    }
}
