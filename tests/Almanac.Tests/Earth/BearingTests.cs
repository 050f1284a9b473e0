using CsCheck;

namespace Foreshore.Almanac.Earth;

public class BearingTests
{
    private static readonly Gen<double> AnyDegrees = Gen.OneOf(Gen.Double[-1e6, 1e6], Gen.Double[-360, 720], Some.Of(0, -0.0, 360, -360, 180, -180, 1e-300, -1e-300, -1e-15));

    [Fact]
    public void Bearings_lie_from_0_to_below_360() =>
        AnyDegrees.Sample(degrees => Bearing.FromDegrees(degrees).Degrees is >= 0 and < 360);

    [Fact]
    public void Angle_between_bearings_lies_from_0_to_180_and_both_ways_agree() =>
        Gen.Select(AnyDegrees, AnyDegrees).Sample((a, b) =>
        {
            var (from, to) = (Bearing.FromDegrees(a), Bearing.FromDegrees(b));
            return from.AngleTo(to) is >= 0 and <= 180
                && Math.Abs(from.AngleTo(to) - to.AngleTo(from)) < 1e-9
                && from.SignedTo(to) is > -180 and <= 180
                && from.Plus(from.SignedTo(to)).AngleTo(to) < 1e-9;
        });

    [Theory]
    [InlineData(350, 10, 20)]
    [InlineData(10, 350, -20)]
    [InlineData(0, 180, 180)]
    [InlineData(180, 0, 180)]
    public void Turns_are_clockwise_positive(double from, double to, double turn) =>
        Assert.Equal(turn, Bearing.FromDegrees(from).SignedTo(Bearing.FromDegrees(to)));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Bearings_are_finite(double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Bearing.FromDegrees(degrees));

    [Theory]
    [InlineData(91, 0)]
    [InlineData(-90.001, 0)]
    [InlineData(double.NaN, 0)]
    [InlineData(0, 180.5)]
    [InlineData(0, -181)]
    [InlineData(0, double.NaN)]
    public void Positions_lie_on_the_Earth(double latitude, double longitude)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => new Position(latitude, longitude));

        Assert.NotNull(refused.ActualValue);
    }

    [Fact]
    public void Date_line_has_one_longitude() => Assert.Equal(new Position(10, -180), new Position(10, 180));
}
