using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Sun;

/// <summary>
/// The geocentric sun at one node. A and B lie in the equator's plane, in a frame that turns with the mean day so that
/// A points to where the sun would stand if clocks and sundials agreed; C points to the pole.
/// </summary>
internal readonly record struct SunNode(double A, double B, double C, double Parallax)
{
    internal static SunNode At(double daysFromJ2000)
    {
        var sun = SunPosition.At(daysFromJ2000, DeltaT.Seconds(2000 + (daysFromJ2000 + 0.5) / 365.2425));
        const double radian = Math.PI / 180;
        // Nodes lie on whole days from a noon: what is left of Greenwich's hour angle is the equation of time.
        var (sinHour, cosHour) = Math.SinCos((sun.SiderealDegrees - sun.RightAscensionDegrees) * radian);
        var (sinDeclination, cosDeclination) = Math.SinCos(sun.DeclinationDegrees * radian);
        return new SunNode(
            cosDeclination * cosHour, cosDeclination * sinHour, sinDeclination,
            SunSegment.EquatorialParallaxRadians / sun.DistanceAu);
    }
}

/// <summary>One day of the sun's way: three cubics in the fraction of the day, and the parallax as a straight line.</summary>
internal readonly struct SunSegment
{
    internal const double EquatorialParallaxRadians = 8.794 / 3600 * Math.PI / 180;

    internal readonly double A0, A1, A2, A3, B0, B1, B2, B3, C0, C1, C2, C3, Parallax0, Parallax1;

    private SunSegment(ReadOnlySpan<SunNode> n)
    {
        (A0, A1, A2, A3) = Cubic(n[0].A, n[1].A, n[2].A, n[3].A, n[4].A, n[5].A);
        (B0, B1, B2, B3) = Cubic(n[0].B, n[1].B, n[2].B, n[3].B, n[4].B, n[5].B);
        (C0, C1, C2, C3) = Cubic(n[0].C, n[1].C, n[2].C, n[3].C, n[4].C, n[5].C);
        Parallax0 = n[2].Parallax;
        Parallax1 = n[3].Parallax - n[2].Parallax;
    }

    /// <summary>The day between the third and the fourth of six nodes.</summary>
    internal static SunSegment Between(ReadOnlySpan<SunNode> sixNodes) => new(sixNodes);

    // Hermite's cubic, its slopes by the five-point rule (Abramowitz and Stegun, table 25.2).
    private static (double, double, double, double) Cubic(double f0, double f1, double f2, double f3, double f4, double f5)
    {
        var start = (8 * (f3 - f1) - (f4 - f0)) / 12;
        var end = (8 * (f4 - f2) - (f5 - f1)) / 12;
        var rise = f3 - f2;
        return (f2, start, 3 * rise - 2 * start - end, start + end - 2 * rise);
    }
}
