using System.Diagnostics;
using System.Net;

namespace Foreshore.Trials;

/// <summary>The database stopped as by SIGSTOP under readers and writers: every answer within two seconds, and all back when it goes on.</summary>
internal static class FrozenTrial
{
    private const int Times = 5;
    private static readonly TimeSpan AnswerWithin = TimeSpan.FromSeconds(2);
    private static readonly string[] Pages = ["/", "/weekend", "/about", "/coast/halfmoon-light", "/api/v1/locations", "/health"];

    public static async Task<bool> RunAsync(Asked asked)
    {
        await using var site = new SiteProcess(asked.In("data"), asked.In("site.log"));
        using var journal = new Journal(asked.In("journal.txt"));
        site.Start();
        await site.AnswersAsync();
        foreach (var page in Pages)
            await site.AnswersAsync(page);
        var people = new People(site);
        using var enough = new CancellationTokenSource();
        var writers = Enumerable.Range(0, asked.Writers).Select(number => new Writer(site, people, journal, number, asked.Seed)).ToList();
        var writing = writers.Select(writer => Task.Run(() => writer.WriteAsync(enough.Token))).ToList();
        using var reader = new HttpClient { BaseAddress = site.Address, Timeout = TimeSpan.FromMinutes(2) };

        var answers = new List<(string Page, HttpStatusCode Status, TimeSpan After)>();
        var thawed = new List<TimeSpan>();
        for (var time = 0; time < Times; time++)
        {
            await Task.Delay(3000);
            var frozen = SiteProcess.FamilyOf(site.Postmaster);
            await SiteProcess.SignalAsync("-STOP", frozen);
            try
            {
                // At once, when nobody knows yet, and again when it is known.
                for (var round = 0; round < 4; round++)
                    answers.AddRange(await Task.WhenAll(Pages.Select(page => AskAsync(reader, page))));
            }
            finally
            {
                await SiteProcess.SignalAsync("-CONT", frozen);
            }

            thawed.Add(await site.AnswersAsync("/"));
        }

        await enough.CancelAsync();
        await Task.WhenAll(writing);
        var verified = await Verified.ReadAsync(people.Connection, journal);
        foreach (var page in answers.GroupBy(answer => answer.Page))
            Console.WriteLine($"{page.Key}: {string.Join(' ', page.Select(answer => (int)answer.Status).Distinct())}, {page.Max(answer => answer.After).TotalSeconds:F2} s at most");
        Console.WriteLine($"back after {thawed.Max(after => after.TotalSeconds):F1} s at most; {verified}; longest answer to a writer {writers.Max(writer => writer.Longest).TotalSeconds:F1} s");
        return verified.IsWhole && answers.TrueForAll(answer => answer.After <= AnswerWithin
            && answer.Status == (answer.Page == "/about" ? HttpStatusCode.OK : HttpStatusCode.ServiceUnavailable));
    }

    private static async Task<(string Page, HttpStatusCode Status, TimeSpan After)> AskAsync(HttpClient reader, string page)
    {
        var since = Stopwatch.StartNew();
        using var answer = await reader.GetAsync(page);
        return (page, answer.StatusCode, since.Elapsed);
    }
}
