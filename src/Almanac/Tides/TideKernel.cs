namespace Foreshore.Almanac.Tides;

/// <summary>The two loops that take the time: heights of a curve at even steps, and sums of constituents at its knots.</summary>
internal static class TideKernel
{
    /// <summary>Heights at even steps: each piece's cubic once, then by Horner.</summary>
    internal static void Sample(TideKnots knots, double firstDays, double stepDays, Span<double> metres)
    {
        for (var done = 0; done < metres.Length;)
        {
            var days = firstDays + done * stepDays;
            var knot = knots.Before(days);
            double start = knots.TimeOf(knot), length = knots.TimeOf(knot + 1) - start;
            var (c0, c1, c2, c3) = knots.Piece(knot).Cubic;
            double u = (days - start) / length, du = stepDays / length;
            var count = Math.Clamp((int)Math.Ceiling(Math.Min(int.MaxValue / 2, (1 - u) / du)), 1, metres.Length - done);
            for (var i = 0; i < count; i++)
            {
                var at = u + i * du;
                metres[done + i] = c0 + at * (c1 + at * (c2 + at * c3));
            }

            done += count;
        }
    }
}
