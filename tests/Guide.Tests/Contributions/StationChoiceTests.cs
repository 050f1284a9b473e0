using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Foreshore.Guide.Tides;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>All times and heights at a place hang on its station: nobody changes it alone where two belong, nor without a line in the log.</summary>
public sealed class StationChoiceTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private readonly Club club = new(guide);

    [Fact]
    public async Task With_two_wardens_a_station_waits_for_the_other_and_can_be_brought_back()
    {
        var (admin, warden) = (await club.SomebodyAsync(Role.Admin), await club.SomebodyAsync(Role.Warden));
        await club.KeepWardensAsync(admin, warden);
        var before = await PlaceAsync("gannet-stairs");
        var form = new AssignForm { Place = "gannet-stairs", Station = "noaa/8412581", AllTheSame = true, Reason = "Nearer" };

        var looked = await TakeAsync(admin, form);
        Assert.False(looked.IsDone || looked.IsQueued);
        Assert.NotEqual(looked.Levels!.Rows.Single(row => row.What == "Highest this year").Before, looked.Levels.Rows.Single(row => row.What == "Highest this year").After);
        Assert.NotEmpty(looked.Levels.Unjudged);
        form.Looked = form.Stamp;
        Assert.True((await TakeAsync(admin, form)).IsQueued);
        Assert.True((await TakeAsync(admin, form)).IsQueued);
        Assert.Equal(before.TideStationId, (await PlaceAsync("gannet-stairs")).TideStationId);

        await using var db = club.Open();
        var proposal = await db.Proposals.SingleAsync(p => p.Matter == Matter.Tide && p.TargetId == before.Id);
        Assert.Contains("another warden", Assert.Single((await club.AcceptAsync(admin, proposal.Id, "Nearer")).Faults).Words, StringComparison.Ordinal);
        using (var eyes = new Person(guide))
        {
            await eyes.BecomeAsync(Role.Warden);
            Assert.Contains("Highest this year", (await eyes.ReadAsync($"/queue/{proposal.Id}")).Body!.TextContent, StringComparison.Ordinal);
        }
        Assert.True((await club.AcceptAsync(warden, proposal.Id)).IsDone);
        Assert.Equal("noaa/8412581", (await PlaceAsync("gannet-stairs")).TideStationId);

        var revision = await db.Revisions.SingleAsync(r => r.ProposalId == proposal.Id);
        Assert.Contains("Another warden", Assert.Single((await club.Reviewing.RestoreAsync(warden, revision.Id, "It was right", default)).Faults).Words, StringComparison.Ordinal);
    }

    /// <summary>All places were set to a tenth of their tide without a line in the log: corrections are as guarded as the station.</summary>
    [Fact]
    public async Task Corrections_wait_for_the_other_warden_too()
    {
        var (admin, _) = (await club.SomebodyAsync(Role.Admin), await club.SomebodyAsync(Role.Warden));
        var place = await PlaceAsync("tern-bank");
        var form = new AssignForm { Place = "tern-bank", Station = place.TideStationId, HighRatio = "0.1", LowRatio = "0.1", AllTheSame = true };
        form.Looked = form.Stamp;

        Assert.True((await TakeAsync(admin, form)).IsQueued);

        Assert.Equal(place.TideCorrections, (await PlaceAsync("tern-bank")).TideCorrections);
        form.HighRatio = "0.2";
        Assert.False((await TakeAsync(admin, form)).IsQueued, "What was not looked at was taken.");
    }

    [Fact]
    public async Task A_station_that_is_not_there_is_refused_wherever_it_is_typed()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var place = await PlaceAsync("ketch-point");
        Assert.Equal("station", Assert.Single((await club.Contributing.SendAsync(member.Reader, Guid.NewGuid(), Matter.Tide, place.Id, new Dictionary<string, string> { ["station"] = "noaa/none" }, null, null, default)).Faults).FieldId);

        var id = await club.SentAsync(member, Matter.Tide, place.Id, new Dictionary<string, string> { ["high-minutes"] = "7" });
        Assert.Equal("station", Assert.Single((await club.AcceptAsync(warden, id, null, new Dictionary<string, string> { ["station"] = "noaa/none" })).Faults).FieldId switch { "decision" => "station", var field => field });
        Assert.Equal(place.TideStationId, (await PlaceAsync("ketch-point")).TideStationId);
    }

    private Task<StationChosen> TakeAsync(SignedIn who, AssignForm form) => guide.Services.GetRequiredService<StationChoice>().TakeAsync(who, form, default);

    private async Task<Location> PlaceAsync(string slug)
    {
        await using var db = club.Open();
        return (await db.LocationAsync(slug, new Reader(Role.Admin), Parts.None))!;
    }
}
