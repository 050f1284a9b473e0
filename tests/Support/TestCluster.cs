using System.Globalization;
using DotNet.Testcontainers.Builders;
using Foreshore.Guide.Database;
using Npgsql;
using Testcontainers.PostgreSql;
using Xunit;

namespace Foreshore.Guide.Support;

/// <summary>
/// One PostgreSQL for the whole run: a container where a Docker engine answers, else a private cluster. Databases are copied from
/// a template that was migrated once; the site reaches them as the app role, as it does when it serves.
/// </summary>
public sealed class TestCluster : IAsyncLifetime
{
    private const string Template = "foreshore";
    private const string DemoTemplate = "foreshore_demo";

    private readonly SemaphoreSlim making = new(1, 1);
    private EmbeddedCluster? embedded;
    private PostgreSqlContainer? container;
    private bool hasDemo;
    private int made;

    private string admin = "", owner = "", app = "";

    public async ValueTask InitializeAsync()
    {
        if (await StartContainerAsync())
        {
            admin = container!.GetConnectionString();
            owner = For(admin, Template, DatabaseRoles.Owner);
            app = For(admin, Template, DatabaseRoles.App);
            await DatabaseRoles.PrepareAsync(admin, owner, app);
        }
        else
        {
            // A folder of its own per test assembly, emptied first: a run that was killed may have left a server there.
            var options = new EmbeddedClusterOptions(
                Path.Combine(Path.GetTempPath(), $"foreshore-{NameOf(AppContext.BaseDirectory)}"), IsDurable: false);
            await EmbeddedCluster.RemoveAsync(options);
            embedded = await EmbeddedCluster.StartAsync(options);
            (admin, owner, app) = (embedded.AdminConnection, embedded.OwnerConnection, embedded.AppConnection);
        }

        await Schema.MigrateAsync(Unpooled(owner), DatabaseRoles.App);
    }

    /// <summary>A fresh copy, empty or with the demo guide.</summary>
    public async Task<TestDatabase> CreateAsync(bool withDemo = false)
    {
        await making.WaitAsync();
        try
        {
            if (withDemo && !hasDemo)
            {
                await CopyAsync(Template, DemoTemplate);
                await Demo.LoadAsync(Unpooled(For(app, DemoTemplate)));
                hasDemo = true;
            }

            var name = string.Create(CultureInfo.InvariantCulture, $"guide_{++made}");
            await CopyAsync(withDemo ? DemoTemplate : Template, name);
            return new TestDatabase(this, name, For(owner, name), For(app, name));
        }
        finally
        {
            making.Release();
        }
    }

    /// <summary>As a restart of the server would: every session on the database ends.</summary>
    internal Task EndSessionsAsync(string name) =>
        RunAsync($"SELECT count(pg_terminate_backend(pid, 5000)) FROM pg_stat_activity WHERE datname = '{name}'");

    internal async Task DropAsync(string name)
    {
        NpgsqlConnection.ClearAllPools();
        await RunAsync($"DROP DATABASE IF EXISTS {name} WITH (FORCE)");
    }

    public async ValueTask DisposeAsync()
    {
        if (container is not null)
            await container.DisposeAsync();
        if (embedded is null)
            return;

        var data = embedded.DataDirectory;
        await embedded.DisposeAsync();
        await EmbeddedCluster.RemoveAsync(new EmbeddedClusterOptions(data));
        Directory.Delete(data, recursive: true);
    }

    private async Task<bool> StartContainerAsync()
    {
        try
        {
            container = new PostgreSqlBuilder("postgres:18").WithDatabase("postgres").Build();
            await container.StartAsync();
            return true;
        }
        catch (DockerUnavailableException)
        {
            container = null;
            return false;
        }
    }

    private Task CopyAsync(string from, string name) =>
        RunAsync($"CREATE DATABASE {name} TEMPLATE {from} OWNER {DatabaseRoles.Owner}");

    private async Task RunAsync(string statement)
    {
        await using var connection = new NpgsqlConnection(Unpooled(admin));
        await connection.OpenAsync();
#pragma warning disable CA2100 // Names made here alone.
        await using var command = new NpgsqlCommand(statement, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }

    private static string For(string connection, string database, string? role = null)
    {
        var builder = new NpgsqlConnectionStringBuilder(connection) { Database = database, MaxPoolSize = 10 };
        if (role is not null)
            (builder.Username, builder.Password) = (role, "for-tests-alone");
        return builder.ConnectionString;
    }

    /// <summary>A session left in a pool would keep its database from being used as a template.</summary>
    private static string Unpooled(string connection) => new NpgsqlConnectionStringBuilder(connection) { Pooling = false }.ConnectionString;

    private static string NameOf(string folder) =>
        $"tests-{Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(folder)))[..10]}";
}

/// <summary>One copy, dropped with its user.</summary>
public sealed record TestDatabase(TestCluster Cluster, string Name, string OwnerConnection, string AppConnection) : IAsyncDisposable
{
    public Task EndSessionsAsync() => Cluster.EndSessionsAsync(Name);

    public async ValueTask DisposeAsync() => await Cluster.DropAsync(Name);
}
