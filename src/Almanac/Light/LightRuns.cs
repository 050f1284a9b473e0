using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>When the wanted light of a scene holds.</summary>
public static class LightRuns
{
    /// <summary>
    /// All runs in a stretch of time, their ends to a tenth of a second. Runs are cut at the ends of the stretch, and what
    /// is left must be as long as its light asks.
    /// </summary>
    /// <param name="scene">From where, which picture, which lights.</param>
    /// <param name="from">Beginning of the stretch.</param>
    /// <param name="to">End of the stretch; not before its beginning.</param>
    /// <param name="ephemeris">Covers the stretch.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch is turned round, or leaves the ephemeris.</exception>
    public static LightAnswer Between(Scene scene, Instant from, Instant to, SkyEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(ephemeris);
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A stretch of time ends no earlier than it begins.");

        var (runs, possible) = (new List<LightRun>(), new List<LightRun>());
        foreach (var (row, stretches) in Holding(scene, ephemeris.Sun.DaysOf(from), ephemeris.Sun.DaysOf(to), ephemeris))
            (row.IsComputed ? runs : possible).AddRange(stretches.Select(stretch => stretch.As(row.Light)));
        return new LightAnswer(InOrder(runs), InOrder(possible), CautionsOf(scene));
    }

    /// <summary>Each wanted light's row and when what can be computed of it holds, in days from J2000.</summary>
    internal static List<(LightRow Row, List<Stretch> Stretches)> Holding(Scene scene, double from, double to, SkyEphemeris ephemeris)
    {
        var edge = new SkylineEdge(scene.Observer);
        var halves = SunHalves.Over(ephemeris.Sun.SeenFrom(scene.Observer.Position), from, to);
        return
        [
            .. scene.Wanted.Distinct().Order().Select(LightTable.Of)
                .Select(row => (row, LightMarch.Holding(row, scene, edge, halves, ephemeris, from, to))),
        ];
    }

    internal static SkylineCautions CautionsOf(Scene scene)
    {
        if (!scene.Wanted.Any(light => LightTable.Of(light).LooksAtSkyline)) return SkylineCautions.None;
        var skyline = scene.Observer.Skyline;
        return (skyline.IsAssumed ? SkylineCautions.SeaAssumed : SkylineCautions.None)
            | (skyline.HasUnknown ? SkylineCautions.UnknownCountedAsLevel : SkylineCautions.None);
    }

    private static LightRun[] InOrder(List<LightRun> runs) => [.. runs.OrderBy(run => run.Start).ThenBy(run => run.Light)];
}
