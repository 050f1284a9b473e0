namespace Foreshore.Almanac.Sun;

/// <summary>A direction in an observer's sky as a vector of length one: free of the jumps that angles have at north and at the zenith.</summary>
/// <param name="East">Part towards the east, −1…1.</param>
/// <param name="North">Part towards true north, −1…1.</param>
/// <param name="Up">Part towards the zenith: the sine of the altitude, −1…1.</param>
public readonly record struct Direction(double East, double North, double Up)
{
    private const double Radian = Math.PI / 180;

    /// <summary>The direction of an azimuth and an altitude, degrees.</summary>
    public static Direction Of(double azimuthDegrees, double altitudeDegrees)
    {
        var (sinAzimuth, cosAzimuth) = Math.SinCos(azimuthDegrees * Radian);
        var (sinAltitude, cosAltitude) = Math.SinCos(altitudeDegrees * Radian);
        return new Direction(cosAltitude * sinAzimuth, cosAltitude * cosAzimuth, sinAltitude);
    }

    /// <summary>Degrees clockwise from true north, [0, 360).</summary>
    public double AzimuthDegrees
    {
        get
        {
            var degrees = Math.Atan2(East, North) / Radian;
            if (degrees < 0) degrees += 360;
            return degrees >= 360 ? 0 : degrees;
        }
    }

    /// <summary>Degrees above level, −90…90.</summary>
    public double AltitudeDegrees => Math.Atan2(Up, Math.Sqrt(East * East + North * North)) / Radian;

    /// <summary>The same as two angles.</summary>
    public Horizontal Horizontal => new(AzimuthDegrees, AltitudeDegrees);
}
