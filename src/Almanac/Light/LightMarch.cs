namespace Foreshore.Almanac.Light;

/// <summary>
/// Finds when a light holds: bounds of altitude by root finding, and within them a march whose steps are as long as the
/// sun takes to the nearest edge, each crossing then narrowed to a hundredth of a second. A stretch or a gap of less than
/// 20 seconds may go unseen; the shortest run of any light is a minute.
/// </summary>
internal static class LightMarch
{
    // The sky turns once a day; the sun's own creep, parallax and the air add less than one part in a hundred.
    private const double FastestPerDay = 2 * Math.PI * 1.01;
    private const double ShortestStep = 20.0 / 86400;
    private const double Fine = 0.01 / 86400;

    /// <summary>Stretches at least as long as the row asks.</summary>
    internal static List<Stretch> Holding(LightRow row, Scene scene, SkylineEdge edge, SunHalves halves, double from, double to)
    {
        var margin = new LightMargin(row, scene, edge);
        if (margin.IsHopeless) return [];

        var found = halves.Within(margin.LowestDegrees, margin.DiscLowestDegrees, margin.HighestDegrees, from, to);
        if (!margin.IsAltitudeAlone)
        {
            var within = found;
            found = new List<Stretch>(within.Count);
            foreach (var stretch in within)
                March(margin, halves, stretch, found);
        }

        found.RemoveAll(stretch => stretch.Minutes < row.LeastMinutes);
        return found;
    }

    private static void March(LightMargin margin, SunHalves halves, Stretch within, List<Stretch> found)
    {
        var semidiameter = halves.SemidiameterDegrees(within.Start);
        var time = within.Start;
        var value = ValueAt(time);
        var start = time;
        while (time < within.End)
        {
            var next = Math.Min(within.End, time + Math.Abs(value) / FastestPerDay + ShortestStep);
            var nextValue = ValueAt(next);
            if (value >= 0 != nextValue >= 0)
            {
                var edge = Narrow(time, value, next, nextValue);
                if (value >= 0) found.Add(new Stretch(start, edge));
                start = edge;
            }

            (time, value) = (next, nextValue);
        }

        if (value >= 0) found.Add(new Stretch(start, within.End));

        double ValueAt(double days) => margin.At(halves.Path.At(days), semidiameter);

        // False position, halving the weight of an end that stays twice (the Illinois rule); plain halving now and then,
        // since margins may jump at a corner of the skyline.
        double Narrow(double a, double valueA, double b, double valueB)
        {
            var (weightA, weightB) = (valueA, valueB);
            var kept = 0;
            for (var round = 0; b - a > Fine && round < 60; round++)
            {
                var middle = round % 4 == 3 ? a + (b - a) / 2 : a + (b - a) * (weightA / (weightA - weightB));
                if (!(middle > a && middle < b)) middle = a + (b - a) / 2;
                var there = ValueAt(middle);
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
}
