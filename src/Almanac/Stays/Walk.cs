namespace Foreshore.Almanac.Stays;

/// <summary>A walk as it was timed, and the ground it goes over.</summary>
/// <param name="Minutes">By daylight, at the measured pace, 0 or more.</param>
/// <param name="Ground">
/// What the ground multiplies it by, 1 or more: over several kinds the mean by minutes. Wet rock, weed and boulders
/// <see cref="Party.WetRockFactor"/>, soft ground <see cref="Party.SoftGroundFactor"/>: common practice, no source.
/// </param>
public readonly record struct Walk(double Minutes, double Ground = 1)
{
    /// <summary>A walk over firm ground.</summary>
    public static implicit operator Walk(double minutes) => new(minutes);

    /// <summary>Both walks, one after the other: minutes add up, and so does what the ground makes of them.</summary>
    public static Walk operator +(Walk one, Walk other)
    {
        var minutes = one.Minutes + other.Minutes;
        return new(minutes, minutes > 0 ? (one.Minutes * one.Ground + other.Minutes * other.Ground) / minutes : 1);
    }

    /// <summary>The longer of two, by the minutes it takes over its ground.</summary>
    public static Walk Longer(Walk one, Walk other) => other.Minutes * other.Ground > one.Minutes * one.Ground ? other : one;
}
