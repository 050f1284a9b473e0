using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>A stay's bounds in words ready to print.</summary>
public static class StayWords
{
    public const string InTheDark = "the way is not known in the dark";
    public const string AtTheLatest = " at the latest, waves not counted";
    public const string NoWatchPlace = "no place to watch the sea from is recorded, and nobody goes down unwatched";
    public const string IfWatched = "only if watched before dusk and not left since";
    public const string AtDarkStance = "at the dark stance, not on the ledge";

    /// <summary>When to leave and why; null where nothing calls one back within a day of the window.</summary>
    public static string? TurnBack(Stay stay, Instant windowEnd, DateTimeZone zone, bool isAtTheLatest) => stay.TurnBackFrom(windowEnd) is { } time
        ? $"turn back {time.Clock(zone)}{(isAtTheLatest ? AtTheLatest : "")}: {Closing(stay, zone)}" : null;

    /// <summary>What ends a stay.</summary>
    public static string Closing(Stay stay, DateTimeZone zone) =>
        Closing(stay.Closing, stay.ClosesBy, stay.ClosesAt, stay.Plan, zone);

    /// <summary>What would end it next, with the time to turn back for it; null where nothing would.</summary>
    public static string? Next(Stay stay, DateTimeZone zone) => stay is { NextTurnBack: { } time } && stay.NextClosing != StayCause.None
        ? $"next to bind: {time.Clock(zone)}, {Closing(stay.NextClosing, stay.NextClosesBy, stay.NextClosesAt, stay.Plan, zone)}"
        : null;

    /// <summary>What holds a stay up.</summary>
    public static string Opening(Stay stay, DateTimeZone zone) => stay.Opening switch
    {
        StayCause.Ledge => $"tide above your ledge until {Time(stay.OpensAt, zone)}",
        StayCause.TideGate => $"{stay.OpensBy} is closed by the tide until {Time(stay.OpensAt, zone)}",
        StayCause.ClockGate => $"{stay.OpensBy} until {Time(stay.OpensAt, zone)}",
        StayCause.Dark => InTheDark,
        StayCause.Watch => $"half an hour of watching by light comes first: from {Time(stay.From, zone)}",
        StayCause.EndOfTide => $"the tide is not known before {Time(stay.OpensAt, zone)}",
        _ => $"one cannot be there before {Time(stay.From, zone)}",
    };

    /// <summary>The tide of a window, for example "tide falling from 2.3 m to 1.6 m".</summary>
    public static string? Tide(TideCurve? tide, LightRun window)
    {
        if (tide is null || window.Start < tide.From || window.End > tide.To)
            return null;
        var (first, last) = (tide.MetresAt(window.Start), tide.MetresAt(window.End));
        var turn = tide.Extremes.Where(one => one.Time > window.Start && one.Time < window.End).Cast<TideExtreme?>().FirstOrDefault();
        return turn is { } water ? $"{TideWords.Of(water.IsHigh)} {TideWords.Metres(water.Metres)} in it"
            : $"tide {(last > first ? "rising" : "falling")} from {TideWords.Metres(first)} to {TideWords.Metres(last)}";
    }

    private static string Closing(StayCause cause, string? by, Instant? at, StayPlan plan, DateTimeZone zone) => cause switch
    {
        StayCause.Ledge => $"tide above your ledge from {Time(at, zone)} ({Allowance(plan)} taken off its limit)",
        StayCause.TideGate => $"{by} closes {Time(at, zone)} with {Allowance(plan)} of allowance",
        StayCause.ClockGate => $"{by} from {Time(at, zone)}",
        StayCause.Dark => InTheDark,
        StayCause.Watch => $"what was watched by daylight no longer holds from {Time(at, zone)}",
        StayCause.EndOfTide => $"the tide is not known after {Time(at, zone)}",
        _ => "nothing binds",
    };

    private static string Allowance(StayPlan plan) => TideWords.Metres(plan.Allowance.TideMetres);

    private static string Time(Instant? time, DateTimeZone zone) => time?.Clock(zone) ?? "then";
}
