using Foreshore.Almanac.Light;
using Foreshore.Almanac.Tides;
using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// Where waves come to the stance it is watched first, by light, from the watch place. What was watched holds while it is light
/// and for some hours into the dark, less on a rising tide. All margins are common practice, no source.
/// </summary>
internal static class WatchRules
{
    /// <summary>So long after civil dusk a watch still holds, hours.</summary>
    internal const double HoursIntoTheDark = 3;

    /// <summary>A watch holds no longer in the dark once the tide stands so much above its height then, metres.</summary>
    internal const double RiseMetres = 1;

    /// <summary>
    /// A stay for each stretch of light in which one can watch and go down. Its minutes until the sun passes −12 degrees belong
    /// to that dusk; those after it, to the end of the watch, are told apart, for they hold only for somebody who has stayed.
    /// </summary>
    internal static IEnumerable<Stay?> Stays(StayPlan plan, IReadOnlyList<Presence> there, TideCurve? tide, WalkLight light)
    {
        if (plan.WatchPlace is not { } toStance) yield break;
        var toWatch = light.ToWatch(plan.WatchesFromMinusNine);
        var (twilights, highSun) = (light.WithTwilight(), light.HighSun());
        foreach (var one in there)
        {
            for (var i = 0; i < toWatch.Count; i++)
            {
                var lit = toWatch[i];
                if (lit.Start >= one.Leave) break;
                var begin = Math.Max(one.Arrival, lit.Start);
                var done = begin + StayPlan.WatchMinutes * Stretch.Minute;
                // Nobody goes down to wet rock in the dark: one is on the stance by dusk, and then may stay.
                var onStance = Math.Max(light.ArrivalAfter(done, 0, toStance, plan.Party), one.SetUp);
                if (onStance > lit.End) continue;

                var dusk = light.Lit.LastStartingBy(lit.End) is { } civil && civil.End > lit.Start ? Math.Min(civil.End, lit.End) : lit.End;
                // The dusk session begins as the sun passes +10; whoever comes for it watches within this of its first minute.
                var evening = highSun.LastStartingBy(dusk)?.End is { } low && low > lit.Start && low < dusk
                    ? low - (StayPlan.WatchMinutes + StayPlan.WatchedSetUpMinutes) * Stretch.Minute - (light.ArrivalAfter(low, 0, toStance, plan.Party) - low) : lit.Start;
                var held = HeldUntil(tide, Math.Max(lit.Start, evening), dusk, dusk + HoursIntoTheDark / 24);
                if (i + 1 < toWatch.Count) held = Math.Min(held, toWatch[i + 1].Start);
                var night = twilights.LastStartingBy(dusk)?.End ?? double.PositiveInfinity;

                var stay = one with { Opening = lit.Start > one.First ? new StayBound(StayCause.Watch, lit.Start) : one.Opening };
                if (held < one.Leave)
                    stay = stay with { Leave = held, Closing = new StayBound(StayCause.Watch, held), NextLeave = one.Leave, NextClosing = one.Closing };
                yield return Of(plan, stay, new Stretch(begin, done), onStance + StayPlan.WatchedSetUpMinutes * Stretch.Minute, night);
            }
        }
    }

    /// <summary>
    /// Until when a watch made in the evening holds. The lowest tide from the first watch that serves the dusk to the last light
    /// counts as the height it was watched at: one time for the whole evening, and no watch of it allows less. It does not hang on
    /// the walk in, or a longer walk would put turn back off. Where the tide is not known nothing holds into the dark.
    /// </summary>
    private static double HeldUntil(TideCurve? tide, double begin, double dusk, double latest)
    {
        if (tide is null) return dusk;
        var (from, to) = (JulianDay.DaysFromJ2000(tide.From), JulianDay.DaysFromJ2000(tide.To));
        if (begin < from || latest > to) return dusk;
        var lowest = Math.Min(tide.MetresAt(JulianDay.FromDays(begin)), tide.MetresAt(JulianDay.FromDays(dusk)));
        foreach (var turn in tide.Extremes)
            if (!turn.IsHigh && JulianDay.DaysFromJ2000(turn.Time) is var low && low > begin && low < dusk) lowest = Math.Min(lowest, turn.Metres);
        if (tide.MetresAt(JulianDay.FromDays(dusk)) > lowest + RiseMetres) return dusk;
        foreach (var above in Spans.Of(tide.Above(lowest + RiseMetres)))
            if (above.End > dusk) return Math.Clamp(above.Start, dusk, latest);
        return latest;
    }

    private static Stay? Of(StayPlan plan, in Presence there, Stretch watch, double from, double night)
    {
        var turnBack = StayTimes.RoundedDown(there.Leave);
        var usable = new Stretch(from, Math.Min(turnBack, night));
        if (!StayTimes.IsLongEnough(usable.Start, usable.End)) return null;
        return new Stay(plan, usable, there, turnBack, StayTimes.RoundedDown(there.NextLeave))
        {
            Watching = watch,
            OnlyIfWatched = StayTimes.IsLongEnough(night, turnBack) ? new Stretch(night, turnBack) : null,
        };
    }
}
