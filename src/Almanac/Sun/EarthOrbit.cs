namespace Foreshore.Almanac.Sun;

/// <summary>
/// The Earth's place seen from the sun, in the mean ecliptic and equinox of the date.
/// Reda and Andreas, Solar Position Algorithm (NREL/TP-560-34302, 2008), section 3.2; good to about 1″ from −2000 to 6000.
/// </summary>
/// <param name="LongitudeDegrees">Heliocentric longitude, degrees, [0, 360).</param>
/// <param name="LatitudeDegrees">Heliocentric latitude, degrees, within 0.001 of zero.</param>
/// <param name="DistanceAu">Distance from the sun, astronomical units, 0.983…1.017.</param>
public readonly record struct EarthPlace(double LongitudeDegrees, double LatitudeDegrees, double DistanceAu);

/// <summary>The Earth's way round the sun: see <see cref="EarthPlace"/>.</summary>
public static partial class EarthOrbit
{
    /// <summary>The Earth's place.</summary>
    /// <param name="centuries">Centuries of terrestrial time from J2000.0.</param>
    public static EarthPlace At(double centuries)
    {
        var t = centuries / 10;
        var longitude = Sum(Longitude0, t) + t * (Sum(Longitude1, t) + t * (Sum(Longitude2, t)
            + t * (Sum(Longitude3, t) + t * (Sum(Longitude4, t) + t * Sum(Longitude5, t)))));
        var latitude = Sum(Latitude0, t) + t * Sum(Latitude1, t);
        var radius = Sum(Radius0, t) + t * (Sum(Radius1, t) + t * (Sum(Radius2, t) + t * (Sum(Radius3, t) + t * Sum(Radius4, t))));

        const double degrees = 180 / Math.PI * 1e-8;
        var turned = longitude * degrees % 360;
        return new EarthPlace(turned < 0 ? turned + 360 : turned, latitude * degrees, radius * 1e-8);
    }

    private static double Sum(ReadOnlySpan<double> terms, double millennia)
    {
        var sum = 0.0;
        for (var i = 0; i + 2 < terms.Length; i += 3)
            sum += terms[i] * Math.Cos(terms[i + 1] + terms[i + 2] * millennia);
        return sum;
    }
}
