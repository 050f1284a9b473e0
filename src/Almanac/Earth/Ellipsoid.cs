namespace Foreshore.Almanac.Earth;

/// <summary>The figure of the Earth: WGS 84 (NIMA TR8350.2, 3rd edition, table 3.1).</summary>
public static class Ellipsoid
{
    /// <summary>Equatorial radius, metres.</summary>
    public const double EquatorialMetres = 6378137;

    /// <summary>Flattening.</summary>
    public const double Flattening = 1 / 298.257223563;

    /// <summary>First eccentricity squared.</summary>
    public const double EccentricitySquared = Flattening * (2 - Flattening);
}
