using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>A frame as four planes through the observer: the same rectangle as <see cref="Frame.Contains"/>.</summary>
internal readonly struct PictureEdges
{
    private readonly Direction left, right, bottom, top;

    internal PictureEdges(Frame frame)
    {
        const double radian = Math.PI / 180;
        var (sinFacing, cosFacing) = Math.SinCos(frame.Facing.Degrees * radian);
        var (sinTilt, cosTilt) = Math.SinCos(frame.TiltDegrees * radian);
        var ahead = new Direction(sinFacing * cosTilt, cosFacing * cosTilt, sinTilt);
        var toRight = new Direction(cosFacing, -sinFacing, 0);
        var upward = new Direction(-sinFacing * sinTilt, -cosFacing * sinTilt, cosTilt);

        var (sinWide, cosWide) = Math.SinCos(frame.Lens.HorizontalAngleDegrees / 2 * radian);
        var (sinHigh, cosHigh) = Math.SinCos(frame.Lens.VerticalAngleDegrees / 2 * radian);
        left = Sum(ahead, sinWide, toRight, cosWide);
        right = Sum(ahead, sinWide, toRight, -cosWide);
        bottom = Sum(ahead, sinHigh, upward, cosHigh);
        top = Sum(ahead, sinHigh, upward, -cosHigh);
    }

    /// <summary>Above zero inside. Its size is an arc, radians, within which the answer stays the same.</summary>
    internal double Margin(in Direction seen) => Math.Min(
        Math.Min(Product(left, seen), Product(right, seen)),
        Math.Min(Product(bottom, seen), Product(top, seen)));

    private static Direction Sum(Direction a, double timesA, Direction b, double timesB) =>
        new(a.East * timesA + b.East * timesB, a.North * timesA + b.North * timesB, a.Up * timesA + b.Up * timesB);

    private static double Product(in Direction a, in Direction b) => a.East * b.East + a.North * b.North + a.Up * b.Up;
}
