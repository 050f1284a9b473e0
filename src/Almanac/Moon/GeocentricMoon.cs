namespace Foreshore.Almanac.Moon;

/// <summary>The moon's apparent place seen from the Earth's centre, in the true equator and equinox of the date.</summary>
/// <param name="ApparentLongitudeDegrees">Ecliptic longitude with nutation and light time, degrees, [0, 360).</param>
/// <param name="LatitudeDegrees">Ecliptic latitude, degrees, within 5.3 of zero.</param>
/// <param name="DistanceKm">Distance between the centres, kilometres, 356,000 to 407,000.</param>
/// <param name="RightAscensionDegrees">Apparent right ascension, degrees, [0, 360).</param>
/// <param name="DeclinationDegrees">Apparent declination, degrees, within 28.8 of zero.</param>
/// <param name="SiderealDegrees">Apparent sidereal time at Greenwich at that instant, degrees, [0, 360).</param>
public readonly record struct GeocentricMoon(
    double ApparentLongitudeDegrees,
    double LatitudeDegrees,
    double DistanceKm,
    double RightAscensionDegrees,
    double DeclinationDegrees,
    double SiderealDegrees)
{
    /// <summary>Equatorial horizontal parallax, degrees: Meeus, Astronomical Algorithms (2nd ed.) chapter 47.</summary>
    public double ParallaxDegrees => Math.Asin(Earth.Ellipsoid.EquatorialMetres / 1000 / DistanceKm) * (180 / Math.PI);
}
