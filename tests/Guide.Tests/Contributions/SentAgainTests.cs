using System.Net;
using AngleSharp.Dom;
using Foreshore.Guide.HouseRules;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>A browser's Back button brings a form's number again. The same content is the same sending; other content is never acknowledged and dropped.</summary>
public sealed class SentAgainTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private const string Hazard = "/contribute/hazard?place=tern-bank", NearMiss = "/contribute/near-miss?place=ketch-point", Close = "/queue/close?place=skerrin-hollow";

    [Fact]
    public async Task A_second_hazard_from_the_same_page_is_stored_and_the_same_again_is_not()
    {
        using var member = await SomebodyAsync(Role.Member);
        var page = await member.ReadAsync(Hazard);
        (string, string)[] Of(string text) => [("f.kind", "Slip"), ("f.severity", "2"), ("f.text", text)];

        foreach (var text in (string[])["Weed on the upper steps.", "The rail has come loose.", "Weed on the upper steps."])
            Assert.Equal(HttpStatusCode.Redirect, (await member.AnswerAsync(Hazard, page, "hazard", Of(text))).StatusCode);

        Assert.Equal(["The rail has come loose.", "Weed on the upper steps."], await TextsAsync("Weed on the upper", "The rail has"));
    }

    [Fact]
    public async Task The_same_words_from_two_members_are_two_reports()
    {
        using var one = await SomebodyAsync(Role.Member);
        using var other = await SomebodyAsync(Role.Member);
        var page = await one.ReadAsync(Hazard);
        var number = page.QuerySelector("input[name=form-id]")!.GetAttribute("value")!;
        (string, string)[] typed = [("f.kind", "Slip"), ("f.severity", "2"), ("f.text", "Ice on the slip."), ("form-id", number)];

        await one.AnswerAsync(Hazard, page, "hazard", typed);
        await other.SendAsync(Hazard, "hazard", typed);

        Assert.Equal(2, (await TextsAsync("Ice on the slip.")).Count);
    }

    [Fact]
    public async Task What_was_ended_since_is_not_acknowledged_again()
    {
        using var member = await SomebodyAsync(Role.Member);
        var warden = await new Club(guide).SomebodyAsync(Role.Warden);
        var page = await member.ReadAsync(Hazard);
        (string, string)[] typed = [("f.kind", "Path"), ("f.severity", "4"), ("f.text", "The path has slid into the sea.")];
        await member.AnswerAsync(Hazard, page, "hazard", typed);
        await using var db = guide.Open();
        var note = await db.HazardNotes.SingleAsync(n => n.Text == "The path has slid into the sea.");
        await new Club(guide).Warding.EndAsync(warden, note.Id, "Cleared", default);

        var again = await member.AnswerAsync(Hazard, page, "hazard", typed);

        Assert.Equal(HttpStatusCode.BadRequest, again.StatusCode);
        Assert.Contains("You sent exactly this before, and it was ended or rejected since", (await Person.DocumentAsync(again)).QuerySelector(".error-summary")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await member.SendAsync(Hazard, "hazard", typed)).StatusCode);
        Assert.Equal(2, (await TextsAsync("The path has slid")).Count);
    }

    [Fact]
    public async Task A_second_near_miss_and_a_second_closure_are_stored()
    {
        using var member = await SomebodyAsync(Role.Member);
        using var warden = await SomebodyAsync(Role.Warden);
        var (told, closing) = (await member.ReadAsync(NearMiss), await warden.ReadAsync(Close));

        foreach (var text in (string[])["A set came over the bar.", "The tide had the way back.", "A set came over the bar."])
            Assert.Equal(HttpStatusCode.Redirect, (await member.AnswerAsync(NearMiss, told, "near-miss", ("f.harm", "WaterReachedSomebody"), ("f.text", text))).StatusCode);
        foreach (var text in (string[])["Rock fall at the stair", "Blasting on the hill", "Rock fall at the stair"])
            Assert.Equal(HttpStatusCode.Redirect, (await warden.AnswerAsync(Close, closing, "close", ("f.text", text), ("f.closed-by", "The trust"))).StatusCode);

        await using var db = guide.Open();
        string[] reasons = ["A set came over the bar.", "The tide had the way back.", "Rock fall at the stair", "Blasting on the hill"];
        Assert.Equal(reasons.Order(), (await db.Closures.Where(c => reasons.Contains(c.Reason)).Select(c => c.Reason).ToListAsync()).Order());
    }

    [Fact]
    public async Task A_second_change_from_the_same_page_is_a_proposal_of_its_own_and_goes_on_as_one()
    {
        using var member = await SomebodyAsync(Role.Member);
        var (_, stance) = await new Club(guide).StanceAsync("heath-bench");
        var address = $"/contribute/change/stance/{stance.Id}";
        var page = await member.ReadAsync(address);
        async Task<string> SendAsync(string summary, string then = "send") => Person.Next(await member.AnswerAsync(address, page, "change", ("f.summary", summary), ("then", then))) ?? "stays";

        var first = await SendAsync("A bench above the heath");
        Assert.Equal(first, await SendAsync("A bench above the heath"));
        Assert.Equal("stays", await SendAsync("A bench bel", "keep"));
        Assert.Equal("stays", await SendAsync("A bench below the hea", "keep"));
        var second = await SendAsync("A bench below the heath");
        Assert.NotEqual(first, second);
        Assert.Equal([first, second, first], [await SendAsync("A bench above the heath"), await SendAsync("A bench below the heath"), await SendAsync("A bench above the heath")]);

        await using var db = guide.Open();
        var sent = await db.Proposals.Where(p => p.Matter == Matter.Stance && p.TargetId == stance.Id).ToListAsync();
        Assert.Equal(["A bench above the heath", "A bench below the heath"], sent.Select(p => p.Given["summary"]).Order());
        Assert.All(sent, p => Assert.Equal(ProposalState.Sent, p.State));
    }

    [Fact]
    public async Task Two_things_under_one_number_are_two_proposals()
    {
        var club = new Club(guide);
        var member = await club.SomebodyAsync(Role.Member);
        var (place, stance) = await club.StanceAsync("church-hill");
        var number = Guid.NewGuid();

        var one = await club.Contributing.KeepAsync(member.Reader, number, Matter.Stance, stance.Id, new Dictionary<string, string> { ["name"] = "Hill" }, default);
        var other = await club.Contributing.KeepAsync(member.Reader, number, Matter.Place, place.Id, new Dictionary<string, string> { ["name"] = "Village" }, default);

        Assert.NotEqual(one.Proposal!.Id, other.Proposal!.Id);
        Assert.Equal([("Hill", Matter.Stance), ("Village", Matter.Place)], [(one.Proposal.Given["name"], one.Proposal.Matter), (other.Proposal.Given["name"], other.Proposal.Matter)]);
    }

    [Fact]
    public async Task A_second_spot_from_the_same_page_leaves_the_first_draft_as_it_was()
    {
        using var member = await SomebodyAsync(Role.Member);
        var page = await member.ReadAsync("/contribute");
        async Task<string> MarkAsync(string position) => Person.Next(await member.AnswerAsync("/contribute", page, "mark", ("f.position", position)))!;
        var first = await MarkAsync("44.5, -67.5");
        await member.SendAsync(first, "stance", ("f.name", "Gully"), ("then", "keep"));

        var second = await MarkAsync("44.6, -67.6");

        Assert.NotEqual(first, second);
        Assert.Equal(first, await MarkAsync("44.5, -67.5"));
        Assert.Equal("Gully", (await member.ReadAsync(first)).QuerySelector("#name")!.GetAttribute("value"));
        Assert.Equal("44.6, -67.6", (await member.ReadAsync(second)).QuerySelector("#position")!.GetAttribute("value"));
    }

    [Theory]
    [InlineData("/contribute", "mark")]
    [InlineData(Hazard, "hazard")]
    [InlineData(NearMiss, "near-miss")]
    [InlineData(Close, "close")]
    [InlineData("change", "change")]
    [InlineData("/coast/tern-bank", "/still-correct")]
    public async Task A_form_without_its_number_is_refused_in_words(string address, string form)
    {
        using var warden = await SomebodyAsync(Role.Warden);
        if (address == "change")
            address = $"/contribute/change/stance/{(await new Club(guide).StanceAsync("hill-bench")).Stance.Id}";
        var before = await CountAsync();
        (string, string)[] typed = [("f.kind", "Slip"), ("f.severity", "2"), ("f.text", "Without a number"), ("f.harm", "None"), ("f.closed-by", "The club"), ("f.name", "Unnumbered"), ("then", "send")];

        foreach (var number in (string[])["", "x", "00000000-0000-0000-0000-000000000000"])
        {
            var answer = await warden.SendAsync(address, form, [.. typed, ("form-id", number)]);
            Assert.True(answer.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.Conflict, answer.StatusCode.ToString());
            Assert.Contains("came without its number", (await Person.DocumentAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
        }
        Assert.Equal(before, await CountAsync());
    }

    [Fact]
    public void Every_page_with_a_number_in_its_form_is_among_those_tried_here() =>
        Assert.Equal(["ChangePage", "ClosePage", "ContributePage", "HazardPage", "NearMissPage", "PutRight", "QueuePage"],
            SourceTree.Files("src/Guide", ".razor").Where(file => File.ReadAllText(file).Contains("name=\"form-id\"", StringComparison.Ordinal)).Select(file => Path.GetFileNameWithoutExtension(file)).Order());

    private async Task<List<string>> TextsAsync(params string[] beginnings)
    {
        await using var db = guide.Open();
        var texts = await db.HazardNotes.Select(n => n.Text).ToListAsync();
        return [.. texts.Where(text => beginnings.Any(start => text.StartsWith(start, StringComparison.Ordinal))).Order()];
    }

    private async Task<(int, int, int)> CountAsync()
    {
        await using var db = guide.Open();
        return (await db.HazardNotes.CountAsync(), await db.Closures.CountAsync(), await db.Proposals.CountAsync());
    }

    private async Task<Person> SomebodyAsync(Role role)
    {
        var person = new Person(guide);
        await person.BecomeAsync(role);
        return person;
    }
}
