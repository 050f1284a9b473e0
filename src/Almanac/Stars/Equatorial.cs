namespace Foreshore.Almanac.Stars;

/// <summary>A direction among the stars.</summary>
/// <param name="RightAscensionDegrees">Degrees eastward along the equator, [0, 360).</param>
/// <param name="DeclinationDegrees">Degrees north of the equator, −90…90.</param>
public readonly record struct Equatorial(double RightAscensionDegrees, double DeclinationDegrees);
