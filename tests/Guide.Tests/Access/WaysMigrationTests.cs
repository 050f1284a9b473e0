using Foreshore.Guide.Database;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Xunit;

namespace Foreshore.Guide.Access;

public sealed class WaysMigrationTests(TestCluster cluster)
{
    /// <summary>A guide from before ways had car parks of their own.</summary>
    private const string Before = "20261125113453_Photos";

    /// <summary>A place with two car parks and two ways, one of them over a bar, as the old tables held it; another place with none.</summary>
    private const string Rows = """
        INSERT INTO locations (slug, name, other_names, latitude_degrees, longitude_degrees, zone_id, country_code, coast_order, summary, background, visibility, search_text)
            VALUES ('holm', 'Holm', '{}', 44.8, -67, 'America/New_York', 'US', 1, '', '', 'Public', ''), ('spit', 'Spit', '{}', 44.7, -67, 'America/New_York', 'US', 2, '', '', 'Public', '');
        INSERT INTO parking_areas (location_id, name, latitude_degrees, longitude_degrees, surface, check_says_who, check_last_checked)
            VALUES (1, 'Turning place', 44.8, -67, 'Shell', 'Club', '2026-01-01'), (1, 'School', 44.8, -67, 'Asphalt', 'Club', '2026-01-01'), (2, 'Elsewhere', 44.7, -67, 'Grass', 'Club', '2026-01-01');
        INSERT INTO access_routes (location_id, name, "order") VALUES (1, 'Over the bar', 1), (1, 'Round', 2);
        INSERT INTO legs (access_route_id, "order", kind, name, legal_status, check_says_who, check_last_checked, group_allowed, tripod_allowed, dogs, line_degrees,
                crossing_is_beach, crossing_passable_below_metres, crossing_passable_below_datum, crossing_passable_below_station_id, crossing_passable_below_is_repeated)
            VALUES (1, 1, 'Walk', 'The bar', 'OpenAccess', 'Club', '2026-01-01', 'Unknown', 'Unknown', 'Unknown', '{}', false, 2.1, 'ChartDatum', 'noaa/8410140', true),
                (2, 1, 'Walk', 'The path', 'OpenAccess', 'Club', '2026-01-01', 'Unknown', 'Unknown', 'Unknown', '{}', NULL, NULL, NULL, NULL, NULL);
        """;

    [Fact]
    public async Task An_old_guide_is_brought_along_with_what_it_meant()
    {
        await using var database = await cluster.CreateAsync();
        await using (var old = GuideConnection.Open(database.OwnerConnection))
        {
            await old.Database.ExecuteSqlRawAsync("DROP SCHEMA public CASCADE; CREATE SCHEMA public", TestContext.Current.CancellationToken);
            await old.GetService<IMigrator>().MigrateAsync(Before, TestContext.Current.CancellationToken);
            await old.Database.ExecuteSqlRawAsync(Rows.Replace("{}", "{{}}", StringComparison.Ordinal), TestContext.Current.CancellationToken);
            await old.Database.MigrateAsync(TestContext.Current.CancellationToken);
        }

        await using var db = GuideConnection.Open(database.OwnerConnection);
        var coast = await db.CoastAsync(new Reader(Role.Warden), Parts.All, cancel: TestContext.Current.CancellationToken);

        var holm = Assert.Single(coast, place => place.Slug == "holm");
        Assert.Equal([TidalCut.Crossing, TidalCut.Never], holm.Routes.Select(route => Assert.Single(route.Legs).TidalCut));
        Assert.All(holm.Routes, route => Assert.Equal([("Turning place", 1, null), ("School", 2, null)],
            route.Parking.Select(served => (served.ParkingArea.Name, served.Order, served.WalkMinutes))));
        Assert.All(holm.Routes.SelectMany(route => route.Legs), leg => Assert.Equal((LegGround.Unknown, LightAtNight.Unknown), (leg.Ground, leg.LightAtNight)));
        Assert.Empty(coast.Single(place => place.Slug == "spit").Routes);
    }
}
