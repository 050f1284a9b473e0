using Foreshore.Guide.Compositions;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>From a member's form to published content, by one warden, by two at once, and back again.</summary>
public sealed class ReviewingTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private readonly Club club = new(guide);

    [Fact]
    public async Task A_new_vantage_point_is_in_the_guide_once_accepted_and_not_before()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var typed = NewStanceTests.Typed;
        typed["name"] = "Ring in the granite";
        var id = await club.SentAsync(member, Matter.NewStance, null, typed);
        await using var db = club.Open();
        Assert.False(await db.VantagePoints.AnyAsync(v => v.Name == "Ring in the granite"));

        var outcome = await club.AcceptAsync(warden, id);

        Assert.True(outcome.IsDone);
        Assert.Equal("/coast/long-slip/ring-in-the-granite/ring-in-the-granite", outcome.Address);
        var stance = await db.VantagePoints.Include(v => v.Compositions).SingleAsync(v => v.Name == "Ring in the granite");
        Assert.Equal(96, Assert.Single(stance.Compositions).FacingDegrees);
        Assert.Equal([Matter.Picture, Matter.Stance], (await db.Revisions.Where(r => r.ProposalId == id).Select(r => r.Matter).ToListAsync()).OrderBy(m => m.ToString()));
        Assert.Contains(await db.AuditEntries.ToListAsync(), entry => entry.Act == Act.ProposalAccepted && entry.By == warden.MemberId && entry.About == member.MemberId);
    }

    [Fact]
    public async Task Sending_fifty_times_makes_one()
    {
        var member = await club.SomebodyAsync(Role.Member);
        var id = Guid.NewGuid();

        var all = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => club.Contributing.SendAsync(member.Reader, id, Matter.NewStance, null, NewStanceTests.Typed, null, null, default)));

        Assert.All(all, outcome => Assert.Equal(id, outcome.Proposal!.Id));
        await using var db = club.Open();
        Assert.Equal(ProposalState.Sent, (await db.Proposals.SingleAsync(p => p.ProposerId == member.MemberId)).State);
    }

    [Fact]
    public async Task Ten_wardens_at_once_apply_it_once()
    {
        var member = await club.SomebodyAsync(Role.Member);
        var typed = NewStanceTests.Typed;
        typed["name"] = "Split boulder";
        var id = await club.SentAsync(member, Matter.NewStance, null, typed);
        var wardens = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => club.SomebodyAsync(Role.Warden)));

        var outcomes = await Task.WhenAll(wardens.Select(warden => club.AcceptAsync(warden, id)));

        Assert.Single(outcomes, outcome => outcome.IsDone);
        Assert.All(outcomes.Where(outcome => !outcome.IsDone), outcome => Assert.Contains("twice", Assert.Single(outcome.Faults).Words, StringComparison.Ordinal));
        await using var db = club.Open();
        Assert.Equal(1, await db.VantagePoints.CountAsync(v => v.Name.StartsWith("Split boulder")));
    }

    [Fact]
    public async Task A_change_is_a_revision_and_restoring_it_the_identity()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("heath-bench");
        var before = VantageSheet.Whole.Read(stance);
        var id = await club.SentAsync(member, Matter.Stance, stance.Id, new Dictionary<string, string> { ["name"] = "Bench on the heath", ["tripods"] = "9" });

        Assert.True((await club.AcceptAsync(warden, id)).IsDone);
        await using var db = club.Open();
        var revision = await db.Revisions.SingleAsync(r => r.ProposalId == id);
        Assert.Equal(["name", "tripods"], revision.Changes.Select(change => change.Field).Order());
        Assert.Equal("Bench on the heath", (await club.StanceAsync("heath-bench")).Stance.Name);

        Assert.True((await club.Reviewing.RestoreAsync(warden, revision.Id, "The name was right", default)).IsDone);
        Assert.Equal(before, VantageSheet.Whole.Read((await club.StanceAsync("heath-bench")).Stance));
        Assert.Equal(2, await db.Revisions.CountAsync(r => r.Matter == Matter.Stance && r.TargetId == stance.Id));
    }

    [Fact]
    public async Task What_changed_meanwhile_is_shown_beside_the_proposal_and_nothing_is_lost()
    {
        var (one, other, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("church-hill");
        var first = await club.SentAsync(one, Matter.Stance, stance.Id, new Dictionary<string, string> { ["name"] = "Hill by the church" });
        var second = await club.SentAsync(other, Matter.Stance, stance.Id, new Dictionary<string, string> { ["name"] = "Chapel hill", ["tripods"] = "7" });
        Assert.True((await club.AcceptAsync(warden, first)).IsDone);

        var outcome = await club.AcceptAsync(warden, second);

        var clash = Assert.Single(outcome.Clashes);
        Assert.Equal(("name", stance.Name, "Chapel hill", "Hill by the church"), (clash.Field.Name, clash.Found, clash.Proposed, clash.Now));
        Assert.Equal("Hill by the church", (await club.StanceAsync("church-hill")).Stance.Name);
        Assert.True((await club.AcceptAsync(warden, second, null, null, "name")).IsDone);
        Assert.Equal(("Chapel hill", (int?)7), ((await club.StanceAsync("church-hill")).Stance.Name, (await club.StanceAsync("church-hill")).Stance.Tripods));
    }

    [Fact]
    public async Task A_limit_needs_a_warden_other_than_its_proposer_where_there_are_two()
    {
        var (own, other) = (await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Admin));
        await club.KeepWardensAsync(own, other);
        var (_, stance) = await club.StanceAsync("bell-ledge");
        var id = await club.SentAsync(own, Matter.Stance, stance.Id, new Dictionary<string, string> { ["gust-limit"] = "9" });

        Assert.Contains("another warden", Assert.Single((await club.AcceptAsync(own, id, "I stood there")).Faults).Words, StringComparison.Ordinal);
        Assert.True((await club.AcceptAsync(other, id)).IsDone);
        Assert.Equal(9, (await club.StanceAsync("bell-ledge")).Stance.GustLimitMetresPerSecond);
    }

    [Fact]
    public async Task Whoever_edits_a_limit_is_its_proposer()
    {
        var (member, editing, other) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Warden));
        await club.KeepWardensAsync(editing, other);
        var (_, stance) = await club.StanceAsync("middle-trench");
        var id = await club.SentAsync(member, Matter.Stance, stance.Id, new Dictionary<string, string> { ["gust-limit"] = "12" });

        Assert.Contains("another warden", Assert.Single((await club.AcceptAsync(editing, id, null, new Dictionary<string, string> { ["gust-limit"] = "14" })).Faults).Words, StringComparison.Ordinal);
        Assert.True((await club.AcceptAsync(editing, id)).IsDone);
        Assert.Equal(12, (await club.StanceAsync("middle-trench")).Stance.GustLimitMetresPerSecond);
    }

    [Fact]
    public async Task The_only_warden_types_the_reason_and_it_is_logged_single_handed()
    {
        var own = await club.SomebodyAsync(Role.Warden);
        await club.KeepWardensAsync(own);
        var (_, stance) = await club.StanceAsync("lower-stair");
        var id = await club.SentAsync(own, Matter.Stance, stance.Id, new Dictionary<string, string> { ["gust-limit"] = "8" });

        Assert.Equal("words", Assert.Single((await club.AcceptAsync(own, id)).Faults).FieldId);
        Assert.True((await club.AcceptAsync(own, id, "Alone this winter; stood there on two tides")).IsDone);
        await using var db = club.Open();
        Assert.True((await db.Revisions.SingleAsync(r => r.ProposalId == id)).IsSingleHanded);
        Assert.Contains(await db.AuditEntries.Where(entry => entry.Act == Act.ProposalAccepted).ToListAsync(), entry => entry.Words.EndsWith("single-handed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_question_goes_back_and_the_answer_comes_with_it()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("hill-bench");
        var typed = new Dictionary<string, string> { ["tripods"] = "11" };
        var id = await club.SentAsync(member, Matter.Stance, stance.Id, typed);

        Assert.True((await club.Reviewing.AskAsync(warden, id, "Eleven? Counted how?", default)).IsDone);
        Assert.Equal("This waits for its proposer's answer to a question.", Assert.Single((await club.AcceptAsync(warden, id)).Faults).Words);
        Assert.Contains("empty", Assert.Single((await club.Contributing.SendAsync(member.Reader, id, Matter.Stance, stance.Id, typed, null, "", default)).Faults).Words, StringComparison.Ordinal);
        Assert.True((await club.Contributing.SendAsync(member.Reader, id, Matter.Stance, stance.Id, typed, null, "At the autumn meeting", default)).IsSent);
        Assert.True((await club.AcceptAsync(warden, id)).IsDone);
    }

    [Fact]
    public async Task Declining_needs_a_reason_and_a_member_decides_nothing()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var id = await club.SentAsync(member, Matter.NewStance, null, NewStanceTests.Typed);

        await Assert.ThrowsAsync<Locations.NotAcceptedException>(() => club.AcceptAsync(member, id));
        Assert.False((await club.Reviewing.DeclineAsync(warden, id, " ", default)).IsDone);
        Assert.True((await club.Reviewing.DeclineAsync(warden, id, "It is there already", default)).IsDone);
        Assert.Contains("declined meanwhile", Assert.Single((await club.AcceptAsync(warden, id)).Faults).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_a_warden_says_why_no_waves_come()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("boulder-end");
        var typed = new Dictionary<string, string> { ["reach"] = nameof(Reach.None), ["reach-reason"] = "Behind the spit" };

        Assert.Equal("reach-reason", Assert.Single((await club.Contributing.SendAsync(member.Reader, Guid.NewGuid(), Matter.Stance, stance.Id, typed, null, null, default)).Faults).FieldId);
        Assert.True((await club.Contributing.SendAsync(warden.Reader, Guid.NewGuid(), Matter.Stance, stance.Id, typed, null, null, default)).IsSent);
    }

    [Fact]
    public async Task What_is_anothers_or_out_of_sight_is_not_there()
    {
        var (member, other) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Member));
        var id = await club.SentAsync(member, Matter.NewStance, null, NewStanceTests.Typed);
        Assert.Null(await club.Contributing.FindAsync(id, other.MemberId, default));
        Assert.Null((await club.Contributing.WithdrawAsync(other.Reader, id, default)).Proposal);
        Assert.Null((await club.Contributing.KeepAsync(other.Reader, id, Matter.NewStance, null, NewStanceTests.Typed, default)).Proposal);

        var (_, hidden) = await club.StanceAsync("rim-of-the-bowl");
        Assert.Null((await club.Contributing.KeepAsync(member.Reader, Guid.NewGuid(), Matter.Stance, hidden.Id, new Dictionary<string, string> { ["name"] = "x" }, default)).Proposal);
    }

    [Fact]
    public async Task Still_correct_is_one_tap_for_a_warden_and_a_proposal_of_a_member()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("the-ribs");
        Assert.True((await club.StillCorrect.SayAsync(member, Guid.NewGuid(), Matter.Stance, stance.Id, default)).IsDone);
        Assert.Equal(stance.Check.LastChecked, (await club.StanceAsync("the-ribs")).Stance.Check.LastChecked);
        Assert.True((await club.StillCorrect.SayAsync(warden, Guid.NewGuid(), Matter.Stance, stance.Id, default)).IsDone);
        Assert.Equal(new NodaTime.LocalDate(2026, 11, 25), (await club.StanceAsync("the-ribs")).Stance.Check.LastChecked);
    }

    [Fact]
    public async Task Compositions_car_parks_nights_and_ways_are_added_alike()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (place, stance) = await club.StanceAsync("pond-rail");
        (Matter Matter, int To, Dictionary<string, string> Typed)[] additions =
        [
            (Matter.NewPicture, stance.Id, new() { ["name"] = "Pond under the arch", ["summary"] = "The other way round", ["facing"] = "200", ["focal-length"] = "35", ["sensor-width"] = "36", ["sensor-height"] = "24", ["orientation"] = "Landscape", ["wanted"] = "BlueLight" }),
            (Matter.NewParking, place.Id, new() { ["name"] = "Mill lay-by", ["position"] = "44.629, -67.39", ["surface"] = "Gravel", ["cars"] = "3", ["says-who"] = "Sign", ["checked-on"] = "2026-11-20" }),
            (Matter.NewOvernight, place.Id, new() { ["sleeper"] = "Tent", ["standing"] = "NoRuleFound", ["says-who"] = "Town clerk", ["checked-on"] = "2026-11-20" }),
            (Matter.NewWay, place.Id, new() { ["way"] = "Over the dam", ["leg-kind"] = "Walk", ["name"] = "Dam path", ["legal-status"] = "Unknown", ["minutes"] = "12", ["says-who"] = "Nobody asked", ["checked-on"] = "2026-11-20" }),
        ];
        foreach (var (matter, to, typed) in additions)
        {
            Assert.NotEmpty((await club.Contributing.SendAsync(member.Reader, Guid.NewGuid(), matter, to, new Dictionary<string, string>(), null, null, default)).Faults);
            var id = await club.SentAsync(member, matter, to, typed);
            var outcome = await club.AcceptAsync(warden, id);
            Assert.True(outcome.IsDone, $"{matter}: {string.Join("; ", outcome.Faults)}");
            await using var check = club.Open();
            var proposal = await check.Proposals.SingleAsync(p => p.Id == id);
            var revision = await check.Revisions.SingleAsync(r => r.ProposalId == id);
            Assert.Equal((proposal.TargetId, false), (revision.TargetId, revision.Matter.IsNew()));
        }

        await using var db = club.Open();
        var after = await Locations.LocationQueries.LocationAsync(db, place.Slug, warden.Reader);
        Assert.Equal("pond-under-the-arch-2", after!.VantagePoints.Single(v => v.Id == stance.Id).Compositions[^1].Slug);
        Assert.Contains(after.Parking, area => area is { Name: "Mill lay-by", Capacity: 3 });
        Assert.Contains(after.OvernightRules, rule => rule is { Sleeper: Access.Sleeper.Tent, Standing: Access.OvernightStanding.NoRuleFound });
        var way = after.Routes.Single(route => route.Name == "Over the dam");
        Assert.False(way.MayBeRecommended);
        Assert.NotEqual(way, after.DefaultRoute(new NodaTime.LocalDate(2026, 11, 25)));
    }

    [Fact]
    public async Task A_note_says_that_something_is_wrong_and_changes_nothing()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("stack-overlook");
        var same = VantageSheet.Whole.Read(stance);
        Assert.Contains("Nothing differs", Assert.Single((await club.Contributing.SendAsync(member.Reader, Guid.NewGuid(), Matter.Stance, stance.Id, same, " ", null, default)).Faults).Words, StringComparison.Ordinal);

        var id = Guid.NewGuid();
        Assert.True((await club.Contributing.SendAsync(member.Reader, id, Matter.Stance, stance.Id, same, "The fence stands elsewhere now.", null, default)).IsSent);
        Assert.False((await club.AcceptAsync(warden, id)).IsDone);
        Assert.True((await club.Reviewing.DeclineAsync(warden, id, "Put right, thank you.", default)).IsDone);
        Assert.Equal(same, VantageSheet.Whole.Read((await club.StanceAsync("stack-overlook")).Stance));
    }
}
