using Foreshore.Guide.Locations;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>What must hold is held by the database too, whoever writes.</summary>
public sealed class ConstraintTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    [Theory]
    [InlineData("UPDATE compositions SET facing_degrees = 400", "ck_compositions_facing_degrees")]
    [InlineData("UPDATE compositions SET facing_degrees = 'NaN'", "ck_compositions_facing_degrees")]
    [InlineData("UPDATE compositions SET focal_length_mm = 0", "ck_compositions_focal_length_mm")]
    [InlineData("UPDATE compositions SET wanted = '{}'", "ck_compositions_wanted")]
    [InlineData("UPDATE compositions SET wanted = '{GoldenHour}'", "ck_compositions_wanted")]
    [InlineData("UPDATE compositions SET tide_turn = 'Never' WHERE tide_turn IS NOT NULL", "ck_compositions_tide_turn")]
    [InlineData("UPDATE compositions SET tide_turn = 'LowWater' WHERE tide_lowest_metres IS NOT NULL", "ck_compositions_tide")]
    [InlineData("UPDATE locations SET latitude_degrees = 91", "ck_locations_latitude_degrees")]
    [InlineData("UPDATE locations SET longitude_degrees = 180", "ck_locations_longitude_degrees")]
    [InlineData("UPDATE locations SET visibility = 'Secret'", "ck_locations_visibility")]
    [InlineData("UPDATE locations SET country_code = 'us'", "ck_locations_country_code")]
    [InlineData("UPDATE locations SET slug = 'A B' WHERE slug = 'long-slip'", "ck_locations_slug")]
    [InlineData("UPDATE locations SET slug = 'tern-bank' WHERE slug = 'long-slip'", "ix_locations_slug")]
    [InlineData("UPDATE vantage_points SET reach_reason = NULL", "ck_vantage_points_reach_reason")]
    [InlineData("UPDATE vantage_points SET ground_method = 'Phone' WHERE ground_method IS NOT NULL", "ck_vantage_points_ground_method")]
    [InlineData("UPDATE vantage_points SET eye_height_metres = 'NaN'", "ck_vantage_points_eye_height_metres")]
    [InlineData("UPDATE hazard_notes SET severity = 5", "ck_hazard_notes_severity")]
    [InlineData("UPDATE hazard_ratings SET severity = -1", "ck_hazard_ratings_severity")]
    [InlineData("UPDATE closures SET \"from\" = NULL WHERE yearly_from IS NULL", "ck_closures_when")]
    [InlineData("UPDATE closures SET target = 'Leg' WHERE target = 'Location'", "ck_closures_what")]
    [InlineData("UPDATE closures SET until = \"from\" - 1 WHERE yearly_from IS NULL", "ck_closures_when")]
    [InlineData("UPDATE legs SET legal_status = 'Fine'", "ck_legs_legal_status")]
    [InlineData("UPDATE legs SET ferry_crossing_minutes = NULL, ferry_first_sailing = NULL WHERE kind = 'Ferry'", "ck_legs_ferry")]
    [InlineData("UPDATE legs SET line_degrees = '{44.1}'", "ck_legs_line")]
    [InlineData("UPDATE overnight_rules SET granted_by = NULL", "ck_overnight_rules_granted_by")]
    [InlineData("UPDATE parking_areas SET cost = 4, currency = NULL", "ck_parking_areas_cost")]
    [InlineData("INSERT INTO club_settings SELECT 2, club_name, coast_name, introduction, is_demo, earliest_alarm, latest_home, cautions_link, visitors_may_read FROM club_settings", "ck_club_settings_one_row")]
    [InlineData("UPDATE country_cautions SET country_code = NULL", "ix_country_cautions_country_code")]
    [InlineData("UPDATE country_cautions SET cautions = '{}'", "ck_country_cautions_cautions")]
    public async Task The_database_refuses(string statement, string constraint)
    {
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => RunAsync(statement));
        Assert.Equal(constraint, refusal.ConstraintName);
    }

    [Theory]
    [InlineData("UPDATE locations SET slug = 'pidgeon-neck' WHERE slug = 'long-slip'")]
    [InlineData("UPDATE vantage_points SET slug = 'outer-wall' WHERE slug = 'fish-pier'")]
    public async Task A_slug_is_never_reused_in_its_parent(string statement)
    {
        if (statement.Contains("vantage", StringComparison.Ordinal))
            await RunAsync("UPDATE vantage_points SET slug = 'outer-wall-renamed' WHERE slug = 'outer-wall'");
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => RunAsync(statement));
        Assert.Equal("pk_used_slugs", refusal.ConstraintName);
        Assert.Contains("never reused", refusal.MessageText, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_slug_may_be_used_in_another_parent_and_its_own_old_one_again()
    {
        await RunAsync("UPDATE vantage_points SET slug = 'watch-knoll' WHERE slug = 'boulder-end'");
        await RunAsync("UPDATE locations SET slug = 'the-slip' WHERE slug = 'long-slip'");
        await RunAsync("UPDATE locations SET slug = 'long-slip' WHERE slug = 'the-slip'");
    }

    [Fact]
    public async Task Two_who_edit_the_same_place_do_not_overwrite_each_other()
    {
        await using GuideDb one = site.Open(), two = site.Open();
        var first = await one.Locations.SingleAsync(l => l.Slug == "tern-bank");
        var second = await two.Locations.SingleAsync(l => l.Slug == "tern-bank");
        first.Describe("Changed first", first.Background);
        await one.SaveChangesAsync();
        second.Describe("Changed second", second.Background);
        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => two.SaveChangesAsync());
    }

    [Fact]
    public async Task Every_entity_with_parts_to_edit_has_a_version()
    {
        await using var db = site.Open();
        // An elevation file is replaced whole; a skyline job is moved on by the queue alone.
        // Of people: rows that are only added and taken away, or belong to a member, whose version guards them.
        // Of contributions: revisions are only added, and never changed; a photo goes with its proposal or note, whose version guards it.
        string[] without = ["AuditEntry", "MemberPasskey", "MemberSession", nameof(Photos.Photo), nameof(Photos.PhotoFile), "RecoveryCode", "Revision", "SignInFailure", nameof(UsedSlug), nameof(LocationGrant), nameof(Tides.StoredCatalogue),
            nameof(Elevation.ElevationFile), nameof(Elevation.SkylineJob), nameof(RingKey)];
        Assert.Equal(without.Order(), db.Model.GetEntityTypes().Where(e => !e.GetProperties().Any(p => p.IsConcurrencyToken)).Select(e => e.ClrType.Name).Order());
    }

    /// <summary>As the app role, which the site runs as.</summary>
    private async Task RunAsync(string statement)
    {
        await using var connection = new NpgsqlConnection(site.Database.AppConnection);
        await connection.OpenAsync();
#pragma warning disable CA2100 // Statements written above alone.
        await using var command = new NpgsqlCommand(statement, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }
}
