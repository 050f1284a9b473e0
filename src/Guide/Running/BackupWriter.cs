using System.Formats.Tar;
using System.IO.Compression;
using System.Text.Json;

namespace Foreshore.Guide.Running;

/// <summary>A backup while it is written: a tar file through gzip, which any system can look into.</summary>
internal sealed class BackupWriter : IAsyncDisposable
{
    private const UnixFileMode OursAlone = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private readonly FileStream file;
    private readonly GZipStream packed;
    private readonly TarWriter tar;
    private readonly Dictionary<string, BackupSum> sums = [];

    private BackupWriter(FileStream file)
    {
        this.file = file;
        packed = new GZipStream(file, CompressionLevel.Fastest, leaveOpen: true);
        tar = new TarWriter(packed, TarEntryFormat.Pax, leaveOpen: true);
    }

    /// <summary>For nobody else to read: a backup holds all that the club keeps to itself.</summary>
    public static BackupWriter Create(string path) => new(NewFile(path));

    public static FileStream NewFile(string path)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OursAlone;
        return new FileStream(path, options);
    }

    public Task AddAsync<T>(string name, T value, CancellationToken stop) =>
        AddAsync(name, JsonSerializer.SerializeToUtf8Bytes(value, BackupReader.Json), stop);

    public async Task AddAsync(string name, byte[] bytes, CancellationToken stop) => await AddAsync(name, new MemoryStream(bytes), bytes.Length, stop);

    /// <summary>False where the file went away before it could be opened: the server throws away what it needs no more.</summary>
    public async Task<bool> AddFileAsync(string name, string path, CancellationToken stop)
    {
        FileStream from;
        try
        {
            from = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1 << 16, FileOptions.SequentialScan | FileOptions.Asynchronous);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            return false;
        }

        await AddAsync(name, from, from.Length, stop);
        return true;
    }

    public Task AddFolderAsync(string name, CancellationToken stop) =>
        tar.WriteEntryAsync(new PaxTarEntry(TarEntryType.Directory, name + "/") { Mode = OursAlone | UnixFileMode.UserExecute }, stop);

    /// <summary>Ends with the sums, and returns when all of it is on the disk.</summary>
    public async Task FinishAsync(CancellationToken stop)
    {
        await AddAsync(BackupSum.Name, new Dictionary<string, BackupSum>(sums), stop);
        await tar.DisposeAsync();
        await packed.DisposeAsync();
        file.Flush(flushToDisk: true);
    }

    public async ValueTask DisposeAsync() => await file.DisposeAsync();

    private async Task AddAsync(string name, Stream from, long length, CancellationToken stop)
    {
        await using var measured = new MeasuredStream(from, length);
        await tar.WriteEntryAsync(new PaxTarEntry(TarEntryType.RegularFile, name) { Mode = OursAlone, DataStream = measured }, stop);
        sums[name] = measured.Sum();
    }
}
