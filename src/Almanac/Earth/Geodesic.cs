namespace Foreshore.Almanac.Earth;

/// <summary>The shortest line between two positions.</summary>
/// <param name="Metres">Length, metres.</param>
/// <param name="Initial">Bearing at the first position.</param>
/// <param name="Final">Bearing on arriving at the second one, still pointing onward.</param>
public readonly record struct GeodesicSegment(double Metres, Bearing Initial, Bearing Final);

/// <summary>Where a line ends.</summary>
/// <param name="Position">The end.</param>
/// <param name="Final">Bearing there, pointing onward.</param>
public readonly record struct GeodesicEnd(Position Position, Bearing Final);

/// <summary>
/// Shortest lines on the WGS 84 ellipsoid, anywhere, antipodes and poles included: C. F. F. Karney, Algorithms for
/// geodesics, Journal of Geodesy 87 (2013) 43. Good to some nanometres, and to 1e-9 degrees where the bearing has meaning.
/// </summary>
public static class Geodesic
{
    private const double Radian = Math.PI / 180;

    /// <summary>
    /// Distance and bearings between two positions. Between equal positions the distance is zero and the bearing north;
    /// between exact antipodes one of the two equally short ways is given.
    /// </summary>
    public static GeodesicSegment Between(Position a, Position b)
    {
        var line = GeodesicInverse.Solve(a, b);
        return new GeodesicSegment(line.Metres, ToBearing(line.SinInitial, line.CosInitial), ToBearing(line.SinFinal, line.CosFinal));
    }

    /// <summary>The end of a line from a position; the paper's direct problem (section 3).</summary>
    /// <param name="from">Where it begins.</param>
    /// <param name="initial">Bearing there.</param>
    /// <param name="metres">Length, metres; below zero goes backward.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not a finite number.</exception>
    public static GeodesicEnd Along(Position from, Bearing initial, double metres)
    {
        if (!double.IsFinite(metres))
            throw new ArgumentOutOfRangeException(nameof(metres), metres, "A length is a finite number of metres.");

        var (sinAzimuth1, cosAzimuth1) = SinCosDegrees(initial.Degrees);
        var (sinBeta1, cosBeta1) = Reduced(from.LatitudeDegrees);
        var sinAzimuth0 = sinAzimuth1 * cosBeta1;
        var cosAzimuth0 = Hypot(cosAzimuth1, sinAzimuth1 * sinBeta1);
        var (sinSigma1, cosSigma1) = sinBeta1 == 0 && cosAzimuth1 == 0 ? (0, 1) : Norm(sinBeta1, cosAzimuth1 * cosBeta1);
        var sigma1 = Math.Atan2(sinSigma1, cosSigma1);

        var epsilon = GeodesicSeries.Epsilon(cosAzimuth0);
        Span<double> c = stackalloc double[GeodesicSeries.Order];
        GeodesicSeries.C1(epsilon, c);
        var stretched1 = sigma1 + GeodesicSeries.SineSum(sinSigma1, cosSigma1, c);
        var stretched2 = stretched1 + metres / (GeodesicSeries.PolarMetres * GeodesicSeries.A1(epsilon));
        GeodesicSeries.C1Back(epsilon, c);
        var (sinStretched, cosStretched) = Math.SinCos(stretched2);
        var sigma2 = stretched2 + GeodesicSeries.SineSum(sinStretched, cosStretched, c);

        var (sinSigma2, cosSigma2) = Math.SinCos(sigma2);
        var sinBeta2 = cosAzimuth0 * sinSigma2;
        var cosBeta2 = Hypot(sinAzimuth0, cosAzimuth0 * cosSigma2);
        var latitude = Math.Atan2(sinBeta2, (1 - Ellipsoid.Flattening) * cosBeta2) / Radian;

        GeodesicSeries.C3(epsilon, c);
        var sphereTurn = Math.Atan2(sinAzimuth0 * sinSigma2, cosSigma2) - Math.Atan2(sinAzimuth0 * sinSigma1, cosSigma1);
        var turn = sphereTurn - Ellipsoid.Flattening * sinAzimuth0 * GeodesicSeries.A3(epsilon)
            * (sigma2 - sigma1 + GeodesicSeries.SineSum(sinSigma2, cosSigma2, c) - GeodesicSeries.SineSum(sinSigma1, cosSigma1, c));
        var longitude = Math.IEEERemainder(from.LongitudeDegrees + turn / Radian, 360);

        return new GeodesicEnd(new Position(Math.Clamp(latitude, -90, 90), longitude), ToBearing(sinAzimuth0, cosAzimuth0 * cosSigma2));
    }

    /// <summary>Sine and cosine of the reduced latitude; the cosine never quite zero, so that a pole keeps its meridian.</summary>
    internal static (double Sin, double Cos) Reduced(double latitudeDegrees)
    {
        var (sin, cos) = SinCosDegrees(latitudeDegrees);
        var (sinBeta, cosBeta) = Norm((1 - Ellipsoid.Flattening) * sin, cos);
        return (sinBeta, Math.Max(1e-150, cosBeta));
    }

    /// <summary>Exact at the quarters of the circle.</summary>
    internal static (double Sin, double Cos) SinCosDegrees(double degrees)
    {
        var quarter = Math.Round(degrees / 90);
        var (sin, cos) = Math.SinCos((degrees - 90 * quarter) * Radian);
        return ((int)quarter & 3) switch
        {
            0 => (sin, cos),
            1 => (cos, -sin),
            2 => (-sin, -cos),
            _ => (-cos, sin),
        };
    }

    internal static (double, double) Norm(double x, double y)
    {
        var length = Hypot(x, y);
        return (x / length, y / length);
    }

    internal static double Hypot(double x, double y) => Math.Sqrt(x * x + y * y);

    private static Bearing ToBearing(double sin, double cos) => Bearing.FromDegrees(Math.Atan2(sin, cos) / Radian);
}
