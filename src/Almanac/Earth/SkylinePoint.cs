namespace Foreshore.Almanac.Earth;

/// <summary>What a piece of skyline is made of.</summary>
public enum SkylineKind
{
    /// <summary>Ground, trees or buildings at a measured altitude.</summary>
    Land,

    /// <summary>Open sea: the edge lies below level by the dip of the observer's eye.</summary>
    Sea,

    /// <summary>Nobody has recorded it: counted as level, and said.</summary>
    Unknown,
}

/// <summary>One recorded corner of a skyline.</summary>
/// <param name="AzimuthDegrees">Degrees clockwise from true north, [0, 360).</param>
/// <param name="AltitudeDegrees">Altitude above level as seen (refracted), degrees, −90…90. Without meaning where both pieces beside it are sea.</param>
/// <param name="Kind">What the piece from this corner clockwise to the next one is.</param>
public readonly record struct SkylinePoint(double AzimuthDegrees, double AltitudeDegrees, SkylineKind Kind);
