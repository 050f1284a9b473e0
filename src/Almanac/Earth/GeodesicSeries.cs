namespace Foreshore.Almanac.Earth;

/// <summary>
/// The series of C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013) 43, to the sixth order in the
/// small quantity ε: errors of some nanometres for the Earth. The equation numbers are the paper's.
/// </summary>
internal static class GeodesicSeries
{
    internal const double ThirdFlattening = Ellipsoid.Flattening / (2 - Ellipsoid.Flattening);
    internal const double SecondEccentricitySquared = Ellipsoid.EccentricitySquared / (1 - Ellipsoid.EccentricitySquared);
    internal const double PolarMetres = Ellipsoid.EquatorialMetres * (1 - Ellipsoid.Flattening);

    /// <summary>Highest multiple of the arc in a series.</summary>
    internal const int Order = 6;

    private const double N = ThirdFlattening;

    /// <summary>ε from the equatorial azimuth (equation 16).</summary>
    internal static double Epsilon(double cosEquatorial)
    {
        var k2 = SecondEccentricitySquared * cosEquatorial * cosEquatorial;
        return k2 / (2 * (1 + Math.Sqrt(1 + k2)) + k2);
    }

    /// <summary>Equation 17.</summary>
    internal static double A1(double e) => (1 + e * e * (1.0 / 4 + e * e * (1.0 / 64 + e * e / 256))) / (1 - e);

    /// <summary>Equation 18.</summary>
    internal static void C1(double e, Span<double> c)
    {
        var e2 = e * e;
        c[0] = e * (-1.0 / 2 + e2 * (3.0 / 16 - e2 / 32));
        c[1] = e2 * (-1.0 / 16 + e2 * (1.0 / 32 - e2 * 9 / 2048));
        c[2] = e * e2 * (-1.0 / 48 + e2 * 3 / 256);
        c[3] = e2 * e2 * (-5.0 / 512 + e2 * 3 / 512);
        c[4] = e * e2 * e2 * -7 / 1280;
        c[5] = e2 * e2 * e2 * -7 / 2048;
    }

    /// <summary>Equation 21: from distance back to arc.</summary>
    internal static void C1Back(double e, Span<double> c)
    {
        var e2 = e * e;
        c[0] = e * (1.0 / 2 + e2 * (-9.0 / 32 + e2 * 205 / 1536));
        c[1] = e2 * (5.0 / 16 + e2 * (-37.0 / 96 + e2 * 1335 / 4096));
        c[2] = e * e2 * (29.0 / 96 - e2 * 75 / 128);
        c[3] = e2 * e2 * (539.0 / 1536 - e2 * 2391 / 2560);
        c[4] = e * e2 * e2 * 3467 / 7680;
        c[5] = e2 * e2 * e2 * 38081 / 61440;
    }

    /// <summary>Equation 42.</summary>
    internal static double A2(double e) => (1 + e * e * (1.0 / 4 + e * e * (9.0 / 64 + e * e * 25 / 256))) * (1 - e);

    /// <summary>Equation 43.</summary>
    internal static void C2(double e, Span<double> c)
    {
        var e2 = e * e;
        c[0] = e * (1.0 / 2 + e2 * (1.0 / 16 + e2 / 32));
        c[1] = e2 * (3.0 / 16 + e2 * (1.0 / 32 + e2 * 35 / 2048));
        c[2] = e * e2 * (5.0 / 48 + e2 * 5 / 256);
        c[3] = e2 * e2 * (35.0 / 512 + e2 * 7 / 512);
        c[4] = e * e2 * e2 * 63 / 1280;
        c[5] = e2 * e2 * e2 * 77 / 2048;
    }

    /// <summary>Equation 24.</summary>
    internal static double A3(double e) =>
        1 - e * ((1 - N) / 2 + e * ((2 + N * (1 - 3 * N)) / 8 + e * ((1 + N * (3 + N)) / 16 + e * ((3 + 2 * N) / 64 + e * 3 / 128))));

    /// <summary>Equation 25.</summary>
    internal static void C3(double e, Span<double> c)
    {
        c[0] = e * ((1 - N) / 4 + e * ((1 - N * N) / 8 + e * ((3 + N * (3 - N)) / 64 + e * ((5 + 2 * N) / 128 + e * 3 / 128))));
        c[1] = e * e * ((2 - N * (3 - N)) / 32 + e * ((3 - N * (2 + 3 * N)) / 64 + e * ((3 + N) / 128 + e * 5 / 256)));
        c[2] = e * e * e * ((5 - N * (9 - 5 * N)) / 192 + e * ((9 - 10 * N) / 384 + e * 7 / 512));
        c[3] = e * e * e * e * ((7 - 14 * N) / 512 + e * 7 / 512);
        c[4] = e * e * e * e * e * 21 / 2560;
        c[5] = 0;
    }

    /// <summary>Σ c sin 2lσ by Clenshaw's rule.</summary>
    internal static double SineSum(double sin, double cos, ReadOnlySpan<double> c)
    {
        var twice = 2 * (cos - sin) * (cos + sin);
        double y0 = 0, y1 = 0;
        for (var l = c.Length - 1; l >= 0; l--)
            (y0, y1) = (c[l] + twice * y0 - y1, y0);
        return 2 * sin * cos * y0;
    }
}
