using NodaTime;

namespace Foreshore.Almanac.Earth;

/// <summary>
/// The World Magnetic Model 2025, degree and order 12: A. Chulliat and others, The US/UK World Magnetic Model for 2025–2030
/// (NOAA NCEI and British Geological Survey, 2024), equations 4 to 17. Made for 2025.0 to 2030.0; other dates have no answer.
/// </summary>
public static partial class MagneticField
{
    /// <summary>The model's name, for words beside a value.</summary>
    public const string Model = "WMM2025";

    private const int Degrees = 12;
    private const double Epoch = 2025;
    private const double EndYear = 2030;
    private const double ReferenceMetres = 6371200;

    // At a pole itself east has no meaning; a tenth of a millimetre beside it the sums are as good as there.
    private const double HighestLatitude = 90 - 1e-9;

    /// <summary>First date of the model.</summary>
    public static LocalDate FirstDate { get; } = new(2025, 1, 1);

    /// <summary>Last date of the model.</summary>
    public static LocalDate LastDate { get; } = new(2029, 12, 31);

    /// <summary>The field on a date; null outside the model's years.</summary>
    /// <param name="date">The day, by UTC; the field moves by less than 0.003 degrees a day almost everywhere.</param>
    /// <param name="position">Where.</param>
    /// <param name="metresAboveEllipsoid">Height above the WGS 84 ellipsoid, metres; sea level differs by up to 100 m, which changes nothing here.</param>
    public static GeomagneticField? On(LocalDate date, Position position, double metresAboveEllipsoid = 0)
    {
        var year = new LocalDate(date.Year, 1, 1);
        return At(date.Year + (double)(date.DayOfYear - 1) / Period.DaysBetween(year, year.PlusYears(1)), position, metresAboveEllipsoid);
    }

    /// <summary>The field at a decimal year; null outside 2025.0…2030.0.</summary>
    /// <param name="decimalYear">For instance 2026.5.</param>
    /// <param name="position">Where.</param>
    /// <param name="metresAboveEllipsoid">Height above the WGS 84 ellipsoid, metres, −1,000…850,000 by the report.</param>
    /// <exception cref="ArgumentOutOfRangeException">The height is outside its range.</exception>
    public static GeomagneticField? At(double decimalYear, Position position, double metresAboveEllipsoid = 0)
    {
        if (!(metresAboveEllipsoid is >= -1000 and <= 850000))
            throw new ArgumentOutOfRangeException(nameof(metresAboveEllipsoid), metresAboveEllipsoid, "The model holds from 1 km below the ellipsoid to 850 km above it.");
        if (!(decimalYear is >= Epoch and <= EndYear)) return null;

        var latitude = Math.Clamp(position.LatitudeDegrees, -HighestLatitude, HighestLatitude);
        var site = SiteRadii.Of(latitude, metresAboveEllipsoid);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitude * (Math.PI / 180));
        var radius = Geodesic.Hypot(site.RhoCosPhi, site.RhoSinPhi);
        var (cosTheta, sinTheta) = (site.RhoSinPhi / radius, site.RhoCosPhi / radius);
        var (north, east, down) = Geocentric(
            decimalYear - Epoch, cosTheta, sinTheta, position.LongitudeDegrees * (Math.PI / 180),
            ReferenceMetres / (radius * Ellipsoid.EquatorialMetres));

        // From the sphere's level to the ellipsoid's: turned by the difference of the two latitudes.
        var sinTurn = cosTheta * cosLatitude - sinTheta * sinLatitude;
        var cosTurn = sinTheta * cosLatitude + cosTheta * sinLatitude;
        return new GeomagneticField(north * cosTurn - down * sinTurn, east, north * sinTurn + down * cosTurn);
    }

    private static (double North, double East, double Down) Geocentric(double years, double cosTheta, double sinTheta, double longitude, double ratio)
    {
        const int row = Degrees + 1;
        Span<double> p = stackalloc double[row * row];
        Legendre(p, cosTheta, sinTheta);

        double north = 0, east = 0, down = 0;
        var power = ratio * ratio;
        for (int n = 1, at = 0; n <= Degrees; n++)
        {
            power *= ratio;
            for (var m = 0; m <= n; m++, at += 4)
            {
                var g = Coefficients[at] + years * Coefficients[at + 2];
                var h = Coefficients[at + 1] + years * Coefficients[at + 3];
                var (sin, cos) = Math.SinCos(m * longitude);
                var here = p[n * row + m];
                var before = m < n ? Math.Sqrt(n * n - m * m) * p[(n - 1) * row + m] : 0;
                var slope = (n * cosTheta * here - before) / sinTheta;
                north += power * (g * cos + h * sin) * slope;
                east += power * m * (g * sin - h * cos) * here / sinTheta;
                down -= power * (n + 1) * (g * cos + h * sin) * here;
            }
        }

        return (north, east, down);
    }

    // Schmidt's half-normalised functions, by the usual recurrences (report, section 1.2).
    private static void Legendre(Span<double> p, double cosTheta, double sinTheta)
    {
        const int row = Degrees + 1;
        p[0] = 1;
        for (var n = 1; n <= Degrees; n++)
        {
            p[n * row + n] = (n == 1 ? 1 : Math.Sqrt((2.0 * n - 1) / (2 * n))) * sinTheta * p[(n - 1) * row + n - 1];
            for (var m = 0; m < n; m++)
            {
                var twoBefore = n - 2 >= m ? Math.Sqrt((n - 1) * (n - 1) - m * m) * p[(n - 2) * row + m] : 0;
                p[n * row + m] = ((2 * n - 1) * cosTheta * p[(n - 1) * row + m] - twoBefore) / Math.Sqrt(n * n - m * m);
            }
        }
    }
}
