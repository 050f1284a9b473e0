using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

public sealed class VantagePointTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);

    [Fact]
    public void Reach_is_unknown_until_said_and_counts_as_wave_exposed()
    {
        var point = Point();
        Assert.Equal(Reach.Unknown, point.Reach);
        Assert.True(point.IsWaveExposed);
        Assert.Contains("Write what shelters it", Assert.Throws<NotAcceptedException>(() => point.Reached(Reach.None)).Message, StringComparison.Ordinal);
        Assert.False(point.Reached(Reach.None, "On a hill").IsWaveExposed);
    }

    [Fact]
    public void Eye_height_is_ground_less_mean_sea_plus_eye_and_unknown_without_either()
    {
        var point = Point();
        Assert.Null(point.EyeMetresAboveMeanSea(2.19));
        point.Measure(new GroundHeight(44.5, 0.6, HeightMethod.Lidar, "s", Today));
        Assert.Equal(43.91, point.EyeMetresAboveMeanSea(2.19)!.Value, 9);
        Assert.Null(point.EyeMetresAboveMeanSea(null));
        Assert.Equal(43.9, point.Ground!.LowerEndMetres, 9);
    }

    [Fact]
    public void A_scene_carries_place_eye_skyline_frame_and_wanted_light()
    {
        var point = Point().Draw(SkylineNotation.Parse("0 2 land; 60 0 sea; 200 1 unknown"));
        var composition = point.Compose(new Composition("a", "A", "Text", 118, new Lens(24, Sensor.FullFrame, Orientation.Landscape), WantedLight.SunInFrame, WantedLight.BlueLight));
        var scene = composition.ToScene(point, 2.0);
        Assert.Equal(point.Position, scene.Observer.Position);
        Assert.Null(scene.Observer.EyeMetresAboveMeanSea);
        Assert.Equal(SkylineKind.Sea, scene.Observer.Skyline.KindAt(Bearing.FromDegrees(118)));
        Assert.True(scene.Observer.Skyline.HasUnknown);
        Assert.Equal(118, scene.Frame.Facing.Degrees);
        Assert.Equal([WantedLight.SunInFrame, WantedLight.BlueLight], scene.Wanted);
    }

    [Fact]
    public void A_skyline_reads_back_as_written()
    {
        const string Text = "0 2.5 land; 60 0 sea; 200.25 1 unknown";
        Assert.Equal(Text, SkylineNotation.Write(SkylineNotation.Parse(Text)));
        Assert.Contains("none of land, sea, unknown", Assert.Throws<NotAcceptedException>(() => SkylineNotation.Parse("0 1 ice")).Message, StringComparison.Ordinal);
        Assert.Throws<NotAcceptedException>(() => SkylineNotation.Parse("0 1"));
        Assert.Throws<NotAcceptedException>(() => SkylineNotation.Parse("400 1 land"));
    }

    [Theory]
    [InlineData(70, 190, 70, true)]
    [InlineData(70, 190, 190, true)]
    [InlineData(70, 190, 69, false)]
    [InlineData(300, 40, 350, true)]
    [InlineData(300, 40, 10, true)]
    [InlineData(300, 40, 200, false)]
    public void The_exposed_sector_may_cross_north(double from, double to, double waves, bool exposed) =>
        Assert.Equal(exposed, new SeaLimit(1, 9, from, to).IsExposedTo(Bearing.FromDegrees(waves)));

    [Fact]
    public void Nearer_to_a_cliffs_foot_than_its_height_is_too_near_unless_a_warden_wrote_why_not()
    {
        Assert.True(new CliffAbove(18, 9).IsTooNear);
        Assert.False(new CliffAbove(18, 18).IsTooNear);
        Assert.False(new CliffAbove(2.5, 1, "A step, solid").IsTooNear);
    }

    [Fact]
    public void Heights_judged_by_another_station_need_checking()
    {
        var height = new TideHeight(3.4, "noaa/8411060");
        Assert.False(height.NeedsChecking("noaa/8411060"));
        Assert.True(height.NeedsChecking("noaa/8412581"));
        Assert.True(height.NeedsChecking(null));
        Assert.True(TideWish.Band(null, height).NeedsChecking("noaa/8412581"));
    }

    internal static VantagePoint Point() => new("point", "Point", VantageKind.Ledge, new Position(44.7849, -67.0112), Footing.Steady, "A ledge.");
}
