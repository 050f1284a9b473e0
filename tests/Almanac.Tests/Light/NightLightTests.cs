using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class NightLightTests
{
    private static readonly WantedLight[] ByMoon = [WantedLight.FullMoonBalanced, WantedLight.ThinCrescent, WantedLight.MoonlitCoast];
    private static readonly WantedLight[] ByStars = [WantedLight.GalaxyCore, WantedLight.GalaxyBand, WantedLight.StarTrails];
    private static readonly Duration Minute = Duration.FromMinutes(1);

    public static TheoryData<double, double, string> Places => new()
    {
        { 44.9, -66.99, "bay" }, { 0, 0, "sea" }, { -44, -176.5, "bay" }, { 22, 179.9, "sea" },
    };

    // More than a whole lunation, every minute: that a light's few evenings a month are all found.
    [Theory]
    [MemberData(nameof(Places))]
    public void Moon_and_star_light_equal_the_minute_by_minute_definition(double latitude, double longitude, string skyline)
    {
        var observer = new Observer(new Position(latitude, longitude), 20, skyline == "bay" ? Coast.Bay : Skyline.AssumedSea);
        var wide = new Lens(16, Sensor.FullFrame, Orientation.Landscape);
        var (runs, odd) = (0, 0);
        foreach (var facing in new[] { 120.0, 240 })
        {
            var scene = new Scene(observer, new Frame(Bearing.FromDegrees(facing), 0, wide), [.. ByMoon, .. ByStars], IsCoreLowOverSea: facing > 200);
            var scan = new MinuteScan(scene, Coast.Year2026);
            var (from, to) = (Instant.FromUtc(2026, 3, 1, 0, 0), Instant.FromUtc(2026, 4, 5, 0, 0));
            var answer = LightRuns.Between(scene, from, to, Coast.Year2026);
            var rows = scan.Rows(scene.Wanted, from, to, Minute);
            foreach (var light in scene.Wanted)
            {
                var least = Duration.FromMinutes(LightTable.Of(light).LeastMinutes);
                var quick = answer.Runs.Where(run => run.Light == light).ToList();
                var slow = rows[light].Where(row => row.Length >= least).ToList();
                runs += quick.Count;
                // A run of nearly the least length is found by one and not by the other: a minute either way.
                odd += quick.Count(run => run.Length > least + Minute * 2 && !slow.Exists(row => AreNear(row, run)));
                odd += slow.Count(row => row.Length > least + Minute * 2 && !quick.Exists(run => AreNear(row, run)));
            }
        }

        Assert.True(runs > 60, $"{runs} runs");
        Assert.Equal(0, odd);
    }

    [Fact]
    public void Every_night_light_is_found_somewhere_in_the_year()
    {
        foreach (var light in ByMoon.Concat(ByStars))
        {
            var scene = Coast.Scene(Coast.Eastport, light switch { WantedLight.FullMoonBalanced => 100, WantedLight.ThinCrescent => 250, _ => 180 }, light);
            var answer = LightRuns.Between(scene, Instant.FromUtc(2026, 1, 1, 0, 0), Instant.FromUtc(2027, 1, 1, 0, 0), Coast.Year2026);
            Assert.NotEmpty(answer.Runs);
            Assert.Empty(answer.Possible);
        }
    }

    [Fact]
    public void The_core_over_a_clear_sea_counts_from_five_degrees()
    {
        // From 45 north the core climbs to 16 degrees: half an hour more on each side.
        var scene = Coast.Scene(Coast.Eastport, 180, WantedLight.GalaxyCore);
        var (from, to) = (Instant.FromUtc(2026, 6, 14, 16, 0), Instant.FromUtc(2026, 6, 15, 16, 0));
        var high = Assert.Single(LightRuns.Between(scene, from, to, Coast.Year2026).Runs);
        var low = Assert.Single(LightRuns.Between(scene with { IsCoreLowOverSea = true }, from, to, Coast.Year2026).Runs);
        Assert.True(low.Length >= high.Length);
        Assert.Equal(10, Coast.Year2026.Galaxy.CentreAt(high.End, Coast.Eastport).AltitudeDegrees, 10.0);
    }

    [Fact]
    public void Cloud_alone_stays_unknown()
    {
        Assert.Equal([WantedLight.SoftLight], LightTable.Rows.Where(row => !row.IsComputed).Select(row => row.Light));
    }

    [Fact]
    public void A_full_moon_spoils_the_dark()
    {
        var scene = Coast.Scene(Coast.Eastport, 180, WantedLight.StarTrails);
        var full = MoonPhases.Between(Instant.FromUtc(2026, 3, 1, 0, 0), Instant.FromUtc(2026, 4, 1, 0, 0)).First(phase => phase.Phase == PrincipalPhase.FullMoon).Time;
        var fresh = MoonPhases.Between(Instant.FromUtc(2026, 3, 1, 0, 0), Instant.FromUtc(2026, 4, 1, 0, 0)).First(phase => phase.Phase == PrincipalPhase.NewMoon).Time;
        var day = Duration.FromHours(12);
        Assert.Empty(LightRuns.Between(scene, full - day, full + day, Coast.Year2026).Runs);
        Assert.NotEmpty(LightRuns.Between(scene, fresh - day, fresh + day, Coast.Year2026).Runs);
    }

    [Fact]
    public void The_galaxys_centre_stands_ninety_degrees_from_its_pole()
    {
        for (var hour = 0; hour < 48; hour++)
        {
            var time = Instant.FromUtc(2026, 7, 1, 0, 0) + Duration.FromHours(hour);
            var (centre, pole) = (Coast.Year2026.Galaxy.CentreAt(time, Coast.Eastport), Coast.Year2026.Galaxy.PoleAt(time, Coast.Eastport));
            var (a, b) = (Sun.Direction.Of(centre.AzimuthDegrees, centre.AltitudeDegrees), Sun.Direction.Of(pole.AzimuthDegrees, pole.AltitudeDegrees));
            // Aberration bends the right angle by 40″ at most.
            Assert.Equal(0, a.East * b.East + a.North * b.North + a.Up * b.Up, 0.0002);
        }
    }

    private static bool AreNear(LightRun a, LightRun b) => Near(a.Start, b.Start) && Near(a.End, b.End);

    private static bool Near(Instant a, Instant b) => a - b <= Minute && b - a <= Minute;
}
