using System.Globalization;
using Foreshore.Guide.Database;
using Foreshore.Guide.Hosting;
using Foreshore.Guide.Members;
using Npgsql;

namespace Foreshore.Guide.Running;

/// <summary>What a restore did, for whoever asked for it.</summary>
/// <param name="Head">Of the backup.</param>
/// <param name="Tables">How many tables were read to their last row.</param>
/// <param name="Rows">Of all of them.</param>
/// <param name="Erased">Members whom it knew and who had been erased since.</param>
/// <param name="Former">Where the data lie that were there before; null where there were none.</param>
/// <param name="Settings">The settings that were in the backup; null where it had none.</param>
internal sealed record Restored(BackupHead Head, int Tables, long Rows, int Erased, string? Former, string? Settings);

/// <summary>Builds a cluster from a backup beside the one in use, and puts it in its place when it is whole and not before.</summary>
internal static class Restore
{
    private const string Unpacked = "unpacked";

    public static async Task<Restored> RunAsync(string path, EmbeddedClusterOptions options, CancellationToken stop)
    {
        var file = Path.GetFullPath(path);
        var head = await BackupReader.HeadAsync(file, stop);
        head.RefuseNewer(Schema.Known());
        await using var swap = await ClusterSwap.BeginAsync(options);
        var beside = options with { Directory = swap.Beside.Data };
        try
        {
            await UnpackAsync(file, head, swap, stop);
            var (tables, rows, erased) = await OpenAsync(beside, [.. ErasureNotes.Read(Path.GetDirectoryName(file)!), .. ErasureNotes.Read(swap.Place.Data)], stop);
            // A server that outlived its site would write on into files that were moved away.
            await EmbeddedCluster.StopServersAsync(swap.Place, swap.Account, options.Binaries, "fast", stop);
            var settings = KeepSettings(swap);
            return new(head, tables, rows, erased, swap.Finish(), settings);
        }
        catch (IOException fault)
        {
            throw new OperatorException($"The backup could not be restored: {fault.Message}", "Make room, then try again. The data in use were not changed.", fault);
        }
        finally
        {
            if (Directory.Exists(swap.Beside.Data) && !swap.IsWhole)
            {
                await EmbeddedCluster.RemoveAsync(beside, CancellationToken.None);
                Directory.Delete(swap.Beside.Data, recursive: true);
            }
        }
    }

    private static async Task UnpackAsync(string file, BackupHead head, ClusterSwap swap, CancellationToken stop)
    {
        var place = swap.Beside;
        var unpacked = Path.Combine(place.Data, Unpacked);
        await BackupReader.UnpackAsync(file, unpacked, stop);
        Directory.CreateDirectory(place.Root);
        File.Move(Path.Combine(unpacked, Path.GetFileName(place.Passwords(head.Major))), place.Passwords(head.Major));
        Directory.Move(Path.Combine(unpacked, "cluster"), place.Cluster(head.Major));
        await swap.Account.GiveAsync(place.Cluster(head.Major), withContents: true);
    }

    /// <summary>Beside the data, for comparing: what runs now may be another machine.</summary>
    private static string? KeepSettings(ClusterSwap swap)
    {
        var settings = Path.Combine(swap.Beside.Data, Unpacked, "settings");
        var kept = Path.Combine(swap.Place.Data, "settings-of-backup");
        if (!Directory.Exists(settings))
            return null;
        if (Directory.Exists(kept))
            Directory.Delete(kept, recursive: true);
        Directory.Move(settings, kept);
        return kept;
    }

    /// <summary>The server goes through its log, the tables are brought up to date, every row is read, and who was erased since is forgotten again.</summary>
    private static async Task<(int Tables, long Rows, int Erased)> OpenAsync(EmbeddedClusterOptions beside, IReadOnlyList<(Guid Member, NodaTime.Instant At)> noted, CancellationToken stop)
    {
        await using var cluster = await EmbeddedCluster.StartAsync(beside, stop);
        await Schema.MigrateAsync(cluster.OwnerConnection, DatabaseRoles.App, stop);
        var (tables, rows) = await ReadAllAsync(cluster.OwnerConnection, stop);
        await using var db = GuideConnection.Open(cluster.OwnerConnection);
        return (tables, rows, await Erasure.EraseNotedAsync(db, noted, stop));
    }

    /// <summary>Each value of each row is unpacked and written out: a page whose checksum is wrong ends it.</summary>
    private static async Task<(int Tables, long Rows)> ReadAllAsync(string connection, CancellationToken stop)
    {
        await using var server = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connection) { Pooling = false, CommandTimeout = 0 }.ConnectionString);
        await server.OpenAsync(stop);
        List<string> tables = [];
        await using (var list = new NpgsqlCommand("SELECT quote_ident(schemaname) || '.' || quote_ident(tablename) FROM pg_tables WHERE schemaname = 'public' ORDER BY 1", server))
        await using (var row = await list.ExecuteReaderAsync(stop))
        {
            while (await row.ReadAsync(stop))
                tables.Add(row.GetString(0));
        }

        var rows = 0L;
        foreach (var table in tables)
        {
#pragma warning disable CA2100 // A name as the server quotes it.
            await using var count = new NpgsqlCommand($"SELECT count(octet_length(each::text)) FROM {table} AS each", server);
#pragma warning restore CA2100
            rows += Convert.ToInt64(await count.ExecuteScalarAsync(stop), CultureInfo.InvariantCulture);
        }

        return (tables.Count, rows);
    }
}
