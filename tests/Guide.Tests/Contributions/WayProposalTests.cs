using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Proposals about ways, from a member's form into the guide and back.</summary>
public sealed class WayProposalTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private readonly Club club = new(guide);

    [Fact]
    public async Task Order_and_car_parks_of_a_way_are_proposed_accepted_and_kept_in_its_history()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var route = (await PlaceAsync("anvil-ledges")).Routes.Single(each => each.Name == "By the bay ferry and the bus");

        var id = await club.SentAsync(member, Matter.Way, route.Id, new Dictionary<string, string>
        {
            ["order"] = "1",
            ["car-park-1"] = "Point car park",
            ["car-park-1-walk"] = "2",
            ["car-park-2"] = "Long-stay lot, bay ferry",
            ["car-park-2-walk"] = "",
        });
        var outcome = await club.AcceptAsync(warden, id);
        Assert.True(outcome.IsDone, string.Join("; ", outcome.Faults));

        var after = await PlaceAsync("anvil-ledges");
        Assert.Equal(["By the bay ferry and the bus", "Loop road"], after.Routes.OrderBy(each => each.Order).Select(each => each.Name));
        Assert.Equal([("Point car park", 2.0), ("Long-stay lot, bay ferry", null)], after.Routes.Single(each => each.Id == route.Id).Parking.Select(served => (served.ParkingArea.Name, served.WalkMinutes)));
        await using var db = guide.Open();
        var revision = await db.Revisions.SingleAsync(each => each.ProposalId == id);
        Assert.Equal(["car-park-1", "car-park-1-walk", "car-park-2", "order"], revision.Changes.Select(change => change.Field).Order());
    }

    [Fact]
    public async Task Ways_of_a_stance_are_proposed_and_accepted()
    {
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var (_, stance) = await club.StanceAsync("holm-top");

        var id = await club.SentAsync(member, Matter.OwnWays, stance.Id, new Dictionary<string, string> { ["way-2-in"] = "14", ["way-2-out"] = "13", ["way-1-end"] = "" });
        Assert.True((await club.AcceptAsync(warden, id)).IsDone);

        var after = (await PlaceAsync("sorrel-holm")).VantagePoints.Single(each => each.Slug == "holm-top");
        Assert.Equal([("Over the bar", null, 18.0, 18.0), ("By boat from the town wharf", 6.0, 14.0, 13.0)],
            after.Ways.Select(way => (way.Route.Name, way.EndMinutes, way.WalkInMinutes, way.WalkOutMinutes)));
    }

    [Fact]
    public async Task What_nobody_has_said_of_a_way_waits_in_the_queue()
    {
        var warden = await club.SomebodyAsync(Role.Warden);
        await using (var db = guide.Open())
        {
            await db.Database.ExecuteSqlAsync($"UPDATE route_parking SET walk_minutes = NULL WHERE access_route_id = (SELECT id FROM access_routes WHERE name = 'Stile path')");
            await db.Database.ExecuteSqlAsync($"UPDATE legs SET tidal_cut = 'Unknown', ground = 'Unknown' WHERE name = 'Stile path'");
            await db.Database.ExecuteSqlAsync($"DELETE FROM route_parking WHERE access_route_id = (SELECT id FROM access_routes WHERE name = 'Station Lane')");
        }

        await using var read = guide.Open();
        var lines = (await read.QueueAsync(warden.Reader, QueueKind.Fact, guide.Clock.GetCurrentInstant(), default)).Shown.Where(line => line.Title is "To be entered: Station Lane" or "To be entered: Stile path").ToList();

        Assert.Equal(
        [
            ("To be entered: Station Lane", "which car parks serve this way"),
            ("To be entered: Stile path", "the walk to where the way begins, from Trust car park, Boot Road"),
            ("To be entered: Stile path", "what one walks on, at its worst"),
            ("To be entered: Stile path", "whether the tide ever covers this leg or cuts it off"),
        ], lines.Select(line => (line.Title, line.Words)).Order());
        Assert.All(lines, line => Assert.Matches("^/contribute/change/(way|leg)/[0-9]+$", line.Address));
    }

    private async Task<Location> PlaceAsync(string slug)
    {
        await using var db = guide.Open();
        return (await db.LocationAsync(slug, new Reader(Role.Warden)))!;
    }
}
