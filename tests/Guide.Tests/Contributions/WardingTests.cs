using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Hazards and closures from the report to everybody's page, and what it takes to lift them.</summary>
public sealed class WardingTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private readonly Club club = new(guide);

    [Fact]
    public async Task A_severe_report_is_on_the_page_the_moment_it_is_sent()
    {
        var member = await club.SomebodyAsync(Role.Member);
        const string Words = "Swell over the whole of the outer wall.";

        Assert.True((await club.Warding.ReportAsync(member, "herring-slip", Guid.NewGuid(), (_, today) => new HazardNote(HazardKind.Waves, 4, Words, today), null, default)).IsDone);

        using var visitor = new Person(guide);
        var page = await visitor.ReadAsync("/coast/herring-slip");
        Assert.Contains(Words, page.QuerySelector(".stop-bar")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Reported, not yet checked", page.QuerySelector(".stop-bar")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(member.Name, page.Body!.TextContent, StringComparison.Ordinal);
        var board = await visitor.ReadAsync("/weekend?from=2026-11-27");
        Assert.Contains("severe note", board.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sending_a_report_fifty_times_makes_one()
    {
        var member = await club.SomebodyAsync(Role.Member);
        var form = Guid.NewGuid();

        var all = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => club.Warding.ReportAsync(member, "tern-bank", form, (_, today) => new HazardNote(HazardKind.Slip, 2, "Weed on the steps.", today), null, default)));

        Assert.All(all, outcome => Assert.True(outcome.IsDone));
        await using var db = club.Open();
        Assert.Equal(1, await db.HazardNotes.CountAsync(n => n.FormId == form));
    }

    [Fact]
    public async Task A_report_is_confirmed_put_right_and_ended_with_a_reason()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var form = Guid.NewGuid();
        await club.Warding.ReportAsync(member, "halfmoon-light", form, (_, today) => new HazardNote(HazardKind.Path, 2, "Bridge planks loose.", today), null, default);
        await using var db = club.Open();
        var id = (await db.HazardNotes.SingleAsync(n => n.FormId == form)).Id;

        Assert.True((await club.Warding.ConfirmAsync(warden, id, default)).IsDone);
        Assert.True((await club.Warding.RewordAsync(warden, id, new Dictionary<string, string> { ["text"] = "Two planks loose at the north end.", ["severity"] = "3" }, default)).IsDone);
        Assert.Contains("End it instead", Assert.Single((await club.Warding.RejectAsync(warden, id, "It is mended", default)).Faults).Words, StringComparison.Ordinal);
        Assert.Contains("empty", Assert.Single((await club.Warding.EndAsync(warden, id, " ", default)).Faults).Words, StringComparison.Ordinal);
        Assert.True((await club.Warding.EndAsync(warden, id, "Mended by the parish", default)).IsDone);
        db.ChangeTracker.Clear();
        var note = await db.HazardNotes.SingleAsync(n => n.Id == id);
        Assert.Equal((HazardState.Ended, 3, "Two planks loose at the north end."), (note.State, note.Severity, note.Text));
        Assert.Equal([Act.HazardConfirmed, Act.HazardReworded, Act.HazardEnded], await db.AuditEntries.Where(e => e.About == member.MemberId).OrderBy(e => e.Id).Select(e => e.Act).ToListAsync());
    }

    [Fact]
    public async Task A_closure_is_seen_everywhere_at_once_and_keeps_off()
    {
        var warden = await club.SomebodyAsync(Role.Warden);

        Assert.True((await club.Warding.CloseAsync(warden, "farrow-harbour", Guid.NewGuid(), (_, today) => Closure.Between(today, null, "Wharf shut for repair", "Harbour master"), default)).IsDone);

        using var visitor = new Person(guide);
        Assert.Contains("Wharf shut for repair", (await visitor.ReadAsync("/coast/farrow-harbour")).QuerySelector(".stop-bar")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Wharf shut for repair", (await visitor.ReadAsync("/")).Body!.TextContent, StringComparison.Ordinal);
        var rows = (await visitor.ReadAsync("/weekend?from=2026-11-27")).QuerySelectorAll("tr").Where(row => row.TextContent.Contains("Fleet in fog", StringComparison.Ordinal)).ToList();
        Assert.Contains("keep off", Assert.Single(rows).TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("suits", rows[0].TextContent.Replace("does not suit", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lifting_takes_two_wardens()
    {
        var (one, other) = (await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Warden));
        await club.KeepWardensAsync(one, other);
        var id = await ClosedAsync(one, "lantern-island");

        Assert.Equal("asked", Assert.Single((await club.Warding.LiftAsync(one, id, "The path is mended", default)).Faults).FieldId);
        Assert.True(await CountsAsync(id));
        Assert.Contains("another warden", Assert.Single((await club.Warding.LiftAsync(one, id, "The path is mended", default)).Faults).Words, StringComparison.Ordinal);
        Assert.True((await club.Warding.ConfirmClosureAsync(other, id, default)).IsDone);
        await club.Warding.LiftAsync(one, id, "Really mended", default);
        Assert.True((await club.Warding.LiftAsync(other, id, null, default)).IsDone);
        Assert.False(await CountsAsync(id));
    }

    [Fact]
    public async Task The_only_warden_lifts_with_a_reason_and_it_is_logged()
    {
        var one = await club.SomebodyAsync(Role.Warden);
        await club.KeepWardensAsync(one);
        var id = await ClosedAsync(one, "sorrel-holm");

        Assert.Equal("words", Assert.Single((await club.Warding.LiftAsync(one, id, null, default)).Faults).FieldId);
        Assert.True((await club.Warding.LiftAsync(one, id, "Nobody else until spring", default)).IsDone);
        await using var db = club.Open();
        Assert.True((await db.Closures.SingleAsync(c => c.Id == id)).IsLiftedSingleHanded);
        Assert.Contains(await db.AuditEntries.Where(e => e.Act == Act.ClosureLifted).ToListAsync(), e => e.Words.Contains("single-handed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_near_miss_closes_and_keeps_no_name_and_two_a_day_are_taken()
    {
        var member = await club.SomebodyAsync(Role.Member, "Osric Vane");
        async Task<ReviewOutcome> TellAsync(Guid form) => await club.Warding.NearMissAsync(member, "shingle-howe", form,
            (_, today) => Closure.AfterNearMiss(today, "A wave from nowhere up to the car park bank.", form), default);
        var first = Guid.NewGuid();

        Assert.True((await TellAsync(first)).IsDone);
        Assert.True((await TellAsync(first)).IsDone);
        Assert.True((await TellAsync(Guid.NewGuid())).IsDone);
        Assert.Contains("Two near misses", Assert.Single((await TellAsync(Guid.NewGuid())).Faults).Words, StringComparison.Ordinal);

        await using var db = club.Open();
        var closure = await db.Closures.SingleAsync(c => c.FormId == first);
        Assert.Equal((ClosureState.UnderReview, true, (Guid?)null), (closure.State, closure.CountsAsInForce, closure.MadeBy));
        // Nowhere in the database does the member's number or name stand beside it: not in the log, not in the tally.
        Assert.DoesNotContain(await db.AuditEntries.ToListAsync(), entry => entry.By == member.MemberId || entry.About == member.MemberId);
        Assert.Null(closure.MadeAt);

        guide.Clock.Advance(NodaTime.Duration.FromDays(2));
        Assert.True((await TellAsync(Guid.NewGuid())).IsDone);
        var tally = guide.Services.GetRequiredService<NearMissTally>();
        Assert.Equal(1, tally.Forget());
        guide.Clock.Advance(NodaTime.Duration.FromDays(1));
        Assert.Equal(0, tally.Forget());
        guide.Clock.Advance(NodaTime.Duration.FromDays(-1));
        guide.Clock.Advance(NodaTime.Duration.FromDays(-2));
    }

    [Fact]
    public async Task Members_do_not_close_and_nobody_reports_at_a_place_they_may_not_know()
    {
        var member = await club.SomebodyAsync(Role.Member);
        await Assert.ThrowsAsync<NotAcceptedException>(() => club.Warding.CloseAsync(member, "tern-bank", Guid.NewGuid(), (_, today) => Closure.Between(today, null, "x", "y"), default));
        Assert.Equal("place", Assert.Single((await club.Warding.ReportAsync(member, "nowhere", Guid.NewGuid(), (_, today) => new HazardNote(HazardKind.Slip, 1, "x", today), null, default)).Faults).FieldId);
    }

    private async Task<int> ClosedAsync(SignedIn warden, string place)
    {
        var form = Guid.NewGuid();
        await club.Warding.CloseAsync(warden, place, form, (_, today) => Closure.Between(today, null, "Path washed out", "The club"), default);
        await using var db = club.Open();
        return (await db.Closures.SingleAsync(c => c.FormId == form)).Id;
    }

    private async Task<bool> CountsAsync(int id)
    {
        await using var db = club.Open();
        return (await db.Closures.SingleAsync(c => c.Id == id)).CountsAsInForce;
    }
}
