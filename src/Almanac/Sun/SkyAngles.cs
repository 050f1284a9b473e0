using System.Numerics;

namespace Foreshore.Almanac.Sun;

/// <summary>Angles of many directions at once.</summary>
internal static class SkyAngles
{
    /// <summary>Azimuths [0, 360) and altitudes, degrees, within 0.0001 degrees of arc.</summary>
    internal static void Degrees(ReadOnlySpan<double> east, ReadOnlySpan<double> north, ReadOnlySpan<double> up, Span<float> azimuth, Span<float> altitude)
    {
        var lanes = Vector<float>.Count;
        var i = 0;
        for (; i + lanes <= east.Length; i += lanes)
        {
            Vector<float> e = Narrow(east[i..]), n = Narrow(north[i..]), u = Narrow(up[i..]);
            var degrees = ArcTangent(e, n);
            degrees = Vector.ConditionalSelect(Vector.LessThan(degrees, Vector<float>.Zero), degrees + new Vector<float>(360), degrees);
            Vector.ConditionalSelect(Vector.GreaterThanOrEqual(degrees, new Vector<float>(360)), Vector<float>.Zero, degrees).CopyTo(azimuth[i..]);
            ArcTangent(u, Vector.SquareRoot(Vector.FusedMultiplyAdd(e, e, n * n))).CopyTo(altitude[i..]);
        }

        for (; i < east.Length; i++)
        {
            var direction = new Direction(east[i], north[i], up[i]);
            azimuth[i] = (float)direction.AzimuthDegrees;
            if (azimuth[i] >= 360) azimuth[i] = 0;
            altitude[i] = (float)direction.AltitudeDegrees;
        }
    }

    private static Vector<float> Narrow(ReadOnlySpan<double> values) =>
        Vector.Narrow(new Vector<double>(values), new Vector<double>(values[Vector<double>.Count..]));

    /// <summary>
    /// The angle of a point, degrees, −180…180: Abramowitz and Stegun, Handbook of Mathematical Functions, formula 4.4.49
    /// (2e-8 radians), folded over the eight parts of the circle.
    /// </summary>
    private static Vector<float> ArcTangent(Vector<float> y, Vector<float> x)
    {
        Vector<float> absX = Vector.Abs(x), absY = Vector.Abs(y);
        var larger = Vector.Max(absX, absY);
        // A point at the origin has no angle; any will do.
        var ratio = Vector.Min(absX, absY) / Vector.Max(larger, new Vector<float>(float.Epsilon));
        var square = ratio * ratio;
        var sum = new Vector<float>(0.0028662257f);
        sum = Vector.FusedMultiplyAdd(sum, square, new Vector<float>(-0.0161657367f));
        sum = Vector.FusedMultiplyAdd(sum, square, new Vector<float>(0.0429096138f));
        sum = Vector.FusedMultiplyAdd(sum, square, new Vector<float>(-0.0752896400f));
        sum = Vector.FusedMultiplyAdd(sum, square, new Vector<float>(0.1065626393f));
        sum = Vector.FusedMultiplyAdd(sum, square, new Vector<float>(-0.1420889944f));
        sum = Vector.FusedMultiplyAdd(sum, square, new Vector<float>(0.1999355085f));
        sum = Vector.FusedMultiplyAdd(sum, square, new Vector<float>(-0.3333314528f));
        sum = Vector.FusedMultiplyAdd(sum, square, Vector<float>.One);
        var degrees = sum * ratio * new Vector<float>(180 / MathF.PI);

        degrees = Vector.ConditionalSelect(Vector.GreaterThan(absY, absX), new Vector<float>(90) - degrees, degrees);
        degrees = Vector.ConditionalSelect(Vector.LessThan(x, Vector<float>.Zero), new Vector<float>(180) - degrees, degrees);
        return Vector.ConditionalSelect(Vector.LessThan(y, Vector<float>.Zero), -degrees, degrees);
    }
}
