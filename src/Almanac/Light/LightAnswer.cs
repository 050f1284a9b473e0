using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>What must be said about the skyline that an answer was computed over.</summary>
[Flags]
public enum SkylineCautions
{
    /// <summary>Nothing: the skyline is recorded all round, or no wanted light looks at it.</summary>
    None = 0,

    /// <summary>Nothing is recorded; a sea horizon was assumed all round.</summary>
    SeaAssumed = 1,

    /// <summary>A piece is unknown and was counted as level.</summary>
    UnknownCountedAsLevel = 2,
}

/// <summary>When the wanted light holds over a stretch of time.</summary>
/// <param name="Runs">Each light's own runs, by start, then by light; each at least as long as its light asks.</param>
/// <param name="Possible">
/// The same for lights whose other conditions can't be computed: stretches where the sun's part holds. They may hold, or not.
/// </param>
/// <param name="Skyline">What must be said about the skyline.</param>
public sealed record LightAnswer(IReadOnlyList<LightRun> Runs, IReadOnlyList<LightRun> Possible, SkylineCautions Skyline)
{
    /// <summary>The runs of all lights together: apart, by start.</summary>
    public IReadOnlyList<Interval> Union { get; } = LightUnion.Of(Runs);

    /// <summary>
    /// Wanted lights that may hold but can't be judged. A light that the sun alone rules out throughout is not among them:
    /// it does not hold.
    /// </summary>
    public IReadOnlyList<WantedLight> Unknown { get; } = [.. Possible.Select(run => run.Light).Distinct().Order()];

    /// <summary>The part that falls into a stretch of time: runs are cut at its ends, and what is left must still be long enough.</summary>
    /// <param name="stretch">Both ends set.</param>
    public LightAnswer During(Interval stretch) => new(Cut(Runs, stretch), Cut(Possible, stretch), Skyline);

    internal static LightRun[] Cut(IEnumerable<LightRun> runs, Interval stretch) =>
    [
        .. runs
            .Select(run => run with { Start = Instant.Max(run.Start, stretch.Start), End = Instant.Min(run.End, stretch.End) })
            .Where(run => run.End > run.Start && run.Length >= Duration.FromMinutes(LightTable.Of(run.Light).LeastMinutes)),
    ];
}
