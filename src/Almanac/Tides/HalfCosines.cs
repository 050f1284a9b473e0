namespace Foreshore.Almanac.Tides;

/// <summary>Half a cosine from each water to the next, as a curve of knots.</summary>
internal static class HalfCosines
{
    // Sixteen cubics hold half a cosine within (π/16)⁴/384 of half its range: 0.02 mm at 10 m.
    private const int Pieces = 16;

    internal static TideKnots Through(IReadOnlyList<(double Days, double Metres)> waters)
    {
        var count = (waters.Count - 1) * Pieces + 1;
        double[] times = new double[count], metres = new double[count], slopes = new double[count];
        for (var i = 0; i + 1 < waters.Count; i++)
        {
            var (start, from) = waters[i];
            var (end, to) = waters[i + 1];
            for (var piece = 0; piece < Pieces; piece++)
            {
                var (sin, cos) = Math.SinCos(Math.PI * piece / Pieces);
                var at = i * Pieces + piece;
                times[at] = start + (end - start) * piece / Pieces;
                metres[at] = (from + to) / 2 + (from - to) / 2 * cos;
                slopes[at] = (to - from) / 2 * sin * Math.PI / (end - start);
            }
        }

        (times[^1], metres[^1]) = waters[^1];
        return new TideKnots(times[0], 0, times, metres, slopes);
    }
}
