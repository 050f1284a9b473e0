using Foreshore.Guide.Hosting;
using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>Which programs run the embedded database, and what is copied of them.</summary>
public class PostgresBinariesTests
{
    private const long MoreThanIsCopied = 600L << 20;

    [Fact]
    public async Task A_folder_without_postgresql_is_refused_before_anything_is_done_with_it()
    {
        await using var folder = new DataFolder();

        var refusal = await Assert.ThrowsAsync<SettingException>(() => StartAsync(folder, "/usr"));

        Assert.Contains("Database:Binaries", refusal.What, StringComparison.Ordinal);
        Assert.Contains("postgres and initdb", refusal.What, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(Path.Combine(folder.Path, "postgres")));
    }

    [Fact]
    public async Task A_folder_with_half_of_it_is_refused_and_what_is_missing_is_named()
    {
        await using var folder = new DataFolder();
        var half = Directory.CreateDirectory(Path.Combine(folder.Path, "half")).FullName;
        await File.WriteAllTextAsync(Path.Combine(half, "postgres"), "");

        var refusal = await Assert.ThrowsAsync<SettingException>(() => StartAsync(folder, half));

        Assert.Contains("initdb and pg_ctl are not there", refusal.What, StringComparison.Ordinal);
    }

    /// <summary>Root lends the server another account; anybody else needs no copy.</summary>
    [Fact]
    public async Task What_is_too_large_for_a_copy_is_left_where_it_is_and_said()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows(), "Only root needs a copy.");
        await using var folder = new DataFolder();
        var closed = Path.Combine(folder.Path, "closed");
        var programs = Directory.CreateDirectory(Path.Combine(closed, "bin")).FullName;
        foreach (var name in new[] { "postgres", "initdb", "pg_ctl" })
            await File.WriteAllTextAsync(Path.Combine(programs, name), "");
        await using (var large = File.Create(Path.Combine(Directory.CreateDirectory(Path.Combine(closed, "lib")).FullName, "large")))
            large.SetLength(MoreThanIsCopied);
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(closed, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        var refusal = await Assert.ThrowsAsync<EmbeddedClusterException>(() => StartAsync(folder, programs));

        Assert.Contains("it is not copied", refusal.What, StringComparison.Ordinal);
        Assert.Empty(Directory.GetDirectories(Path.Combine(folder.Path, "postgres"), "binaries-*"));
    }

    /// <summary>What lies beside the programs is none of ours.</summary>
    [Fact(Timeout = 120_000)]
    public async Task A_copy_holds_programs_libraries_and_share_alone()
    {
        Assert.SkipUnless(Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows(), "Only root needs a copy.");
        await using var folder = new DataFolder();
        string inUse;
        await using (var plain = await folder.StartAsync())
            inUse = Path.GetDirectoryName(plain.ProgramDirectory)!;
        var closed = Directory.CreateDirectory(Path.Combine(folder.Path, "closed")).FullName;
        // Under the name it has in its package, which tells its links by it.
        var native = Path.Combine(closed, "native");
        using (var copy = System.Diagnostics.Process.Start("cp", ["-R", inUse, native]))
            await copy.WaitForExitAsync(TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Path.Combine(Directory.CreateDirectory(Path.Combine(native, "photos")).FullName, "of-ours"), "");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(closed, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);

        await using var cluster = await StartAsync(folder, Path.Combine(native, "bin"));

        var made = Assert.Single(Directory.GetDirectories(Path.Combine(folder.Path, "postgres"), "binaries-*"));
        Assert.StartsWith(made, cluster.ProgramDirectory, StringComparison.Ordinal);
        Assert.All(Directory.GetDirectories(made), part => Assert.Contains(Path.GetFileName(part), new[] { "bin", "lib", "share" }));
        Assert.Equal("1", await EmbeddedClusterTests.AskAsync(cluster.AppConnection, "SELECT 1"));
    }

    private static Task<EmbeddedCluster> StartAsync(DataFolder folder, string binaries) =>
        EmbeddedCluster.StartAsync(new EmbeddedClusterOptions(folder.Path, binaries, IsDurable: false), TestContext.Current.CancellationToken);
}
