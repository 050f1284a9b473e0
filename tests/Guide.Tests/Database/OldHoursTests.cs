using Foreshore.Guide.Access;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>A database from before hours were data is brought along with its values.</summary>
public class OldHoursTests(TestCluster cluster)
{
    private const string LastBeforeHours = "20261125113453_Photos";

    [Fact]
    public async Task Hours_and_sailings_of_every_day_become_rules_and_words_are_to_be_entered()
    {
        await using var database = await cluster.CreateAsync();
        await RunAsync(database.OwnerConnection, "DROP SCHEMA public CASCADE; CREATE SCHEMA public");
        await using (var old = GuideConnection.Open(database.OwnerConnection))
            await old.GetService<IMigrator>().MigrateAsync(LastBeforeHours);
        await RunAsync(database.OwnerConnection, Old);

        await Schema.MigrateAsync(database.OwnerConnection, DatabaseRoles.App);

        await using var db = GuideConnection.Open(database.AppConnection);
        var place = await db.Locations.Include(l => l.Parking).Include(l => l.Routes).ThenInclude(r => r.Legs).SingleAsync();
        var legs = place.Routes.Single().Legs.OrderBy(leg => leg.Order).ToList();

        Assert.Equal(["08:00-18:00", "18:00-24:00", null, null, null, null, null], legs.Select(Hours));
        Assert.Equal([null, null, "09:00–21:00: Later by permit", "opens 06:30, when it shuts is not recorded: From the sign", "At any hour", null, null], legs.Select(leg => leg.HoursText));
        Assert.Equal([false, false, true, true, true, false, false], legs.Select(leg => leg.HoursAreToBeEntered));

        var ferry = legs[6].Ferry!;
        Assert.Equal("first 05:30 last 20:15 every 45", SailingsNotation.Write(ferry.Out));
        Assert.Equal(ferry.Out, ferry.Back);
        Assert.All(legs.Take(6), leg => Assert.Null(leg.Ferry));

        Assert.Equal(["08:00-20:00", null], place.Parking.OrderBy(area => area.Name).Select(area => area.Hours is { } hours ? HoursNotation.Write(hours) : null));
        Assert.Null(place.Hours);
        Assert.True(place.HoursAreToBeEntered);
        Assert.Equal("Sunrise to sunset", place.Byelaws);
    }

    private static string? Hours(Leg leg) => leg.Hours is { } hours ? HoursNotation.Write(hours) : null;

    private static async Task RunAsync(string connection, string statements)
    {
        await using var opened = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString);
        await opened.OpenAsync();
#pragma warning disable CA2100 // Statements of this file alone.
        await using var command = new NpgsqlCommand(statements, opened);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }

    private const string Old = """
        INSERT INTO locations (id, slug, name, other_names, latitude_degrees, longitude_degrees, zone_id, country_code, coast_order, summary, background, visibility, search_text, byelaws)
        VALUES (1, 'old-place', 'Old place', '{}', 44.9, -66.9, 'America/New_York', 'US', 1, 'Old', 'Old', 'Public', '', 'Sunrise to sunset');
        INSERT INTO access_routes (id, location_id, name, "order") VALUES (1, 1, 'The way', 1);
        INSERT INTO legs (access_route_id, "order", kind, name, legal_status, group_allowed, tripod_allowed, dogs, line_degrees, check_last_checked, check_says_who, opens_at, closes_at, hours_text)
        SELECT 1, n, 'Walk', 'Leg ' || n, 'RightOfWay', 'Unknown', 'Unknown', 'Unknown', '{}', DATE '2026-06-01', 'A sign', opens, closes, words
        FROM (VALUES (1, time '08:00', time '18:00', NULL), (2, '18:00', '00:00', NULL), (3, '09:00', '21:00', 'Later by permit'), (4, '06:30', NULL, 'From the sign'),
            (5, NULL, NULL, 'At any hour'), (6, NULL, NULL, NULL)) AS old (n, opens, closes, words);
        INSERT INTO legs (access_route_id, "order", kind, name, legal_status, group_allowed, tripod_allowed, dogs, line_degrees, check_last_checked, check_says_who,
            ferry_crossing_minutes, ferry_first_sailing, ferry_last_sailing, ferry_interval_minutes, ferry_last_check_in_minutes)
        VALUES (1, 7, 'Ferry', 'The boat', 'RightOfWay', 'Unknown', 'Unknown', 'Unknown', '{}', DATE '2026-06-01', 'A board', 9, '05:30', '20:15', 45, 10);
        INSERT INTO parking_areas (location_id, name, latitude_degrees, longitude_degrees, surface, check_last_checked, check_says_who, locked_from, locked_until)
        VALUES (1, 'A lot', 44.9, -66.9, 'Gravel', DATE '2026-06-01', 'A sign', '20:00', '08:00'), (1, 'B lot', 44.9, -66.9, 'Gravel', DATE '2026-06-01', 'A sign', NULL, NULL);
        """;
}
