using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

// Numbers: common practice, no source (the sun in the frame, or within about 30 degrees of the axis).
public class FlareTests
{
    private static readonly Observer Sea = new(Coast.Eastport, 5, Skyline.AssumedSea);
    private static readonly Observer Land = new(Coast.Eastport, 5, new Skyline([new SkylinePoint(0, 0, SkylineKind.Land)]));

    // An 85 mm lens facing south: 23.9 by 16.1 degrees.
    private static readonly Frame South = new(Bearing.FromDegrees(180), 0, new Lens(85, Sensor.FullFrame, Orientation.Landscape));

    [Theory]
    [InlineData(185, 5, FlareCauses.SunInFrame)]
    [InlineData(185, 20, FlareCauses.SunBesideFrame)]
    [InlineData(205, 10, FlareCauses.SunBesideFrame)]
    [InlineData(212, 10, FlareCauses.None)]
    [InlineData(0, 10, FlareCauses.None)]
    public void Sun_in_the_frame_or_near_the_axis_is_minded(double azimuth, double altitude, FlareCauses expected) =>
        Assert.Equal(expected, Flare.Causes(South, Land, new Horizontal(azimuth, altitude), false, null));

    [Fact]
    public void Shade_lifts_it_beside_the_frame_only()
    {
        Assert.Equal(FlareCauses.None, Flare.Causes(South, Land, new Horizontal(185, 20), true, null));
        Assert.Equal(FlareCauses.SunInFrame, Flare.Causes(South, Land, new Horizontal(185, 5), true, null));
    }

    [Theory]
    [InlineData(185, 5, FlareCauses.SunInFrame | FlareCauses.GlitterPath)]
    [InlineData(205, 5, FlareCauses.SunBesideFrame | FlareCauses.GlitterPath)]
    [InlineData(185, 7, FlareCauses.SunInFrame)]
    public void Low_sun_over_water_counts_its_glitter_path(double azimuth, double altitude, FlareCauses expected) =>
        Assert.Equal(expected, Flare.Causes(South, Sea, new Horizontal(azimuth, altitude), false, null));

    [Fact]
    public void Glitter_counts_while_the_sun_itself_is_out_of_a_frame_turned_down()
    {
        var down = South with { TiltDegrees = -15 };
        Assert.Equal(FlareCauses.GlitterPath, Flare.Causes(down, Sea, new Horizontal(180, 5), true, null));
    }

    [Fact]
    public void Cloud_over_the_sun_or_a_sun_on_the_horizon_lifts_it()
    {
        Assert.Equal(FlareCauses.None, Flare.Causes(South, Sea, new Horizontal(185, 5), false, true));
        Assert.NotEqual(FlareCauses.None, Flare.Causes(South, Sea, new Horizontal(185, 5), false, false));
        Assert.Equal(FlareCauses.None, Flare.Causes(South, Sea, new Horizontal(185, -0.4), false, null));
        Assert.Equal(FlareCauses.None, Flare.Causes(South, Sea, new Horizontal(185, -3), false, null));
    }
}
