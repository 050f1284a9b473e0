using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class DarkSkyTests
{
    private static readonly Observer Shore = new(Coast.Eastport, 10, Skyline.AssumedSea);

    // Five weeks by quarters of an hour, by the plain forms: the sun, the phase and the standard rise of the moon.
    [Fact]
    public void Dark_is_where_sun_and_moon_are_down_or_the_moon_is_faint()
    {
        var (from, to) = (Instant.FromUtc(2026, 5, 1, 0, 0), Instant.FromUtc(2026, 6, 5, 0, 0));
        var windows = DarkSky.Between(Coast.Eastport, from, to, Coast.Year2026);
        Assert.True(windows.Count > 20, $"{windows.Count} windows");
        for (var time = from; time < to; time += Duration.FromMinutes(15))
        {
            if (windows.Any(window => Near(window.Start, time) || Near(window.End, time))) continue;
            var sun = Coast.Year2026.Sun.At(time, Coast.Eastport).AltitudeDegrees;
            var moon = MoonPosition.Seen(MoonPosition.At(time), Coast.Eastport, 0);
            var expected = sun <= -18
                && (MoonPhases.At(time).RelativeBrightness <= 0.05 || moon.Horizontal.AltitudeDegrees < MoonDisc.StandardAltitudeDegrees(moon.DistanceKm));
            Assert.True(expected == windows.Any(window => window.Contains(time)), $"{time}");
        }
    }

    [Fact]
    public void The_core_is_up_inside_its_windows_and_ten_degrees_high_at_an_end_or_the_dark_ends_there()
    {
        var (from, to) = (Instant.FromUtc(2026, 6, 10, 12, 0), Instant.FromUtc(2026, 6, 20, 12, 0));
        var dark = DarkSky.Between(Coast.Eastport, from, to, Coast.Year2026);
        var windows = DarkSky.CoreBetween(Shore, from, to, Coast.Year2026);
        Assert.NotEmpty(windows);
        foreach (var end in windows.SelectMany(window => new[] { window.Start, window.End }))
            Assert.True(
                Math.Abs(Coast.Year2026.Galaxy.CentreAt(end, Coast.Eastport).AltitudeDegrees - 10) < 0.001
                || dark.Any(window => window.Start == end || window.End == end), $"{end}");
    }

    [Fact]
    public void A_white_night_has_no_dark() =>
        Assert.Empty(DarkSky.Between(new Position(60, 10), Instant.FromUtc(2026, 6, 10, 0, 0), Instant.FromUtc(2026, 6, 30, 0, 0), Coast.Year2026));

    private static bool Near(Instant a, Instant b) => a - b < Duration.FromSeconds(20) && b - a < Duration.FromSeconds(20);
}
