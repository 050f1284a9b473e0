using Foreshore.Guide.Hosting;
using Npgsql;

namespace Foreshore.Guide.Database;

/// <summary>
/// The database server in use: one of one's own where <c>ConnectionStrings:Guide</c> names it, else the embedded cluster, which
/// lives as long as this object.
/// </summary>
internal sealed class GuideServer : IAsyncDisposable
{
    private readonly IConfiguration settings;
    private readonly EmbeddedCluster? cluster;

    private GuideServer(IConfiguration settings, EmbeddedCluster? cluster, string appConnection) =>
        (this.settings, this.cluster, AppConnection) = (settings, cluster, appConnection);

    public string AppConnection { get; }
    public bool IsEmbedded => cluster is not null;

    /// <summary>For the site's watch over it; null with a server of one's own.</summary>
    public EmbeddedCluster? Embedded => cluster;
    public string Place => cluster?.DataDirectory ?? new NpgsqlConnectionStringBuilder(AppConnection).Host!;

    public static async Task<GuideServer> OpenAsync(IConfiguration settings, CancellationToken stop = default)
    {
        if (settings.GetConnectionString("Guide") is { Length: > 0 } own)
            return new GuideServer(settings, null, Checked("ConnectionStrings:Guide", own).ConnectionString);

        var cluster = await EmbeddedCluster.StartAsync(EmbeddedOptions(settings), stop);
        return new GuideServer(settings, cluster, cluster.AppConnection);
    }

    public static EmbeddedClusterOptions EmbeddedOptions(IConfiguration settings) =>
        new(settings["Database:Directory"], settings["Database:Binaries"]);

    /// <summary>Brings the tables up to date as their owner; on a server of one's own also makes the roles, where an admin's connection is given.</summary>
    public async Task MigrateAsync(CancellationToken stop = default)
    {
        var owner = cluster?.OwnerConnection ?? OwnersConnection();
        if (cluster is null && settings.GetConnectionString("GuideAdmin") is { Length: > 0 } admin)
            await DatabaseRoles.PrepareAsync(Checked("ConnectionStrings:GuideAdmin", admin).ConnectionString, owner, AppConnection, stop);
        await Schema.MigrateAsync(owner, new NpgsqlConnectionStringBuilder(AppConnection).Username!, stop);
    }

    public async ValueTask DisposeAsync()
    {
        if (cluster is not null)
            await cluster.DisposeAsync();
    }

    private string OwnersConnection() => settings.GetConnectionString("GuideOwner") is { Length: > 0 } owner
        ? Checked("ConnectionStrings:GuideOwner", owner).ConnectionString
        : throw new SettingException("ConnectionStrings:GuideOwner", "it is missing", "Changing tables needs the owner's role, which the site itself does not have.");

    private static NpgsqlConnectionStringBuilder Checked(string setting, string value)
    {
        try
        {
            var connection = new NpgsqlConnectionStringBuilder(value);
            return connection is { Host: { Length: > 0 }, Database: { Length: > 0 }, Username: { Length: > 0 } }
                ? connection
                : throw new SettingException(setting, "it must name Host, Database and Username", "Like \"Host=db;Database=foreshore;Username=foreshore_app;Password=…\".");
        }
        catch (Exception fault) when (fault is ArgumentException or FormatException)
        {
            throw new SettingException(setting, "it is no PostgreSQL connection string", "Like \"Host=db;Database=foreshore;Username=foreshore_app;Password=…\".");
        }
    }
}
