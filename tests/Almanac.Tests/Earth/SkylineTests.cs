using CsCheck;

namespace Foreshore.Almanac.Earth;

public class SkylineTests
{
    private static readonly Skyline Bay = new(
    [
        new(300, 4, SkylineKind.Land),
        new(20, 2, SkylineKind.Land),
        new(60, 0, SkylineKind.Sea),
        new(170, 0, SkylineKind.Unknown),
    ]);

    [Theory]
    [InlineData(300, 4)]
    [InlineData(340, 3)]
    [InlineData(0, 2.5)]
    [InlineData(20, 2)]
    [InlineData(40, 1)]
    [InlineData(60, -0.2)]
    [InlineData(169.999, -0.2)]
    [InlineData(170, 0)]
    [InlineData(299.999, 0)]
    public void Corners_are_joined_by_straight_lines_round_the_circle(double azimuth, double altitude) =>
        Assert.Equal(altitude, Bay.AltitudeDegreesAt(Bearing.FromDegrees(azimuth), 0.2), 1e-3);

    [Theory]
    [InlineData(10, SkylineKind.Land)]
    [InlineData(60, SkylineKind.Sea)]
    [InlineData(200, SkylineKind.Unknown)]
    [InlineData(310, SkylineKind.Land)]
    public void Each_piece_has_its_kind(double azimuth, SkylineKind kind) =>
        Assert.Equal(kind, Bay.KindAt(Bearing.FromDegrees(azimuth)));

    [Fact]
    public void Only_the_assumed_sea_is_assumed()
    {
        Assert.True(Skyline.AssumedSea.IsAssumed);
        Assert.False(Skyline.AssumedSea.HasUnknown);
        Assert.False(Bay.IsAssumed);
        Assert.True(Bay.HasUnknown);
        Assert.Equal(-0.3, Skyline.AssumedSea.AltitudeDegreesAt(Bearing.FromDegrees(123), 0.3));
    }

    [Fact]
    public void Skylines_without_sense_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new Skyline([]));
        Assert.Throws<ArgumentException>(() => new Skyline([new(10, 0, SkylineKind.Sea), new(10, 1, SkylineKind.Land)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Skyline([new(360, 0, SkylineKind.Sea)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Skyline([new(10, double.NaN, SkylineKind.Land)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Skyline([new(10, 1, (SkylineKind)7)]));
    }

    [Fact]
    public void Apparent_altitude_and_airless_altitude_undo_each_other_and_grow_together() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[0, 1]).Sample((airless, more) =>
            Math.Abs(Refraction.Airless(Refraction.Apparent(airless)) - airless) < 1e-9
            && Refraction.Apparent(airless + more) >= Refraction.Apparent(airless));

    [Fact]
    public void Observer_without_a_height_has_no_dip()
    {
        Assert.Equal(0, new Observer(new Position(44, -67), null, Skyline.AssumedSea).DipDegrees);
        Assert.Equal(0.0928, new Observer(new Position(44, -67), 10, Skyline.AssumedSea).DipDegrees, 1e-4);
        Assert.Equal(0, new Observer(new Position(44, -67), -1, Skyline.AssumedSea).DipDegrees);
    }
}
