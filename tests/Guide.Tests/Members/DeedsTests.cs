using System.Text.Json.Nodes;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>One's own copy holds what one wrote, and of what others wrote only that one decided on it: a warden of yesterday takes nobody's words along.</summary>
public sealed class DeedsTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    [Fact]
    public async Task A_demoted_warden_s_copy_holds_no_words_of_others()
    {
        var club = new Club(guide);
        var (member, keeper) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        using var once = new Person(guide);
        await once.JoinWithCodeAsync("once.a.warden@example.org", Role.Warden, "Once Warden");
        await using var db = guide.Open();
        var who = await db.Members.SingleAsync(m => m.Email == "once.a.warden@example.org");
        var warden = new SignedIn(Guid.NewGuid(), who.Id, who.Name, who.Email, Role.Warden, 2, true, guide.Clock.GetCurrentInstant());
        var (_, stance) = await club.StanceAsync("heath-bench");
        var theirs = await club.SentAsync(member, Matter.Stance, stance.Id, new Dictionary<string, string> { ["summary"] = "Words of somebody else" });
        Assert.True((await club.AcceptAsync(warden, theirs)).IsDone);
        // Elsewhere: one's own proposal holds what stood in the guide before it, whoever wrote that.
        var (_, another) = await club.StanceAsync("church-hill");
        var own = await club.SentAsync(warden, Matter.Stance, another.Id, new Dictionary<string, string> { ["summary"] = "Words of the warden" });
        Assert.True((await club.AcceptAsync(keeper, own)).IsDone);
        var form = Guid.NewGuid();
        await club.Warding.ReportAsync(member, "tern-bank", form, (_, today) => new Hazards.HazardNote(Hazards.HazardKind.Path, 2, "A note of somebody else", today), null, default);
        await club.Warding.ConfirmAsync(warden, (await db.HazardNotes.SingleAsync(n => n.FormId == form)).Id, default);
        await db.Members.Where(m => m.Id == who.Id).ExecuteUpdateAsync(m => m.SetProperty(one => one.Role, Role.Member));

        var text = await (await once.SendAsync("/account", OwnExport.Address)).Content.ReadAsStringAsync();

        Assert.DoesNotContain("somebody else", text, StringComparison.Ordinal);
        Assert.Contains("Words of the warden", text, StringComparison.Ordinal);
        var tables = JsonNode.Parse(text)!["tables"]!;
        var deed = tables["proposals"]!.AsArray().Single(row => (string)row!["id"]! == theirs.ToString())!.AsObject();
        Assert.Equal(["decided_at", "decided_by", "id", "kept_at", "matter", "sent_at", "started_at", "state"], deed.Select(field => field.Key).Order());
        Assert.Equal(who.Id.ToString(), (string)deed["decided_by"]!);
        Assert.True(tables["hazard_notes"]!.AsArray().Count == 1 && tables["revisions"]!.AsArray().Count == 2);
    }
}
