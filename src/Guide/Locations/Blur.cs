using Foreshore.Almanac.Earth;
using Foreshore.Guide.Members;

namespace Foreshore.Guide.Locations;

/// <summary>
/// The one way in which a sensitive place is shown to those who may not know where it is: the centre of a fixed 1 km cell, and
/// nothing that would tell more. Pages, map, API and search get places through <see cref="LocationQueries"/>, which applies it.
/// </summary>
public static class Blur
{
    /// <summary>Side of a cell along the meridian, degrees: 0.009 is 1.00 km on a meridian degree of 111.2 km.</summary>
    private const double CellDegrees = 0.009;

    public const int CellMetres = 1000;

    /// <summary>
    /// Centre of the fixed cell that holds the position. Fixed, so that asking again tells nothing more; columns are counted
    /// round each row so that they stay about 1 km wide and meet at the date line.
    /// </summary>
    public static Position Cell(Position exact)
    {
        var rows = (int)Math.Round(180 / CellDegrees);
        var row = Math.Min((int)Math.Floor((exact.LatitudeDegrees + 90) / CellDegrees), rows - 1);
        var latitude = -90 + (row + 0.5) * CellDegrees;

        var columns = Math.Max(1, (int)Math.Floor(360 * Math.Cos(double.DegreesToRadians(latitude)) / CellDegrees));
        var width = 360.0 / columns;
        var column = Math.Min((int)Math.Floor((exact.LongitudeDegrees + 180) / width), columns - 1);
        return new Position(latitude, -180 + (column + 0.5) * width);
    }

    /// <summary>The place as this reader may see it: itself, or a copy without anything that tells where it is.</summary>
    public static Location For(Location location, Reader reader) => location.MayBeSeenExactlyBy(reader) ? location : location.Blurred();
}
