using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>The light of one session at one stance, cut to the minutes in which one can be there.</summary>
/// <param name="Windows">Runs of the wanted light that can be used, in order.</param>
/// <param name="Light">Runs of the wanted light whether or not one can be there, in order.</param>
/// <param name="Possible">Wanted lights that can't be computed yet and that the sun does not rule out.</param>
/// <param name="Lost">Why light that exists can't be used, or null.</param>
/// <param name="TurnBack">When one has to leave the stance, or null: nothing bounds it.</param>
public sealed record SessionLight(
    IReadOnlyList<LightRun> Windows, IReadOnlyList<LightRun> Light, IReadOnlyList<WantedLight> Possible, string? Lost, Instant? TurnBack = null);

/// <summary>What is known of a stance on one date besides its light, each part in words ready to print.</summary>
/// <param name="Stops">Closures, severe notes about water, rockfall or the way back, a cliff's foot too near.</param>
/// <param name="NoWayIn">Why there is no way in that the club may recommend, or null.</param>
/// <param name="NotKnown">Limits, wishes and reach of the water that no value answers yet.</param>
/// <param name="Doubts">Severe notes of other kinds; an edge within 5 m while gusts are not known.</param>
/// <param name="Remarks">Said, but lowering nothing.</param>
public sealed record StanceFacts(
    IReadOnlyList<string> Stops, string? NoWayIn, IReadOnlyList<string> NotKnown, IReadOnlyList<string> Doubts, IReadOnlyList<string> Remarks);

/// <summary>A verdict with its window and its reasons, the weightiest first.</summary>
public sealed record Judgement(Verdict Verdict, LightRun? Window, IReadOnlyList<string> Reasons)
{
    public const string NoLight = "no wanted light";

    /// <summary>A window under this is borderline: common practice, no source.</summary>
    public static readonly Duration ShortWindow = Duration.FromMinutes(20);

    /// <summary>A window that ends so near to turn back is borderline: common practice, no source.</summary>
    public static readonly Duration NearTurnBack = Duration.FromMinutes(15);

    /// <summary>The first verdict that holds: keep off, does not suit, not judged, borderline, suits.</summary>
    public static Judgement Of(StanceFacts stance, SessionLight light)
    {
        var window = Best(light);
        if (stance.Stops.Count > 0)
            return new(Verdict.KeepOff, null, [.. stance.Stops]);

        if (stance.NoWayIn is { } noWayIn)
            return new(Verdict.DoesNotSuit, null, [noWayIn]);

        if (window is null && light.Possible.Count == 0)
            return new(Verdict.DoesNotSuit, null, [light.Light.Count > 0 && light.Lost is { } lost ? lost : NoLight]);

        var unknown = Unknown(stance, light, window);
        if (unknown.Count > 0)
            return new(Verdict.NotJudged, window, [.. unknown, .. stance.Doubts, .. stance.Remarks]);

        List<string> doubts = [.. Doubts(window!.Value, light.TurnBack), .. stance.Doubts];
        return doubts.Count > 0
            ? new(Verdict.Borderline, window, [.. doubts, .. stance.Remarks])
            : new(Verdict.Suits, window, stance.Remarks);
    }

    private static List<string> Unknown(StanceFacts stance, SessionLight light, LightRun? window)
    {
        List<string> unknown = [.. stance.NotKnown];
        if (window is null)
            unknown.Add($"{Words(light.Possible)} not computed yet");
        return unknown;
    }

    private static IEnumerable<string> Doubts(LightRun window, Instant? turnBack)
    {
        if (window.Length < ShortWindow)
            yield return $"only {Math.Floor(window.Length.TotalMinutes):F0} min";
        if (turnBack - window.End < NearTurnBack)
            yield return $"ends within {NearTurnBack.TotalMinutes:F0} min of turn back";
    }

    /// <summary>The longest window without a doubt of its own, else the longest.</summary>
    private static LightRun? Best(SessionLight light)
    {
        var byLength = light.Windows.OrderByDescending(window => window.Length).ToList();
        return byLength.Count == 0 ? null
            : byLength.Where(window => !Doubts(window, light.TurnBack).Any()).Cast<LightRun?>().FirstOrDefault() ?? byLength[0];
    }

    private static string Words(IReadOnlyList<WantedLight> lights) =>
        string.Join(", ", lights.Select(light => LightTable.Of(light).Name));
}
