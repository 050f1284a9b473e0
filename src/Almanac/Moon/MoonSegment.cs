using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Moon;

/// <summary>
/// The geocentric moon at one node, equatorial radii of the Earth. A and B lie in the equator's plane, in a frame that
/// turns once a day of UT; C points to the pole.
/// </summary>
internal readonly record struct MoonNode(double A, double B, double C)
{
    internal static MoonNode At(double daysFromJ2000)
    {
        var moon = MoonPosition.At(daysFromJ2000, DeltaT.Seconds(2000 + (daysFromJ2000 + 0.5) / 365.2425));
        const double radian = Math.PI / 180;
        var turned = 360 * (daysFromJ2000 - Math.Floor(daysFromJ2000));
        var (sinHour, cosHour) = Math.SinCos((moon.SiderealDegrees - moon.RightAscensionDegrees - turned) * radian);
        var (sinDeclination, cosDeclination) = Math.SinCos(moon.DeclinationDegrees * radian);
        var radii = moon.DistanceKm * 1000 / Ellipsoid.EquatorialMetres;
        return new MoonNode(radii * cosDeclination * cosHour, radii * cosDeclination * sinHour, radii * sinDeclination);
    }
}

/// <summary>A quarter of a day of the moon's way: three cubics in the fraction of that quarter.</summary>
internal readonly struct MoonSegment
{
    /// <summary>Segments a day. In a quarter the moon creeps by 3 degrees, which a cubic holds to 0.000002 degrees.</summary>
    internal const int PerDay = 4;

    internal readonly double A0, A1, A2, A3, B0, B1, B2, B3, C0, C1, C2, C3;

    private MoonSegment(ReadOnlySpan<MoonNode> n)
    {
        (A0, A1, A2, A3) = Cubic(n[0].A, n[1].A, n[2].A, n[3].A, n[4].A, n[5].A);
        (B0, B1, B2, B3) = Cubic(n[0].B, n[1].B, n[2].B, n[3].B, n[4].B, n[5].B);
        (C0, C1, C2, C3) = Cubic(n[0].C, n[1].C, n[2].C, n[3].C, n[4].C, n[5].C);
    }

    /// <summary>The quarter between the third and the fourth of six nodes.</summary>
    internal static MoonSegment Between(ReadOnlySpan<MoonNode> sixNodes) => new(sixNodes);

    // Hermite's cubic, its slopes by the five-point rule (Abramowitz and Stegun, table 25.2).
    private static (double, double, double, double) Cubic(double f0, double f1, double f2, double f3, double f4, double f5)
    {
        var start = (8 * (f3 - f1) - (f4 - f0)) / 12;
        var end = (8 * (f4 - f2) - (f5 - f1)) / 12;
        var rise = f3 - f2;
        return (f2, start, 3 * rise - 2 * start - end, start + end - 2 * rise);
    }
}
