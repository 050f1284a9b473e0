namespace Foreshore.Almanac.Tides;

/// <summary>
/// A curve as heights and slopes at instants, a cubic (Hermite) between two of them. Times are days from J2000, slopes metres a
/// day. The instants are even where <paramref name="Times"/> is null.
/// </summary>
internal sealed record TideKnots(double First, double Step, double[]? Times, double[] Metres, double[] Slopes)
{
    internal int Count => Metres.Length;

    internal double TimeOf(int knot) => Times is null ? First + knot * Step : Times[knot];

    internal double Last => TimeOf(Count - 1);

    /// <summary>The last knot at or before a time that is not the last one of all.</summary>
    internal int Before(double days)
    {
        if (Times is null) return Math.Clamp((int)((days - First) / Step), 0, Count - 2);
        var found = Array.BinarySearch(Times, days);
        return Math.Clamp(found >= 0 ? found : ~found - 1, 0, Count - 2);
    }

    internal TidePiece Piece(int knot)
    {
        var start = TimeOf(knot);
        return new TidePiece(start, TimeOf(knot + 1) - start, Metres[knot], Slopes[knot], Metres[knot + 1], Slopes[knot + 1]);
    }

    internal TideKnots Shifted(double metres)
    {
        var moved = new double[Count];
        for (var i = 0; i < moved.Length; i++) moved[i] = Metres[i] + metres;
        return this with { Metres = moved };
    }
}

/// <summary>The cubic between two knots: c0 + u(c1 + u(c2 + u·c3)), u from 0 to 1.</summary>
internal readonly struct TidePiece
{
    private readonly double start, length, c0, c1, c2, c3;

    internal TidePiece(double start, double length, double metres0, double slope0, double metres1, double slope1)
    {
        (this.start, this.length) = (start, length);
        (c0, c1) = (metres0, slope0 * length);
        double rise = metres1 - metres0, end = slope1 * length;
        (c2, c3) = (3 * rise - 2 * c1 - end, c1 + end - 2 * rise);
    }

    internal double Metres(double days) => At((days - start) / length);

    internal double Slope(double days)
    {
        var u = (days - start) / length;
        return (c1 + u * (2 * c2 + u * 3 * c3)) / length;
    }

    internal (double, double, double, double) Cubic => (c0, c1, c2, c3);

    /// <summary>Where the slope, whose signs at the two ends differ, passes nought.</summary>
    internal double TurnsAt()
    {
        // 3c3 u² + 2c2 u + c1 = 0 by the form that does not cancel; the root between 0 and 1 is the one wanted.
        double a = 3 * c3, half = c2;
        var root = Math.Sqrt(Math.Max(0, half * half - a * c1));
        var q = -(half + Math.CopySign(root, half));
        double one = a == 0 ? double.NaN : q / a, other = q == 0 ? double.NaN : c1 / q;
        var u = one is >= 0 and <= 1 ? one : Math.Clamp(other, 0, 1);
        return start + u * length;
    }

    /// <summary>Where the height passes a level between two times on either side of it, to 0.1 ms: false position kept in its bracket.</summary>
    internal double Reaches(double level, double from, double to)
    {
        double low = (from - start) / length, high = (to - start) / length;
        double atLow = At(low) - level, atHigh = At(high) - level;
        for (var turn = 0; turn < 60 && (high - low) * length > 1e-9; turn++)
        {
            // The secant first; every third time the middle, so that the bracket always shrinks.
            var u = turn % 3 == 2 ? (low + high) / 2 : low + (high - low) * atLow / (atLow - atHigh);
            var at = At(u) - level;
            if (at == 0) return start + u * length;
            if (at < 0 == atLow < 0) (low, atLow) = (u, at);
            else (high, atHigh) = (u, at);
        }

        return start + (low + high) / 2 * length;
    }

    private double At(double u) => c0 + u * (c1 + u * (c2 + u * c3));
}
