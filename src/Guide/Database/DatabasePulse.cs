using System.Data.Common;
using System.Diagnostics;
using Npgsql;

namespace Foreshore.Guide.Database;

/// <summary>
/// Asks the database again and again whether it answers, on a thread and a connection of its own: a site whose threads are all busy
/// must not take its own slowness for the database's. An ask that gets no answer within <see cref="Patience"/> says that the server is
/// frozen; a refused one, that it is down or restarting.
/// </summary>
public sealed class DatabasePulse(string connectionString) : IHostedService, IDisposable
{
    /// <summary>With the pause between two asks the longest that a page waits for a frozen server: it answers within two seconds.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan BetweenAsks = TimeSpan.FromMilliseconds(400);

    /// <summary>A restart takes about as long; until then each query is tried again, as after any broken connection.</summary>
    private static readonly TimeSpan LongestRestart = TimeSpan.FromSeconds(2);

    private readonly NpgsqlConnectionStringBuilder connection = new(connectionString) { Pooling = false, Timeout = 2, CommandTimeout = 10 };
    private readonly ManualResetEventSlim stopping = new();
    private readonly AutoResetEvent wake = new(false);
    private readonly Lock gate = new();
    private List<TaskCompletionSource<bool>> waiting = [];
    private Thread? thread;
    private long askedAt;
    private long refusedSince;
    private volatile bool wasSilent;

    /// <summary>The one asked; its host is a folder where it is reached by a socket.</summary>
    public NpgsqlConnectionStringBuilder Server => connection;

    /// <summary>Asked, and silent for longer than anybody waits.</summary>
    public bool IsFrozen => Volatile.Read(ref askedAt) is not 0 and var since && Stopwatch.GetElapsedTime(since) > Patience;

    public bool IsAnswering => !IsFrozen && Volatile.Read(ref refusedSince) == 0;

    /// <summary>No page waits any more. Of a silent server, until it has answered again: between two asks it is silent still.</summary>
    public bool IsAway => IsFrozen || wasSilent || (Volatile.Read(ref refusedSince) is not 0 and var since && Stopwatch.GetElapsedTime(since) > LongestRestart);

    /// <summary>The answer to an ask that begins after this call.</summary>
    public async Task<bool> AnswersNowAsync(TimeSpan patience, CancellationToken cancel)
    {
        var answer = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (gate)
            waiting.Add(answer);
        wake.Set();
        try
        {
            return await answer.Task.WaitAsync(patience, cancel);
        }
        catch (TimeoutException)
        {
            return false;
        }
    }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        thread = new Thread(AskOn) { IsBackground = true, Name = "database pulse" };
        thread.Start();
        return Task.CompletedTask;
    }

    /// <summary>Not waited for: with a frozen server the thread hangs in its ask, and ends with the process.</summary>
    public Task StopAsync(CancellationToken cancellationToken)
    {
        stopping.Set();
        wake.Set();
        return Task.CompletedTask;
    }

    public void Dispose() => stopping.Set();

    private void AskOn()
    {
        NpgsqlConnection? open = null;
        var hasAnswered = false;
        while (!stopping.IsSet)
        {
            List<TaskCompletionSource<bool>> asking;
            lock (gate)
                (asking, waiting) = (waiting, []);
            // The first ask brings much of the driver into memory: the start itself has just found the database there.
            if (hasAnswered)
                Volatile.Write(ref askedAt, Stopwatch.GetTimestamp());
            // A connection from before a restart of the server fails once; a new one decides.
            var answers = (open is not null && Answers(open)) || Answers(Renew(ref open));
            hasAnswered |= answers;
            wasSilent = !answers && (wasSilent || IsFrozen);
            if (answers)
                Volatile.Write(ref refusedSince, 0);
            else if (Volatile.Read(ref refusedSince) == 0)
                Volatile.Write(ref refusedSince, Stopwatch.GetTimestamp());
            Volatile.Write(ref askedAt, 0);
            asking.ForEach(each => each.TrySetResult(answers));
            wake.WaitOne(BetweenAsks);
        }

        open?.Dispose();
    }

    private NpgsqlConnection Renew(ref NpgsqlConnection? open)
    {
        open?.Dispose();
        return open = new NpgsqlConnection(connection.ConnectionString);
    }

    private static bool Answers(NpgsqlConnection server)
    {
        try
        {
            if (server.State != System.Data.ConnectionState.Open)
                server.Open();
            using var question = new NpgsqlCommand("SELECT 1", server);
            question.ExecuteScalar();
            return true;
        }
        catch (Exception fault) when (fault is DbException or TimeoutException or InvalidOperationException or IOException)
        {
            return false;
        }
    }
}
