namespace Foreshore.Almanac.Tides;

/// <summary>How the heights of a subordinate station follow from its reference station's.</summary>
public enum HeightOffset
{
    /// <summary>The height above chart datum times a ratio.</summary>
    Ratio,

    /// <summary>The height above chart datum plus metres.</summary>
    Fixed,
}

/// <summary>How the curve runs between the high and low waters of a subordinate station or a table.</summary>
public enum BetweenWaters
{
    /// <summary>Half a cosine from each water to the next: common practice; wrong where double waters or stands are usual.</summary>
    HalfCosine,

    /// <summary>The reference's own curve, stretched in time and height from water to water: keeps its shape, and is the reference itself where all offsets are nought.</summary>
    ReferenceCurve,
}

/// <summary>Offsets of a subordinate station, or a location's own corrections to a station.</summary>
/// <param name="HighMinutes">Added to the time of each high water.</param>
/// <param name="LowMinutes">Added to the time of each low water.</param>
/// <param name="High">Ratio or metres for high waters.</param>
/// <param name="Low">Ratio or metres for low waters.</param>
/// <param name="Kind">Which of the two <paramref name="High"/> and <paramref name="Low"/> are.</param>
public readonly record struct TideOffsets(double HighMinutes, double LowMinutes, double High, double Low, HeightOffset Kind)
{
    /// <summary>No correction at all.</summary>
    public static TideOffsets None => new(0, 0, 1, 1, HeightOffset.Ratio);

    internal double MetresOf(TideExtreme water)
    {
        var by = water.IsHigh ? High : Low;
        return Kind == HeightOffset.Ratio ? water.Metres * by : water.Metres + by;
    }
}
