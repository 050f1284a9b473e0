using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// Once the site listens it asks itself for one page of each kind: the first of each compiles code and queries and makes the table of
/// the sky, and nobody should wait for that. Where it cannot reach itself, the first visitor waits as they would have.
/// </summary>
internal sealed partial class Warming(IServer server, IConfiguration settings, IDbContextFactory<GuideDb> database, SharedSky sky, IHostApplicationLifetime lifetime, ILogger<Warming> log)
    : BackgroundService
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using var waiting = lifetime.ApplicationStarted.Register(() => started.TrySetResult());
        try
        {
            await started.Task.WaitAsync(stoppingToken);
            if (server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault(each => each.StartsWith("http://", StringComparison.Ordinal)) is not { } address)
                return;
            _ = sky.Current;
            using var visitor = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { Timeout = Patience };
            foreach (var page in await PagesAsync(stoppingToken))
                await AskAsync(visitor, new Uri(new Uri(SelfCheck.Reachable(address)), page), stoppingToken);
        }
        catch (Exception fault) when (fault is HttpRequestException or System.Data.Common.DbException or TimeoutException or InvalidOperationException or OperationCanceledException or UriFormatException)
        {
            if (!stoppingToken.IsCancellationRequested)
                NotWarmed(log, fault.Message);
        }
    }

    private async Task<IReadOnlyList<string>> PagesAsync(CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var places = await db.CoastAsync(Reader.Visitor, Parts.Compositions, cancel: cancel);
        var first = (from place in places from stance in place.VantagePoints from picture in stance.Compositions select (place, stance, picture)).FirstOrDefault();
        return first is ({ } at, { } from, { } seen) ? ["/", at.Address(), Tides.TideSheetQueries.TideAddress(at), from.Address(at), seen.Address(at, from), "/weekend"] : ["/"];
    }

    private async Task AskAsync(HttpClient visitor, Uri page, CancellationToken cancel)
    {
        using var question = new HttpRequestMessage(HttpMethod.Get, page);
        question.Headers.Host = SelfCheck.OwnName(settings);
        using var answer = await visitor.SendAsync(question, cancel);
        await answer.Content.CopyToAsync(Stream.Null, cancel);
    }

    [LoggerMessage(LogLevel.Information, "The site could not ask itself for its first pages ({Why}); the first visitors wait a little longer.")]
    private static partial void NotWarmed(ILogger log, string why);
}
