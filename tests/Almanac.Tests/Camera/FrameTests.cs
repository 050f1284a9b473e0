using CsCheck;
using Foreshore.Almanac.Earth;

namespace Foreshore.Almanac.Camera;

public class FrameTests
{
    private static readonly Lens Wide = new(24, Sensor.FullFrame, Orientation.Landscape);

    [Theory]
    [InlineData(0, 0, 0, 0)]
    [InlineData(30, 30, 0, 0)]
    [InlineData(30, 40, 0, 4.2318)]
    [InlineData(-20, -40, 0, -8.7353)]
    [InlineData(90, 90, 0, 0)]
    [InlineData(60, 90, 0, 13.8564)]
    public void Tilting_moves_the_axis_up(double tilt, double altitude, double x, double y)
    {
        var point = new Frame(Bearing.FromDegrees(123), tilt, Wide).Project(123, altitude)!.Value;

        Assert.Equal(x, point.XMm, 1e-4);
        Assert.Equal(y, point.YMm, 1e-4);
    }

    [Fact]
    public void Angle_off_the_axis_is_kept_whatever_the_tilt() =>
        Gen.Select(Gen.Double[-80, 80], Gen.Double[-70, 70], Gen.Double[-80, 80]).Sample((tilt, turn, altitude) =>
        {
            const double radian = Math.PI / 180;
            var point = new Frame(Bearing.FromDegrees(10), tilt, Wide).Project(10 + turn, altitude);
            var cosine = Math.Sin(tilt * radian) * Math.Sin(altitude * radian) + Math.Cos(tilt * radian) * Math.Cos(altitude * radian) * Math.Cos(turn * radian);
            if (point is not { } seen) return cosine < 1e-9;
            return Math.Abs(Math.Atan(Math.Sqrt(seen.XMm * seen.XMm + seen.YMm * seen.YMm) / 24) - Math.Acos(Math.Min(1, cosine))) < 1e-6;
        });

    [Theory]
    [InlineData(36.8, true)]
    [InlineData(36.9, false)]
    [InlineData(-36.8, true)]
    [InlineData(180, false)]
    public void Frame_ends_at_half_the_angle_of_view(double turn, bool inside) =>
        Assert.Equal(inside, new Frame(Bearing.FromDegrees(350), 0, Wide).Contains(350 + turn, 0));

    [Fact]
    public void Standing_the_camera_up_swaps_the_sides()
    {
        var upright = new Frame(Bearing.FromDegrees(0), 0, new Lens(24, Sensor.FullFrame, Orientation.Portrait));

        Assert.True(upright.Contains(0, 36));
        Assert.False(upright.Contains(36, 0));
    }

    [Fact]
    public void What_is_behind_has_no_place() => Assert.Null(new Frame(Bearing.FromDegrees(0), 0, Wide).Project(180, 0));

    [Theory]
    [InlineData(0, 36, 24)]
    [InlineData(-24, 36, 24)]
    [InlineData(double.NaN, 36, 24)]
    [InlineData(24, 0, 24)]
    [InlineData(24, 36, double.PositiveInfinity)]
    public void Lenses_without_sense_are_refused(double focalLength, double width, double height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Lens(focalLength, new Sensor(width, height), Orientation.Landscape));
}
