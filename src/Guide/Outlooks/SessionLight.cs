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

    /// <summary>Windows that are in no verdict, in words: at the dark stance, or for somebody who has watched since before dusk.</summary>
    public IReadOnlyList<string> Apart { get; init; } = [];

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
        var light = new SessionLight(windows, answer.Runs, possible, null) { Apart = IfWatched(answer.Runs, usable, zone) };
        if (windows.Count > 0 || (answer.Runs.Count == 0 && answer.Possible.Count == 0))
            return light;

        var forbidden = answer.Runs.Count > 0 ? Forbidding(answer.Runs, way.Plan, tide, span) : null;
        return light with { IsForbidden = forbidden is not null, Lost = forbidden ?? Why([.. answer.Runs, .. answer.Possible], usable, way, zone) };

        UsableWindow Window(LightRun run)
        {
            var stay = usable.StayAt(run.Start);
            return new(run, stay?.TurnBackFrom(run.End), stay);
        }
    }

    /// <summary>Light after the dusk in which somebody watched, for as long as the watch holds.</summary>
    private static List<string> IfWatched(IReadOnlyList<LightRun> runs, UsableTime usable, DateTimeZone zone) =>
    [
        .. from stay in usable.Stays
           where stay.IfWatched is not null
           from run in runs
           let held = stay.IfWatched!.Value
           let start = Instant.Max(run.Start, held.Start)
           let end = Instant.Min(run.End, held.End)
           where end - start >= Duration.FromMinutes(LightTable.Of(run.Light).LeastMinutes)
           select $"{start.Clock(zone)}–{end.Clock(zone)} {StayWords.IfWatched}",
    ];

    /// <summary>The limit that forbids each minute of the light, in words; null where none does, or the tide is not known.</summary>
    private static string? Forbidding(IReadOnlyList<LightRun> runs, StayPlan plan, TideCurve? tide, Session span)
    {
        if (!plan.NeedsTide || tide is null || !Forbids(plan)) return null;
        if (Forbids(plan with { TideGates = [] })) return "the tide stands over the ledge's limit for as long as the light lasts";
        var gate = plan.TideGates.FirstOrDefault(one => Forbids(plan with { LedgeLimitMetres = null, TideGates = [one] }));
        return gate is not null ? $"the tide closes {gate.Name} for as long as the light lasts" : "the tide leaves no way there and back while the light lasts";

        bool Forbids(StayPlan limits) => limits.NeedsTide
            && StayTimes.OpenByTide(limits, tide, span.Start, span.End) is var open && !runs.Any(run => open.Any(one => one.Start < run.End && one.End > run.Start));
    }

    private static string Why(List<LightRun> light, UsableTime usable, Way way, DateTimeZone zone)
    {
        var stays = usable.Stays;
        if (usable.CutToWish(light).Count == 0)
            return "wrong tide during the light";
        if (way.Plan is { IsWaveExposed: true, WatchPlace: null })
            return StayWords.NoWatchPlace;

        var (first, last) = (light.Min(run => run.Start), light.Max(run => run.End));
        // What is left between two stays is lost by the nearer of their bounds.
        var before = stays.Where(stay => stay.Until is { } end && end < last).MaxBy(stay => stay.Until);
        var after = stays.Where(stay => stay.From is { } start && start > first).MinBy(stay => stay.From);
        var sinceEnd = before?.Until is { } until ? Duration.Max(Duration.Zero, first - until) : Duration.MaxValue;
        var toStart = after?.From is { } from ? Duration.Max(Duration.Zero, from - last) : Duration.MaxValue;
        if (before is { IfWatched: not null } && sinceEnd <= toStart)
            return "the sea cannot be watched in the dark";
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
