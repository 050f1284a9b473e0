using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

public sealed class CompositionTests
{
    private static readonly Lens Lens = new(24, Sensor.FullFrame, Orientation.Landscape);

    [Theory]
    [InlineData(400)]
    [InlineData(360)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_facing_outside_the_circle_is_refused_with_its_range(double facing) =>
        Assert.Contains("0 to just under 360", Assert.Throws<NotAcceptedException>(() => New(facing)).Message, StringComparison.Ordinal);

    [Fact]
    public void Some_light_must_be_wanted() =>
        Assert.Contains("Which light is wanted?", Assert.Throws<NotAcceptedException>(() => new Composition("a", "A", "Text", 10, Lens)).Message, StringComparison.Ordinal);

    /// <summary>Worked by hand: reading 128, declination 16 west, true 112; 5 with 16 west is 349.</summary>
    [Theory]
    [InlineData(128, -16, 112)]
    [InlineData(5, -16, 349)]
    [InlineData(355, 12, 7)]
    public void A_compass_facing_keeps_reading_declination_and_true_value(double reading, double declination, double expected)
    {
        var composition = New(1).FaceByCompass(new CompassReading(reading, declination, new LocalDate(2026, 10, 3)));
        Assert.Equal(expected, composition.FacingDegrees, 9);
        Assert.Equal(reading, composition.Compass!.ReadingDegrees);
        Assert.Null(composition.Face(20).Compass);
    }

    [Fact]
    public void The_galaxys_lower_limit_reaches_the_almanac_and_the_words()
    {
        var usual = new Composition("core", "Core", "Text", 182, Lens, WantedLight.GalaxyCore);
        var stance = new VantagePoint("bank", "Bank", VantageKind.OpenGround, new Position(44.6, -67.5), Footing.Anyone, "Grass.");
        Assert.False(usual.ToScene(stance, (double?)null).IsCoreLowOverSea);
        Assert.DoesNotContain("5 degrees", usual.WhenWords(WantedLight.GalaxyCore), StringComparison.Ordinal);

        var low = usual.GalaxyFromFive();
        Assert.True(low.ToScene(stance, (double?)null).IsCoreLowOverSea);
        Assert.EndsWith("from 5 degrees up where it stands over the sea", low.WhenWords(WantedLight.GalaxyCore), StringComparison.Ordinal);
        Assert.Throws<NotAcceptedException>(() => New(1).GalaxyFromFive());
    }

    [Fact]
    public void Tide_wishes_take_either_form_and_refuse_nonsense()
    {
        TideHeight low = new(1, "a"), high = new(2, "a"), elsewhere = new(2, "b");
        Assert.True(TideWish.Band(low, high).IsBand);
        Assert.False(TideWish.About(TideTurn.LowWater, -90, 60).IsBand);
        Assert.Throws<NotAcceptedException>(() => TideWish.Band(null, null));
        Assert.Throws<NotAcceptedException>(() => TideWish.Band(high, low));
        Assert.Contains("different stations", Assert.Throws<NotAcceptedException>(() => TideWish.Band(low, elsewhere)).Message, StringComparison.Ordinal);
        Assert.Throws<NotAcceptedException>(() => TideWish.About(TideTurn.HighWater, 60, -60));
        Assert.Equal(4, TideWish.About(TideTurn.LowWater, -1, 1).RangeAtLeast(4).RangeAtLeastMetres);
    }

    [Fact]
    public void A_ground_wish_without_the_foregrounds_height_cannot_be_judged()
    {
        Assert.False(new GroundWish(GroundState.FreshlyWashed, null).CanBeJudged);
        Assert.True(new GroundWish(GroundState.FreshlyWashed, new TideHeight(2.9, "a")).CanBeJudged);
    }

    /// <summary>
    /// Curvature less refraction at 1 km is 0.0675 m (Wolf and Ghilani, Elementary Surveying, "curvature and refraction", refraction a
    /// seventh of curvature; from memory). Ours takes Gauss's k = 0.13, so 2 % is allowed.
    /// </summary>
    [Fact]
    public void A_subject_sinks_below_the_level_as_levelling_tables_say()
    {
        var point = VantagePointTests.Point().Measure(new GroundHeight(2.4, 0.1, HeightMethod.Levelling, "s", new LocalDate(2026, 1, 1)));
        var eye = point.EyeMetresAboveMeanSea(0)!.Value;
        var far = Geodesic.Along(point.Position, Bearing.FromDegrees(100), 1000).Position;
        var seen = new Subject("Staff", far, eye, 10).SeenFrom(point, 0);
        Assert.Equal(1000, seen.DistanceMetres, 3);
        Assert.Equal(100, seen.Bearing.Degrees, 3);
        Assert.InRange(-Math.Tan(double.DegreesToRadians(seen.FootAltitudeDegrees!.Value)) * 1000 / 0.0675, 0.98, 1.02);
        Assert.Equal(double.RadiansToDegrees(Math.Atan(0.01)), seen.ApparentHeightDegrees, 9);
        Assert.Null(new Subject("Staff", far, eye, 10).SeenFrom(VantagePointTests.Point(), 0).TopAltitudeDegrees);
    }

    [Theory]
    [InlineData("../x.svg")]
    [InlineData("x.png")]
    [InlineData("A.svg")]
    public void A_sketch_is_a_plain_file_name(string name) => Assert.Throws<NotAcceptedException>(() => New(1).Sketched(name));

    private static Composition New(double facing) => new("a", "A", "Text", facing, Lens, WantedLight.GoldenLight);
}
