using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Foreshore.Guide.Database;

namespace Foreshore.Trials;

/// <summary>
/// Sixteen readers and eight uploads at the limits that compose ships: memory and heap limit are read from docker-compose.yml. The
/// database is a server apart, as there. Nobody may be killed.
/// </summary>
internal static partial class MemoryTrial
{
    private const int Readers = 16;
    private const int Uploads = 8;
    private const int UploadsOfEach = 3;

    /// <summary>Milliseconds at most between two pages of a reader: people, not a load test.</summary>
    private const int LongestLook = 1000;

    public static async Task<bool> RunAsync(Asked asked)
    {
        var compose = await File.ReadAllTextAsync(FindUp("docker-compose.yml"));
        var limit = long.Parse(Limit().Match(compose).Groups[1].Value, CultureInfo.InvariantCulture) << 20;
        var heap = Heap().Match(compose).Groups[1].Value;
        using var group = MemoryGroup.Make(limit);
        if (group is null)
            return false;
        var photos = MadePhotos.All(asked.Seed);
        Console.WriteLine($"limit {limit >> 20} MB, heap limit {heap} (hexadecimal); photos of {string.Join(", ", photos.Select(photo => $"{photo.Length / 1e6:F1} MB"))}");

        await using var cluster = await EmbeddedCluster.StartAsync(new EmbeddedClusterOptions(asked.In("data")));
        await Schema.MigrateAsync(cluster.OwnerConnection, DatabaseRoles.App);
        using (var demo = Process.Start("dotnet", [Path.Combine(AppContext.BaseDirectory, "Foreshore.Guide.dll"), "demo", $"--ConnectionStrings:Guide={cluster.AppConnection}"]))
            await demo.WaitForExitAsync();
        (string, string)[] environment = [("DOTNET_GCHeapHardLimit", heap), ("DOTNET_EnableDiagnostics", "0")];
        await using var site = new SiteProcess(asked.In("data"), asked.In("site.log"), environment, group.Line, cluster.AppConnection);
        using var journal = new Journal(asked.In("journal.txt"));
        site.Start();
        await site.AnswersAsync();
        var pages = await PagesAsync(site);
        using var enough = new CancellationTokenSource();
        var reading = Enumerable.Range(0, Readers).Select(reader => Task.Run(() => ReadAsync(site, pages, reader, asked.Seed, enough.Token))).ToList();
        var watching = WatchAsync(group, enough.Token);
        await Task.Delay(10_000);

        var people = new People(site);
        var since = Stopwatch.StartNew();
        var writers = Enumerable.Range(0, Uploads).Select(number => new Writer(site, people, journal, number, asked.Seed)).ToList();
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(12));
        await Task.WhenAll(writers.Select((writer, number) => Task.Run(() => writer.WriteAsync(patience.Token, photos[number % photos.Count], UploadsOfEach))));
        var took = since.Elapsed;
        await Task.Delay(5_000);
        await enough.CancelAsync();
        var answers = (await Task.WhenAll(reading)).SelectMany(each => each).GroupBy(status => status).OrderBy(each => each.Key).Select(each => $"{each.Count()} × {each.Key}");
        var most = await watching;
        var verified = await Verified.ReadAsync(people.Connection, journal);
        var killed = group.Killed;
        Console.WriteLine($"pages: {string.Join(", ", answers)}; photos: {journal.Acknowledged.Count} kept, {journal.Refused} not, in {took.TotalSeconds:F0} s, answers {string.Join(' ', writers.SelectMany(writer => writer.Answers).Distinct().Order())}");
        Console.WriteLine($"memory: {most >> 20} MB at most that cannot be given back, {group.Most >> 20} MB with files; {killed} killed; site {(site.HasEnded ? "ENDED" : "lives")}; {verified}");
        await site.DisposeAsync();
        return killed == 0 && verified.IsWhole && journal.Acknowledged.Count == Uploads * UploadsOfEach;
    }

    private static async Task<long> WatchAsync(MemoryGroup group, CancellationToken enough)
    {
        var most = 0L;
        while (!enough.IsCancellationRequested)
        {
            most = Math.Max(most, group.Now);
            await Task.Delay(50, CancellationToken.None);
        }

        return most;
    }

    private static async Task<List<int>> ReadAsync(SiteProcess site, IReadOnlyList<string> pages, int number, int seed, CancellationToken enough)
    {
        var random = new Random(seed * 100 + number);
        using var reader = new HttpClient { BaseAddress = site.Address, Timeout = TimeSpan.FromMinutes(2) };
        reader.DefaultRequestHeaders.Add("X-Forwarded-For", $"198.51.100.{number + 1}");
        List<int> answers = [];
        while (!enough.IsCancellationRequested)
        {
            try
            {
                using var answer = await reader.GetAsync(pages[random.Next(pages.Count)], CancellationToken.None);
                answers.Add((int)answer.StatusCode);
                await Task.Delay(random.Next(LongestLook), CancellationToken.None);
            }
            catch (HttpRequestException)
            {
                answers.Add(0);
            }
        }

        return answers;
    }

    private static async Task<IReadOnlyList<string>> PagesAsync(SiteProcess site)
    {
        using var reader = new HttpClient { BaseAddress = site.Address };
        var places = Links(await reader.GetStringAsync("/"));
        var below = new List<string>();
        foreach (var place in places)
            below.AddRange(Links(await reader.GetStringAsync(place)));
        return [.. places.Concat(below).Append("/").Append("/weekend").Distinct()];

        static IEnumerable<string> Links(string page) => Link().Matches(page).Select(link => link.Groups[1].Value).Distinct();
    }

    private static string FindUp(string name)
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, name)))
                return Path.Combine(at.FullName, name);
        }

        throw new FileNotFoundException($"{name} was not found above {AppContext.BaseDirectory}.");
    }

    [GeneratedRegex(@"mem_limit: (\d+)m")]
    private static partial Regex Limit();

    [GeneratedRegex("DOTNET_GCHeapHardLimit: \"?([0-9A-Fa-f]+)\"?")]
    private static partial Regex Heap();

    [GeneratedRegex("href=\"(/coast/[a-z0-9/-]+)\"")]
    private static partial Regex Link();
}
