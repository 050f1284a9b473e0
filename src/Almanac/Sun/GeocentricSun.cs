namespace Foreshore.Almanac.Sun;

/// <summary>The sun's apparent place seen from the Earth's centre, in the true equator and equinox of the date.</summary>
/// <param name="ApparentLongitudeDegrees">Ecliptic longitude with nutation and aberration, degrees, [0, 360).</param>
/// <param name="LatitudeDegrees">Ecliptic latitude, degrees, within 0.001 of zero.</param>
/// <param name="DistanceAu">Distance, astronomical units.</param>
/// <param name="RightAscensionDegrees">Apparent right ascension, degrees, [0, 360).</param>
/// <param name="DeclinationDegrees">Apparent declination, degrees, within 23.45 of zero.</param>
/// <param name="SiderealDegrees">Apparent sidereal time at Greenwich at that instant, degrees, [0, 360).</param>
public readonly record struct GeocentricSun(
    double ApparentLongitudeDegrees,
    double LatitudeDegrees,
    double DistanceAu,
    double RightAscensionDegrees,
    double DeclinationDegrees,
    double SiderealDegrees)
{
    /// <summary>Half the disc's angle, degrees: 959.63″ at one astronomical unit (Auwers 1891, as in the Astronomical Almanac).</summary>
    public double SemidiameterDegrees => SunDisc.SemidiameterDegrees(DistanceAu);

    /// <summary>Equatorial horizontal parallax, degrees: 8.794″ at one astronomical unit.</summary>
    public double ParallaxDegrees => 8.794 / 3600 / DistanceAu;
}
