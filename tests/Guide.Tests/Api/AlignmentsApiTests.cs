using System.Net;
using System.Text.Json;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Api;

public sealed class AlignmentsApiTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private const string Root = "/api/v1/compositions/halfmoon-light/";
    private const string WithSubject = Root + "high-edge/light-and-first-sun/alignments";

    [Fact]
    public async Task Passages_come_by_time_within_the_tolerance_with_cautions()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync($"{WithSubject}?from=2026-12-01&to=2028-12-01&tolerance=1")).RootElement;
        Assert.NotEmpty(answer.GetProperty("cautions").EnumerateArray());
        Assert.Contains("Not for navigation", answer.GetProperty("notForNavigation").GetString()!, StringComparison.Ordinal);
        var all = answer.GetProperty("alignments").EnumerateArray().ToList();
        Assert.NotEmpty(all);
        Assert.All(all, one => Assert.InRange(one.GetProperty("offDegrees").GetDouble(), 0, 1));
        Assert.Equal(all.Select(one => one.GetProperty("time").GetDateTimeOffset()).Order(), all.Select(one => one.GetProperty("time").GetDateTimeOffset()));
        Assert.All(all, one => Assert.Equal(one.GetProperty("body").GetString() == "moon", one.GetProperty("illuminatedFraction").ValueKind == JsonValueKind.Number));
    }

    [Theory]
    [InlineData("from=2026-13-01")]
    [InlineData("from=2026-12-01&to=2026-11-01")]
    [InlineData("from=2026-12-01&to=2032-12-02")]
    [InlineData("tolerance=0")]
    [InlineData("tolerance=wide")]
    [InlineData("from=1900-01-01")]
    [InlineData("body=mars")]
    [InlineData("daytimeMoon=perhaps")]
    public async Task What_cannot_be_used_is_refused_in_words(string query)
    {
        var answer = await site.Client.GetAsync($"{WithSubject}?{query}");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("for example", (await answer.Content.ReadAsStringAsync()).Replace("shorter time", "for example", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("from=1900-01-01", "from must be a date from 1950-01-01 to 2100-12-31")]
    [InlineData("from=2026-12-01&to=2026-11-01", "to, 2026-11-01, lies before from, 2026-12-01")]
    [InlineData("from=2026-12-01&to=2032-12-02", "to 2031-12-01 at the latest")]
    [InlineData("body=mars", "body must be sun or moon")]
    public async Task A_refusal_says_what_is_wrong_and_what_would_do(string query, string words) =>
        Assert.Contains(words, await (await site.Client.GetAsync($"{WithSubject}?{query}")).Content.ReadAsStringAsync(), StringComparison.Ordinal);

    [Fact]
    public async Task The_body_is_chosen_and_moons_by_day_are_left_out_on_demand()
    {
        const string Span = "?from=2026-12-01&to=2030-12-01&tolerance=1.5";
        var (both, sun, moon) = (await AllAsync(Span), await AllAsync($"{Span}&body=sun"), await AllAsync($"{Span}&body=moon"));
        Assert.All(sun, one => Assert.Contains("\"body\":\"sun\"", one, StringComparison.Ordinal));
        Assert.All(moon, one => Assert.Contains("\"body\":\"moon\"", one, StringComparison.Ordinal));
        Assert.Equal(both.Order(), sun.Concat(moon).Order());

        var atNight = await AllAsync($"{Span}&body=moon&daytimeMoon=false");
        Assert.NotEmpty(atNight);
        Assert.Equal(moon.Where(one => JsonDocument.Parse(one).RootElement.GetProperty("sunAltitudeDegrees").GetDouble() <= 6), atNight);
        Assert.True(atNight.Count < moon.Count);
    }

    [Fact]
    public async Task Full_moons_at_dusk_and_dawn_come_with_it_unless_the_sun_alone_is_asked_for()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync($"{Root}high-edge/cliffs-by-moonlight/alignments?from=2026-12-01&to=2027-11-30")).RootElement;
        var all = answer.GetProperty("fullMoons").EnumerateArray().ToList();
        Assert.InRange(all.Count, 4, 30);
        Assert.All(all, one =>
        {
            Assert.InRange((one.GetProperty("moon").GetDateTimeOffset() - one.GetProperty("sun").GetDateTimeOffset()).TotalMinutes, -30, 30);
            Assert.InRange(one.GetProperty("illuminatedFraction").GetDouble(), 0.95, 1);
            Assert.Equal(one.GetProperty("isRising").GetBoolean(), one.GetProperty("azimuthDegrees").GetDouble() < 180);
        });
        var sunAlone = JsonDocument.Parse(await site.Client.GetStringAsync($"{Root}high-edge/cliffs-by-moonlight/alignments?body=sun")).RootElement;
        Assert.Empty(sunAlone.GetProperty("fullMoons").EnumerateArray());
    }

    [Fact]
    public async Task The_page_offers_body_and_day_and_lists_full_moons_beside_the_subject()
    {
        var page = new AngleSharp.Html.Parser.HtmlParser().ParseDocument(await site.Client.GetStringAsync("/coast/halfmoon-light/high-edge/light-and-first-sun?within=2&years=2&body=moon&daytime=no"));
        Assert.Equal("moon", page.QuerySelector("#body option[selected]")!.GetAttribute("value"));
        Assert.Equal("no", page.QuerySelector("#daytime option[selected]")!.GetAttribute("value"));
        var tables = page.QuerySelectorAll("#behind table").Select(table => table.TextContent).ToList();
        Assert.Equal(2, tables.Count);
        Assert.DoesNotContain("sun, ", tables[0], StringComparison.Ordinal);
        Assert.Matches(@"moonrise \d\d:\d\d, sunset \d\d:\d\d E[SD]T", tables[1]);
        Assert.Matches(@"\d+° (left|right) of ", tables[1]);
        // A place none of whose pictures has a subject lists them itself, any other does not.
        Assert.Contains("Full moons at dusk", await site.Client.GetStringAsync("/coast/shingle-howe"), StringComparison.Ordinal);
        Assert.DoesNotContain("Full moons at dusk", await site.Client.GetStringAsync("/coast/halfmoon-light"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_facing_read_from_a_compass_says_how()
    {
        var place = JsonDocument.Parse(await site.Client.GetStringAsync("/api/v1/locations/gannet-stairs")).RootElement;
        var pictures = place.GetProperty("vantagePoints").EnumerateArray().SelectMany(v => v.GetProperty("compositions").EnumerateArray()).ToDictionary(c => c.GetProperty("slug").GetString()!);
        var compass = pictures["white-curtains"].GetProperty("compass");
        Assert.Equal(128, compass.GetProperty("readingDegrees").GetDouble());
        Assert.Equal(128 + compass.GetProperty("declinationDegrees").GetDouble(), compass.GetProperty("trueDegrees").GetDouble(), 6);
        Assert.Equal(pictures["white-curtains"].GetProperty("facingDegrees").GetDouble(), compass.GetProperty("trueDegrees").GetDouble(), 6);
        Assert.Equal("WMM2025", compass.GetProperty("model").GetString());
        Assert.Equal(JsonValueKind.Null, pictures["two-stacks"].GetProperty("compass").ValueKind);
    }

    [Fact]
    public async Task Without_a_subject_it_says_why_there_are_none()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync(Root + "high-edge/cliffs-by-moonlight/alignments")).RootElement;
        Assert.Contains("No subject", answer.GetProperty("why").GetString()!, StringComparison.Ordinal);
        Assert.Empty(answer.GetProperty("alignments").EnumerateArray());
    }

    [Fact]
    public async Task A_sensitive_place_tells_nothing() =>
        Assert.Equal(HttpStatusCode.NotFound, (await site.Client.GetAsync("/api/v1/compositions/skerrin-hollow/rim-of-the-bowl/pink-bowl/alignments")).StatusCode);

    private async Task<List<string>> AllAsync(string query) =>
        [.. JsonDocument.Parse(await site.Client.GetStringAsync(WithSubject + query)).RootElement.GetProperty("alignments").EnumerateArray().Select(one => one.GetRawText())];
}
