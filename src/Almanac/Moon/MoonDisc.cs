using Foreshore.Almanac.Earth;

namespace Foreshore.Almanac.Moon;

/// <summary>The moon as a disc.</summary>
public static class MoonDisc
{
    /// <summary>Refraction at the level horizon that printed tables take, degrees: 34′.</summary>
    public const double StandardRefractionDegrees = 34.0 / 60;

    /// <summary>The moon's radius in equatorial radii of the Earth: IAU 1982, as in the Astronomical Almanac.</summary>
    public const double EarthRadii = 0.2725076;

    /// <summary>Half the disc's angle, degrees.</summary>
    /// <param name="distanceKm">Distance of the centre from the eye, or from the Earth's centre, kilometres.</param>
    public static double SemidiameterDegrees(double distanceKm) =>
        Math.Asin(EarthRadii * Ellipsoid.EquatorialMetres / 1000 / distanceKm) * (180 / Math.PI);

    /// <summary>
    /// Airless altitude of the centre, parallax counted, at which the printed tables let the moon rise and set, degrees:
    /// the upper limb 34′ below level. From the Earth's centre that is 0.7275 π − 34′ (Meeus, Astronomical Algorithms,
    /// chapter 15).
    /// </summary>
    /// <param name="distanceKm">Distance of the centre, kilometres.</param>
    public static double StandardAltitudeDegrees(double distanceKm) => -StandardRefractionDegrees - SemidiameterDegrees(distanceKm);
}
