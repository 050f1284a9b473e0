using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>The directions whose azimuth differs from a facing by at most, or at least, some angle.</summary>
internal readonly struct Wedge
{
    private const double Radian = Math.PI / 180;

    // Two upright planes through the observer bound a wedge of at most a half circle; the rest is what such a wedge leaves.
    private readonly double leftSin, leftCos, rightSin, rightCos;
    private readonly double sign;

    private Wedge(double middleDegrees, double halfDegrees, double sign)
    {
        (leftSin, leftCos) = Math.SinCos((middleDegrees - halfDegrees) * Radian);
        (rightSin, rightCos) = Math.SinCos((middleDegrees + halfDegrees) * Radian);
        this.sign = sign;
    }

    internal static Wedge AtMost(Bearing facing, double degrees) =>
        degrees <= 90 ? new Wedge(facing.Degrees, degrees, 1) : new Wedge(facing.Degrees + 180, 180 - degrees, -1);

    internal static Wedge AtLeast(Bearing facing, double degrees) =>
        degrees <= 90 ? new Wedge(facing.Degrees, degrees, -1) : new Wedge(facing.Degrees + 180, 180 - degrees, 1);

    /// <summary>Above zero inside. Its size is an arc, radians, within which the answer stays the same.</summary>
    internal double Margin(in Direction sun) =>
        sign * Math.Min(sun.East * leftCos - sun.North * leftSin, sun.North * rightSin - sun.East * rightCos);
}
