using Foreshore.Almanac.Tides;
using Foreshore.Guide.Database;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>What comes with the site, and how it gets into the database.</summary>
public class CatalogueTests(GuideDatabase database) : IClassFixture<GuideDatabase>
{
    private static readonly StationAsset Asset = StationAsset.Read();

    /// <summary>Counted in the source package itself, by licence and source, before anything was left out for want of a chart datum.</summary>
    [Theory]
    [InlineData("public domain https://tidesandcurrents.noaa.gov/disclaimers.html", "noaa/", 3486)]
    [InlineData("cc-by-4.0 https://creativecommons.org/licenses/by/4.0/", "ticon/", 2323)]
    [InlineData("cc-by-4.0 https://www.kartverket.no/en/api-and-data/terms-of-use", "kartverket/", 33)]
    public void Stations_stand_under_the_licences_they_came_with(string licence, string source, int count) =>
        Assert.Equal(count, Asset.Stations.Count(station => Asset.Licences[station.Licence] == licence && station.Id.StartsWith(source, StringComparison.Ordinal)));

    [Fact]
    public void Nothing_that_may_not_be_passed_on_is_among_them()
    {
        Assert.Equal(5842, Asset.Stations.Count);
        Assert.Equal(3, Asset.Licences.Length);
        Assert.DoesNotContain(Asset.Attributions, words => words.Contains("NC", StringComparison.Ordinal) || words.Contains("ODbL", StringComparison.Ordinal));
        Assert.All(Asset.Stations.Where(station => Asset.Licences[station.Licence].StartsWith("cc-by", StringComparison.Ordinal)),
            station => Assert.Contains("CC BY 4.0", Asset.Attributions[station.Attribution], StringComparison.Ordinal));
    }

    [Fact]
    public void A_subordinate_station_goes_by_one_of_the_set_that_has_constituents()
    {
        var byId = Asset.Stations.ToDictionary(station => station.Id);
        var subordinate = Asset.Stations.Where(station => station.Reference is not null).ToList();

        Assert.Equal(2241, subordinate.Count);
        Assert.All(subordinate, station => Assert.NotEmpty(byId[station.Reference!].Constants!));
        Assert.All(subordinate, station => Assert.Equal(station.ChartDatum, byId[station.Reference!].ChartDatum));
    }

    [Fact]
    public void Every_constituent_and_every_level_is_known_by_name()
    {
        Assert.Equal(163, Asset.Constituents.Length);
        Assert.DoesNotContain(Asset.Constituents, name => !Constituents.TryFind(name, out _));
        Assert.DoesNotContain(Asset.Datums, code => !TideLevels.IsKnown(code));
    }

    [Fact]
    public async Task Every_station_stored_can_be_asked_for_its_tide()
    {
        await using var db = database.Open();
        var stored = await db.TideStations.AsNoTracking().ToListAsync(TestContext.Current.CancellationToken);
        var tides = new StationTides(stored);

        Assert.Equal(Asset.Stations.Count, stored.Count);
        Assert.Empty(stored.Where(station => tides.Of(station.Id) is null).Select(station => station.Id));
    }

    /// <summary>Eastport's constants and levels as its office publishes them: tidesandcurrents.noaa.gov, station 8410140, harmonic constituents and datums.</summary>
    [Fact]
    public async Task A_station_is_stored_as_its_source_has_it()
    {
        await using var db = database.Open();
        var eastport = await db.TideStations.AsNoTracking().SingleAsync(station => station.Id == "noaa/8410140", TestContext.Current.CancellationToken);
        var m2 = Array.IndexOf(eastport.ConstituentNames, "M2");

        Assert.Equal((2.648, 98.4), (eastport.AmplitudesMetres[m2], eastport.PhasesDegrees[m2]));
        Assert.Equal(("noaa-8410140", "MLLW", NodalModel.Schureman, "public domain"), (eastport.Slug, eastport.ChartDatum, eastport.NodalModel, eastport.Licence));
        Assert.Equal(2.958, eastport.LevelMetres(TideLevels.MeanSeaLevel));
        Assert.Equal(0, eastport.LevelMetres("MLLW"));
        Assert.Null(eastport.LevelMetres("MLWS"));
    }

    [Fact]
    public async Task Loading_again_changes_nothing_and_a_new_edition_leaves_the_clubs_own_alone()
    {
        var cancel = TestContext.Current.CancellationToken;
        Assert.Equal(0, await CatalogueLoad.RunAsync(database.Database.OwnerConnection, cancel));
        await using var db = GuideConnection.Open(database.Database.OwnerConnection);
        await RunAsync("""
            UPDATE tide_catalogue SET edition = 1;
            UPDATE tide_stations SET name = 'Changed', catalogue_edition = 1 WHERE id = 'noaa/8410140';
            INSERT INTO tide_stations SELECT (jsonb_populate_record(one, '{"id":"club/wharf","slug":"club-wharf","name":"Wharf","catalogue_edition":null}')).* FROM tide_stations one WHERE id = 'noaa/8411060';
            INSERT INTO tide_stations SELECT (jsonb_populate_record(one, '{"id":"noaa/gone","slug":"noaa-gone","catalogue_edition":1}')).* FROM tide_stations one WHERE id = 'noaa/8411060';
            """);

        Assert.Equal(5842, await CatalogueLoad.RunAsync(database.Database.OwnerConnection, cancel));

        Assert.Equal("Eastport", (await db.TideStations.AsNoTracking().SingleAsync(station => station.Id == "noaa/8410140", cancel)).Name);
        Assert.Equal("Wharf", (await db.TideStations.AsNoTracking().SingleAsync(station => station.Id == "club/wharf", cancel)).Name);
        Assert.False(await db.TideStations.AnyAsync(station => station.Id == "noaa/gone", cancel));
        await RunAsync("DELETE FROM tide_stations WHERE id = 'club/wharf'");
    }

    private async Task RunAsync(string statements)
    {
        await using var connection = new NpgsqlConnection(database.Database.OwnerConnection);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
#pragma warning disable CA2100 // Words of this class alone.
        await using var command = new NpgsqlCommand(statements, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }
}
