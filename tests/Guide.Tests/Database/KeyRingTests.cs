using System.Net;
using System.Xml.Linq;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Database;

public class KeyRingTests(TestCluster cluster)
{
    [Fact]
    public async Task A_key_is_stored_once_however_often_its_insert_is_repeated()
    {
        await using var guide = new EmptyGuide(cluster);
        await guide.InitializeAsync();
        var ring = new KeyRing(guide.Services.GetRequiredService<IDbContextFactory<GuideDb>>());
        var key = new XElement("key", new XAttribute("id", Guid.NewGuid()));

        ring.StoreElement(key, $"key-{key.Attribute("id")!.Value}");
        ring.StoreElement(key, $"key-{key.Attribute("id")!.Value}");

        Assert.Equal(1, await CountAsync(guide, $"SELECT count(*) FROM data_protection_keys WHERE friendly_name = 'key-{key.Attribute("id")!.Value}'"));
    }

    /// <summary>As a database left by an earlier version: its table let the same key in twice.</summary>
    [Fact]
    public async Task A_key_found_twice_stops_neither_forms_nor_health()
    {
        await using var guide = new EmptyGuide(cluster);
        await guide.InitializeAsync();
        Assert.Equal(HttpStatusCode.OK, (await guide.Client.GetAsync("/sign-in")).StatusCode);
        await guide.RunAsOwnerAsync("""
            DROP INDEX ix_data_protection_keys_friendly_name;
            INSERT INTO data_protection_keys (friendly_name, xml) SELECT friendly_name, xml FROM data_protection_keys;
            """);
        Assert.True(await CountAsync(guide, "SELECT count(*) FROM data_protection_keys") >= 2);

        await using var later = new SecondSite(cluster, guide.Database);
        await later.InitializeAsync();

        Assert.Equal(HttpStatusCode.OK, (await later.Client.GetAsync("/sign-in")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await later.Client.GetAsync("/health")).StatusCode);
    }

    [Fact]
    public async Task Health_is_bad_while_nothing_can_be_sealed()
    {
        await using var guide = new EmptyGuide(cluster);
        await guide.InitializeAsync();
        await guide.RunAsOwnerAsync($"REVOKE ALL ON data_protection_keys FROM {DatabaseRoles.App}");
        await using var later = new SecondSite(cluster, guide.Database);
        await later.InitializeAsync();

        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await later.Client.GetAsync("/health")).StatusCode);
    }

    private static async Task<long> CountAsync(GuideHost guide, string question)
    {
        await using var connection = new NpgsqlConnection(guide.Database.AppConnection);
        await connection.OpenAsync();
#pragma warning disable CA2100 // Questions written above alone.
        await using var command = new NpgsqlCommand(question, connection);
#pragma warning restore CA2100
        return (long)(await command.ExecuteScalarAsync())!;
    }
}
