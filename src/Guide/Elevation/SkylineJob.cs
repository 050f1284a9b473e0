using System.Globalization;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Elevation;

public enum SkylineJobState { Waiting, Running, Done, Failed }

/// <summary>A skyline to be computed for a vantage point, and what became of it. The newest one counts.</summary>
public sealed class SkylineJob
{
    public const string Interrupted = "The site was stopped before the skyline was ready. Nothing was changed; start it again.";

    private SkylineJob() { }

    public SkylineJob(int vantagePointId, bool outsideIsSea, Instant askedAt) =>
        (VantagePointId, OutsideIsSea, AskedAt) = (vantagePointId, outsideIsSea, askedAt);

    public int Id { get; private set; }

    public int VantagePointId { get; private set; }

    /// <summary>Ground outside all files counts as open sea.</summary>
    public bool OutsideIsSea { get; private set; }

    public Instant AskedAt { get; private set; }

    public SkylineJobState State { get; private set; }

    /// <summary>From 0 to 100.</summary>
    public int PercentDone { get; private set; }

    /// <summary>How it ended; null until then.</summary>
    public string? Outcome { get; private set; }

    public bool IsOpen => State is SkylineJobState.Waiting or SkylineJobState.Running;

    /// <summary>For example "working, 40 per cent of the circle done".</summary>
    public string Words => State switch
    {
        SkylineJobState.Waiting => "waiting for its turn",
        SkylineJobState.Running => string.Create(CultureInfo.InvariantCulture, $"working, {PercentDone} per cent of the circle done"),
        SkylineJobState.Done => $"done. {Outcome}",
        _ => $"not done. {Outcome}",
    };

    public void Start() => State = SkylineJobState.Running;

    public void Finish(string outcome) => (State, PercentDone, Outcome) = (SkylineJobState.Done, 100, Require.Text(outcome, 600, "The outcome"));

    public void Fail(string why) => (State, Outcome) = (SkylineJobState.Failed, Require.Text(why, 600, "The reason"));
}
