using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Foreshore.Guide.Support;

namespace Foreshore.Guide.Hosting;

/// <summary>One answer met on the walk.</summary>
public sealed record WalkedPage(string Address, string LinkedFrom, HttpStatusCode Status, HttpResponseHeaders Headers, IHtmlDocument? Document, int Length);

/// <summary>Class fixture: the demo site on a real port, walked once along its links.</summary>
public sealed class WalkedSite(TestCluster cluster) : GuideHost(cluster, withDemo: true, onRealPort: true)
{
    private const int AtMost = 400;

    public IReadOnlyList<WalkedPage> Pages { get; private set; } = [];

    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        var parser = new HtmlParser();
        var pages = new List<WalkedPage>();
        var met = new HashSet<string> { "/" };
        var ahead = new Queue<(string Address, string From)>([("/", "(typed)")]);
        while (pages.Count < AtMost && ahead.TryDequeue(out var next))
        {
            var answer = await Client.GetAsync(next.Address);
            var text = await answer.Content.ReadAsStringAsync();
            var document = answer.Content.Headers.ContentType?.MediaType == "text/html" ? parser.ParseDocument(text) : null;
            pages.Add(new WalkedPage(next.Address, next.From, answer.StatusCode, answer.Headers, document, text.Length));
            var links = document?.QuerySelectorAll("a[href]").Select(link => link.GetAttribute("href")!) ?? [];
            foreach (var address in links.Concat([.. answer.Headers.Location is { IsAbsoluteUri: false } to ? new[] { to.ToString() } : []]))
            {
                var plain = address.Split('#')[0];
                if (plain.StartsWith('/') && !plain.StartsWith("//", StringComparison.Ordinal) && met.Add(plain))
                    ahead.Enqueue((plain, next.Address));
            }
        }

        Pages = pages;
    }
}
