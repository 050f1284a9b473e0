using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Each cap under a race: fifty at once, of which no more get through than may. Thirty-six of thirty and a hundred and one of a hundred did.</summary>
public sealed class CapTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private const int Racers = 50;

    private readonly Club club = new(guide);

    [Fact]
    public async Task Thirty_reports_a_day()
    {
        var member = await club.SomebodyAsync(Role.Member);

        var all = await RaceAsync(i => club.Warding.ReportAsync(member, "tern-bank", Guid.NewGuid(), (_, today) => new HazardNote(HazardKind.Slip, 1, $"Weed, step {i}.", today), null, default));

        Assert.Equal(Warding.MostReportsADay, all.Count(outcome => outcome.IsDone));
        Assert.All(all.Where(outcome => !outcome.IsDone), outcome => Assert.Contains("30 reports came from you since yesterday", Assert.Single(outcome.Faults).Words, StringComparison.Ordinal));
        await using var db = club.Open();
        Assert.Equal(Warding.MostReportsADay, await db.HazardNotes.CountAsync(n => n.ReportedBy == member.MemberId));
    }

    [Fact]
    public async Task A_hundred_open_drafts_and_proposals()
    {
        var member = await club.SomebodyAsync(Role.Member);
        var few = Contributing.MostOpen - 20;
        await using (var db = club.Open())
        {
            db.AddRange(Enumerable.Range(0, few).Select(_ => new Proposal(Guid.NewGuid(), Matter.NewStance, null, null, member.MemberId, guide.Clock.GetCurrentInstant())));
            await db.SaveChangesAsync();
        }

        var all = await RaceAsync(i => club.Contributing.KeepAsync(member.Reader, Guid.NewGuid(), Matter.NewStance, null, new Dictionary<string, string> { ["name"] = $"Spot {i}" }, default));

        Assert.Equal(20, all.Count(outcome => outcome.Faults.Count == 0));
        await using var after = club.Open();
        Assert.Equal(Contributing.MostOpen, await after.Proposals.CountAsync(p => p.ProposerId == member.MemberId));
    }

    [Fact]
    public async Task Two_near_misses_a_day()
    {
        var member = await club.SomebodyAsync(Role.Member);

        var all = await RaceAsync(i =>
        {
            var form = Guid.NewGuid();
            return club.Warding.NearMissAsync(member, "shingle-howe", form, (_, today) => Closure.AfterNearMiss(today, $"A set over the bank, {i}.", form), default);
        });

        Assert.Equal(NearMissTally.MostADay, all.Count(outcome => outcome.IsDone));
        await using var db = club.Open();
        Assert.Equal(NearMissTally.MostADay, await db.Closures.CountAsync(c => c.Reason.StartsWith("A set over the bank")));
    }

    [Fact]
    public async Task A_near_miss_that_is_refused_is_not_counted()
    {
        var member = await club.SomebodyAsync(Role.Member);
        async Task<ReviewOutcome> TellAsync(string text)
        {
            var form = Guid.NewGuid();
            return await club.Warding.NearMissAsync(member, "shingle-howe", form, (_, today) => Closure.AfterNearMiss(today, text, form), default);
        }

        for (var i = 0; i < 5; i++)
            Assert.False((await TellAsync(" ")).IsDone);
        Assert.True((await TellAsync("Knocked down by the backwash.")).IsDone);
        Assert.True((await TellAsync("And once more.")).IsDone);
        Assert.False((await TellAsync("A third.")).IsDone);
    }

    private static Task<T[]> RaceAsync<T>(Func<int, Task<T>> act) => Task.WhenAll(Enumerable.Range(0, Racers).Select(i => Task.Run(() => act(i))));
}
