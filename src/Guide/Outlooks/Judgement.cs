using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>What is known of a stance on one date besides its light, each part in words ready to print.</summary>
/// <param name="Stops">Closures, severe notes about water, rockfall or the way back, a cliff's foot too near, a car park under water.</param>
/// <param name="NoWayIn">Why there is no way in that the club may recommend, or null.</param>
/// <param name="NotKnown">Limits, wishes and reach of the water that no value answers yet.</param>
/// <param name="Doubts">Severe notes of other kinds; an edge within 5 m while gusts are not known.</param>
/// <param name="Remarks">Said, but lowering nothing.</param>
public sealed record StanceFacts(
    IReadOnlyList<string> Stops, string? NoWayIn, IReadOnlyList<string> NotKnown, IReadOnlyList<string> Doubts, IReadOnlyList<string> Remarks);

/// <summary>A verdict with its window and its reasons, the weightiest first.</summary>
/// <param name="Chosen">The window it is about, with the stay that holds it; null where there is none, or one keeps off.</param>
public sealed record Judgement(Verdict Verdict, UsableWindow? Chosen, IReadOnlyList<string> Reasons)
{
    public const string NoLight = "no wanted light";

    /// <summary>A window under this, or under twice its light's least length where that is shorter, is borderline: common practice, no source.</summary>
    public static readonly Duration ShortWindow = Duration.FromMinutes(20);

    /// <summary>A window that ends so near to turn back is borderline: common practice, no source.</summary>
    public static readonly Duration NearTurnBack = Duration.FromMinutes(15);

    public LightRun? Window => Chosen?.Run;

    /// <summary>Whether the way it was judged by leaves a window, or can't be judged: another way then never takes its place.</summary>
    public bool HoldsItsPlace => Chosen is not null || Verdict == Verdict.NotJudged;

    /// <summary>The first verdict that holds: keep off, does not suit, not judged, borderline, suits.</summary>
    /// <param name="known">What tide and way say of a window, in words; empty where they say nothing.</param>
    public static Judgement Of(StanceFacts stance, SessionLight light, Func<UsableWindow, IReadOnlyList<string>>? known = null)
    {
        if (stance.Stops.Count > 0)
            return new(Verdict.KeepOff, null, [.. stance.Stops]);
        if (light.IsForbidden)
            return new(Verdict.KeepOff, null, [light.Lost!]);
        if (stance.NoWayIn is { } noWayIn)
            return new(Verdict.DoesNotSuit, null, [noWayIn]);

        var best = Pick(light);
        if (best is null && light.Possible.Count == 0)
            return new(Verdict.DoesNotSuit, null, [light.Lost ?? NoLight, .. light.Apart]);

        var words = best is { } found ? known?.Invoke(found) ?? [] : [];
        var unknown = Unknown(stance, light, best);
        if (unknown.Count > 0)
            return new(Verdict.NotJudged, best, [.. unknown, .. stance.Doubts, .. words, .. light.Apart, .. stance.Remarks]);

        List<string> doubts = [.. Doubts(best!.Value), .. stance.Doubts];
        return doubts.Count > 0
            ? new(Verdict.Borderline, best, [.. doubts, .. words, .. light.Apart, .. stance.Remarks])
            : new(Verdict.Suits, best, [.. words, .. light.Apart, .. stance.Remarks]);
    }

    private static List<string> Unknown(StanceFacts stance, SessionLight light, UsableWindow? best)
    {
        List<string> unknown = [];
        if (best is null)
            unknown.Add($"{Words(light.Possible)} not computed yet");
        unknown.AddRange(stance.NotKnown);
        return unknown;
    }

    private static IEnumerable<string> Doubts(UsableWindow window)
    {
        if (window.Length < Duration.Min(ShortWindow, Duration.FromMinutes(2 * LightTable.Of(window.Run.Light).LeastMinutes)))
            yield return $"only {Math.Floor(window.Length.TotalMinutes):F0} min";
        if (window.TurnBack - window.Run.End < NearTurnBack)
            yield return $"ends within {NearTurnBack.TotalMinutes:F0} min of turn back";
    }

    /// <summary>The longest window without a doubt of its own, else the longest.</summary>
    private static UsableWindow? Pick(SessionLight light)
    {
        var byLength = light.Windows.OrderByDescending(window => window.Length).ToList();
        return byLength.Count == 0 ? null
            : byLength.Where(window => !Doubts(window).Any()).Cast<UsableWindow?>().FirstOrDefault() ?? byLength[0];
    }

    private static string Words(IReadOnlyList<WantedLight> lights) =>
        string.Join(", ", lights.Select(light => LightTable.Of(light).Name));
}
