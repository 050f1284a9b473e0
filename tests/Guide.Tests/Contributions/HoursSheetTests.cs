using Foreshore.Guide.Access;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Hours and sailings from the member's form through the warden's queue onto the page, and back again.</summary>
public sealed class HoursSheetTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private readonly Club club = new(guide);

    [Theory]
    [InlineData(Matter.Leg, "open-hours", "hours", "sailings-out", "sailings-back")]
    [InlineData(Matter.Parking, "open-hours")]
    [InlineData(Matter.Place, "open-hours", "byelaws")]
    public void A_second_warden_is_asked_for_hours_and_sailings(Matter matter, params string[] fields) =>
        Assert.All(fields, name => Assert.True(matter.Sheet().Field(name)!.IsGuarded, name));

    [Theory]
    [InlineData("open-hours", "8 to 6", "After the dates write hours like 08:00-18:00")]
    [InlineData("sailings-out", "hourly", "After the dates write \"first 07:00 last 18:30 every 90\"")]
    public async Task What_cannot_be_read_is_a_fault_beside_its_field_and_is_kept(string field, string typed, string words)
    {
        var member = await club.SomebodyAsync(Role.Member);
        var ferry = await FerryAsync();
        var id = Guid.NewGuid();

        var sent = await club.Contributing.SendAsync(member.Reader, id, Matter.Leg, ferry.Id, new Dictionary<string, string> { [field] = typed }, null, null, default);

        var fault = Assert.Single(sent.Faults);
        Assert.Equal(field, fault.FieldId);
        Assert.Contains(words, fault.Words, StringComparison.Ordinal);
        Assert.Equal(typed, (await club.Contributing.FindAsync(id, member.MemberId, default))!.Given[field]);
    }

    [Fact]
    public async Task Hours_typed_one_rule_a_line_are_let_in_read_on_the_page_and_brought_back()
    {
        var (member, warden, other) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden), await club.SomebodyAsync(Role.Warden, "Otis Brane"));
        var ferry = await FerryAsync();
        var before = SailingsNotation.Write(ferry.Ferry!.Back);
        var id = await club.SentAsync(member, Matter.Leg, ferry.Id, new Dictionary<string, string>
        {
            ["sailings-back"] = "June to August Mon–Fri first 7:00 last 19:00 every 60\r\nOct Sat, Sun 09:00, 16:00\r\nno sailings",
            ["ask-whom"] = "the harbour office",
        });

        Assert.True((await club.AcceptAsync(warden, id)).IsDone);

        const string Kept = "1 Jun-31 Aug Mon-Fri first 07:00 last 19:00 every 60; 1 Oct-31 Oct Sat,Sun 09:00 16:00; no sailings";
        Assert.Equal(Kept, SailingsNotation.Write((await FerryAsync()).Ferry!.Back));
        using var visitor = new Person(guide);
        Assert.Contains("Back: June–August Monday to Friday 07:00–19:00, every 1 h; October Saturday and Sunday 09:00 and 16:00; no sailings.",
            (await visitor.ReadAsync("/coast/lantern-island")).Body!.TextContent, StringComparison.Ordinal);

        await using var db = club.Open();
        var revision = await db.Revisions.SingleAsync(r => r.ProposalId == id);
        // Whoever restores a limit is its proposer: another warden lets it in.
        Assert.False((await club.Reviewing.RestoreAsync(other, revision.Id, null, default)).IsDone);
        var restoring = await db.Proposals.SingleAsync(p => p.ProposerId == other.MemberId);
        Assert.True((await club.AcceptAsync(warden, restoring.Id)).IsDone);
        Assert.Equal(before, SailingsNotation.Write((await FerryAsync()).Ferry!.Back));
    }

    [Fact]
    public async Task A_walk_has_no_sailings()
    {
        var member = await club.SomebodyAsync(Role.Member);
        await using var db = club.Open();
        var walk = await db.Set<Leg>().AsNoTracking().FirstAsync(leg => leg.Kind == LegKind.Walk);

        var sent = await club.Contributing.SendAsync(member.Reader, Guid.NewGuid(), Matter.Leg, walk.Id, new Dictionary<string, string> { ["sailings-out"] = "07:00" }, null, null, default);

        Assert.Contains("Only a ferry has sailings", Assert.Single(sent.Faults).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_to_be_entered_stands_in_the_wardens_queue()
    {
        await using var db = club.Open();
        var place = await db.Locations.Include(l => l.Routes).ThenInclude(r => r.Legs).SingleAsync(l => l.Slug == "pigeon-neck");
        place.OpenBy(null);
        place.Routes[0].Legs[^1].OpenBy(null, "Ask at the farm");
        await db.SaveChangesAsync();

        var queue = await db.QueueAsync(new Reader(Role.Warden), QueueKind.Fact, guide.Clock.GetCurrentInstant(), default);

        Assert.Contains(queue.Shown, line => line.Title == $"Hours to be entered: {place.Name}" && line.Words.Contains("Sunrise to sunset, except by permit", StringComparison.Ordinal));
        Assert.Contains(queue.Shown, line => line.Title == $"Hours to be entered: {place.Routes[0].Legs[^1].Name}" && line.Words.Contains("Ask at the farm", StringComparison.Ordinal));
        using var visitor = new Person(guide);
        Assert.Contains("not entered yet", (await visitor.ReadAsync("/coast/pigeon-neck")).QuerySelector("#ways")!.TextContent, StringComparison.Ordinal);
    }

    private async Task<Leg> FerryAsync()
    {
        await using var db = club.Open();
        return await db.Set<Leg>().AsNoTracking().SingleAsync(leg => leg.Name == "Town wharf to the landing stage");
    }
}
