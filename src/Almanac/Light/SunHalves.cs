using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>
/// A span of time cut where the sun stands highest and lowest: between two cuts its altitude only climbs or only sinks,
/// so that it passes any altitude once at most. All wanted lights of one place share it.
/// </summary>
internal sealed class SunHalves
{
    private const double Radian = Math.PI / 180;

    private readonly SunSwing swing;
    private readonly double[] cuts, sines;

    private SunHalves(SunPath path, SunSwing swing, double[] cuts, double[] sines)
    {
        Path = path;
        this.swing = swing;
        (this.cuts, this.sines) = (cuts, sines);
    }

    internal SunPath Path { get; }

    internal static SunHalves Over(SunPath path, double from, double to)
    {
        var swing = new SunSwing(path, new Direction(0, 0, 1), 0);
        var guess = swing.HighestBefore(from);
        var count = (int)Math.Ceiling((to - guess) * 2) + 2;
        var (cuts, sines) = (new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            cuts[i] = swing.Turning(guess + i * 0.5);
            sines[i] = swing.At(cuts[i]);
        }

        return new SunHalves(path, swing, cuts, sines);
    }

    /// <summary>When the sun's airless altitude lies within bounds, from one time to another.</summary>
    /// <param name="lowestDegrees">The lower bound of the centre, degrees.</param>
    /// <param name="discLowestDegrees">The lower bound of the disc's upper edge, degrees; the disc's size goes with the seasons.</param>
    /// <param name="highestDegrees">The upper bound of the centre, degrees.</param>
    /// <param name="from">Nothing before this is answered.</param>
    /// <param name="to">Nothing after this is answered.</param>
    internal List<Stretch> Within(double lowestDegrees, double discLowestDegrees, double highestDegrees, double from, double to)
    {
        var found = new List<Stretch>(cuts.Length);
        var top = highestDegrees >= 90 ? 2 : Math.Sin(highestDegrees * Radian);
        for (var i = 0; i + 1 < cuts.Length; i++)
        {
            var lowest = discLowestDegrees > -90 ? Math.Max(lowestDegrees, discLowestDegrees - Path.SemidiameterDegrees(cuts[i])) : lowestDegrees;
            if (lowest > highestDegrees) continue;
            var bottom = lowest <= -90 ? -2 : Math.Sin(lowest * Radian);

            var climbs = sines[i + 1] >= sines[i];
            var (lower, higher) = climbs ? (sines[i], sines[i + 1]) : (sines[i + 1], sines[i]);
            if (higher < bottom || lower > top) continue;

            var atBottom = lower < bottom ? Passing(i, bottom) : climbs ? cuts[i] : cuts[i + 1];
            var atTop = higher > top ? Passing(i, top) : climbs ? cuts[i + 1] : cuts[i];
            Add(found, Math.Max(from, climbs ? atBottom : atTop), Math.Min(to, climbs ? atTop : atBottom));
        }

        return found;
    }

    private static void Add(List<Stretch> found, double start, double end)
    {
        if (!(end > start)) return;
        // A stretch that runs over a cut stays one.
        if (found.Count > 0 && found[^1].End >= start)
            found[^1] = found[^1] with { End = end };
        else
            found.Add(new Stretch(start, end));
    }

    private double Passing(int i, double sine) =>
        swing.AtLevel(sine).Root(cuts[i], sines[i] - sine, cuts[i + 1], sines[i + 1] - sine);
}
