using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>How a window is reached and left: what a session's strip brackets.</summary>
/// <param name="WalkIn">The latest that arrives by then; null: nobody has timed it.</param>
/// <param name="Watch">Watching from the watch place; null where none is due.</param>
/// <param name="ArriveBy">
/// When to have arrived at the stance, or at the watch place where watching is due: the window's start less set-up, the way down
/// and the watching, rounded down to five minutes, yet no earlier than crossings, gates and daylight let one arrive.
/// </param>
/// <param name="WalkOut">Begins at turn back, or with the packing at the window's end where nothing calls one back within the hour after it; null: nobody has timed it.</param>
public sealed record StayItinerary(Interval? WalkIn, Interval? Watch, Instant ArriveBy, Interval? WalkOut)
{
    private static readonly Duration Soon = Duration.FromHours(1);

    /// <summary>The itinerary of a window of a stay.</summary>
    /// <param name="stay">Holds the window.</param>
    /// <param name="window">Both ends set.</param>
    /// <param name="sun">Covers the window and a day either side.</param>
    public static StayItinerary Of(Stay stay, Interval window, SunEphemeris sun)
    {
        ArgumentNullException.ThrowIfNull(stay);
        var plan = stay.Plan;
        double start = JulianDay.DaysFromJ2000(window.Start), end = JulianDay.DaysFromJ2000(window.End);
        var light = new WalkLight(plan.Position, sun, Math.Max(start - 1, JulianDay.DaysFromJ2000(sun.From)), Math.Min(end + 1, JulianDay.DaysFromJ2000(sun.To)));

        var onStance = start - (stay.Watch is null ? StayPlan.SetUpMinutes : StayPlan.WatchedSetUpMinutes) * Stretch.Minute;
        Stretch? watch = null;
        if (stay.Watch is { } first && plan.WatchPlace is { } toStance)
        {
            // One watches right before going down, and is down by dusk: whoever works by night has been there since.
            var done = JulianDay.DaysFromJ2000(first.End);
            var dusk = light.ToWatch(plan.WatchesFromMinusNine).LastStartingBy(done)?.End ?? done;
            var watched = Math.Max(done, light.StartToArriveBy(Math.Min(onStance, dusk), toStance, plan.Party));
            watch = new Stretch(watched - StayPlan.WatchMinutes * Stretch.Minute, watched);
        }

        var arriveBy = StayTimes.RoundedDown(watch?.Start ?? onStance);
        if (stay.Arrival is { } earliest) arriveBy = Math.Max(arriveBy, JulianDay.DaysFromJ2000(earliest));
        var leave = stay.TurnBack is { } turnBack && turnBack <= window.End + Soon ? JulianDay.DaysFromJ2000(turnBack) : end;
        var packed = leave + plan.Party.PackingMinutes * Stretch.Minute;
        return new StayItinerary(
            plan.WalkIn is { } walkIn && light.StartToArriveBy(arriveBy, walkIn, plan.Party) is var setOut
                ? new Stretch(setOut, light.ArrivalFrom(setOut, walkIn, plan.Party)).AsInterval() : null,
            watch?.AsInterval(), Spans.At(arriveBy),
            plan.WalkOut is { } walkOut ? new Stretch(packed, light.ArrivalFrom(packed, walkOut, plan.Party)).AsInterval() : null);
    }
}
