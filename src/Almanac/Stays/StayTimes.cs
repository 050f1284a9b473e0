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
        var stays = plan.IsWaveExposed ? WatchRules.Stays(plan, there, tide, light) : there.Select(one => Unwatched(plan, one));
        return [.. stays.OfType<Stay>().Where(stay => stay.Leave > first && stay.Usable.Start < last)];
    }

    /// <summary>
    /// Stretches in which one can work at the dark stance of a stance where waves come: while the sun is below −6 degrees, under
    /// the rules of the way alone. They never count as time on the ledge.
    /// </summary>
    /// <param name="plan">The stance and the way there; none without a dark stance.</param>
    /// <param name="tide">As for the stays.</param>
    /// <param name="from">Beginning of the span.</param>
    /// <param name="to">End of the span.</param>
    /// <param name="sun">As for the stays.</param>
    public static IReadOnlyList<Interval> AtDarkStance(StayPlan plan, TideCurve? tide, Instant from, Instant to, SunEphemeris sun)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!plan.IsWaveExposed || plan.DarkStance is not { } between) return [];
        List<Stretch> there = [.. Between(plan.ToDarkStance(between), tide, from, to, sun).Select(stay => stay.Usable)];
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
            there = Presence.Both(there, TideRules.AtLedge(plan, ledge, tide!, light));
        for (var i = 0; i < plan.ClockGates.Count; i++)
            there = Presence.Both(there, ClockRules.AtGate(plan, i, begin, end, light));
        if (!plan.KnownInTheDark)
            there = Presence.Both(there, ClockRules.ByDaylight(plan, light));
        return there;
    }

    private static Stay? Unwatched(StayPlan plan, in Presence there)
    {
        var (from, turnBack) = (there.First + StayPlan.SetUpMinutes * Stretch.Minute, RoundedDown(there.Leave));
        return IsLongEnough(from, turnBack) ? new Stay(plan, new Stretch(from, turnBack), there, turnBack, RoundedDown(there.NextLeave)) : null;
    }

    /// <summary>Less than a minute is no minute.</summary>
    internal static bool IsLongEnough(double from, double to) => to - from >= Stretch.Minute;

    internal static double RoundedDown(double leave) =>
        double.IsFinite(leave) ? Math.Floor(leave * PerFiveMinutes + Grain) / PerFiveMinutes : leave;
}
