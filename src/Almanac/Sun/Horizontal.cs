namespace Foreshore.Almanac.Sun;

/// <summary>Where the centre of a body stands in an observer's sky, without air.</summary>
/// <param name="AzimuthDegrees">Degrees clockwise from true north, [0, 360).</param>
/// <param name="AltitudeDegrees">Airless altitude above the level horizon seen from the place itself (parallax counted), degrees, −90…90.</param>
public readonly record struct Horizontal(double AzimuthDegrees, double AltitudeDegrees);
