using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>What one warden alone cannot do to a figure that a life hangs on, by any door.</summary>
public sealed class SecondPairOfEyesTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private readonly Club club = new(guide);

    [Theory]
    [InlineData("walk-out", "1")]
    [InlineData("walk-in", "1")]
    [InlineData("edge", "OnIt")]
    [InlineData("kind", "OpenGround")]
    public async Task An_own_change_waits_for_another_warden(string field, string value)
    {
        var (own, other) = (await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("bell-ledge");
        var id = await club.SentAsync(own, Matter.Stance, stance.Id, new Dictionary<string, string> { [field] = value });

        Assert.Contains("another warden", Assert.Single((await club.AcceptAsync(own, id, "I know it")).Faults).Words, StringComparison.Ordinal);
        Assert.NotEqual(value, await TextAsync(stance.Id, field));
        Assert.True((await club.AcceptAsync(other, id)).IsDone);
        Assert.Equal(value, await TextAsync(stance.Id, field));
    }

    [Theory]
    [InlineData("surface", "dry boards")]
    [InlineData("open-hours", "05:00-23:00")]
    [InlineData("minutes", "2")]
    [InlineData("legal-status", "OpenAccess")]
    public async Task So_does_an_own_change_of_a_leg(string field, string value)
    {
        var (own, _) = (await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Warden));
        await using var db = club.Open();
        var leg = await db.AccessRoutes.SelectMany(r => r.Legs).OrderBy(l => l.Id).FirstAsync();
        Dictionary<string, string> typed = new() { [field] = value };
        var id = await club.SentAsync(own, Matter.Leg, leg.Id, typed);

        Assert.Contains("another warden", Assert.Single((await club.AcceptAsync(own, id, "I know it")).Faults).Words, StringComparison.Ordinal);
    }

    /// <summary>Killed a mutant: whoever was removed, or only asks as a member, is no second pair of eyes.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Somebody_removed_is_no_second_pair_of_eyes(bool isRemoved)
    {
        var (own, gone) = (await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Warden));
        await club.KeepWardensAsync(own, gone);
        await using (var db = club.Open())
        {
            var member = await db.Members.SingleAsync(m => m.Id == gone.MemberId);
            if (isRemoved)
                member.Remove(guide.Clock.GetCurrentInstant());
            await db.SaveChangesAsync();
        }
        var (_, stance) = await club.StanceAsync("hill-bench");
        var id = await club.SentAsync(own, Matter.Stance, stance.Id, new Dictionary<string, string> { ["walk-in"] = isRemoved ? "7" : "8" });

        var outcome = await club.AcceptAsync(own, id, "Alone this winter");

        Assert.Equal(isRemoved, outcome.IsDone);
        Assert.Equal(isRemoved ? 1 : 2, await Reviewing.WardensAsync(club.Open(), default));
    }

    [Fact]
    public async Task Whoever_restores_a_limit_is_its_proposer()
    {
        var (own, other) = (await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Warden));
        await club.KeepWardensAsync(own, other);
        var (_, stance) = await club.StanceAsync("lower-stair");
        var before = await TextAsync(stance.Id, "walk-out");
        var id = await club.SentAsync(own, Matter.Stance, stance.Id, new Dictionary<string, string> { ["walk-out"] = "31" });
        Assert.True((await club.AcceptAsync(other, id)).IsDone);
        await using var db = club.Open();
        var revision = await db.Revisions.SingleAsync(r => r.ProposalId == id);

        foreach (var _ in Enumerable.Range(0, 2))
            Assert.Contains("Another warden has to let this in", Assert.Single((await club.Reviewing.RestoreAsync(own, revision.Id, "It was right", default)).Faults).Words, StringComparison.Ordinal);

        Assert.Equal("31", await TextAsync(stance.Id, "walk-out"));
        var waiting = await db.Proposals.SingleAsync(p => p.TargetId == stance.Id && p.Matter == Matter.Stance && p.State == ProposalState.Sent);
        Assert.Equal(own.MemberId, waiting.ProposerId);
        Assert.False((await club.AcceptAsync(own, waiting.Id, "It was right")).IsDone);
        Assert.True((await club.AcceptAsync(other, waiting.Id)).IsDone);
        Assert.Equal(before, await TextAsync(stance.Id, "walk-out"));
    }

    [Fact]
    public async Task The_only_warden_restores_with_a_reason_and_it_is_said()
    {
        var own = await club.SomebodyAsync(Role.Warden);
        await club.KeepWardensAsync(own);
        var (_, stance) = await club.StanceAsync("middle-trench");
        var before = await TextAsync(stance.Id, "walk-out");
        var id = await club.SentAsync(own, Matter.Stance, stance.Id, new Dictionary<string, string> { ["walk-out"] = "33" });
        Assert.True((await club.AcceptAsync(own, id, "Walked it twice")).IsDone);
        await using var db = club.Open();
        var revision = await db.Revisions.SingleAsync(r => r.ProposalId == id);

        Assert.Equal("words", Assert.Single((await club.Reviewing.RestoreAsync(own, revision.Id, " ", default)).Faults).FieldId);
        Assert.True((await club.Reviewing.RestoreAsync(own, revision.Id, "The watch had stopped", default)).IsDone);

        Assert.Equal(before, await TextAsync(stance.Id, "walk-out"));
        var restored = await db.Revisions.OrderByDescending(r => r.Id).FirstAsync(r => r.TargetId == stance.Id && r.Matter == Matter.Stance);
        Assert.Equal((true, own.MemberId), (restored.IsSingleHanded, restored.AcceptedBy));
        Assert.Contains(await db.AuditEntries.Where(entry => entry.Act == Act.Restored && entry.By == own.MemberId).ToListAsync(), entry => entry.Words.EndsWith("single-handed", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("reach", "StillWaterOnly", "reach")]
    [InlineData("reach-reason", "Behind the mole", "reach-reason")]
    [InlineData("cliff-because", "Netted", "cliff-because")]
    [InlineData("sea-outside", "An island lies there", "sea-outside")]
    public async Task A_member_makes_no_warden_s_statement_in_a_new_vantage_point(string field, string text, string refused)
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var typed = NewStanceTests.Typed;
        typed[field] = text;

        var outcome = await club.Contributing.SendAsync(member.Reader, Guid.NewGuid(), Matter.NewStance, null, typed, null, null, default);

        var fault = Assert.Single(outcome.Faults);
        Assert.Equal(refused, fault.FieldId);
        Assert.StartsWith("Only a warden can say this", fault.Words, StringComparison.Ordinal);
        Assert.Equal(ProposalState.Draft, outcome.Proposal!.State);
        Assert.DoesNotContain((await club.Contributing.SendAsync(warden.Reader, Guid.NewGuid(), Matter.NewStance, null, typed, null, null, default)).Faults, each => each.Words.StartsWith("Only a warden", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nor_in_a_new_way()
    {
        var member = await club.SomebodyAsync(Role.Member);
        var (place, _) = await club.StanceAsync("pond-rail");
        Dictionary<string, string> typed = new()
        {
            ["way"] = "Over the sill",
            ["leg-kind"] = "Walk",
            ["name"] = "Sill",
            ["legal-status"] = "Unknown",
            ["says-who"] = "Nobody",
            ["checked-on"] = "2026-11-20",
            ["crossing"] = "1.2",
            ["crossing-station"] = "noaa/8411060",
            ["crossing-sheltered"] = "A mole",
        };

        Assert.Equal("crossing-sheltered", Assert.Single((await club.Contributing.SendAsync(member.Reader, Guid.NewGuid(), Matter.NewWay, place.Id, typed, null, null, default)).Faults).FieldId);
    }

    private async Task<string> TextAsync(int stance, string field)
    {
        await using var db = club.Open();
        return VantageSheet.Whole.Read(await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Id == stance))[field];
    }
}
