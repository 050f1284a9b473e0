using System.Net;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>The journeys of members and wardens through plain posts, as a browser without scripts sends them.</summary>
public sealed class ContributionPageTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    [Fact]
    public async Task A_member_marks_fills_and_sends_and_a_warden_lets_it_in()
    {
        using var member = await SomebodyAsync(Role.Member);
        var marked = await member.SendAsync("/contribute", "mark", ("f.position", "44.7716, -67.0649"), ("f.accuracy", "7"));
        var draft = Person.Next(marked)!;
        Assert.StartsWith("/contribute/stance/", draft, StringComparison.Ordinal);
        var form = await member.ReadAsync(draft);
        Assert.Equal("44.7716, -67.0649", form.QuerySelector("#position")!.GetAttribute("value"));
        Assert.StartsWith("The Long Slip", form.QuerySelectorAll("#place option")[1].TextContent, StringComparison.Ordinal);

        var empty = await member.SendAsync(draft, "stance", ("then", "send"));
        Assert.Equal(HttpStatusCode.BadRequest, empty.StatusCode);
        var faults = await Person.DocumentAsync(empty);
        Assert.All(faults.QuerySelectorAll(".error-summary a"), link => Assert.NotNull(faults.QuerySelector(link.GetAttribute("href")![link.GetAttribute("href")!.IndexOf('#', StringComparison.Ordinal)..])));

        var kept = await member.SendAsync(draft, "stance", [.. Least("Iron ring"), ("then", "keep")]);
        Assert.Contains("Kept as a draft", (await Person.DocumentAsync(kept)).QuerySelector("#draft-status")!.TextContent, StringComparison.Ordinal);
        var sent = await member.SendAsync(draft, "stance", ("then", "send"), ("reason", "Three evenings in October"));
        Assert.Contains("Sent: New vantage point: Iron ring", (await member.ReadAsync(Person.Next(sent)!)).QuerySelector(".done")!.TextContent, StringComparison.Ordinal);

        using var warden = await SomebodyAsync(Role.Warden);
        var queue = await warden.ReadAsync("/queue?kind=proposal");
        var review = queue.QuerySelectorAll(".queue th a").Single(link => link.TextContent.Contains("Iron ring", StringComparison.Ordinal)).GetAttribute("href")!;
        Assert.Contains("Three evenings in October", (await warden.ReadAsync(review)).Body!.TextContent, StringComparison.Ordinal);
        var accepted = Person.Next(await warden.SendAsync(review, "decide", ("then", "accept")))!;
        Assert.Equal("/coast/long-slip/iron-ring/iron-ring?accepted", accepted);
        using var visitor = new Person(guide);
        Assert.Equal("Iron ring", (await visitor.ReadAsync(accepted)).QuerySelector("h1")!.TextContent);
        Assert.Contains("accepted", (await member.ReadAsync("/contribute")).QuerySelector(".ruled")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_is_read_side_by_side_and_stands_in_the_history()
    {
        using var member = await SomebodyAsync(Role.Member);
        using var warden = await SomebodyAsync(Role.Warden);
        var link = (await member.ReadAsync("/coast/tern-bank/pavilion-bank")).QuerySelector(".stance-facts .put-right a")!.GetAttribute("href")!;
        var form = await member.ReadAsync(link);
        var sent = await member.AnswerAsync(link, form, "change", ("f.summary", "On the bank beside the pavilion"), ("then", "send"), ("reason", "The old words named the wrong side"));
        Assert.StartsWith("/contribute?sent=", Person.Next(sent)!, StringComparison.Ordinal);

        var address = $"/queue/{Person.Next(sent)!.Split('=')[1]}";
        var review = await warden.ReadAsync(address);
        using var other = await SomebodyAsync(Role.Warden);
        var open = await other.ReadAsync(address);
        Assert.Contains("On the bank beside the pavilion", review.QuerySelector(".differences td:last-child")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await warden.SendAsync(address, "decide", ("then", "accept"))).StatusCode);
        var history = await member.ReadAsync(link.Replace("/contribute/change", "/history", StringComparison.Ordinal));
        Assert.Contains("On the bank beside the pavilion", history.QuerySelector(".differences")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Ina Ruiz", history.Body!.TextContent, StringComparison.Ordinal);
        Assert.Null((await warden.ReadAsync(address)).QuerySelector("input[name=_handler][value=decide]"));

        // A second warden had the page open: the form that is no longer offered is answered in words.
        var late = await other.AnswerAsync(address, open, "decide", ("then", "decline"), ("words", "It is right as it was"));
        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        Assert.Contains("accepted meanwhile", (await Person.DocumentAsync(late)).QuerySelector(".error-summary")!.TextContent, StringComparison.Ordinal);
        // The member's page was open, too: what comes from it now is a proposal of its own, and is not lost.
        var again = Person.Next(await member.AnswerAsync(link, form, "change", ("f.summary", "Again"), ("then", "send")))!;
        Assert.StartsWith("/contribute?sent=", again, StringComparison.Ordinal);
        Assert.DoesNotContain(Person.Next(sent)!.Split('=')[1], again.Split('&')[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_hazard_a_near_miss_and_a_closure_by_their_forms()
    {
        using var member = await SomebodyAsync(Role.Member);
        using var warden = await SomebodyAsync(Role.Warden);
        Assert.Equal(3, (await Person.DocumentAsync(await member.SendAsync("/contribute/hazard?place=cannery-point", "hazard"))).QuerySelectorAll(".error-summary li").Count);
        var reported = await member.SendAsync("/contribute/hazard?place=cannery-point", "hazard", ("f.kind", "SoftGround"), ("f.severity", "4"), ("f.text", "The boards' end has sunk into the mud."));
        Assert.Contains("The boards' end has sunk", (await member.ReadAsync(Person.Next(reported)!)).QuerySelector(".stop-bar")!.TextContent, StringComparison.Ordinal);
        var hazard = (await warden.ReadAsync("/queue?kind=hazard")).QuerySelectorAll(".queue tr").Single(row => row.TextContent.Contains("boards' end", StringComparison.Ordinal)).QuerySelector("a")!.GetAttribute("href")!;
        Assert.Equal(HttpStatusCode.Conflict, (await warden.SendAsync(hazard, "decide", ("then", "reject"))).StatusCode);
        Assert.Equal("/queue", Person.Next(await warden.SendAsync(hazard, "decide", ("then", "confirm"))));

        var told = await member.SendAsync("/contribute/near-miss?place=ketch-point", "near-miss", ("f.harm", "WayWasCut"), ("f.text", "Cut off at the ribs by a hand's breadth."));
        Assert.Contains("near miss", (await member.ReadAsync(Person.Next(told)!)).QuerySelector(".stop-bar")!.TextContent, StringComparison.Ordinal);
        var closed = await warden.SendAsync("/queue/close?place=skerrin-hollow", "close", ("f.text", "Storm damage on the path"), ("f.closed-by", "The trust"));
        Assert.Equal("/coast/skerrin-hollow?closed", Person.Next(closed));
        var closure = (await warden.ReadAsync("/queue/close?place=skerrin-hollow")).QuerySelector("#standing + ul a")!.GetAttribute("href")!;
        Assert.Equal(HttpStatusCode.OK, (await warden.GetAsync(closure)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await member.GetAsync("/queue")).StatusCode);
    }

    [Fact]
    public async Task Others_drafts_are_not_there_and_a_sensitive_place_tells_nothing()
    {
        using var member = await SomebodyAsync(Role.Member);
        using var other = await SomebodyAsync(Role.Member);
        var draft = Person.Next(await member.SendAsync("/contribute", "mark", ("f.position", "44.5, -67.5")))!;
        Assert.DoesNotContain("44.5, -67.5", (await other.ReadAsync(draft)).Body!.InnerHtml, StringComparison.Ordinal);

        await using var db = guide.Open();
        var hidden = await db.Locations.Include(l => l.VantagePoints).ThenInclude(v => v.Compositions).Include(l => l.Parking).FirstAsync(l => l.Visibility == Locations.Visibility.Sensitive);
        var stance = hidden.VantagePoints[0];
        string[] addresses = [$"/contribute/change/stance/{stance.Id}", $"/history/stance/{stance.Id}", $"/contribute/change/picture/{stance.Compositions[0].Id}",
            $"/contribute/change/place/{hidden.Id}", $"/history/parking/{hidden.Parking[0].Id}"];
        foreach (var address in addresses)
            Assert.Equal(HttpStatusCode.NotFound, (await member.GetAsync(address)).StatusCode);
        foreach (var address in (string[])["/contribute", "/contribute/hazard", $"/contribute/hazard?place={hidden.Slug}", $"/contribute/near-miss?place={hidden.Slug}", draft])
        {
            var page = await (await member.GetAsync(address)).Content.ReadAsStringAsync();
            Assert.DoesNotContain(FormattableString.Invariant($"{stance.LatitudeDegrees:F3}"), page, StringComparison.Ordinal);
            Assert.DoesNotContain(stance.Name, page, StringComparison.Ordinal);
        }
        using var warden = await SomebodyAsync(Role.Warden);
        Assert.Equal(HttpStatusCode.OK, (await warden.GetAsync(addresses[0])).StatusCode);
    }

    /// <summary>The corpus of hostile texts: kept as typed or refused, and never markup on any page that shows them.</summary>
    [Theory]
    [InlineData("<script>alert(1)</script><img src=x onerror=alert(1)>")]
    [InlineData("\u202Eesrever\u202C and Z\u0351\u036B\u0343\u036A\u0302")]
    [InlineData("=cmd|'/c calc'!A1")]
    [InlineData("{{7*7}} javascript:alert(1) ${x}")]
    [InlineData("two\r\nlines: Set-Cookie: a=b")]
    [InlineData("NUL \0 and \uD800 alone")]
    public async Task Hostile_texts_stay_texts(string text)
    {
        using var member = await SomebodyAsync(Role.Member);
        using var warden = await SomebodyAsync(Role.Warden);
        var draft = Person.Next(await member.SendAsync("/contribute", "mark", ("f.position", "44.7716, -67.0649")))!;
        var sent = await member.SendAsync(draft, "stance", [.. Least("Rail's end").Where(field => field.Item1 != "f.summary"), ("f.summary", text), ("reason", text), ("then", "send")]);
        Assert.True(sent.StatusCode is HttpStatusCode.Redirect or HttpStatusCode.BadRequest, sent.StatusCode.ToString());
        if (sent.StatusCode == HttpStatusCode.BadRequest)
            return;
        var review = await warden.ReadAsync($"/queue/{draft.Split('/')[^1]}");
        Assert.Empty(review.QuerySelectorAll("main script:not([src]):not([type='application/json']), main img[src=x]"));
        var accepted = Person.Next(await warden.SendAsync($"/queue/{draft.Split('/')[^1]}", "decide", ("then", "accept")))!;
        foreach (var address in new[] { accepted, "/coast/long-slip", "/", $"/queue/{draft.Split('/')[^1]}" })
            Assert.Empty((await warden.ReadAsync(address)).QuerySelectorAll("main script:not([src]):not([type='application/json']), main img[src=x], main [onerror]"));
    }

    private static (string, string)[] Least(string name) =>
        [.. NewStanceTests.Typed.Where(pair => pair.Key is not ("picture-wanted" or "name")).Select(pair => ($"f.{pair.Key}", pair.Value)), ("f.picture-wanted", "GoldenLight"), ("f.name", name)];

    private async Task<Person> SomebodyAsync(Role role)
    {
        var person = new Person(guide);
        await person.BecomeAsync(role);
        return person;
    }
}
