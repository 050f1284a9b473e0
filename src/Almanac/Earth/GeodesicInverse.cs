namespace Foreshore.Almanac.Earth;

/// <summary>
/// The inverse problem of C. F. F. Karney, Journal of Geodesy 87 (2013) 43, sections 4 and 5: the azimuth at the first
/// point is found by Newton's method on the longitude it leads to, kept between bounds that always hold the answer.
/// Points are first turned so that the first lies south, at least as far from the equator as the second, and west of it.
/// </summary>
internal struct GeodesicInverse
{
    private const double F = Ellipsoid.Flattening;
    private const double Tiny = 1e-150;
    private const double Rounding = 2.220446049250313e-16;
    private static readonly double RootRounding = Math.Sqrt(Rounding);
    private static readonly double ShortArc = 0.1 * RootRounding / Math.Sqrt(Math.Max(0.001, F) * (1 - F / 2) / 2);

    private double sinBeta1, cosBeta1, sinBeta2, cosBeta2, stretch1, stretch2;
    private double sinTurn, cosTurn, turn;
    private double sin1, cos1, sin2, cos2;

    internal readonly record struct Line(double Metres, double SinInitial, double CosInitial, double SinFinal, double CosFinal);

    internal static Line Solve(Position a, Position b)
    {
        var turnDegrees = Math.IEEERemainder(b.LongitudeDegrees - a.LongitudeDegrees, 360);
        var eastward = turnDegrees < 0 ? -1 : 1;
        var (latitude1, latitude2) = (a.LatitudeDegrees, b.LatitudeDegrees);
        var swapped = Math.Abs(latitude1) < Math.Abs(latitude2) ? -1 : 1;
        if (swapped < 0)
        {
            (latitude1, latitude2) = (latitude2, latitude1);
            eastward = -eastward;
        }

        var southward = latitude1 < 0 ? 1 : -1;
        var problem = new GeodesicInverse();
        problem.Prepare(latitude1 * southward, latitude2 * southward, Math.Abs(turnDegrees));
        var metres = problem.Metres(latitude1 * southward, Math.Abs(turnDegrees));

        var (sinA, cosA, sinB, cosB) = swapped < 0
            ? (problem.sin2, problem.cos2, problem.sin1, problem.cos1)
            : (problem.sin1, problem.cos1, problem.sin2, problem.cos2);
        return new Line(metres, sinA * swapped * eastward, cosA * swapped * southward, sinB * swapped * eastward, cosB * swapped * southward);
    }

    private void Prepare(double latitude1, double latitude2, double turnDegrees)
    {
        (sinBeta1, cosBeta1) = Geodesic.Reduced(latitude1);
        (sinBeta2, cosBeta2) = Geodesic.Reduced(latitude2);
        // Equal or opposite latitudes must stay exactly so.
        if (cosBeta1 < -sinBeta1)
        {
            if (cosBeta2 == cosBeta1) sinBeta2 = Math.CopySign(sinBeta1, sinBeta2);
        }
        else if (Math.Abs(sinBeta2) == -sinBeta1)
        {
            cosBeta2 = cosBeta1;
        }

        stretch1 = Math.Sqrt(1 + GeodesicSeries.SecondEccentricitySquared * sinBeta1 * sinBeta1);
        stretch2 = Math.Sqrt(1 + GeodesicSeries.SecondEccentricitySquared * sinBeta2 * sinBeta2);
        turn = turnDegrees * (Math.PI / 180);
        (sinTurn, cosTurn) = Geodesic.SinCosDegrees(turnDegrees);
    }

    private double Metres(double latitude1, double turnDegrees)
    {
        if ((latitude1 == -90 || sinTurn == 0) && AlongMeridian() is { } meridian) return meridian;
        if (sinBeta1 == 0 && turnDegrees >= 0 && turnDegrees <= 180 * (1 - F)) return AlongEquator();
        if (Start() is { } direct) return direct;
        return Iterate();
    }

