namespace Foreshore.Guide.Keeping;

/// <summary>
/// How many long computations run at once. One processor stays free for pages that only look things up, so that many who ask
/// for long ones wait for each other and nobody else waits for them.
/// </summary>
public sealed class ComputeTurns(int? atOnce = null) : IDisposable
{
    private readonly SemaphoreSlim free = new(atOnce ?? Math.Max(1, Environment.ProcessorCount - 1));

    /// <summary>Waits for a turn; disposing it lets the next one in. Whoever holds one takes no second.</summary>
    public async ValueTask<IDisposable> TakeAsync(CancellationToken cancel)
    {
        await free.WaitAsync(cancel);
        return new Turn(free);
    }

    public void Dispose() => free.Dispose();

    private sealed class Turn(SemaphoreSlim free) : IDisposable
    {
        private SemaphoreSlim? held = free;

        public void Dispose() => Interlocked.Exchange(ref held, null)?.Release();
    }
}
