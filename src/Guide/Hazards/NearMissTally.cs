using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Hazards;

/// <summary>What came of a near miss. Only harm, or a way that was cut, closes the spot: telling of the rest must cost nothing.</summary>
public enum NearMissHarm { WaterReachedSomebody, SomebodyFell, WayWasCut, None }

/// <summary>
/// How many near misses each member told of today, so that nobody closes the coast from a chair. A near miss keeps no name, so nothing that
/// counts is written down: a keyed hash of the member in this process's memory alone, its key drawn anew each day. No disk and no backup
/// holds either; a restart forgets both, and each node counts by itself.
/// </summary>
public sealed class NearMissTally(IClock clock)
{
    public const int MostADay = 2;

    private readonly Lock turn = new();
    private readonly Dictionary<string, int> counts = [];
    private byte[] key = [];
    private LocalDate day;

    /// <summary>Counts one more, unless two are counted already.</summary>
    public bool TryCount(Guid member)
    {
        lock (turn)
        {
            Forget();
            var hash = Hash(member);
            return counts.GetValueOrDefault(hash) < MostADay && (counts[hash] = counts.GetValueOrDefault(hash) + 1) > 0;
        }
    }

    /// <summary>It was not stored after all.</summary>
    public void TakeBack(Guid member)
    {
        lock (turn)
            if (counts.GetValueOrDefault(Hash(member)) is var count and > 0)
                counts[Hash(member)] = count - 1;
    }

    /// <summary>Drops what is not of today; the number of tallies left.</summary>
    public int Forget()
    {
        lock (turn)
        {
            if (clock.GetCurrentInstant().InUtc().Date is var today && today != day)
            {
                counts.Clear();
                (key, day) = (RandomNumberGenerator.GetBytes(32), today);
            }
            return counts.Count;
        }
    }

    private string Hash(Guid member) => Convert.ToHexString(HMACSHA256.HashData(key, member.ToByteArray()));
}

/// <summary>
/// Looks every hour whether a day is over: drops its tallies, and writes its near misses once more, all together. The order of
/// transactions would otherwise tell for ever beside which sign-in each was stored.
/// </summary>
internal sealed partial class NearMissForgetting(NearMissTally tally, IDbContextFactory<GuideDb> database, IClock clock, TimeProvider time, ILogger<NearMissForgetting> log) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromHours(1);

    private LocalDate? done;

    internal async Task ForgetAsync(CancellationToken cancel)
    {
        tally.Forget();
        var today = clock.GetCurrentInstant().InUtc().Date;
        if (done == today)
            return;
        // Days at the place may run ahead of those on UTC or behind them.
        var (first, last) = (today.PlusDays(-3), today.PlusDays(-1));
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.Database.CreateExecutionStrategy().ExecuteAsync(async () =>
        {
            await using var one = await db.Database.BeginTransactionAsync(cancel);
            await db.Closures.Where(c => c.IsNearMiss && c.From >= first && c.From <= last).ExecuteUpdateAsync(c => c.SetProperty(each => each.IsNearMiss, true), cancel);
            await db.HazardNotes.Where(n => n.IsNearMiss && n.From >= first && n.From <= last).ExecuteUpdateAsync(n => n.SetProperty(each => each.IsNearMiss, true), cancel);
            await one.CommitAsync(cancel);
        });
        done = today;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await ForgetAsync(stoppingToken);
            }
            catch (Exception fault) when (fault is Npgsql.NpgsqlException or DbUpdateException or InvalidOperationException or TimeoutException)
            {
                LogFault(fault);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Near misses of yesterday were not written together. The next hour tries again.")]
    private partial void LogFault(Exception fault);
}
