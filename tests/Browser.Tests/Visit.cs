using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace Foreshore.Guide.Browser;

/// <summary>One person's tab, which notes all that goes wrong in it: console errors, refusals of the content policy, requests elsewhere.</summary>
public sealed class Visit : IAsyncDisposable
{
    private readonly IBrowserContext context;
    private readonly ConcurrentQueue<string> complaints = new();
    private readonly ConcurrentQueue<string> elsewhere = new();

    private Visit(IBrowserContext context, IPage page) => (this.context, Page) = (context, page);

    public IPage Page { get; }

    /// <summary>Empty on every page of a good site.</summary>
    public IReadOnlyList<string> Complaints => [.. complaints];

    /// <summary>Addresses of other hosts that were asked for, tiles above all.</summary>
    public IReadOnlyList<string> Elsewhere => [.. elsewhere];

    internal static async Task<Visit> BeginAsync(IBrowserContext context, Uri site)
    {
        var visit = new Visit(context, await context.NewPageAsync());
        visit.Page.Console += (_, message) =>
        {
            // The refusal of a request elsewhere is our own doing, told apart below.
            if (message.Type == "error" && !message.Text.Contains("ERR_FAILED", StringComparison.Ordinal))
                visit.complaints.Enqueue($"{visit.Page.Url}: {message.Text}");
        };
        visit.Page.PageError += (_, error) => visit.complaints.Enqueue($"{visit.Page.Url}: {error}");
        // The site by name and by number is the same site.
        await context.RouteAsync(address => new Uri(address) is not { IsLoopback: true } asked || asked.Port != site.Port, async route =>
        {
            if (route.Request.Url.StartsWith("http", StringComparison.Ordinal))
                visit.elsewhere.Enqueue(route.Request.Url);
            await route.AbortAsync();
        });
        return visit;
    }

    public async ValueTask DisposeAsync() => await context.DisposeAsync();
}
