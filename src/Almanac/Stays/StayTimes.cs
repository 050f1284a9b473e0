using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Tides;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// When one can be at a stance, by one way. Each rule gives stretches of its own; what they leave together is a stay. All
/// margins are common practice, no source, unless said otherwise where they stand.
/// </summary>
public static class StayTimes
{
    // A walk, a gate or a watch of a neighbouring day reaches no farther than this into the span.
    private const double Beyond = 2;
    private const double PerFiveMinutes = 288;

    // Turn back is rounded down; a third of a millisecond is the grain of a day count's arithmetic, not time in hand.
    private const double Grain = 1e-6;

    /// <summary>
    /// Every stay that touches a span of time, in order. Where waves come to the stance and there is no watch place there is
    /// none; beyond what is known of the tide there is none; and none where a walk that decides is not timed.
    /// </summary>
    /// <param name="plan">The stance and the way there.</param>
    /// <param name="tide">The tide, on the datum of the plan's heights; may be null only for a plan without tide limits.</param>
    /// <param name="from">Beginning of the span.</param>
    /// <param name="to">End of the span.</param>
    /// <param name="sun">Covers the span; two days more at either end where it can.</param>
    /// <exception cref="ArgumentNullException">The plan has tide limits and there is no tide.</exception>
    public static IReadOnlyList<Stay> Between(StayPlan plan, TideCurve? tide, Instant from, Instant to, SunEphemeris sun)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(sun);
        if (plan.NeedsTide) ArgumentNullException.ThrowIfNull(tide);
        if (plan.LacksWalk) return [];
        double first = JulianDay.DaysFromJ2000(from), last = JulianDay.DaysFromJ2000(to);
        var (begin, end) = (Math.Max(first - Beyond, JulianDay.DaysFromJ2000(sun.From)), Math.Min(last + Beyond, JulianDay.DaysFromJ2000(sun.To)));
        var light = new WalkLight(plan.Position, sun, begin, end);
        var there = There(plan, tide, light, begin, end);
        var stays = plan.IsWaveExposed ? Watched(plan, there, light) : there.Select(one => Unwatched(plan, one));
        return [.. stays.OfType<Stay>().Where(stay => stay.Usable.End > first && stay.Usable.Start < last)];
    }

    /// <summary>
    /// Stretches in which one can work at the dark stance of a stance where waves come: while the sun is below −6 degrees, under
    /// the rules of the way alone. They count for nothing but themselves.
    /// </summary>
    /// <param name="plan">The stance and the way there; none without a dark stance.</param>
    /// <param name="tide">As for the stays.</param>
    /// <param name="from">Beginning of the span.</param>
    /// <param name="to">End of the span.</param>
    /// <param name="sun">As for the stays.</param>
    public static IReadOnlyList<Interval> AtDarkStance(StayPlan plan, TideCurve? tide, Instant from, Instant to, SunEphemeris sun)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!plan.IsWaveExposed || plan.DarkStanceMinutes is not { } minutes) return [];
        List<Stretch> there = [.. Between(plan.ToDarkStance(minutes), tide, from, to, sun).Select(stay => stay.Usable)];
        double first = JulianDay.DaysFromJ2000(from), last = JulianDay.DaysFromJ2000(to);
        var lit = new WalkLight(plan.Position, sun, first, last).Lit;
        return [.. Stretch.Intersection(Stretch.Without([new(first, last)], lit), there).Select(Spans.AsInterval)];
    }

    /// <summary>
    /// When the tide, allowance taken off, leaves the ledge and every crossing of the way open: outside it a limit forbids each
    /// minute, whoever is there and whatever the light. Gates, walks and watching are left out.
    /// </summary>
    /// <param name="plan">The stance and the way there.</param>
    /// <param name="tide">As for the stays.</param>
    /// <param name="from">Beginning of the span; what the curve does not cover of it counts as closed.</param>
    /// <param name="to">End of the span.</param>
    public static IReadOnlyList<Interval> OpenByTide(StayPlan plan, TideCurve? tide, Instant from, Instant to)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<Stretch> open = [new(JulianDay.DaysFromJ2000(from), JulianDay.DaysFromJ2000(to))];
        if (!plan.NeedsTide) return [.. open.Select(Spans.AsInterval)];
        ArgumentNullException.ThrowIfNull(tide);
        foreach (var gate in plan.TideGates)
            open = Stretch.Intersection(open, Spans.Of(tide.Below(plan.ClosesAt(gate))));
        if (plan.LedgeLostAt is { } ledge)
            open = Stretch.Intersection(open, Spans.Of(tide.Below(ledge)));
        return [.. open.Select(Spans.AsInterval)];
    }

    private static IReadOnlyList<Presence> There(StayPlan plan, TideCurve? tide, WalkLight light, double begin, double end)
    {
        IReadOnlyList<Presence> there = [Presence.Always];
        for (var i = 0; i < plan.TideGates.Count; i++)
            there = Presence.Both(there, TideRules.AtGate(plan, i, tide!, light));
        if (plan.LedgeLostAt is { } ledge)
            there = Presence.Both(there, TideRules.AtLedge(plan, ledge, tide!));
        for (var i = 0; i < plan.ClockGates.Count; i++)
            there = Presence.Both(there, ClockRules.AtGate(plan, i, begin, end, light));
        if (!plan.KnownInTheDark)
            there = Presence.Both(there, ClockRules.ByDaylight(plan, light));
        return there;
    }

    private static Stay? Unwatched(StayPlan plan, in Presence there) =>
        Of(plan, there, null, there.First + StayPlan.SetUpMinutes * Stretch.Minute);

    /// <summary>
    /// In each stretch of daylight one can watch and go down; what was watched holds through the night after it, if nobody
    /// leaves, and no longer.
    /// </summary>
    private static IEnumerable<Stay?> Watched(StayPlan plan, IReadOnlyList<Presence> there, WalkLight light)
    {
        if (plan.WatchPlaceMinutes is not { } toStance) yield break;
        foreach (var one in there)
        {
            for (var i = 0; i < light.Lit.Count; i++)
            {
                var lit = light.Lit[i];
                if (lit.Start >= one.Leave) break;
                var begin = Math.Max(one.Arrival, lit.Start);
                var done = begin + StayPlan.WatchMinutes * Stretch.Minute;
                // Nobody goes down to wet rock in the dark: the kit is being set up by dusk, and then one may stay.
                var onStance = Math.Max(light.ArrivalAfter(done, 0, toStance, plan.Party), one.SetUp);
                if (onStance > lit.End) continue;
                var opening = lit.Start > one.First ? new StayBound(StayCause.Watch, lit.Start) : one.Opening;
                var stay = one with { Opening = opening };
                if (i + 1 < light.Lit.Count && light.Lit[i + 1].Start is var dawn && dawn < one.Leave)
                    stay = stay with { Leave = dawn, Closing = new StayBound(StayCause.Watch, dawn), NextLeave = one.Leave, NextClosing = one.Closing };
                yield return Of(plan, stay, new Stretch(begin, done), onStance + StayPlan.SetUpMinutes * Stretch.Minute);
            }
        }
    }

    private static Stay? Of(StayPlan plan, in Presence there, Stretch? watch, double from)
    {
        var turnBack = RoundedDown(there.Leave);
        // Less than a minute is no minute.
        return turnBack - from >= Stretch.Minute ? new Stay(plan, new Stretch(from, turnBack), there, RoundedDown(there.NextLeave), watch) : null;
    }

    internal static double RoundedDown(double leave) =>
        double.IsFinite(leave) ? Math.Floor(leave * PerFiveMinutes + Grain) / PerFiveMinutes : leave;
}
