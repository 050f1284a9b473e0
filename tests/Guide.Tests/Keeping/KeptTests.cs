using Foreshore.Guide.Support;
using NodaTime;
using NodaTime.Testing;
using Xunit;

namespace Foreshore.Guide.Keeping;

/// <summary>What is kept stays within its bytes, goes by last use, and is computed once.</summary>
public sealed class KeptTests
{
    private const int Each = 100;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void What_was_used_longest_ago_makes_room()
    {
        var clock = new FakeClock(GuideHost.UsualNow);
        using var kept = new Kept(clock, new ComputeTurns(1), 10 * Each);
        var made = new List<int>();
        for (var key = 0; key < 10; key++)
            Ask(key);

        // The oldest is used again, then five more come than there is room for.
        Ask(0);
        for (var key = 10; key < 15; key++)
            Ask(key);
        made.Clear();
        Ask(0);
        Ask(14);
        Assert.Empty(made);
        Ask(1);

        Assert.Equal([1], made);

        void Ask(int key)
        {
            clock.AdvanceSeconds(1);
            kept.Get(key, () => Make(key), _ => Each);
            Assert.InRange(kept.Bytes, 0, kept.MostBytes);
        }

        object Make(int key)
        {
            made.Add(key);
            return new object();
        }
    }

    [Fact]
    public void What_nobody_asks_for_goes_and_what_is_too_large_is_not_kept()
    {
        var clock = new FakeClock(GuideHost.UsualNow);
        using var kept = new Kept(clock, new ComputeTurns(1), 10 * Each);
        var first = kept.Get("small", () => new object(), _ => Each);
        var large = kept.Get("large", () => new object(), _ => 5 * Each);

        Assert.NotSame(large, kept.Get("large", () => new object(), _ => 5 * Each));
        clock.Advance(Duration.FromHours(20));
        Assert.Same(first, kept.Get("small", () => new object(), _ => Each));
        clock.Advance(Duration.FromHours(31));
        Assert.NotSame(first, kept.Get("small", () => new object(), _ => Each));
    }

    [Fact]
    public void Many_who_ask_at_once_have_it_computed_once()
    {
        using var kept = Shelf.Empty();
        using var everybody = new CountdownEvent(8);
        var (computed, answers) = (0, new object[8]);
        var threads = Enumerable.Range(0, answers.Length).Select(i => new Thread(() =>
        {
            everybody.Signal();
            everybody.Wait();
            answers[i] = kept.Get("key", () => Interlocked.Increment(ref computed) > 0 ? new object() : null!, _ => Each);
        })).ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());

        Assert.Equal(1, computed);
        Assert.Single(answers.Distinct());
    }

    [Fact]
    public void A_fault_is_not_kept()
    {
        using var kept = Shelf.Empty();

        Assert.Throws<InvalidOperationException>(() => kept.Get<object>("key", () => throw new InvalidOperationException(), _ => Each));
        Assert.Equal("found", kept.Get("key", () => "found", _ => Each));
    }

    [Fact]
    public async Task Long_computations_take_turns_and_what_is_kept_needs_none()
    {
        using var turns = new ComputeTurns(1);
        using var kept = new Kept(new FakeClock(GuideHost.UsualNow), turns, 1 << 20);
        await kept.GetAsync("kept", () => "kept", _ => Each, Cancel);

        using var leaving = new CancellationTokenSource();
        var turn = await turns.TakeAsync(Cancel);
        var waiting = kept.GetAsync("next", () => "next", _ => Each, Cancel).AsTask();
        var left = kept.GetAsync("left", () => "left", _ => Each, leaving.Token).AsTask();
        var held = kept.GetAsync("kept", () => "new", _ => Each, Cancel).AsTask();
        Assert.True(held.IsCompletedSuccessfully);
        Assert.Equal("kept", await held);
        Assert.False(waiting.IsCompleted);

        await leaving.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => left);
        turn.Dispose();
        turn.Dispose();
        Assert.Equal("next", await waiting);

        // Given back twice it would let two in at once.
        using var first = await turns.TakeAsync(Cancel);
        Assert.False(turns.TakeAsync(Cancel).AsTask().IsCompleted);
    }
}
