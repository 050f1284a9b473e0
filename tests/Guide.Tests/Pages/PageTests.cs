using System.Net;
using AngleSharp;
using AngleSharp.Dom;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Pages;

/// <summary>Every page of the demo coast through the real host, at a time that stands still.</summary>
public class PageTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private const string Sensitive = "skerrin-hollow";

    [Fact]
    public async Task Every_public_address_answers_with_one_heading_the_demo_line_first_and_at_most_five_queries()
    {
        var addresses = await AddressesAsync();
        Assert.True(addresses.Count > 80, $"only {addresses.Count} addresses");
        await guide.Client.GetAsync("/");

        foreach (var address in addresses)
        {
            guide.Commands.Reset();
            var page = await PageAsync(address);

            Assert.True(guide.Commands.Commands.Count <= 5, $"{address}: {guide.Commands.Commands.Count} queries");
            Assert.Single(page.QuerySelectorAll("h1"));
            Assert.StartsWith("Demo:", page.Body!.TextContent.Trim().Replace("Skip to the page itself", "", StringComparison.Ordinal).Trim(), StringComparison.Ordinal);
            AssertHeadingsDescend(page, address);
            AssertIdsAreUnique(page, address);
            Assert.DoesNotMatch("(?i)\\bsafe", page.Body!.TextContent);
            if (page.QuerySelector("[style], style, script:not([src]):not([type='application/json'])") is { } inline)
                Assert.Fail($"{address}: inline {inline.TagName}, which the policy forbids");
        }
        Assert.Empty(guide.Log.Errors);
    }

    [Fact]
    public async Task Wherever_one_can_stand_the_cautions_and_a_position_to_read_out_stand_too()
    {
        foreach (var address in (await AddressesAsync()).Where(a => a != "/"))
        {
            var page = await PageAsync(address);
            Assert.NotNull(page.QuerySelector(".cautions"));
            Assert.Contains("911", page.QuerySelector(".cautions")!.TextContent, StringComparison.Ordinal);
            Assert.NotNull(page.QuerySelector(".coordinates"));
        }
    }

    [Fact]
    public async Task On_a_place_hazards_and_emergency_come_before_its_pictures()
    {
        var page = await PageAsync("/coast/gannet-stairs");
        string[] order = ["hazards", "cautions", "ways", "parking", "emergency", "stances"];

        var positions = order.Select(id => page.Source.Text.IndexOf($"id=\"{id}\"", StringComparison.Ordinal)).ToArray();

        Assert.DoesNotContain(-1, positions);
        Assert.Equal(positions.Order(), positions);
    }

    [Fact]
    public async Task A_severe_note_and_a_closure_in_force_stand_at_the_head_of_every_page_they_concern()
    {
        var place = await PageAsync("/coast/gannet-stairs");
        Assert.Contains("rockfall", place.QuerySelector(".stop-bar")!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.Contains((await PageAsync("/")).QuerySelectorAll(".coast .stop-bar"), bar => bar.TextContent.Contains("rockfall", StringComparison.Ordinal));

        var closed = place.QuerySelector(".stances .stance:has(.stop-bar) h3 a")!.GetAttribute("href")!;
        Assert.Contains("Closed", (await PageAsync(closed)).QuerySelector(".stop-bar")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_date_is_called_good_while_a_severe_note_or_a_closure_stands_over_it()
    {
        // Rockfall, severe, at the foot of the headwall: its picture names no date to go, those from elsewhere do.
        var kept = await PageAsync("/coast/gannet-stairs/headwall-foot");
        Assert.All(kept.QuerySelectorAll(".next-date"), date => Assert.Contains("keep off", date.TextContent, StringComparison.Ordinal));
        Assert.Contains((await PageAsync("/coast/gannet-stairs")).QuerySelectorAll(".next-date"), date => date.TextContent.StartsWith("next good date", StringComparison.Ordinal));
        var list = await PageAsync(kept.QuerySelector(".pictures a")!.GetAttribute("href")!);
        Assert.Contains("Keep off", list.QuerySelector("#dates .stop-bar")!.TextContent, StringComparison.Ordinal);

        // Closed from 15 March to 31 July every year: no date inside is listed.
        var stance = await PageAsync("/coast/halfmoon-light/stack-overlook");
        Assert.DoesNotMatch("(Apr|May|Jun) 2027", stance.QuerySelector(".next-date")!.TextContent);
        var picture = await PageAsync(stance.QuerySelector(".pictures a")!.GetAttribute("href")!);
        var june = picture.QuerySelectorAll("#dates li").Where(line => line.TextContent.Contains("Jun 2027", StringComparison.Ordinal)).ToList();
        Assert.Empty(june);
        Assert.NotEmpty(picture.QuerySelectorAll("#dates li"));
    }

    [Fact]
    public async Task A_fact_past_its_period_needs_checking()
    {
        var page = await PageAsync("/coast/halfmoon-light");

        Assert.NotEmpty(page.QuerySelectorAll("#hazards .needs-checking"));
    }

    [Fact]
    public async Task A_composition_says_that_the_sea_is_not_known_in_the_agreed_words()
    {
        var page = await PageAsync("/coast/halfmoon-light/high-edge/light-and-first-sun");

        Assert.Equal("sea: not known here yet – look, and read the official forecast", page.QuerySelector(".sea-line")!.TextContent);
        Assert.Equal(10, page.QuerySelectorAll(".light-days tbody tr:not(.moon-line)").Length);
        Assert.Contains("EST", page.QuerySelector(".light-days caption")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(4, page.QuerySelectorAll("main figure:not(.sketch) > svg[role=img]").Length);
        Assert.Equal(4, page.QuerySelectorAll("main figure:not(.sketch) > details table").Length);
    }

    [Fact]
    public async Task Lights_that_cannot_be_computed_are_named_and_never_counted_as_good()
    {
        var page = await PageAsync("/coast/farrow-harbour/wharf-corner/fleet-in-fog");

        Assert.Contains("soft light", page.QuerySelector("#season")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("not known", page.QuerySelector("#dates")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sensitive_place_gives_its_cell_and_nothing_that_would_tell_more()
    {
        var exact = await ExactAsync();
        var page = await PageAsync($"/coast/{Sensitive}");

        Assert.Contains("sensitive", page.QuerySelector("#blurred")!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.Null(page.QuerySelector("#ways, #parking, #emergency, #stances, #sketch"));
        Assert.Equal(10, page.QuerySelectorAll(".light-days tbody tr:not(.moon-line)").Length);
        foreach (var point in exact.VantagePoints)
        {
            Assert.Equal(HttpStatusCode.NotFound, (await guide.Client.GetAsync($"/coast/{Sensitive}/{point.Slug}")).StatusCode);
            foreach (var picture in point.Compositions)
                Assert.Equal(HttpStatusCode.NotFound, (await guide.Client.GetAsync($"/coast/{Sensitive}/{point.Slug}/{picture.Slug}")).StatusCode);
        }
    }

    [Fact]
    public async Task No_page_holds_the_true_coordinates_of_a_sensitive_place()
    {
        var exact = await ExactAsync();
        var tells = exact.VantagePoints.SelectMany(v => new[] { v.Position }).Append(exact.Position).Concat(exact.Parking.Select(p => p.Position))
            .SelectMany(p => new[]
            {
                EmergencyBlock.DegreesAndMinutes(p).Split(", ")[0], EmergencyBlock.DegreesAndMinutes(p).Split(", ")[1],
                p.LatitudeDegrees.ToString("0.0000", System.Globalization.CultureInfo.InvariantCulture),
                Math.Abs(p.LongitudeDegrees).ToString("0.0000", System.Globalization.CultureInfo.InvariantCulture),
            }).ToList();
        tells.AddRange(exact.VantagePoints.Select(v => v.Slug));
        Assert.True(tells.Count > 4);

        foreach (var address in new[] { "/", $"/coast/{Sensitive}", "/?q=skerrin", "/?q=hollow", "/weekend" })
        {
            var text = await guide.Client.GetStringAsync(address);
            Assert.All(tells, tell => Assert.DoesNotContain(tell, text, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_members_only_place_is_not_there_for_a_visitor()
    {
        await using var db = guide.Open();
        var members = await db.Locations.Where(l => l.Visibility == Locations.Visibility.Members).Select(l => new { l.Slug, l.Name }).ToListAsync();
        Assert.NotEmpty(members);

        foreach (var place in members)
        {
            Assert.Equal(HttpStatusCode.NotFound, (await guide.Client.GetAsync($"/coast/{place.Slug}")).StatusCode);
            Assert.DoesNotContain(place.Name, await guide.Client.GetStringAsync("/"), StringComparison.Ordinal);
        }
    }

    private async Task<List<string>> AddressesAsync()
    {
        await using var db = guide.Open();
        var places = await db.CoastAsync(Members.Reader.Visitor, Parts.Compositions);
        return
        [
            "/", .. places.Select(place => place.Address()),
            .. places.SelectMany(place => place.VantagePoints.Select(stance => stance.Address(place))),
            .. places.SelectMany(place => place.VantagePoints.SelectMany(stance => stance.Compositions.Select(picture => picture.Address(place, stance)))),
        ];
    }

    private async Task<Location> ExactAsync()
    {
        await using var db = guide.Open();
        return (await db.LocationAsync(Sensitive, new Members.Reader(Members.Role.Warden)))!;
    }

    private async Task<IDocument> PageAsync(string address)
    {
        var answer = await guide.Client.GetAsync(address);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{address}: {answer.StatusCode}");
        var text = await answer.Content.ReadAsStringAsync();
        return await BrowsingContext.New().OpenAsync(request => request.Content(text));
    }

    private static void AssertHeadingsDescend(IDocument page, string address)
    {
        var level = 0;
        foreach (var heading in page.QuerySelectorAll("h1, h2, h3, h4"))
        {
            var next = heading.TagName[1] - '0';
            Assert.True(next <= level + 1, $"{address}: {heading.TagName} \"{heading.TextContent}\" after h{level}");
            level = next;
        }
    }

    private static void AssertIdsAreUnique(IDocument page, string address)
    {
        var doubled = page.QuerySelectorAll("[id]").GroupBy(e => e.Id).Where(g => g.Count() > 1).Select(g => g.Key).ToList();
        Assert.True(doubled.Count == 0, $"{address}: id {string.Join(", ", doubled)} twice");
    }
}
