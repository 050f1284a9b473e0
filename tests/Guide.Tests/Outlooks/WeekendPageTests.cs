using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Outlooks;

public class WeekendPageTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    [Fact]
    public async Task The_board_has_nine_columns_and_a_row_for_each_composition_a_visitor_may_see_exactly()
    {
        var page = await PageAsync("/weekend");

        Assert.Equal("This weekend, 27–29 November", page.QuerySelector("h1")!.TextContent);
        Assert.Equal(10, page.QuerySelectorAll(".board thead th").Length);
        var rows = page.QuerySelectorAll(".board tbody tr:not(.board-place)");
        Assert.True(rows.Length >= 30, $"{rows.Length} rows");
        Assert.All(rows, row => Assert.Equal(9, row.QuerySelectorAll("td").Length));
    }

    [Theory]
    [InlineData("/weekend?from=2026-11-27&footing=&within=&order=", "This weekend, 27–29 November")]
    [InlineData("/weekend?from=2026-12-04", "Friday to Sunday, 4–6 December 2026")]
    public async Task A_filter_leaves_this_weekend_this_weekend(string address, string heading) =>
        Assert.Equal(heading, (await PageAsync(address)).QuerySelector("h1")!.TextContent);

    [Fact]
    public async Task Every_verdict_of_the_five_stands_somewhere_on_the_demo_board()
    {
        var words = (await PageAsync("/weekend")).QuerySelectorAll(".board .verdict").Select(word => word.TextContent.Trim('[', ']')).ToHashSet();

        Assert.Superset(new HashSet<string> { "suits", "borderline", "not judged", "does not suit" }, words);
    }

    [Fact]
    public async Task No_cell_whose_stance_waves_can_reach_suits()
    {
        await using var db = guide.Open();
        var places = await Foreshore.Guide.Locations.LocationQueries.CoastAsync(db, Reader.Visitor, Foreshore.Guide.Locations.Parts.All);
        var wet = places.SelectMany(place => place.VantagePoints, (place, stance) => (place, stance))
            .Where(pair => pair.stance.IsWaveExposed)
            .SelectMany(pair => pair.stance.Compositions, (pair, composition) => $"/coast/{pair.place.Slug}/{pair.stance.Slug}/{composition.Slug}").ToHashSet();
        var page = await PageAsync("/weekend");

        var rows = page.QuerySelectorAll(".board tbody tr").Where(row => wet.Contains(row.QuerySelector("th a")?.GetAttribute("href") ?? "")).ToList();

        Assert.True(rows.Count >= 10, $"only {rows.Count} rows by the water");
        Assert.All(rows, row => Assert.DoesNotContain(row.QuerySelectorAll(".verdict"), word => word.TextContent is "suits" or "borderline"));
    }

    [Fact]
    public async Task At_most_five_commands_answer_the_page()
    {
        await guide.Client.GetAsync("/weekend");
        guide.Commands.Reset();

        await guide.Client.GetAsync("/weekend");

        Assert.InRange(guide.Commands.Commands.Count, 1, 5);
    }

    [Fact]
    public async Task Footing_leaves_the_harder_stances_out_and_says_how_many()
    {
        var all = await PageAsync("/weekend");
        var easy = await PageAsync("/weekend?footing=anyone");

        Assert.True(Rows(easy) < Rows(all));
        Assert.Contains("left out by footing or distance", easy.Body!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/weekend?from=0001-01-01", "from")]
    [InlineData("/weekend?from=yesterday", "from")]
    [InlineData("/weekend?footing=7", "footing")]
    [InlineData("/weekend?within=-3", "within")]
    [InlineData("/weekend?order=beauty", "order")]
    public async Task What_cannot_be_read_is_said_next_to_its_field(string address, string field)
    {
        var answer = await guide.Client.GetAsync(address);
        var page = Parse(await answer.Content.ReadAsStringAsync());

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.NotNull(page.QuerySelector($"#{field}-fault"));
        Assert.NotNull(page.QuerySelector($".error-summary a[href$='#{field}']"));
        Assert.Null(page.QuerySelector(".board"));
    }

    [Fact]
    public async Task A_weekend_far_ahead_and_one_long_past_have_their_own_sun()
    {
        Assert.NotNull((await PageAsync("/weekend?from=2090-07-01")).QuerySelector(".board"));
        Assert.Contains("past", (await PageAsync("/weekend?from=1960-07-01")).QuerySelector(".board")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Home_is_rounded_kept_in_the_cookie_and_never_in_an_address()
    {
        var form = Parse(await (await guide.Client.GetAsync("/yours?back=/weekend")).Content.ReadAsStringAsync()).QuerySelector("form.yours-form")!;
        var posted = form.QuerySelectorAll("input[type=hidden]").ToDictionary(input => input.GetAttribute("name")!, input => input.GetAttribute("value") ?? "");
        posted["Form.Home"] = "44.6543, -67.2071";
        (posted["Form.EarliestAlarm"], posted["Form.LatestHome"]) = ("03:30", "22:00");
        using var content = new FormUrlEncodedContent(posted);

        var answer = await guide.Client.PostAsync("/yours", content);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/weekend", new Uri(new Uri("http://localhost"), answer.Headers.Location!).AbsolutePath);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"), value => value.StartsWith(Preferences.CookieName, StringComparison.Ordinal));
        Assert.Contains("44.65", cookie, StringComparison.Ordinal);
        Assert.DoesNotContain("44.654", cookie, StringComparison.Ordinal);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
    }

    private async Task<AngleSharp.Html.Dom.IHtmlDocument> PageAsync(string address)
    {
        var answer = await guide.Client.GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return Parse(await answer.Content.ReadAsStringAsync());
    }

    private static AngleSharp.Html.Dom.IHtmlDocument Parse(string html) => new HtmlParser().ParseDocument(html);

    private static int Rows(IParentNode page) => page.QuerySelectorAll(".board tbody th[scope=row]").Length;
}
