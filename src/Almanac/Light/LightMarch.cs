namespace Foreshore.Almanac.Light;

/// <summary>A condition along time: above zero while it holds, and as large as an arc, radians, that may be travelled without a change.</summary>
internal interface IMargin
{
    /// <summary>The fastest that the body it looks at moves over the sky, radians a day.</summary>
    double FastestPerDay { get; }

    double At(double days);
}

/// <summary>
/// Finds when a light holds: bounds of the sun's altitude by root finding, and within them a march whose steps are as long
/// as a body takes to the nearest edge, each crossing then narrowed to a hundredth of a second. A stretch or a gap of less
/// than 20 seconds may go unseen; the shortest run of any light is a minute.
/// </summary>
internal static class LightMarch
{
    private const double ShortestStep = 20.0 / 86400;
    private const double Fine = 0.01 / 86400;

    /// <summary>Stretches at least as long as the row asks.</summary>
    internal static List<Stretch> Holding(LightRow row, Scene scene, SkylineEdge edge, SunHalves halves, SkyEphemeris sky, double from, double to)
    {
        var margin = new LightMargin(row, scene, edge);
        if (margin.IsHopeless) return [];

        var found = halves.Within(margin.LowestDegrees, margin.DiscLowestDegrees, margin.HighestDegrees, from, to);
        if (!margin.IsAltitudeAlone)
        {
            var within = found;
            found = new List<Stretch>(within.Count);
            foreach (var stretch in within)
                March(new SunMargin(margin, halves.Path, halves.Path.SemidiameterDegrees(stretch.Start)), stretch, found);
        }

        if (row.Moon is { } moon)
            found = March(new MoonMargin(moon, scene, edge, sky.Moon), Moonlight.Lit(moon, sky, found));
        if (row.Galaxy == GalaxyNeed.CoreInSpan)
            found = March(new CoreMargin(scene, edge, sky.Galaxy), found);
        if (row.Galaxy == GalaxyNeed.BandInFrame)
            found = March(new BandMargin(scene, sky.Galaxy), found);
        if (row.NeedsDarkMoon)
            found = Moonlight.Dark(scene.Observer.Position, sky, found);

        found.RemoveAll(stretch => stretch.Minutes < row.LeastMinutes);
        return found;
    }

    /// <summary>The parts of several stretches in which a condition holds.</summary>
    internal static List<Stretch> March<T>(T margin, IReadOnlyList<Stretch> within)
        where T : IMargin
    {
        var found = new List<Stretch>();
        foreach (var stretch in within)
            March(margin, stretch, found);
        return found;
    }

    private static void March<T>(T margin, Stretch within, List<Stretch> found)
        where T : IMargin
    {
        var fastest = margin.FastestPerDay;
        var time = within.Start;
        var value = margin.At(time);
        var start = time;
        while (time < within.End)
        {
            var next = Math.Min(within.End, time + Math.Abs(value) / fastest + ShortestStep);
            var nextValue = margin.At(next);
            if (value >= 0 != nextValue >= 0)
            {
                var edge = Narrow(margin, time, value, next, nextValue);
                if (value >= 0) found.Add(new Stretch(start, edge));
                start = edge;
            }

            (time, value) = (next, nextValue);
        }

        if (value >= 0) found.Add(new Stretch(start, within.End));
    }

    // False position, halving the weight of an end that stays twice (the Illinois rule); plain halving now and then,
    // since margins may jump at a corner of the skyline.
    private static double Narrow<T>(T margin, double a, double valueA, double b, double valueB)
        where T : IMargin
    {
        var (weightA, weightB) = (valueA, valueB);
        var kept = 0;
        for (var round = 0; b - a > Fine && round < 60; round++)
        {
            var middle = round % 4 == 3 ? a + (b - a) / 2 : a + (b - a) * (weightA / (weightA - weightB));
            if (!(middle > a && middle < b)) middle = a + (b - a) / 2;
            var there = margin.At(middle);
            if (there >= 0 == valueA >= 0)
            {
                (a, weightA) = (middle, there);
                if (kept == 1) weightB /= 2;
                kept = 1;
            }
            else
            {
                (b, weightB) = (middle, there);
                if (kept == -1) weightA /= 2;
                kept = -1;
            }
        }

        return a + (b - a) / 2;
    }
}
