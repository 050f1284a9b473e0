using System.Net;
using AngleSharp;
using AngleSharp.Dom;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Pages;

/// <summary>Pages of places where clocks, sun or longitudes behave unlike home: made here, read through the real host.</summary>
public class FarPlaceTests(EmptyGuide guide) : IClassFixture<EmptyGuide>, IAsyncLifetime
{
    private static readonly Lens Wide = new(24, new Sensor(36, 24), Orientation.Landscape);

    public async ValueTask InitializeAsync()
    {
        await using var db = guide.Open();
        if (db.Locations.Any())
            return;
        db.Add(new ClubSettings("A far club", "everywhere"));
        db.AddRange(
            Place("far-bank", "Far Bank", new(-43.95, -176.55), "Pacific/Chatham", "NZ", 1),
            Place("north-hook", "North Hook", new(78.22, 15.63), "Arctic/Longyearbyen", "SJ", 2),
            Place("line-head", "Line Head", new(-16.8, 179.9995), "Pacific/Fiji", "FJ", 3),
            Place("line-skerry", "Line Skerry", new(-16.81, -179.9995), "Pacific/Fiji", "FJ", 4),
            Place("middle-point", "Middle Point", new(0, 6.6), "Africa/Sao_Tome", "ST", 5),
            Place("clock-point", "Clock Point", new(50.2, -5.5), "Europe/London", "GB", 6));
        await db.SaveChangesAsync();
    }

    public ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        return ValueTask.CompletedTask;
    }

    private static Location Place(string slug, string name, Position position, string zone, string country, int order)
    {
        var place = new Location(slug, name, position, zone, country, null, order).Describe($"{name}, far from home", "Made for a test.");
        place.AddVantagePoint(new VantagePoint("ledge", "The ledge", VantageKind.Ledge, position, Footing.Steady, "A ledge without a measured height")
            .CheckedAs(new FactCheck("a member", new LocalDate(2026, 11, 1))))
            .Compose(new Composition("out-to-sea", "Out to sea", "The open sea.", 120, Wide, WantedLight.GoldenLight, WantedLight.BlueLight));
        return place;
    }

    [Fact]
    public async Task A_place_without_a_ground_height_says_that_no_dip_is_counted_and_no_limit_judged()
    {
        var page = await PageAsync("/coast/middle-point/ledge", GuideHost.UsualNow);

        Assert.Contains("no dip of the horizon is counted", page.QuerySelector("#stance")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("counts as within reach of waves", page.QuerySelector("#stance")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("sea horizon is assumed", page.QuerySelector("#skyline")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector(".cautions"));
    }

    [Fact]
    public async Task A_zone_that_has_only_figures_for_a_name_prints_its_offset()
    {
        // The Chatham Islands keep UTC+12:45, in summer UTC+13:45 (IANA time zone database).
        Assert.Contains("UTC+13:45", await CaptionAsync("far-bank", Instant.FromUtc(2026, 11, 25, 12, 0)), StringComparison.Ordinal);
        Assert.Contains("UTC+12:45", await CaptionAsync("far-bank", Instant.FromUtc(2026, 6, 25, 12, 0)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task In_the_polar_night_the_sun_stays_below_and_at_midsummer_above()
    {
        // Longyearbyen: polar night from 26 October to 16 February, midnight sun from 20 April to 23 August (Norwegian almanac, from memory).
        var winter = await RowsAsync("north-hook", Instant.FromUtc(2026, 12, 20, 12, 0));
        Assert.All(winter, row => Assert.Contains("stays below", row.TextContent, StringComparison.Ordinal));

        var summer = await RowsAsync("north-hook", Instant.FromUtc(2026, 6, 18, 12, 0));
        Assert.All(summer, row => Assert.Contains("stays above", row.TextContent, StringComparison.Ordinal));
        Assert.All(summer, row => Assert.Contains("none", row.QuerySelector(".wanted")!.TextContent, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("line-head")]
    [InlineData("line-skerry")]
    public async Task At_the_date_line_days_run_on_and_sun_comes_up_before_it_goes_down(string slug)
    {
        var rows = await RowsAsync(slug, GuideHost.UsualNow);
        var days = rows.Select(row => row.QuerySelector("th")!.TextContent).ToList();

        // 12:00 UTC on 25 November is the 26th in Fiji (UTC+12).
        Assert.Equal("Thu 26 Nov", days[0]);
        Assert.Equal(10, days.Distinct().Count());
        Assert.All(rows, row => Assert.True(string.CompareOrdinal(Cell(row, 2), Cell(row, 4)) < 0, row.TextContent));
    }

    [Fact]
    public async Task On_the_guide_two_places_either_side_of_the_date_line_lie_a_kilometre_apart()
    {
        guide.Clock.Reset(GuideHost.UsualNow);
        var text = await guide.Client.GetStringAsync("/");

        // 0.001 degrees of longitude at 16.8 S is 107 m, 0.01 degrees of latitude 1106 m: 1.1 km.
        Assert.Contains("1.1 km", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_the_clocks_change_the_zone_changes_in_the_words_and_sunrise_jumps_by_an_hour()
    {
        // European summer time ends on 25 October 2026 and begins on 28 March 2027 at 01:00 UTC (Directive 2000/84/EC, as kept in GB).
        var autumn = await RowsAsync("clock-point", Instant.FromUtc(2026, 10, 22, 12, 0));
        Assert.InRange(Minutes(autumn[2]) - Minutes(autumn[3]), 56, 60);
        Assert.Contains("BST, from 25 Oct 01:00 GMT", await CaptionAsync("clock-point", Instant.FromUtc(2026, 10, 22, 12, 0)), StringComparison.Ordinal);

        var spring = await RowsAsync("clock-point", Instant.FromUtc(2027, 3, 25, 12, 0));
        Assert.InRange(Minutes(spring[3]) - Minutes(spring[2]), 56, 60);
        Assert.Contains("GMT, from 28 Mar 02:00 BST", await CaptionAsync("clock-point", Instant.FromUtc(2027, 3, 25, 12, 0)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sunrise_on_the_page_is_near_the_one_known_for_that_coast()
    {
        // About 07:50 GMT near 50.2 N 5.5 W on 26 November: from memory, ± 3 minutes. The almanac's own tests hold it to published tables.
        var rows = await RowsAsync("clock-point", Instant.FromUtc(2026, 11, 26, 6, 0));

        Assert.InRange(Minutes(rows[0]), 7 * 60 + 47, 7 * 60 + 53);
    }

    private static string Cell(IElement row, int index) => row.Children[index].TextContent.Trim()[..5];

    private static int Minutes(IElement row) => int.Parse(Cell(row, 2)[..2], System.Globalization.CultureInfo.InvariantCulture) * 60
        + int.Parse(Cell(row, 2)[3..], System.Globalization.CultureInfo.InvariantCulture);

    private async Task<string> CaptionAsync(string slug, Instant now) =>
        (await PageAsync($"/coast/{slug}/ledge/out-to-sea", now)).QuerySelector(".light-days caption")!.TextContent;

    private async Task<List<IElement>> RowsAsync(string slug, Instant now) =>
        [.. (await PageAsync($"/coast/{slug}/ledge/out-to-sea", now)).QuerySelectorAll(".light-days tbody tr:not(.moon-line)")];

    private async Task<IDocument> PageAsync(string address, Instant now)
    {
        guide.Clock.Reset(now);
        var answer = await guide.Client.GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var text = await answer.Content.ReadAsStringAsync();
        return await BrowsingContext.New().OpenAsync(request => request.Content(text));
    }
}
