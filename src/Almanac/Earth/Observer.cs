namespace Foreshore.Almanac.Earth;

/// <summary>Somebody looking out from a place.</summary>
/// <param name="Position">Where.</param>
/// <param name="EyeMetresAboveMeanSea">Ground height less mean sea level plus eye height, metres; null when the ground height is not known.</param>
/// <param name="Skyline">The edge of land and sea seen from there.</param>
public sealed record Observer(Position Position, double? EyeMetresAboveMeanSea, Skyline Skyline)
{
    /// <summary>Dip of the sea horizon, degrees; none when the height is unknown.</summary>
    public double DipDegrees => EyeMetresAboveMeanSea is { } metres ? Dip.Degrees(metres) : 0;
}
