namespace Foreshore.Almanac.Earth;

/// <summary>Where a place lies as seen from the Earth's centre, in equatorial radii of the Earth.</summary>
/// <param name="RhoCosPhi">Distance from the axis: ρ cos φ′.</param>
/// <param name="RhoSinPhi">Distance from the plane of the equator, north positive: ρ sin φ′.</param>
public readonly record struct SiteRadii(double RhoCosPhi, double RhoSinPhi)
{
    /// <summary>The radii of a place on WGS 84; Meeus, Astronomical Algorithms (2nd ed.) chapter 11.</summary>
    /// <param name="latitudeDegrees">Geodetic latitude, degrees.</param>
    /// <param name="metresAboveSea">Height above the ellipsoid, metres.</param>
    public static SiteRadii Of(double latitudeDegrees, double metresAboveSea = 0)
    {
        var (sin, cos) = Math.SinCos(latitudeDegrees * (Math.PI / 180));
        // Radius of curvature across the meridian, in equatorial radii.
        var curvature = 1 / Math.Sqrt(1 - Ellipsoid.EccentricitySquared * sin * sin);
        var height = metresAboveSea / Ellipsoid.EquatorialMetres;
        return new SiteRadii((curvature + height) * cos, (curvature * (1 - Ellipsoid.EccentricitySquared) + height) * sin);
    }
}
