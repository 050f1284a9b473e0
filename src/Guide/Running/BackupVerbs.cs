using System.Globalization;
using Foreshore.Guide.Database;
using Foreshore.Guide.Hosting;
using Foreshore.Guide.Members;
using NodaTime;

namespace Foreshore.Guide.Running;

/// <summary><c>foreshore backup FILE</c> and <c>foreshore restore FILE</c>, for the embedded database.</summary>
internal static class BackupVerbs
{
    public static async Task BackUpAsync(string path, IConfiguration settings, string contentRoot)
    {
        RefuseOthers(path, settings, "backup", "Take it with the server's own pg_dump: docs/reliability.md has the commands.");
        await using var cluster = await EmbeddedCluster.JoinAsync(GuideServer.EmbeddedOptions(settings));
        var files = await Backup.TakeAsync(cluster, path, contentRoot, SystemClock.Instance.GetCurrentInstant(), CancellationToken.None);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"The backup is in {Path.GetFullPath(path)}: {files} files, {new FileInfo(path).Length / 1e6:F1} MB, read again and compared. It holds everything, passwords too: keep it where nobody else can read it, and {ErasureNotes.FileName} beside it."));
    }

    public static async Task RestoreAsync(string path, IConfiguration settings)
    {
        RefuseOthers(path, settings, "restore", "Restore it with the server's own pg_restore: docs/reliability.md has the commands.");
        var done = await Restore.RunAsync(path, GuideServer.EmbeddedOptions(settings), CancellationToken.None);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"The backup of {done.Head.TakenAt} is in place: {done.Tables} tables, {done.Rows} rows, all read."));
        if (done.Erased > 0)
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{done.Erased} of the members in it had been erased since, and were erased again."));
        if (done.Former is not null)
            Console.WriteLine($"The data from before are in {done.Former}. Delete the folder when you no longer want them.");
        if (done.Settings is not null)
            Console.WriteLine($"The settings it ran with are in {done.Settings}. Those in use were not changed: compare them.");
    }

    /// <summary>After a restore of a server of one's own: those are erased again whom the notes in a folder tell.</summary>
    public static async Task ForgetAsync(string folder, IConfiguration settings)
    {
        if (folder.Length == 0 || folder.StartsWith('-') || !Directory.Exists(folder))
            throw new OperatorException($"\"forget\" wants the folder with {ErasureNotes.FileName}.", "Name it, like \"foreshore forget /var/backups\".");
        await using var server = await GuideServer.OpenAsync(settings);
        await using var db = GuideConnection.Open(server.AppConnection);
        var erased = await Erasure.EraseNotedAsync(db, ErasureNotes.Read(folder), CancellationToken.None);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{erased} members who had been erased were erased again."));
    }

    private static void RefuseOthers(string path, IConfiguration settings, string verb, string todo)
    {
        if (path.Length == 0 || path.StartsWith('-'))
            throw new OperatorException($"\"{verb}\" wants a file.", $"Name it, like \"foreshore {verb} /var/backups/foreshore-monday.tar.gz\".");
        if (settings.GetConnectionString("Guide") is { Length: > 0 })
            throw new OperatorException("The database is a server of your own.", todo);
    }
}