    private double? AlongMeridian()
    {
        (sin1, cos1, sin2, cos2) = (sinTurn, cosTurn, 0, 1);
        double sinSigma1 = sinBeta1, cosSigma1 = cos1 * cosBeta1, sinSigma2 = sinBeta2, cosSigma2 = cosBeta2;
        var arc = Math.Atan2(Math.Max(0, cosSigma1 * sinSigma2 - sinSigma1 * cosSigma2), cosSigma1 * cosSigma2 + sinSigma1 * sinSigma2);
        var (length, reduced) = Lengths(GeodesicSeries.ThirdFlattening, arc, sinSigma1, cosSigma1, sinSigma2, cosSigma2);
        // Past the conjugate point the meridian is no longer the shortest way.
        if (arc >= 1 && reduced < 0) return null;
        return arc < 3 * Tiny ? 0 : length * GeodesicSeries.PolarMetres;
    }

    private double AlongEquator()
    {
        (sin1, cos1, sin2, cos2) = (1, 0, 1, 0);
        return Ellipsoid.EquatorialMetres * turn;
    }

    /// <summary>A first azimuth (section 5); the whole answer where the points lie close together.</summary>
    private double? Start()
    {
        var sinBeta12 = sinBeta2 * cosBeta1 - cosBeta2 * sinBeta1;
        var cosBeta12 = cosBeta2 * cosBeta1 + sinBeta2 * sinBeta1;
        var sinBetaSum = sinBeta2 * cosBeta1 + cosBeta2 * sinBeta1;
        var isShort = cosBeta12 >= 0 && sinBeta12 < 0.5 && cosBeta2 * turn < 0.5;
        var meanStretch = 1.0;
        var (sinOmega, cosOmega) = (sinTurn, cosTurn);
        if (isShort)
        {
            var middle = (sinBeta1 + sinBeta2) * (sinBeta1 + sinBeta2);
            middle /= middle + (cosBeta1 + cosBeta2) * (cosBeta1 + cosBeta2);
            meanStretch = Math.Sqrt(1 + GeodesicSeries.SecondEccentricitySquared * middle);
            (sinOmega, cosOmega) = Math.SinCos(turn / ((1 - F) * meanStretch));
        }

        Aim(sinOmega, cosOmega, sinBeta12, sinBetaSum);
        var sinSigma = Geodesic.Hypot(sin1, cos1);
        var cosSigma = sinBeta1 * sinBeta2 + cosBeta1 * cosBeta2 * cosOmega;
        if (isShort && sinSigma < ShortArc)
        {
            (sin2, cos2) = Geodesic.Norm(
                cosBeta1 * sinOmega,
                sinBeta12 - cosBeta1 * sinBeta2 * (cosOmega >= 0 ? sinOmega * sinOmega / (1 + cosOmega) : 1 - cosOmega));
            (sin1, cos1) = Geodesic.Norm(sin1, cos1);
            return Math.Atan2(sinSigma, cosSigma) * GeodesicSeries.PolarMetres * meanStretch;
        }

        if (cosSigma < 0 && sinSigma < 6 * GeodesicSeries.ThirdFlattening * Math.PI * cosBeta1 * cosBeta1)
            AimAcross(sinBeta12, sinBetaSum);

        (sin1, cos1) = sin1 > 0 ? Geodesic.Norm(sin1, cos1) : (1, 0);
        return null;
    }

    /// <summary>The great circle's azimuth on the auxiliary sphere (equation 49).</summary>
    private void Aim(double sinOmega, double cosOmega, double sinBeta12, double sinBetaSum)
    {
        sin1 = cosBeta2 * sinOmega;
        cos1 = cosOmega >= 0
            ? sinBeta12 + cosBeta2 * sinBeta1 * sinOmega * sinOmega / (1 + cosOmega)
            : sinBetaSum - cosBeta2 * sinBeta1 * sinOmega * sinOmega / (1 - cosOmega);
    }

