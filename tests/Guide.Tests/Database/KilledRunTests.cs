using System.Diagnostics;
using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>The program in a process of its own: stopped, killed, started again.</summary>
public class KilledRunTests
{
    private const int AtMost = 120_000;

    [Fact(Timeout = AtMost)]
    public async Task Ctrl_C_stops_the_site_and_its_database()
    {
        await using var folder = new DataFolder();
        await using var site = Serve(folder);
        var address = await site.ServingAsync();
        await using var healthy = GuideProcess.Start("healthy", $"--urls={address}");
        Assert.Equal(0, (await healthy.EndAsync()).ExitCode);
        var postmaster = folder.Postmaster;

        await site.InterruptAsync();

        Assert.Equal(0, (await site.EndAsync()).ExitCode);
        Assert.False(IsAlive(postmaster));
        Assert.False(File.Exists(Path.Combine(folder.Cluster, "postmaster.pid")));
        await using var unwell = GuideProcess.Start("healthy", $"--urls={address}");
        Assert.Equal(1, (await unwell.EndAsync()).ExitCode);
    }

    [Fact(Timeout = AtMost)]
    public async Task A_database_that_outlived_its_site_is_taken_over()
    {
        await using var folder = new DataFolder();
        await using (var site = Serve(folder))
        {
            await site.ServingAsync();
            await site.KillAsync();
        }

        var postmaster = folder.Postmaster;
        Assert.True(IsAlive(postmaster));
        await using var next = await folder.StartAsync();

        Assert.True(next.WasRunning);
        Assert.Equal(postmaster, folder.Postmaster);
        Assert.Equal("1", await EmbeddedClusterTests.AskAsync(next.AppConnection, "SELECT 1"));
    }

    [Fact(Timeout = AtMost)]
    public async Task After_both_were_killed_the_next_run_recovers()
    {
        await using var folder = new DataFolder();
        await using (var site = Serve(folder))
        {
            await site.ServingAsync();
            using var postmaster = Process.GetProcessById(folder.Postmaster);
            postmaster.Kill();
            await site.KillAsync();
        }

        await using var next = await folder.StartAsync();

        Assert.False(next.WasRunning);
        await Schema.RefuseUnlessCurrentAsync(next.AppConnection);
    }

    [Fact(Timeout = AtMost)]
    public async Task Reset_stops_what_runs_and_throws_it_away()
    {
        await using var folder = new DataFolder();
        await using (var site = Serve(folder))
        {
            await site.ServingAsync();
            await site.KillAsync();
        }

        var postmaster = folder.Postmaster;
        await using var reset = GuideProcess.Start("reset", $"--Database:Directory={folder.Path}");

        Assert.Equal(0, (await reset.EndAsync()).ExitCode);
        Assert.False(IsAlive(postmaster));
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "postgres")));
    }

    [Theory(Timeout = AtMost)]
    [InlineData(2, "cannot \"sail\"", "sail")]
    [InlineData(1, "Map:TileUrl", "serve", "--Map:TileUrl=https://tiles.example/no-places.png", "--ConnectionStrings:Guide=unused")]
    [InlineData(1, "ConnectionStrings:Guide", "serve", "--ConnectionStrings:Guide=Host=only")]
    [InlineData(1, "ConnectionStrings:GuideOwner", "migrate", "--ConnectionStrings:Guide=Host=/nowhere;Database=d;Username=u")]
    [InlineData(1, "database does not answer", "serve", "--ConnectionStrings:Guide=Host=/nowhere;Database=d;Username=u")]
    [InlineData(1, "cannot be used", "serve", "--Database:Directory=/dev/null/below")]
    public async Task What_an_operator_gets_wrong_is_said_in_words(int exitCode, string words, params string[] line)
    {
        await using var program = GuideProcess.Start(line);

        var (code, _, errors) = await program.EndAsync();

        Assert.Contains(words, errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
        Assert.Equal(exitCode, code);
    }

    [Fact(Timeout = AtMost)]
    public async Task A_port_in_use_is_said_in_words_and_the_database_is_stopped()
    {
        await using var folder = new DataFolder();
        var taken = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        taken.Start();
        await using var site = GuideProcess.Start("serve", $"--Database:Directory={folder.Path}", $"--urls=http://{taken.LocalEndpoint}", "--Demo:Load=false");

        var (code, output, errors) = await site.EndAsync();

        Assert.Equal(1, code);
        Assert.StartsWith("foreshore: ", errors, StringComparison.Ordinal);
        Assert.Contains("another port", errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", output + errors, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder.Cluster, "postmaster.pid")));
        taken.Dispose();
    }

    [Fact(Timeout = AtMost)]
    public async Task What_nobody_foresaw_is_told_in_one_line_before_its_trace()
    {
        await using var folder = new DataFolder();
        await using var site = GuideProcess.Start("serve", $"--Database:Directory={folder.Path}", "--urls=nonsense", "--Demo:Load=false");

        var (code, output, errors) = await site.EndAsync();

        Assert.Equal(1, code);
        Assert.StartsWith("foreshore: \"serve\" did not succeed: ", errors, StringComparison.Ordinal);
        Assert.Contains("nonsense", errors.Split('\n')[0], StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", output, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder.Cluster, "postmaster.pid")));
    }

    private static GuideProcess Serve(DataFolder folder) =>
        GuideProcess.Start("serve", $"--Database:Directory={folder.Path}", "--urls=http://127.0.0.1:0", "--Demo:Load=false");

    private static bool IsAlive(int process) =>
        File.Exists($"/proc/{process}/status")
        && !File.ReadLines($"/proc/{process}/status").Any(line => line.StartsWith("State:", StringComparison.Ordinal) && line.Contains('Z', StringComparison.Ordinal));
}
