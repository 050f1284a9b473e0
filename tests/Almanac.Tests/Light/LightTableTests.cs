using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class LightTableTests
{
    // Least minutes as the club's rules give them, in the table's order.
    private static readonly int[] Least = [10, 1, 10, 10, 10, 10, 10, 5, 5, 10, 10, 5, 5, 10, 10, 10, 10];

    [Fact]
    public void Every_light_has_its_row_in_order()
    {
        Assert.Equal(Enum.GetValues<WantedLight>(), LightTable.Rows.Select(row => row.Light));
        Assert.Equal(Least, LightTable.Rows.Select(row => row.LeastMinutes));
        Assert.All(LightTable.Rows, row => Assert.Same(row, LightTable.Of(row.Light)));
        Assert.Equal(LightTable.Rows.Count, LightTable.Rows.Select(row => row.Name).Distinct().Count());
    }

    [Fact]
    public void Only_twilight_angles_stand_on_a_standard()
    {
        foreach (var row in LightTable.Rows)
        {
            var standard = row.HighestDegrees is -6 or -12 or -18 || row.LowestDegrees is -6 or -12 or -18;
            Assert.Equal(standard, row.Standing == LightStanding.StandardTwilight);
        }
    }

    [Fact]
    public void Light_that_is_not_in_the_table_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LightTable.Of((WantedLight)99));

    [Fact]
    public void Light_that_needs_more_than_the_sun_is_unknown_while_the_sun_allows_it()
    {
        var answer = Night(new Position(44.9, -66.99), WantedLight.SunburstOverSkyline, WantedLight.SoftLight);

        Assert.Empty(answer.Runs);
        Assert.Empty(answer.Union);
        Assert.Equal([WantedLight.SoftLight], answer.Unknown);
        Assert.All(answer.Possible, run => Assert.True(run.Length >= Duration.FromMinutes(10)));
    }

    [Fact]
    public void Light_that_the_sun_rules_out_does_not_hold_and_is_not_unknown()
    {
        // At 60 north the sun stays above −7 degrees in June.
        var answer = Night(new Position(60, 10.75), WantedLight.GalaxyCore, WantedLight.StarTrails);

        Assert.Empty(answer.Runs);
        Assert.Empty(answer.Possible);
        Assert.Empty(answer.Unknown);
    }

    [Fact]
    public void Assumed_sea_and_unknown_pieces_are_said_where_the_skyline_decides()
    {
        Assert.Equal(SkylineCautions.SeaAssumed, Of(Skyline.AssumedSea, WantedLight.SideLight));
        Assert.Equal(SkylineCautions.UnknownCountedAsLevel, Of(Coast.Bay, WantedLight.BlueLight, WantedLight.GoldenLight));
        Assert.Equal(SkylineCautions.None, Of(Coast.Bay, WantedLight.BlueLight));
        Assert.Equal(SkylineCautions.None, Of(new Skyline([new SkylinePoint(0, 3, SkylineKind.Land)]), WantedLight.SunInFrame));

        static SkylineCautions Of(Skyline skyline, params WantedLight[] wanted) =>
            Answer(new Observer(Coast.Eastport, 5, skyline), wanted).Skyline;
    }

    [Fact]
    public void Union_joins_what_overlaps_and_keeps_what_does_not()
    {
        var answer = Answer(new Observer(Coast.Eastport, 5, Skyline.AssumedSea), WantedLight.GoldenLight, WantedLight.TwilightGlow, WantedLight.BlueLight);

        // Dawn: blue from −8, glow ahead in the north-east, golden from −50′ to 6 degrees; dusk: golden, then a gap, then blue.
        Assert.Equal(3, answer.Union.Count);
        Assert.Equal(answer.Runs.Min(run => run.Start), answer.Union[0].Start);
        Assert.All(answer.Union.Zip(answer.Union.Skip(1)), pair => Assert.True(pair.First.End < pair.Second.Start));
    }

    [Fact]
    public void Part_of_an_answer_is_cut_at_the_stretch_and_slivers_go()
    {
        var answer = Answer(new Observer(Coast.Eastport, 5, Skyline.AssumedSea), WantedLight.GoldenLight);
        var run = answer.Runs[0];

        Assert.Equal([run with { End = run.Start + Duration.FromMinutes(12) }], answer.During(new Interval(run.Start - Duration.FromHours(1), run.Start + Duration.FromMinutes(12))).Runs);
        Assert.Empty(answer.During(new Interval(run.Start, run.Start + Duration.FromMinutes(9))).Runs);
    }

    [Fact]
    public void Stretch_turned_round_is_refused()
    {
        var from = Instant.FromUtc(2026, 6, 1, 0, 0);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LightRuns.Between(Coast.Scene(Coast.Eastport, 0, WantedLight.BlueLight), from, from - Duration.FromMinutes(1), Coast.Year2026));
    }

    private static LightAnswer Night(Position position, params WantedLight[] wanted) => Answer(new Observer(position, null, Skyline.AssumedSea), wanted);

    private static LightAnswer Answer(Observer observer, params WantedLight[] wanted) =>
        LightRuns.Between(Coast.Scene(observer, 60, wanted), Instant.FromUtc(2026, 6, 20, 6, 0), Instant.FromUtc(2026, 6, 21, 6, 0), Coast.Year2026);
}
