using Foreshore.Guide.Contributions;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Locations;

/// <summary>What has ended stays where it is kept: no page grows with the years.</summary>
public sealed class YearsOfUseTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private const string Place = "long-slip";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Sixty_one_notes_and_eleven_closures_that_have_ended_change_no_page()
    {
        await using var db = site.Open();
        var place = (await db.LocationAsync(Place, Reader.Visitor, cancel: Cancel))!;
        var stance = place.VantagePoints[0];
        string[] addresses =
        [
            "/", "/weekend", place.Address(), $"{place.Address()}/tide", stance.Address(place), stance.Compositions[0].Address(place, stance),
            "/api/v1/locations", $"/api/v1/locations/{Place}", "/api/v1/weekend",
        ];
        // Once before, so that what is kept from then on is kept in both rounds.
        await MeasureAsync(addresses);
        var before = await MeasureAsync(addresses);

        await db.Database.ExecuteSqlAsync($"""
            INSERT INTO hazard_notes (location_id, kind, severity, text, "from", until, state)
            SELECT {place.Id}, 'Waves', n % 5, 'It was rough here once.', DATE '2025-01-01', DATE '2025-02-01',
                CASE WHEN n % 3 = 0 THEN 'Ended' WHEN n % 3 = 1 THEN 'Rejected' WHEN n % 5 = 4 THEN 'Ended' ELSE 'Confirmed' END
            FROM generate_series(1, 61) n
            """, Cancel);
        await db.Database.ExecuteSqlAsync($"""
            INSERT INTO closures (location_id, target, reason, closed_by, state, "from", until, is_near_miss, is_lifted_single_handed)
            SELECT {place.Id}, 'Location', 'It was closed once.', 'The county', CASE WHEN n % 2 = 0 THEN 'Lifted' ELSE 'InForce' END, DATE '2025-01-01', DATE '2025-02-01', false, false
            FROM generate_series(1, 11) n
            """, Cancel);

        Assert.Equal(before, await MeasureAsync(addresses));
        Assert.All(before, page => Assert.True(page.Rows > 0, $"{page.Address} read nothing."));
    }

    [Fact]
    public async Task Parts_of_a_place_add_up_and_do_not_multiply()
    {
        using var _ = site.CreateClient();
        await using var db = await ((IDbContextFactory<GuideDb>)site.Services.GetService(typeof(IDbContextFactory<GuideDb>))!).CreateDbContextAsync(Cancel);
        site.Commands.Reset();
        var coast = await db.CoastAsync(new Reader(Role.Warden), Parts.Stay | Parts.Hazards, now: GuideHost.UsualNow, cancel: Cancel);

        var parts = coast.Sum(place => place.Grants.Count + place.Parking.Count + place.OvernightRules.Count + place.PermissionLetters.Count + place.HazardRatings.Count
            + place.HazardNotes.Count + place.Closures.Count);
        // A row for each thing, one for each kind that a place has none of, and the place itself: never a product.
        Assert.InRange(site.Commands.Rows, parts / 2, parts + 8 * coast.Count);
    }

    [Fact]
    public async Task The_queue_takes_five_commands_and_lists_what_a_warden_can_read()
    {
        using var _ = site.CreateClient();
        await using var db = await ((IDbContextFactory<GuideDb>)site.Services.GetService(typeof(IDbContextFactory<GuideDb>))!).CreateDbContextAsync(Cancel);
        var place = (await db.LocationAsync(Place, Reader.Visitor, Parts.None, cancel: Cancel))!;
        await db.Database.ExecuteSqlAsync($"""
            INSERT INTO hazard_notes (location_id, kind, severity, text, "from", state)
            SELECT {place.Id}, 'Path', n % 4, 'A report that nobody has read yet.', DATE '2026-11-20', 'Reported' FROM generate_series(1, 300) n
            """, Cancel);
        site.Commands.Reset();
        var queue = await db.QueueAsync(new Reader(Role.Warden), null, GuideHost.UsualNow, Cancel);

        Assert.Equal(5, site.Commands.Commands.Count);
        Assert.Equal(QueueView.MostShown, queue.Shown.Count());
        Assert.True(queue.IsCut);
        Assert.Equal($"more than {QueueView.MostShown}", queue.Count(QueueKind.Hazard));
        Assert.Equal(queue.Lines.OrderByDescending(line => line.Severity).ThenBy(line => line.Since), queue.Lines);
        Assert.Contains(queue.Lines, line => line.Kind == QueueKind.Closure);
        Assert.Contains(queue.Lines, line => line.Kind == QueueKind.Proposal);
        await db.Database.ExecuteSqlAsync($"DELETE FROM hazard_notes WHERE text = 'A report that nobody has read yet.'", Cancel);
    }

    private async Task<List<(string Address, long Rows, int Letters)>> MeasureAsync(IEnumerable<string> addresses)
    {
        var measured = new List<(string, long, int)>();
        foreach (var address in addresses)
        {
            site.Commands.Reset();
            var text = await site.Client.GetStringAsync(address, Cancel);
            measured.Add((address, site.Commands.Rows, text.Length));
        }

        return measured;
    }
}
