using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>Puts runs of several lights together.</summary>
internal static class LightUnion
{
    internal static IReadOnlyList<Interval> Of(IReadOnlyList<LightRun> runs)
    {
        var union = new List<Interval>();
        foreach (var run in runs.OrderBy(run => run.Start))
        {
            if (union.Count > 0 && run.Start <= union[^1].End)
                union[^1] = new Interval(union[^1].Start, Instant.Max(union[^1].End, run.End));
            else
                union.Add(new Interval(run.Start, run.End));
        }

        return union;
    }
}
