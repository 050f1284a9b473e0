using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>A data folder of one test's own; whatever still runs in it is stopped with it.</summary>
internal sealed class DataFolder(string name = "data") : IAsyncDisposable
{
    private readonly string parent = Directory.CreateTempSubdirectory("foreshore-").FullName;

    public string Path
    {
        get
        {
            // Temporary folders are closed to others, and the server runs as somebody else when the tests run as root.
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(parent, (UnixFileMode)0b111_101_101);
            return System.IO.Path.Combine(parent, name);
        }
    }

    public EmbeddedClusterOptions Options => new(Path, IsDurable: false);

    public Task<EmbeddedCluster> StartAsync() => EmbeddedCluster.StartAsync(Options, TestContext.Current.CancellationToken);

    public string Cluster => Directory.GetDirectories(System.IO.Path.Combine(Path, "postgres"))
        .Single(folder => File.Exists(System.IO.Path.Combine(folder, "PG_VERSION")));

    public int Postmaster => int.Parse(
        File.ReadLines(System.IO.Path.Combine(Cluster, "postmaster.pid")).First(), System.Globalization.CultureInfo.InvariantCulture);

    public async ValueTask DisposeAsync()
    {
        if (Directory.Exists(Path))
            await EmbeddedCluster.RemoveAsync(Options);
        Directory.Delete(parent, recursive: true);
    }
}
