using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp;
using AngleSharp.Dom;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>A location's tide page through the real host, at a time that stands still.</summary>
public class TidePageTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_place_has_a_tide_page_in_five_queries_with_cautions_datum_method_and_licence()
    {
        await using var db = guide.Open();
        var places = await db.CoastAsync(Reader.Visitor, Parts.None, cancel: Cancel);
        await guide.Client.GetAsync("/", Cancel);
        foreach (var place in places)
        {
            guide.Commands.Reset();
            var page = await PageAsync(place.TideAddress());
            var text = page.Body!.TextContent;

            Assert.InRange(guide.Commands.Commands.Count, 1, 5);
            Assert.Single(page.QuerySelectorAll("h1"));
            Assert.NotNull(page.QuerySelector(".cautions"));
            Assert.Contains(TideWords.Disclaimer, text, StringComparison.Ordinal);
            Assert.Contains("mean lower low water (MLLW)", text, StringComparison.Ordinal);
            Assert.Contains("node corrections after Schureman", text, StringComparison.Ordinal);
            Assert.Contains("public domain", text, StringComparison.Ordinal);
            Assert.Contains("Neaps tide database", text, StringComparison.Ordinal);
            Assert.DoesNotMatch("(?i)\\bsafe", text);
        }
        Assert.Empty(guide.Log.Errors);
    }

    /// <summary>Water is no reason to go where a closure or a severe note keeps one off.</summary>
    [Fact]
    public async Task What_stops_one_at_the_place_stands_on_its_tide_page_and_no_limit_is_drawn_below_it()
    {
        var place = await PageAsync("/coast/gannet-stairs");
        var page = await PageAsync("/coast/gannet-stairs/tide?stance=headwall-foot");

        Assert.NotEmpty(place.QuerySelectorAll(".stop-bar"));
        Assert.Superset(page.QuerySelectorAll(".stop-bar").Select(bar => bar.TextContent).ToHashSet(), place.QuerySelectorAll(".stop-bar").Select(bar => bar.TextContent).ToHashSet());
        Assert.NotEmpty(page.QuerySelectorAll(".stop-bar"));
        Assert.Contains("Keep off", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Usable below", page.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sensitive_place_has_its_stations_tide_and_no_word_of_its_own_corrections()
    {
        await using var db = guide.Open();
        var exact = await db.Locations.SingleAsync(place => place.Slug == "skerrin-hollow", Cancel);
        Assert.NotNull(exact.TideCorrections);

        var text = (await PageAsync("/coast/skerrin-hollow/tide")).Body!.TextContent;

        Assert.DoesNotContain("min earlier", text, StringComparison.Ordinal);
        Assert.DoesNotContain("min later", text, StringComparison.Ordinal);
        Assert.Null(exact.Blurred().TideCorrections);
    }

    /// <summary>
    /// Eastport, 15 January 2025, as the predictor @neaps/tide-predictor keeps it among its own test values (MIT): UTC 10:34:16 low 0.173,
    /// 16:35:06 high 6.078, 23:03:38 low −0.206 m above MLLW; here by the clock of New York, to the minute and a tenth of a metre.
    /// </summary>
    [Fact]
    public async Task High_and_low_waters_stand_there_by_the_places_clock()
    {
        var page = await PageAsync("/coast/halfmoon-light/tide?day=2025-01-15");
        var row = page.QuerySelectorAll(".tide-month tbody tr").Single(tr => tr.QuerySelector("th")!.TextContent.Trim() == "Wed 15");
        var cells = row.QuerySelectorAll("td").Select(td => string.Join(", ", td.QuerySelectorAll("time").Select(t => t.TextContent + t.NextElementSibling!.TextContent))).ToList();

        Assert.Equal(["11:356.1", "05:340.2, 18:03−0.2"], [cells[0].Split(", ").Last(), cells[1]]);
        Assert.Contains(page.QuerySelectorAll("svg text").Select(text => text.TextContent), words => words == "11:35");
        Assert.Contains("low water −0.2 m at 18:03 EST", page.QuerySelector("svg desc")!.TextContent, StringComparison.Ordinal);
    }

    /// <summary>The clocks of New York go back at 02:00 on 1 November 2026: that day has 25 hours, and 01:00 comes twice.</summary>
    [Fact]
    public async Task On_the_day_the_clocks_go_back_no_hour_is_lost_and_the_doubled_one_says_which_it_is()
    {
        var page = await PageAsync("/coast/halfmoon-light/tide?day=2026-11-01");
        var hours = page.QuerySelectorAll("details tbody tr").Where(tr => tr.TextContent.Contains("on the hour", StringComparison.Ordinal))
            .Select(tr => tr.QuerySelector("td")!.TextContent).ToList();

        Assert.Equal(49, hours.Count);
        Assert.Equal(["Sun 1 Nov 00:00", "Sun 1 Nov 01:00 EDT", "Sun 1 Nov 01:00 EST", "Sun 1 Nov 02:00"], hours.Take(4));
        Assert.Equal("Mon 2 Nov 23:00", hours[^1]);
        Assert.Contains("EDT, from 1 Nov 01:00 EST", page.Body!.TextContent, StringComparison.Ordinal);

        // They go forward at 02:00 on 14 March 2027: 47 hours in two days.
        var spring = await PageAsync("/coast/halfmoon-light/tide?day=2027-03-14");
        Assert.Equal(47, spring.QuerySelectorAll("details tbody tr").Count(tr => tr.TextContent.Contains("on the hour", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_stances_limit_is_drawn_less_its_allowance()
    {
        var page = await PageAsync("/coast/gannet-stairs/tide?stance=lower-stair");

        Assert.NotEmpty(page.QuerySelectorAll("rect.ink-not-usable"));
        Assert.Contains("less 0.3 m for weather", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("lower-stair", page.QuerySelector("select option[selected]")!.GetAttribute("value"));
        var without = await PageAsync("/coast/shingle-howe/tide?stance=pond-rail");
        Assert.Empty(without.QuerySelectorAll("rect.ink-not-usable"));
        Assert.Contains("No highest usable tide is recorded", without.Body!.TextContent, StringComparison.Ordinal);
    }

    /// <summary>The weekend judges the same stance by the same way: every turn back it answers stands on the tide page of that day.</summary>
    [Fact]
    public async Task Turn_back_is_the_largest_figure_says_why_and_is_the_weekends()
    {
        var page = await PageAsync("/coast/gannet-stairs/tide?stance=lower-stair&day=2026-11-28");
        var section = page.QuerySelector("#turn-back")!;
        var told = section.QuerySelectorAll(".turn-back").Select(figure => figure.TextContent.Trim()).ToList();

        Assert.NotEmpty(told);
        Assert.All(told, words => Assert.Matches(@"^\d\d:\d[05] EST, (Sat 28|Sun 29|Mon 30) Nov at the latest, waves not counted$", Regex.Replace(words, @"\s+", " ")));
        Assert.Contains("0.3 m taken off its limit", section.TextContent, StringComparison.Ordinal);
        Assert.Contains("Waves are left out", section.TextContent, StringComparison.Ordinal);
        Assert.Equal(told.Count(words => !words.Contains("Mon 30", StringComparison.Ordinal)), page.QuerySelectorAll("svg text.ink-turn-back").Length);
        using var weekend = JsonDocument.Parse(await guide.Client.GetStringAsync("/api/v1/weekend?from=2026-11-27", Cancel));
        var answered = weekend.RootElement.GetProperty("compositions").EnumerateArray()
            .Where(row => row.GetProperty("page").GetString()!.Contains("gannet-stairs/lower-stair", StringComparison.Ordinal))
            .SelectMany(row => row.GetProperty("sessions").EnumerateArray()).Select(cell => cell.GetProperty("turnBack"))
            .Where(time => time.ValueKind == JsonValueKind.String).Select(time => time.GetDateTimeOffset())
            .Where(time => time.Day is 28 or 29).Select(time => time.ToString("HH:mm", CultureInfo.InvariantCulture)).Distinct().ToList();
        Assert.NotEmpty(answered);
        Assert.All(answered, time => Assert.Contains(told, words => words.StartsWith(time, StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Nothing_is_told_under_a_closure_and_what_is_not_recorded_is_named()
    {
        var closed = await PageAsync("/coast/widows-table/tide?stance=chimney-lip");
        Assert.Contains("Keep off on", closed.QuerySelector("#turn-back")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(closed.QuerySelectorAll(".turn-back, .ink-turn-back, rect.ink-not-usable"));

        var unknown = await PageAsync("/coast/pigeon-neck/tide?stance=boulder-end");
        Assert.Contains("Not told: no highest usable tide is recorded", unknown.QuerySelector("#turn-back")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(unknown.QuerySelectorAll(".turn-back"));

        var past = await PageAsync("/coast/gannet-stairs/tide?stance=lower-stair&day=2026-11-01");
        Assert.Contains("These days are past.", past.QuerySelector("#turn-back")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(past.QuerySelectorAll(".turn-back, .ink-turn-back"));
    }

    [Theory]
    [InlineData("day=tomorrow", "year-month-day")]
    [InlineData("day=2500-01-01", "1900 to 2100")]
    [InlineData("month=13", "year-month")]
    [InlineData("stance=nowhere", "none of this place's")]
    public async Task What_cannot_be_read_is_said_and_today_is_shown(string query, string words)
    {
        var answer = await guide.Client.GetAsync($"/coast/gannet-stairs/tide?{query}", Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var text = await answer.Content.ReadAsStringAsync(Cancel);

        Assert.Contains(words, WebUtility.HtmlDecode(text), StringComparison.Ordinal);
        Assert.Contains("Wed 25 Nov and the day after", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sensitive_place_shows_the_tide_and_nothing_that_tells_where_it_is()
    {
        var page = await PageAsync("/coast/skerrin-hollow/tide?stance=rim-of-the-bowl", HttpStatusCode.BadRequest);

        Assert.Contains("the tide is that of the square kilometre", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector(".ink-tide"));
        Assert.Null(page.QuerySelector("select"));
        Assert.DoesNotContain("Rim of the bowl", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_places_own_page_tells_the_next_two_turns_and_leads_to_the_curve()
    {
        var section = (await PageAsync("/coast/halfmoon-light")).QuerySelector("#tide")!;

        Assert.Matches(@"(high|low) water −?\d\.\d m at \d\d:\d\d EST, then (high|low) water", section.TextContent);
        Assert.Equal("/coast/halfmoon-light/tide", section.QuerySelector("a")!.GetAttribute("href"));
        Assert.Contains("Not for navigation", section.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_old_slug_leads_to_the_new_tide_page()
    {
        var answer = await guide.Client.GetAsync($"/coast/{Demo.WesternDemo.OldSlug}/tide", Cancel);

        Assert.Equal((HttpStatusCode.MovedPermanently, $"/coast/{Demo.WesternDemo.NewSlug}/tide"), (answer.StatusCode, answer.Headers.Location!.ToString()));
    }

    [Fact]
    public async Task A_place_without_a_station_says_who_can_choose_one_and_which_lie_near()
    {
        await using var db = guide.Open();
        await db.Database.ExecuteSqlRawAsync("UPDATE locations SET tide_station_id = NULL WHERE slug = 'tern-bank'", Cancel);
        var page = await PageAsync("/coast/tern-bank/tide");
        await db.Database.ExecuteSqlRawAsync("UPDATE locations SET tide_station_id = 'nobody/here' WHERE slug = 'tern-bank'", Cancel);
        var unknown = await PageAsync("/coast/tern-bank/tide");
        await db.Database.ExecuteSqlRawAsync("UPDATE locations SET tide_station_id = 'noaa/8411060' WHERE slug = 'tern-bank'", Cancel);

        Assert.Contains("No tide station has been chosen", page.QuerySelector(".empty")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(3, page.QuerySelectorAll(".empty li").Length);
        Assert.Null(page.QuerySelector(".ink-tide"));
        Assert.Contains("nobody/here is not among the stations", unknown.QuerySelector(".empty")!.TextContent, StringComparison.Ordinal);
    }

    private async Task<IDocument> PageAsync(string address, HttpStatusCode expected = HttpStatusCode.OK)
    {
        var answer = await guide.Client.GetAsync(address, Cancel);
        Assert.Equal(expected, answer.StatusCode);
        var text = await answer.Content.ReadAsStringAsync(Cancel);
        return await BrowsingContext.New().OpenAsync(response => response.Content(text), Cancel);
    }
}
