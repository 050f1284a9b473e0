using Xunit;

namespace Foreshore.Guide.Photos;

public class PhotoQueueTests
{
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(1);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Two queues stand for two processes: what they share is the file alone.</summary>
    [Fact]
    public async Task Two_processes_of_one_account_take_turns()
    {
        using PhotoQueue one = new(), other = new();
        var inside = 0;
        var most = 0;

        await Task.WhenAll(Enumerable.Range(0, 20).Select(number => Task.Run(async () =>
        {
            using var turn = await (number % 2 == 0 ? one : other).EnterAsync(Long, Stop);
            Assert.NotNull(turn);
            most = Math.Max(most, Interlocked.Increment(ref inside));
            await Task.Yield();
            Interlocked.Decrement(ref inside);
        })));

        Assert.Equal(1, most);
    }

    [Fact]
    public async Task Whoever_waits_too_long_is_told_and_the_next_gets_in()
    {
        using PhotoQueue one = new(), other = new();
        using (await one.EnterAsync(Long, Stop))
        {
            Assert.Null(await one.EnterAsync(TimeSpan.FromMilliseconds(1), Stop));
            Assert.Null(await other.EnterAsync(TimeSpan.FromMilliseconds(1), Stop));
        }

        using var turn = await other.EnterAsync(Long, Stop);
        Assert.NotNull(turn);
    }
}