    /// <summary>Nearly opposite points: the astroid of equations 53 to 57.</summary>
    private void AimAcross(double sinBeta12, double sinBetaSum)
    {
        var scale = F * cosBeta1 * GeodesicSeries.A3(GeodesicSeries.Epsilon(sinBeta1)) * Math.PI;
        var x = Math.Atan2(-sinTurn, -cosTurn) / scale;
        var y = sinBetaSum / (scale * cosBeta1);
        if (y > -200 * Rounding && x > -1 - 1000 * RootRounding)
        {
            sin1 = Math.Min(1, -x);
            cos1 = -Math.Sqrt(1 - sin1 * sin1);
            return;
        }

        var k = Astroid(x, y);
        var (sinShort, cosShort) = Math.SinCos(scale * (-x * k / (1 + k)));
        Aim(sinShort, -cosShort, sinBeta12, sinBetaSum);
    }

    /// <summary>The positive root of k⁴ + 2k³ − (x² + y² − 1)k² − 2y²k − y² = 0 (equation 55).</summary>
    private static double Astroid(double x, double y)
    {
        double p = x * x, q = y * y, r = (p + q - 1) / 6;
        if (q == 0 && r <= 0) return 0;

        double s = p * q / 4, r3 = r * r * r, discriminant = s * (s + 2 * r3), u = r;
        if (discriminant >= 0)
        {
            var t3 = s + r3;
            t3 += t3 < 0 ? -Math.Sqrt(discriminant) : Math.Sqrt(discriminant);
            var t = Math.Cbrt(t3);
            u += t + (t != 0 ? r * r / t : 0);
        }
        else
        {
            u += 2 * r * Math.Cos(Math.Atan2(Math.Sqrt(-discriminant), -(s + r3)) / 3);
        }

        var v = Math.Sqrt(u * u + q);
        var uv = u < 0 ? q / (v - u) : u + v;
        var w = (uv - q) / (2 * v);
        return uv / (Math.Sqrt(uv + w * w) + w);
    }

    private double Iterate()
    {
        double lowSin = Tiny, lowCos = 1, highSin = Tiny, highCos = -1;
        bool nearlyThere = false, narrow = false;
        for (var round = 0; ; round++)
        {
            var miss = Miss(out var slope, out var metres);
            if (narrow || !(Math.Abs(miss) >= (nearlyThere ? 8 : 1) * Rounding) || round >= 80) return metres;

            if (miss > 0 && (round > 20 || cos1 / sin1 > highCos / highSin)) (highSin, highCos) = (sin1, cos1);
            else if (miss < 0 && (round > 20 || cos1 / sin1 < lowCos / lowSin)) (lowSin, lowCos) = (sin1, cos1);

            if (round < 20 && slope > 0)
            {
                var step = -miss / slope;
                var (sinStep, cosStep) = Math.SinCos(step);
                var next = sin1 * cosStep + cos1 * sinStep;
                if (next > 0 && Math.Abs(step) < Math.PI)
                {
                    (sin1, cos1) = Geodesic.Norm(next, cos1 * cosStep - sin1 * sinStep);
                    nearlyThere = Math.Abs(miss) <= 16 * Rounding;
                    continue;
                }
            }

            (sin1, cos1) = Geodesic.Norm((lowSin + highSin) / 2, (lowCos + highCos) / 2);
            nearlyThere = false;
            var bound = Rounding * 200 * RootRounding;
            narrow = Math.Abs(lowSin - sin1) + (lowCos - cos1) < bound || Math.Abs(sin1 - highSin) + (cos1 - highCos) < bound;
        }
    }

