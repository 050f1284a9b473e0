namespace Foreshore.Guide.Itineraries;

/// <summary>Something between car and stance that is open at times: one has to be through it, or off it, before it shuts.</summary>
/// <param name="Reserve">Minutes to spare.</param>
/// <param name="LeastFactor">The walk out counts at least so many times as measured.</param>
internal sealed record Gate(string Name, IReadOnlyList<Span> Open, IReadOnlyList<Piece> In, IReadOnlyList<Piece> Out, double Reserve = 0, double LeastFactor = 1)
{
    /// <summary>Nobody waits for the tide to leave a ledge at its foot, and then walks in: it bounds leaving alone, and being there.</summary>
    public bool IsLedge { get; init; }
}

/// <summary>How long a walk takes.</summary>
internal sealed record Pace(Series Series, Group Group)
{
    private const double Most = 3, Dark = 1.4, WetRock = 1.75, SoftGround = 1.45, HeavyKit = 1.15;

    public double Takes(double from, IReadOnlyList<Piece> pieces, double leastFactor = 1)
    {
        var byDay = Sum(pieces, isDark: false, leastFactor);
        return Series.IsDark(from, from + byDay) ? Sum(pieces, isDark: true, leastFactor) : byDay;
    }

    /// <summary>The soonest one is there: who may not go before dawn, and would be slow in the dark, does better to wait for the light.</summary>
    public double Arrives(double from, IReadOnlyList<Piece> pieces)
    {
        var soonest = from + Takes(from, pieces);
        foreach (var dark in Series.Dark)
            if (dark.To > from && dark.To < soonest) soonest = Math.Min(soonest, dark.To + Takes(dark.To, pieces));
        return soonest;
    }

    private double Sum(IReadOnlyList<Piece> pieces, bool isDark, double leastFactor)
    {
        double walked = 0, measured = 0, ridden = 0;
        foreach (var piece in pieces)
        {
            if (piece.IsRide)
            {
                ridden += piece.Minutes;
                continue;
            }

            measured += piece.Minutes;
            walked += piece.Minutes * Group.Pace * Math.Min(Most, (isDark ? Dark : 1) * piece.Ground
                * (Group.WetRock ? WetRock : 1) * (Group.SoftGround ? SoftGround : 1) * (Group.HeavyKit ? HeavyKit : 1));
        }

        return Math.Max(walked, measured * leastFactor) + ridden;
    }
}
