using System.Globalization;
using Foreshore.Guide.Database;
using Foreshore.Guide.Hosting;
using Foreshore.Guide.Members;
using NodaTime;
using Npgsql;

namespace Foreshore.Guide.Running;

/// <summary>
/// Copies the embedded database while members write, as PostgreSQL's manual describes it ("Making a Base Backup Using the Low Level
/// API"): the server is told, its files are copied as they lie, and the log written meanwhile is put to them. What a restore gives is the
/// moment at which the copying ended.
/// </summary>
internal static class Backup
{
    /// <summary>The server makes them anew, or they belong to the process that runs (manual, the same chapter).</summary>
    private static readonly string[] EmptyFolders = ["pg_wal", "pg_replslot", "pg_dynshmem", "pg_notify", "pg_serial", "pg_snapshots", "pg_stat_tmp", "pg_subtrans"];
    private static readonly string[] LeftOut = ["postmaster.pid", "postmaster.opts", "backup_label", "tablespace_map", "backup_manifest", "postgresql.auto.conf.tmp", "current_logfiles"];
    private static readonly string[] LeftOutBeginnings = ["pgsql_tmp", "pg_internal.init"];
    private const string Control = "global/pg_control";

    /// <summary>Returns how many files are in it.</summary>
    public static async Task<int> TakeAsync(EmbeddedCluster cluster, string path, string settings, Instant now, CancellationToken stop)
    {
        var file = Path.GetFullPath(path);
        if (File.Exists(file) || Directory.Exists(file))
            throw new OperatorException($"{file} is there already.", "Give another name: a backup is never written over another.");
        var unfinished = file + ".unfinished";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.Delete(unfinished);
            await using (var writer = BackupWriter.Create(unfinished))
                await WriteAsync(cluster, writer, settings, now, stop);
            var files = await BackupReader.CheckAsync(unfinished, stop);
            File.Move(unfinished, file);
            new ErasureNotes(cluster.DataDirectory).KeepBeside(Path.GetDirectoryName(file)!, await ErasedAsync(cluster, stop));
            return files;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new OperatorException($"The backup could not be written: {fault.Message}", "Give a folder with more room that can be written to. No backup was made.", fault);
        }
        finally
        {
            File.Delete(unfinished);
        }
    }

    private static async Task WriteAsync(EmbeddedCluster cluster, BackupWriter writer, string settings, Instant now, CancellationToken stop)
    {
        await using var server = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(cluster.AdminConnection) { Pooling = false, CommandTimeout = 0 }.ConnectionString);
        await server.OpenAsync(stop);
        await writer.AddAsync(BackupHead.Name, new BackupHead(BackupHead.CurrentFormat, now, cluster.Version, await ChangesAsync(cluster, stop)), stop);
        await writer.AddFileAsync(Path.GetFileName(cluster.PasswordFile), cluster.PasswordFile, stop);
        foreach (var each in Directory.Exists(settings) ? Directory.GetFiles(settings, "appsettings*.json") : [])
            await writer.AddFileAsync($"settings/{Path.GetFileName(each)}", each, stop);

        // Lives as long as this session: the server throws no log away that the backup still needs.
        await AskAsync(server, "SELECT pg_create_physical_replication_slot($1, true, true)", string.Create(CultureInfo.InvariantCulture, $"foreshore_backup_{Environment.ProcessId}"), stop);
        await AskAsync(server, "SELECT pg_backup_start($1, true)", "foreshore", stop);
        await AddClusterAsync(writer, cluster.ClusterDirectory, stop);
        await writer.AddFileAsync($"cluster/{Control}", Path.Combine(cluster.ClusterDirectory, Control), stop);
        var (end, label, map) = await StopAsync(server, stop);
        await writer.AddAsync("cluster/backup_label", label, stop);
        if (map.Length > 0)
            throw new OperatorException("The cluster has tablespaces, which lie outside its folder.", "Move their tables back, or back it up with programs of PostgreSQL's own.");

        // Its first line ends like "(file 000000010000000000000002)".
        var first = System.Text.Encoding.UTF8.GetString(label).Split('\n')[0].Split("(file ")[1].TrimEnd(')');
        var last = (string)(await AskAsync(server, "SELECT pg_walfile_name($1::pg_lsn)", end, stop))!;
        var segmentBytes = (int)(await AskAsync(server, "SELECT setting::int FROM pg_settings WHERE name = $1", "wal_segment_size", stop))!;
        foreach (var segment in WalSegments.Between(first, last, segmentBytes))
        {
            if (!await writer.AddFileAsync($"cluster/pg_wal/{segment}", Path.Combine(cluster.ClusterDirectory, "pg_wal", segment), stop))
                throw new OperatorException($"The server's log {segment} is gone.", "Begin the backup anew.");
        }

        await writer.FinishAsync(stop);
    }

    private static async Task AddClusterAsync(BackupWriter writer, string cluster, CancellationToken stop)
    {
        var folders = new Queue<string>([""]);
        while (folders.TryDequeue(out var folder))
        {
            await writer.AddFolderAsync(Path.Combine("cluster", folder), stop);
            if (EmptyFolders.Contains(folder))
                continue;
            foreach (var entry in Listed(Path.Combine(cluster, folder)))
            {
                var name = Path.Combine(folder, entry.Name);
                if (LeftOut.Contains(entry.Name) || LeftOutBeginnings.Any(each => entry.Name.StartsWith(each, StringComparison.Ordinal)) || name == Control)
                    continue;
                if (entry is DirectoryInfo)
                    folders.Enqueue(name);
                else
                    await writer.AddFileAsync($"cluster/{name}", entry.FullName, stop);
            }
        }
    }

    /// <summary>A folder may go while it is looked at: a database was dropped.</summary>
    private static FileSystemInfo[] Listed(string folder)
    {
        try
        {
            return [.. new DirectoryInfo(folder).GetFileSystemInfos().OrderBy(entry => entry.Name, StringComparer.Ordinal)];
        }
        catch (DirectoryNotFoundException)
        {
            return [];
        }
    }

    private static async Task<(string End, byte[] Label, byte[] Map)> StopAsync(NpgsqlConnection server, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand("SELECT lsn::text, labelfile, coalesce(spcmapfile, '') FROM pg_backup_stop(false)", server);
        await using var row = await command.ExecuteReaderAsync(stop);
        await row.ReadAsync(stop);
        return (row.GetString(0), System.Text.Encoding.UTF8.GetBytes(row.GetString(1)), System.Text.Encoding.UTF8.GetBytes(row.GetString(2)));
    }

    private static async Task<object?> AskAsync(NpgsqlConnection server, string question, string value, CancellationToken stop)
    {
#pragma warning disable CA2100 // Written above.
        await using var command = new NpgsqlCommand(question, server) { Parameters = { new() { Value = value } } };
#pragma warning restore CA2100
        return await command.ExecuteScalarAsync(stop);
    }

    private static async Task<IReadOnlyList<string>> ChangesAsync(EmbeddedCluster cluster, CancellationToken stop)
    {
        await using var db = GuideConnection.Open(cluster.OwnerConnection);
        return [.. await Schema.ChangesAsync(db, stop)];
    }

    /// <summary>From the log of acts, in case a note could not be written when it happened.</summary>
    private static async Task<IReadOnlyList<(Guid, Instant)>> ErasedAsync(EmbeddedCluster cluster, CancellationToken stop)
    {
        await using var db = GuideConnection.Open(cluster.OwnerConnection);
        return await Erasure.KnownAsync(db, stop);
    }
}
