namespace Foreshore.Guide.Shell.Maps;

/// <summary>A point on a drawn map. The longitude runs past ±180 where its map crosses the 180° meridian.</summary>
public readonly record struct MapPoint(double LongitudeDegrees, double LatitudeDegrees);

/// <summary>
/// The edges of a drawn map in degrees. <see cref="West"/> is within −180…180; <see cref="East"/> is the greater, and
/// passes 180 where the map crosses that meridian, so a drawing can subtract without thinking of it.
/// </summary>
public sealed record MapBox
{
    /// <summary>Takes an east that is smaller than the west as lying across the 180° meridian.</summary>
    public MapBox(double west, double south, double east, double north)
    {
        if (west is not (>= -180 and <= 180)) throw Outside(nameof(west), west, "−180 to 180");
        if (east is not (>= -180 and <= 540)) throw Outside(nameof(east), east, "−180 to 180");
        if (south is not (>= -90 and <= 90)) throw Outside(nameof(south), south, "−90 to 90");
        if (north is not (>= -90 and <= 90)) throw Outside(nameof(north), north, "−90 to 90");
        if (north <= south)
            throw new ArgumentOutOfRangeException(nameof(north), north, $"The north edge must lie north of the south edge ({south:R}).");
        if (east < west) east += 360;
        if (east <= west || east - west > 360)
            throw new ArgumentOutOfRangeException(nameof(east), east, "The map must be wider than nothing and no wider than once round.");
        (West, South, East, North) = (west, south, east, north);
    }

    public double West { get; }
    public double South { get; }
    public double East { get; }
    public double North { get; }
    public double WidthDegrees => East - West;
    public double HeightDegrees => North - South;

    public bool Contains(MapPoint p) =>
        p.LongitudeDegrees >= West && p.LongitudeDegrees <= East && p.LatitudeDegrees >= South && p.LatitudeDegrees <= North;

    /// <summary>A box as high as the span, with the given width to height, held off the poles; for drawings only.</summary>
    public static MapBox Around(double latitudeDegrees, double longitudeDegrees, double spanMetres, double widthToHeight = 1)
    {
        const double MetresPerDegree = 111_195; // mean Earth radius 6371.0088 km (IUGG) × π/180
        if (spanMetres is not (> 0 and < 2e7)) throw Outside(nameof(spanMetres), spanMetres, "more than 0, less than 20 000 km");
        var halfHeight = spanMetres / MetresPerDegree / 2;
        var south = Math.Max(-89.9, latitudeDegrees - halfHeight);
        var north = Math.Min(89.9, latitudeDegrees + halfHeight);
        var halfWidth = Math.Min(180, halfHeight * widthToHeight / Math.Cos(latitudeDegrees * Math.PI / 180));
        var west = longitudeDegrees - halfWidth;
        if (west < -180) west += 360;
        return new(west, south, west + 2 * halfWidth, north);
    }

    private static ArgumentOutOfRangeException Outside(string name, double value, string range) =>
        new(name, value, $"The {name} must be a number of {range}.");
}
