using System.Diagnostics;
using System.Net;

namespace Foreshore.Trials;

/// <summary>The disk of the data full under writers: said as such, reading goes on where it can, and nothing acknowledged is missing when there is room again.</summary>
internal static class DiskTrial
{
    private const string Room = "320m";
    private static readonly TimeSpan BackWithin = TimeSpan.FromSeconds(45);

    public static async Task<bool> RunAsync(Asked asked)
    {
        var disk = Directory.CreateDirectory(asked.In("disk")).FullName;
        await ProgramAsync("mount", "-t", "tmpfs", "-o", $"size={Room},mode=0755", "tmpfs", disk);
        try
        {
            return await FillAsync(asked, disk);
        }
        finally
        {
            await ProgramAsync("umount", disk);
        }
    }

    private static async Task<bool> FillAsync(Asked asked, string disk)
    {
        await using var site = new SiteProcess(Path.Combine(disk, "data"), asked.In("site.log"));
        using var journal = new Journal(asked.In("journal.txt"));
        site.Start();
        await site.AnswersAsync();
        var people = new People(site);
        using var enough = new CancellationTokenSource();
        var writers = Enumerable.Range(0, asked.Writers).Select(number => new Writer(site, people, journal, number, asked.Seed)).ToList();
        var writing = writers.Select(writer => Task.Run(() => writer.WriteAsync(enough.Token))).ToList();
        // Everybody is signed in and has a draft first: what is tried is writing, not signing in.
        while (journal.Acknowledged.Count < 3 * asked.Writers)
            await Task.Delay(100);

        var before = journal.Acknowledged.Count;
        var filler = Path.Combine(disk, "filler");
        await Fill(filler);
        Console.WriteLine($"full after {before} acknowledged");
        await Task.Delay(15_000);
        var whileFull = journal.Acknowledged.Count - before;
        using var reader = new HttpClient { BaseAddress = site.Address, Timeout = TimeSpan.FromSeconds(30) };
        using var page = await reader.GetAsync("/");
        Console.WriteLine($"while full: {whileFull} more acknowledged, / answers {(int)page.StatusCode}; answers to writers {string.Join(' ', writers.SelectMany(writer => writer.Answers).Distinct().Order())}");

        File.Delete(filler);
        var back = await site.AnswersAsync();
        var after = journal.Acknowledged.Count;
        for (var wait = 0; wait < 300 && journal.Acknowledged.Count == after; wait++)
            await Task.Delay(100);
        await Task.Delay(5000);
        var again = journal.Acknowledged.Count - after;
        await enough.CancelAsync();
        await Task.WhenAll(writing);
        var verified = await Verified.ReadAsync(people.Connection, journal);
        Console.WriteLine($"room again: back after {back.TotalSeconds:F1} s, {again} acknowledged soon after; {verified}");
        return verified.IsWhole && !site.HasEnded && again > 0 && back <= BackWithin && page.StatusCode is HttpStatusCode.OK or HttpStatusCode.ServiceUnavailable;
    }

    /// <summary>Byte by byte at the end, so that nothing is left.</summary>
    private static async Task Fill(string file)
    {
        foreach (var size in new[] { 1 << 20, 4096, 1 })
        {
            try
            {
                await using var filler = new FileStream(file, FileMode.Append, FileAccess.Write, FileShare.Read, bufferSize: 0);
                var part = new byte[size];
                while (true)
                    await filler.WriteAsync(part);
            }
            catch (IOException)
            {
                // Full at this grain.
            }
        }
    }

    private static async Task ProgramAsync(string program, params string[] line)
    {
        using var running = Process.Start(program, line);
        await running.WaitForExitAsync();
        if (running.ExitCode != 0)
            throw new InvalidOperationException($"{program} ended with {running.ExitCode}: this trial wants root.");
    }
}
