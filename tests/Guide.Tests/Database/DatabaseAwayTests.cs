using System.Diagnostics;
using System.Globalization;
using System.Net;
using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>The site in a process of its own, its embedded database killed or frozen under it.</summary>
public class DatabaseAwayTests
{
    private const int AtMost = 120_000;
    private static readonly TimeSpan BackWithin = TimeSpan.FromSeconds(15);
    private static readonly TimeSpan AnswerWithin = TimeSpan.FromSeconds(2);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact(Timeout = AtMost)]
    public async Task A_database_that_was_killed_comes_back_by_itself_each_time_and_the_log_says_so()
    {
        await using var folder = new DataFolder();
        await using var site = Serve(folder);
        using var reader = new HttpClient { BaseAddress = await site.ServingAsync() };
        Assert.Equal(HttpStatusCode.OK, (await reader.GetAsync("/", Stop)).StatusCode);

        for (var kill = 0; kill < 2; kill++)
        {
            var former = folder.Postmaster;
            var since = Stopwatch.StartNew();
            using (var postmaster = Process.GetProcessById(former))
                postmaster.Kill();

            await site.SaysAsync("Starting it again");
            await site.SaysAsync("answers again");

            Assert.InRange(since.Elapsed, TimeSpan.Zero, BackWithin);
            Assert.NotEqual(former, folder.Postmaster);
            Assert.Equal(HttpStatusCode.OK, (await reader.GetAsync("/", Stop)).StatusCode);
            Assert.Equal(HttpStatusCode.OK, (await reader.GetAsync("/health", Stop)).StatusCode);
        }

        await site.InterruptAsync();
        Assert.Equal(0, (await site.EndAsync()).ExitCode);
        Assert.False(File.Exists(Path.Combine(folder.Cluster, "postmaster.pid")));
    }

    [Fact(Timeout = AtMost)]
    public async Task With_a_frozen_database_every_page_says_so_within_two_seconds_and_comes_back_when_it_thaws()
    {
        await using var folder = new DataFolder();
        await using var site = Serve(folder);
        using var reader = new HttpClient { BaseAddress = await site.ServingAsync() };
        Assert.Equal(HttpStatusCode.OK, (await reader.GetAsync("/", Stop)).StatusCode);

        var frozen = ServerOf(folder.Postmaster);
        Signal("-STOP", frozen);
        try
        {
            // The first ones are under way before anybody knows: both begin at once.
            var early = await Task.WhenAll(AskAsync(reader, "/"), AskAsync(reader, "/weekend"), AskAsync(reader, "/health"));
            Assert.All(early, answer => Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.Status));
            Assert.All(early, answer => Assert.InRange(answer.After, TimeSpan.Zero, AnswerWithin));
            await site.SaysAsync("The database is silent");
            Assert.Contains("The guide is not ready", early[0].Text, StringComparison.Ordinal);

            foreach (var address in new[] { "/", "/coast/nowhere", "/sign-in", "/api/v1/locations", "/health" })
            {
                var answer = await AskAsync(reader, address);
                Assert.InRange(answer.After, TimeSpan.Zero, AnswerWithin);
                Assert.True(answer.Status == HttpStatusCode.ServiceUnavailable || address == "/sign-in", $"{address}: {answer.Status}");
            }

            var about = await AskAsync(reader, "/about");
            Assert.Equal(HttpStatusCode.OK, about.Status);
            Assert.InRange(about.After, TimeSpan.Zero, AnswerWithin);
        }
        finally
        {
            Signal("-CONT", frozen);
        }

        await site.SaysAsync("answers again");
        Assert.Equal(HttpStatusCode.OK, (await reader.GetAsync("/", Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await reader.GetAsync("/health", Stop)).StatusCode);
    }

    private static async Task<(HttpStatusCode Status, TimeSpan After, string Text)> AskAsync(HttpClient reader, string address)
    {
        var since = Stopwatch.StartNew();
        using var answer = await reader.GetAsync(address, Stop);
        return (answer.StatusCode, since.Elapsed, await answer.Content.ReadAsStringAsync(Stop));
    }

    /// <summary>The server's first process and all that it started.</summary>
    private static List<int> ServerOf(int postmaster) =>
    [
        postmaster,
        .. Directory.GetDirectories("/proc").Select(Path.GetFileName).Where(name => int.TryParse(name, CultureInfo.InvariantCulture, out _))
            .Where(name => ParentOf(name!) == postmaster).Select(name => int.Parse(name!, CultureInfo.InvariantCulture)),
    ];

    private static int ParentOf(string process)
    {
        try
        {
            var state = File.ReadAllText($"/proc/{process}/stat");
            return int.Parse(state[(state.LastIndexOf(')') + 2)..].Split(' ')[1], CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return 0;
        }
    }

    private static void Signal(string signal, IEnumerable<int> processes)
    {
        using var kill = Process.Start("kill", [signal, .. processes.Select(process => process.ToString(CultureInfo.InvariantCulture))]);
        kill.WaitForExit();
    }

    private static GuideProcess Serve(DataFolder folder) =>
        GuideProcess.Start("serve", $"--Database:Directory={folder.Path}", "--urls=http://127.0.0.1:0", "--Demo:Load=false");
}
