using NodaTime;

namespace Foreshore.Almanac.Tides;

public sealed partial class TideCurve
{
    // Half of a tidal day, 24 h 50 min.
    private static readonly Duration HalfTidalDay = Duration.FromMinutes(745);
    private IReadOnlyList<TideExtreme>? extremes;

    /// <summary>High and low waters within the span, in order; high and low alternate. See <see cref="LeastRiseMetres"/>.</summary>
    public IReadOnlyList<TideExtreme> Extremes => extremes ??= [.. waters.Value.All.Where(water => water.Time >= From && water.Time <= To)];

    /// <summary>
    /// The last high or low water at or before an instant; it may lie up to a day or two before the span. Null where none is known.
    /// </summary>
    /// <param name="instant">Within the span.</param>
    /// <param name="high">Only high (true) or only low (false) waters; null takes either.</param>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public TideExtreme? Before(Instant instant, bool? high = null)
    {
        DaysOf(instant);
        var all = waters.Value.All;
        for (var i = waters.Value.CountUpTo(instant) - 1; i >= 0; i--)
            if (high is null || all[i].IsHigh == high) return all[i];
        return null;
    }

    /// <summary>The first high or low water after an instant; it may lie up to a day or two after the span. Null where none is known.</summary>
    /// <param name="instant">Within the span.</param>
    /// <param name="high">Only high (true) or only low (false) waters; null takes either.</param>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public TideExtreme? After(Instant instant, bool? high = null)
    {
        DaysOf(instant);
        var all = waters.Value.All;
        for (var i = waters.Value.CountUpTo(instant); i < all.Count; i++)
            if (high is null || all[i].IsHigh == high) return all[i];
        return null;
    }

    /// <summary>
    /// The range about an instant, metres: the highest high less the lowest low water within half a tidal day (12 h 25 min)
    /// either side, so that double waters and unequal tides do not split it. Null where there are not both.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public double? RangeAt(Instant instant)
    {
        DaysOf(instant);
        var all = waters.Value.All;
        double highest = double.NegativeInfinity, lowest = double.PositiveInfinity;
        for (var i = waters.Value.CountUpTo(instant - HalfTidalDay - Duration.Epsilon); i < all.Count && all[i].Time <= instant + HalfTidalDay; i++)
        {
            if (all[i].IsHigh) highest = Math.Max(highest, all[i].Metres);
            else lowest = Math.Min(lowest, all[i].Metres);
        }

        return double.IsInfinity(highest) || double.IsInfinity(lowest) ? null : highest - lowest;
    }

    /// <summary>The highest water of the span: a high water, or an end of the span where that is higher.</summary>
    public TideExtreme Highest => Ends(high: true).MaxBy(water => water.Metres);

    /// <summary>The lowest water of the span: a low water, or an end of the span where that is lower.</summary>
    public TideExtreme Lowest => Ends(high: false).MinBy(water => water.Metres);

    private IEnumerable<TideExtreme> Ends(bool high) =>
        Extremes.Where(water => water.IsHigh == high).Append(new TideExtreme(From, MetresAt(From), high)).Append(new TideExtreme(To, MetresAt(To), high));
}
