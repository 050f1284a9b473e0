namespace Foreshore.Guide.Photos;

/// <summary>
/// One photo at a time on this machine, whichever process of this account asks: two sites, or two nodes of one, must not take the memory
/// of two photos. Inside the process by a semaphore, so that at most one of its requests asks for the file.
/// </summary>
internal sealed class PhotoQueue : IDisposable
{
    private static readonly TimeSpan BetweenTries = TimeSpan.FromMilliseconds(100);
    private static readonly string LockFile = Path.Combine(Path.GetTempPath(), $"foreshore-photos-{Environment.UserName}.lock");

    private readonly SemaphoreSlim one = new(1);

    /// <summary>Null where nobody left in time; else dispose of it when done.</summary>
    public async Task<IDisposable?> EnterAsync(TimeSpan longest, CancellationToken cancel)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        patience.CancelAfter(longest);
        try
        {
            await one.WaitAsync(patience.Token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return null;
        }

        try
        {
            return new Turn(one, await HoldAsync(patience.Token));
        }
        catch (OperationCanceledException)
        {
            one.Release();
            cancel.ThrowIfCancellationRequested();
            return null;
        }
    }

    public void Dispose() => one.Dispose();

    /// <summary>Null where no file can be made there: then this process keeps its own order.</summary>
    private static async Task<FileStream?> HoldAsync(CancellationToken patience)
    {
        while (true)
        {
            patience.ThrowIfCancellationRequested();
            try
            {
                return new FileStream(LockFile, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(LockFile))
            {
                await Task.Delay(BetweenTries, patience);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                return null;
            }
        }
    }

    private sealed class Turn(SemaphoreSlim one, FileStream? file) : IDisposable
    {
        public void Dispose()
        {
            file?.Dispose();
            one.Release();
        }
    }
}