    /// <summary>How far beyond the wanted longitude an azimuth leads, radians (equations 8, 45 and 46); also sets the far azimuth.</summary>
    private double Miss(out double slope, out double metres)
    {
        if (sinBeta1 == 0 && cos1 == 0) cos1 = -Tiny;
        var sin0 = sin1 * cosBeta1;
        var cos0 = Geodesic.Hypot(cos1, sin1 * sinBeta1);
        var (sinSigma1, cosSigma1) = Geodesic.Norm(sinBeta1, cos1 * cosBeta1);
        var (sinOmega1, cosOmega1) = Geodesic.Norm(sin0 * sinBeta1, cos1 * cosBeta1);

        sin2 = cosBeta2 != cosBeta1 ? sin0 / cosBeta2 : sin1;
        cos2 = cosBeta2 != cosBeta1 || Math.Abs(sinBeta2) != -sinBeta1
            ? Math.Sqrt(cos1 * cosBeta1 * (cos1 * cosBeta1) + (cosBeta1 < -sinBeta1
                ? (cosBeta2 - cosBeta1) * (cosBeta1 + cosBeta2)
                : (sinBeta1 - sinBeta2) * (sinBeta1 + sinBeta2))) / cosBeta2
            : Math.Abs(cos1);
        var (sinSigma2, cosSigma2) = Geodesic.Norm(sinBeta2, cos2 * cosBeta2);
        var (sinOmega2, cosOmega2) = Geodesic.Norm(sin0 * sinBeta2, cos2 * cosBeta2);

        var arc = Math.Atan2(Math.Max(0, cosSigma1 * sinSigma2 - sinSigma1 * cosSigma2), cosSigma1 * cosSigma2 + sinSigma1 * sinSigma2);
        var sinOmega = Math.Max(0, cosOmega1 * sinOmega2 - sinOmega1 * cosOmega2);
        var cosOmega = cosOmega1 * cosOmega2 + sinOmega1 * sinOmega2;
        var beyond = Math.Atan2(sinOmega * cosTurn - cosOmega * sinTurn, cosOmega * cosTurn + sinOmega * sinTurn);

        var epsilon = GeodesicSeries.Epsilon(cos0);
        Span<double> c = stackalloc double[GeodesicSeries.Order];
        GeodesicSeries.C3(epsilon, c);
        var shortfall = F * GeodesicSeries.A3(epsilon) * sin0
            * (arc + GeodesicSeries.SineSum(sinSigma2, cosSigma2, c) - GeodesicSeries.SineSum(sinSigma1, cosSigma1, c));

        var (length, reduced) = Lengths(epsilon, arc, sinSigma1, cosSigma1, sinSigma2, cosSigma2);
        slope = cos2 == 0 ? -2 * (1 - F) * stretch1 / sinBeta1 : reduced * (1 - F) / (cos2 * cosBeta2);
        metres = length * GeodesicSeries.PolarMetres;
        return beyond - shortfall;
    }

    /// <summary>Length and reduced length over the polar radius (equations 7 and 38 to 41).</summary>
    private readonly (double Length, double Reduced) Lengths(double epsilon, double arc, double sinSigma1, double cosSigma1, double sinSigma2, double cosSigma2)
    {
        Span<double> c = stackalloc double[GeodesicSeries.Order];
        GeodesicSeries.C1(epsilon, c);
        var i1 = GeodesicSeries.A1(epsilon) * (arc + GeodesicSeries.SineSum(sinSigma2, cosSigma2, c) - GeodesicSeries.SineSum(sinSigma1, cosSigma1, c));
        GeodesicSeries.C2(epsilon, c);
        var i2 = GeodesicSeries.A2(epsilon) * (arc + GeodesicSeries.SineSum(sinSigma2, cosSigma2, c) - GeodesicSeries.SineSum(sinSigma1, cosSigma1, c));
        var reduced = stretch2 * cosSigma1 * sinSigma2 - stretch1 * sinSigma1 * cosSigma2 - cosSigma1 * cosSigma2 * (i1 - i2);
        return (i1, reduced);
    }
}
