namespace Foreshore.Almanac.Earth;

/// <summary>A point on the WGS 84 ellipsoid, without height.</summary>
public readonly record struct Position
{
    /// <summary>Checks and keeps a pair of geodetic coordinates.</summary>
    /// <param name="latitudeDegrees">North positive, −90…90.</param>
    /// <param name="longitudeDegrees">East positive, −180…180; 180 is kept as −180, so that one place has one value.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a number or outside its range.</exception>
    public Position(double latitudeDegrees, double longitudeDegrees)
    {
        if (!(latitudeDegrees is >= -90 and <= 90))
            throw new ArgumentOutOfRangeException(nameof(latitudeDegrees), latitudeDegrees, "A latitude lies from −90 to 90 degrees.");
        if (!(longitudeDegrees is >= -180 and <= 180))
            throw new ArgumentOutOfRangeException(nameof(longitudeDegrees), longitudeDegrees, "A longitude lies from −180 to 180 degrees.");

        LatitudeDegrees = latitudeDegrees;
        LongitudeDegrees = longitudeDegrees is 180 ? -180 : longitudeDegrees;
    }

    /// <summary>Geodetic latitude, degrees, north positive, −90…90.</summary>
    public double LatitudeDegrees { get; }

    /// <summary>Longitude, degrees, east positive, −180 (included) to 180 (excluded).</summary>
    public double LongitudeDegrees { get; }
}
