using System.Formats.Tar;
using System.IO.Compression;
using System.Text.Json;
using Foreshore.Guide.Hosting;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace Foreshore.Guide.Running;

/// <summary>Reads a backup: its head alone, all of it to see whether it is whole, or all of it into a folder.</summary>
internal static class BackupReader
{
    public static readonly JsonSerializerOptions Json = new JsonSerializerOptions(JsonSerializerDefaults.Web) { WriteIndented = true }.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
    private const int MostWords = 64 << 20;

    public static Task<BackupHead> HeadAsync(string path, CancellationToken stop) => ReadAsync(path, async tar => await HeadOfAsync(tar, path, stop));

    /// <summary>Every file against its sum; how many there are.</summary>
    public static Task<int> CheckAsync(string path, CancellationToken stop) => ThroughAsync(path, null, stop);

    public static Task<int> UnpackAsync(string path, string folder, CancellationToken stop) => ThroughAsync(path, folder, stop);

    private static Task<int> ThroughAsync(string path, string? folder, CancellationToken stop) => ReadAsync(path, async tar =>
    {
        await HeadOfAsync(tar, path, stop);
        var found = new Dictionary<string, BackupSum>();
        while (await tar.GetNextEntryAsync(cancellationToken: stop) is { } entry)
        {
            if (entry.Name == BackupSum.Name)
            {
                var stated = await JsonSerializer.DeserializeAsync<Dictionary<string, BackupSum>>(Words(entry, path), Json, stop) ?? throw Damaged(path);
                stated.Remove(BackupHead.Name);
                return stated.Count == found.Count && stated.All(one => found.GetValueOrDefault(one.Key) == one.Value) ? found.Count : throw Damaged(path);
            }

            var target = folder is null ? null : Within(folder, entry.Name, path);
            if (entry.EntryType == TarEntryType.Directory)
                MakeFolder(target);
            else if (entry.EntryType == TarEntryType.RegularFile)
                found[entry.Name] = await CopyAsync(entry, target, stop);
            else
                throw Damaged(path);
        }

        throw Damaged(path);
    });

    private static async Task<BackupSum> CopyAsync(TarEntry entry, string? target, CancellationToken stop)
    {
        await using var measured = new MeasuredStream(entry.DataStream ?? Stream.Null, entry.Length);
        MakeFolder(target is null ? null : Path.GetDirectoryName(target));
        await using Stream to = target is null ? Stream.Null : BackupWriter.NewFile(target);
        await measured.CopyToAsync(to, stop);
        return measured.Sum();
    }

    private static void MakeFolder(string? folder)
    {
        if (folder is null || Directory.Exists(folder))
            return;
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    /// <summary>A name that leads out of the folder is none of ours.</summary>
    private static string Within(string folder, string name, string path)
    {
        var target = Path.GetFullPath(Path.Combine(folder, name.TrimEnd('/')));
        return target.StartsWith(Path.GetFullPath(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal) ? target : throw Damaged(path);
    }

    private static async Task<BackupHead> HeadOfAsync(TarReader tar, string path, CancellationToken stop)
    {
        var first = await tar.GetNextEntryAsync(cancellationToken: stop);
        return first?.Name == BackupHead.Name && await JsonSerializer.DeserializeAsync<BackupHead>(Words(first, path), Json, stop) is { } head ? head : throw NoBackup(path);
    }

    private static Stream Words(TarEntry entry, string path) => entry is { DataStream: { } words, Length: <= MostWords } ? words : throw Damaged(path);

    private static async Task<T> ReadAsync<T>(string path, Func<TarReader, Task<T>> read)
    {
        try
        {
            await using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16, FileOptions.SequentialScan | FileOptions.Asynchronous);
            await using var unpacked = new GZipStream(file, CompressionMode.Decompress);
            await using var tar = new TarReader(unpacked);
            return await read(tar);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException or UnauthorizedAccessException)
        {
            throw new OperatorException($"The backup {path} cannot be read: {fault.Message}", "Give the file that a backup was written to.", fault);
        }
        catch (Exception fault) when (fault is InvalidDataException or EndOfStreamException or JsonException or FormatException or ArgumentException or InvalidOperationException)
        {
            throw Damaged(path, fault);
        }
    }

    private static OperatorException NoBackup(string path) => new($"{path} is no backup of Foreshore.", "Give the file that \"foreshore backup\" wrote. Nothing was changed.");

    private static OperatorException Damaged(string path, Exception? cause = null) =>
        new($"The backup {path} is damaged or cut short.", "Take another one. Nothing was changed.", cause);
}
