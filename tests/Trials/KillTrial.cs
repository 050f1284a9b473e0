using System.Diagnostics;

namespace Foreshore.Trials;

/// <summary>The site killed, then its database, again and again at moments nobody chose, while members write. Nothing acknowledged may be missing.</summary>
internal static class KillTrial
{
    private static readonly TimeSpan BackWithin = TimeSpan.FromSeconds(15);

    public static async Task<bool> RunAsync(Asked asked)
    {
        var random = new Random(asked.Seed);
        await using var site = new SiteProcess(asked.In("data"), asked.In("site.log"));
        using var journal = new Journal(asked.In("journal.txt"));
        site.Start();
        await site.AnswersAsync();
        var people = new People(site);
        using var enough = new CancellationTokenSource();
        var writers = Enumerable.Range(0, asked.Writers).Select(number => new Writer(site, people, journal, number, asked.Seed)).ToList();
        var writing = writers.Select(writer => Task.Run(() => writer.WriteAsync(enough.Token))).ToList();

        var back = new List<(string What, TimeSpan After)>();
        for (var kill = 0; kill < asked.Site; kill++)
        {
            await WrittenAsync(journal, random);
            await site.KillAsync();
            site.Start();
            back.Add(("site", await site.AnswersAsync()));
            Console.WriteLine($"site {kill + 1}: back after {back[^1].After.TotalSeconds:F1} s; {journal.Acknowledged.Count} acknowledged");
        }

        for (var kill = 0; kill < asked.Database; kill++)
        {
            await WrittenAsync(journal, random);
            using (var postmaster = Process.GetProcessById(site.Postmaster))
            {
                postmaster.Kill();
                await postmaster.WaitForExitAsync();
            }

            back.Add(("database", await site.AnswersAsync("/")));
            Console.WriteLine($"database {kill + 1}: back after {back[^1].After.TotalSeconds:F1} s; {journal.Acknowledged.Count} acknowledged");
        }

        await WrittenAsync(journal, random);
        await enough.CancelAsync();
        await Task.WhenAll(writing);
        var verified = await Verified.ReadAsync(people.Connection, journal);
        foreach (var group in back.GroupBy(each => each.What))
            Console.WriteLine($"{group.Key}: {group.Count()} kills, back after {Median(group):F1} s (median), {group.Max(each => each.After).TotalSeconds:F1} s at most");
        Console.WriteLine($"{verified}; {journal.Refused} posts not acknowledged; answers {string.Join(' ', writers.SelectMany(writer => writer.Answers).Distinct().Order())}");
        return verified.IsWhole && !site.HasEnded && back.TrueForAll(each => each.After <= BackWithin);
    }

    /// <summary>Two to four seconds in which somebody gets something acknowledged.</summary>
    private static async Task WrittenAsync(Journal journal, Random random)
    {
        var (before, since) = (journal.Acknowledged.Count, Stopwatch.StartNew());
        await Task.Delay(random.Next(2000, 4000));
        while (journal.Acknowledged.Count == before && since.Elapsed < TimeSpan.FromMinutes(1))
            await Task.Delay(50);
    }

    private static double Median(IEnumerable<(string What, TimeSpan After)> all)
    {
        var sorted = all.Select(each => each.After.TotalSeconds).Order().ToList();
        return sorted[sorted.Count / 2];
    }
}
