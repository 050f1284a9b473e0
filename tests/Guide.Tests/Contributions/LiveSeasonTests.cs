using Bunit;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>The season table that follows a facing, alone.</summary>
public sealed class LiveSeasonTests : BunitContext
{
    [Fact]
    public void It_says_for_which_facing_it_holds_and_what_it_leaves_out()
    {
        var zone = DateTimeZoneProviders.Tzdb["America/New_York"];
        var first = new YearMonth(2026, 11);
        var sky = SkyEphemeris.Covering(Instant.FromUtc(2026, 10, 1, 0, 0), Instant.FromUtc(2027, 12, 1, 0, 0));
        var scene = new Scene(new Observer(new Position(44.7716, -67.0649), null, Skyline.AssumedSea), new Frame(Bearing.FromDegrees(118), 0, new Lens(24, Sensor.FullFrame, Orientation.Landscape)), [WantedLight.GoldenLight]);
        var table = SeasonTables.For(scene, zone, first, HoursOut.Unrestricted, sky);

        var shown = Render<LiveSeason>(with => with.Add(part => part.View, new LiveSeasonView(SeasonDrawing.Of(table), "118°")));

        Assert.Contains("Season table as of 118°, over an assumed sea horizon; tide, limits and the way are judged once it is in the guide.", shown.Markup, StringComparison.Ordinal);
        Assert.Equal(12, shown.FindAll("tbody tr").Count);
    }
}
