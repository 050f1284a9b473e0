using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Access;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>A run of wanted light in which one can be there, and the stay that holds it.</summary>
/// <param name="TurnBack">When one has to leave the stance, or null: nothing bounds it.</param>
/// <param name="Stay">Null where the way was not reckoned.</param>
public readonly record struct UsableWindow(LightRun Run, Instant? TurnBack = null, Stay? Stay = null)
{
    public Duration Length => Run.Length;
}

/// <summary>The light of one session at one stance by one way, cut to the minutes in which one can be there.</summary>
/// <param name="Windows">Runs of the wanted light that can be used, in order.</param>
/// <param name="Light">Runs of the wanted light whether or not one can be there, in order.</param>
/// <param name="Possible">Wanted lights that can't be computed yet and that sun, tide and way do not rule out.</param>
/// <param name="Lost">Why light that exists can't be used, or null.</param>
public sealed record SessionLight(
    IReadOnlyList<UsableWindow> Windows, IReadOnlyList<LightRun> Light, IReadOnlyList<WantedLight> Possible, string? Lost)
{
    /// <summary>A tide limit, less its allowance, forbids each minute of the light that there is.</summary>
    public bool IsForbidden { get; init; }

    /// <summary>Nobody can watch the sea there first, so that no minute counts; that is a gap in the record, not an answer.</summary>
    public bool CannotBeWatched { get; init; }

    /// <summary>What tide and ground were asked, and the stays; null where nothing was reckoned.</summary>
    public UsableTime? Usable { get; init; }

    /// <summary>The light of a session, cut.</summary>
    /// <param name="answer">The wanted light of the session.</param>
    /// <param name="span">The session.</param>
    /// <param name="way">The way.</param>
    /// <param name="usable">What its stays and the picture's wishes leave, of the session and a day about it at least.</param>
    /// <param name="tide">Null where it is not known over all of the session.</param>
    /// <param name="zone">The place's zone.</param>
    internal static SessionLight Of(LightAnswer answer, Session span, Way way, UsableTime usable, TideCurve? tide, DateTimeZone zone)
    {
        List<UsableWindow> windows = [.. usable.Cut(answer.Runs).Select(Window)];
        IReadOnlyList<WantedLight> possible = [.. usable.Cut(answer.Possible).Select(run => run.Light).Distinct()];
        var light = new SessionLight(windows, answer.Runs, possible, null) { Usable = usable };
        if (windows.Count > 0 || (answer.Runs.Count == 0 && answer.Possible.Count == 0))
            return light;

        var all = answer.Runs.Concat(answer.Possible).ToList();
        var open = StayTimes.OpenByTide(way.Plan, tide, span.Start, span.End);
        return light with
        {
            IsForbidden = way.Plan.NeedsTide && answer.Runs.Count > 0
                && !answer.Runs.Any(run => open.Any(one => one.Start < run.End && one.End > run.Start)),
            CannotBeWatched = way.Plan is { IsWaveExposed: true, WatchPlaceMinutes: null },
            Lost = Why(all, usable, way, zone),
        };

        UsableWindow Window(LightRun run)
        {
            var stay = usable.StayAt(run.Start);
            return new(run, stay?.TurnBack, stay);
        }
    }

    private static string Why(List<LightRun> light, UsableTime usable, Way way, DateTimeZone zone)
    {
        var stays = usable.Stays;
        if (way.Plan is { IsWaveExposed: true, WatchPlaceMinutes: null })
            return StayWords.NoWatchPlace;
        if (usable.CutToWish(light).Count == 0)
            return "tide or ground are not as wished while the light lasts";

        var (first, last) = (light.Min(run => run.Start), light.Max(run => run.End));
        // What is left between two stays is lost by the nearer of their bounds.
        var before = stays.Where(stay => stay.TurnBack is { } end && end < last).MaxBy(stay => stay.TurnBack);
        var after = stays.Where(stay => stay.From is { } start && start > first).MinBy(stay => stay.From);
        var sinceEnd = before?.TurnBack is { } turnBack ? Duration.Max(Duration.Zero, first - turnBack) : Duration.MaxValue;
        var toStart = after?.From is { } from ? Duration.Max(Duration.Zero, from - last) : Duration.MaxValue;
        return (before, after) switch
        {
            (null, null) => way.Plan.KnownInTheDark ? "no time is left for the way there and back" : StayWords.InTheDark,
            ({ } ends, _) when sinceEnd <= toStart => ends.Closing is StayCause.ClockGate or StayCause.Dark
                ? StayWords.Closing(ends, zone) : $"turn back {ends.TurnBack!.Value.Clock(zone)}: {StayWords.Closing(ends, zone)}",
            (_, { } begins) => StayWords.Opening(begins, zone),
            _ => "no time is left for the way there and back",
        };
    }
}
