using System.Collections.Concurrent;

namespace Foreshore.Trials;

/// <summary>What the site acknowledged, one line each, written outside what is tried and on the disk before the next is asked for.</summary>
internal sealed class Journal(string file) : IDisposable
{
    private readonly StreamWriter writer = new(new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.Read)) { AutoFlush = true };
    private readonly Lock writing = new();
    private readonly ConcurrentDictionary<Guid, string> acknowledged = new();
    private int refused;

    public int Refused => refused;

    public IReadOnlyDictionary<Guid, string> Acknowledged => acknowledged;

    public void Keep(Guid draft, string text)
    {
        lock (writing)
            writer.WriteLine($"{draft} {text}");
        acknowledged[draft] = text;
    }

    /// <summary>Not said to be kept: it may be there or not.</summary>
    public void Refuse() => Interlocked.Increment(ref refused);

    public void Dispose() => writer.Dispose();
}
