using System.Collections.Concurrent;
using Microsoft.Extensions.Caching.Memory;
using Microsoft.Extensions.Internal;
using NodaTime;

namespace Foreshore.Guide.Keeping;

/// <summary>
/// Computed values that may be lost at any time, bounded by the bytes they take: when room is needed, those used longest ago
/// go first. However many ask for a key at once, it is computed once.
/// </summary>
public sealed class Kept : IDisposable
{
    /// <summary>A value larger than this share of the whole would push out too much else.</summary>
    private const int LargestShare = 8;

    private const double RoomMade = 0.1;

    /// <summary>Keys carry versions and dates, so what nobody has asked for since yesterday is mostly out of date.</summary>
    private static readonly TimeSpan Unused = TimeSpan.FromHours(30);

    private readonly MemoryCache cache;
    private readonly ComputeTurns turns;
    private readonly ConcurrentDictionary<object, Lazy<object>> running = new();
    private readonly Lock making = new();

    public Kept(IClock clock, ComputeTurns turns, long? mostBytes = null)
    {
        this.turns = turns;
        MostBytes = mostBytes ?? Usual;
        cache = new MemoryCache(new MemoryCacheOptions { SizeLimit = MostBytes, TrackStatistics = true, Clock = new Hands(clock) });
    }

    /// <summary>A sixth of what the process may take, between 32 and 192 megabytes.</summary>
    public static long Usual => Math.Clamp(GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 6, 32L << 20, 192L << 20);

    public long MostBytes { get; }

    /// <summary>What the kept values take, as their makers reckon it.</summary>
    public long Bytes => cache.GetCurrentStatistics()!.CurrentEstimatedSize!.Value;

    /// <summary>The value of a key: kept, or computed here and now. For parts of a computation that has its turn, and for what takes a few milliseconds.</summary>
    /// <param name="key">Everything the value is made from; of a type of its own for each kind of value.</param>
    /// <param name="compute">Makes it; asks for other keys only where these never ask for this one.</param>
    /// <param name="bytes">What the value takes in memory, roughly.</param>
    public TValue Get<TValue>(object key, Func<TValue> compute, Func<TValue, long> bytes)
        where TValue : class
    {
        if (cache.TryGetValue(key, out var held))
            return (TValue)held!;
        var mine = running.GetOrAdd(key, _ => new Lazy<object>(() => Make(key, compute, bytes)));
        try
        {
            return (TValue)mine.Value;
        }
        finally
        {
            running.TryRemove(new(key, mine));
        }
    }

    /// <summary>The same for what takes longer: whoever has to compute waits for a turn first, without holding a thread.</summary>
    public async ValueTask<TValue> GetAsync<TValue>(object key, Func<TValue> compute, Func<TValue, long> bytes, CancellationToken cancel)
        where TValue : class
    {
        if (cache.TryGetValue(key, out var held))
            return (TValue)held!;
        // The turn comes before the key is taken: whoever computes a key is running, so nobody waits for one who waits.
        using var turn = await turns.TakeAsync(cancel);
        return Get(key, compute, bytes);
    }

    /// <summary>Waits for a turn and computes what is not kept.</summary>
    public async ValueTask<TValue> AloneAsync<TValue>(Func<TValue> compute, CancellationToken cancel)
    {
        using var turn = await turns.TakeAsync(cancel);
        return compute();
    }

    public void Dispose() => cache.Dispose();

    private object Make<TValue>(object key, Func<TValue> compute, Func<TValue, long> bytes)
        where TValue : class
    {
        // It may have been finished between the look and the taking of the key.
        if (cache.TryGetValue(key, out var held))
            return held!;
        var value = compute();
        var size = bytes(value);
        if (size <= MostBytes / LargestShare)
            lock (making)
            {
                MakeRoom(size);
                cache.Set(key, value, new MemoryCacheEntryOptions { Size = size, SlidingExpiration = Unused });
            }
        return value;
    }

    /// <summary>The cache itself turns away what has no room, and makes room later: the newest would be the one that is lost.</summary>
    private void MakeRoom(long size)
    {
        while (cache.Count > 0 && Bytes + size > MostBytes)
            cache.Compact(Math.Max(RoomMade, 1.0 / cache.Count));
    }

    private sealed class Hands(IClock clock) : ISystemClock
    {
        public DateTimeOffset UtcNow => clock.GetCurrentInstant().ToDateTimeOffset();
    }
}
