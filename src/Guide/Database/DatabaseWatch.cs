using System.Diagnostics;
using Foreshore.Guide.Hosting;

namespace Foreshore.Guide.Database;

/// <summary>
/// Looks after the database while the site serves: says in the log when it goes and comes back, frees pages that wait for a frozen
/// server, and starts the embedded one again when its process has ended. A frozen process is left alone: what froze it may thaw, and
/// ending it would only make that worse.
/// </summary>
internal sealed partial class DatabaseWatch(DatabasePulse pulse, ILogger<DatabaseWatch> log, EmbeddedCluster? cluster) : BackgroundService
{
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan LongestPause = TimeSpan.FromSeconds(30);

    private readonly Stopwatch away = new();
    private TimeSpan pause;
    private TimeSpan next;
    private IReadOnlyList<byte[]> peers = [];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var looks = new PeriodicTimer(BetweenLooks);
        try
        {
            peers = await StuckConnections.PeersOfAsync(pulse.Server, stoppingToken);
            while (await looks.WaitForNextTickAsync(stoppingToken))
                await LookAsync(stoppingToken);
        }
        catch (OperationCanceledException)
        {
            // The site stops, and its database after it.
        }
    }

    private async Task LookAsync(CancellationToken stop)
    {
        if (pulse.IsAnswering)
        {
            if (away.IsRunning)
            {
                Back(log, away.Elapsed.TotalSeconds);
                peers = await StuckConnections.PeersOfAsync(pulse.Server, stop);
            }

            away.Reset();
            (pause, next) = (TimeSpan.Zero, TimeSpan.Zero);
            return;
        }

        if (pulse.IsFrozen)
            StuckConnections.Break(peers);
        if (!away.IsRunning)
        {
            away.Start();
            Gone(log, pulse.IsFrozen ? "is silent" : "refuses connections");
        }

        if (cluster is { HasServer: false } && away.Elapsed >= next)
            await StartAgainAsync(cluster);
    }

    /// <summary>At once, then after pauses that double: a full disk is not helped by asking it twice a second.</summary>
    private async Task StartAgainAsync(EmbeddedCluster ended)
    {
        StartingAgain(log);
        try
        {
            // To its end, also while the site stops: a server that comes up after its stop would be left behind.
            await ended.StartAgainAsync();
        }
        catch (Exception fault) when (fault is OperatorException or IOException or UnauthorizedAccessException)
        {
            pause = pause == TimeSpan.Zero ? TimeSpan.FromSeconds(1) : pause * 2 < LongestPause ? pause * 2 : LongestPause;
            next = away.Elapsed + pause;
            NotStarted(log, fault.Message, pause.TotalSeconds);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The database {What}. Pages say so until it answers again.")]
    private static partial void Gone(ILogger log, string what);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The process of the embedded database has ended. Starting it again.")]
    private static partial void StartingAgain(ILogger log);

    [LoggerMessage(Level = LogLevel.Error, Message = "The embedded database could not be started again. {What} Next try in {Seconds} s.")]
    private static partial void NotStarted(ILogger log, string what, double seconds);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The database answers again, after {Seconds:F1} s.")]
    private static partial void Back(ILogger log, double seconds);
}
