using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Foreshore.Guide.Hosting.Hostile;

/// <summary>A form as a page offers it to somebody: where it goes, and what is filled in.</summary>
internal sealed record OfferedForm(string Action, bool IsMultipart, IReadOnlyList<(string Name, string Value)> Fields);

/// <summary>Somebody who sends: with a session, the cookie of form tokens, and the forms met so far.</summary>
internal sealed class Sender(Role role)
{
    public Role Role => role;
    public Dictionary<string, string> Cookies { get; } = [];
    public Dictionary<string, IReadOnlyList<OfferedForm>> Forms { get; } = [];
}

/// <summary>Class fixture: the demo site on a real port, with what its route table and its pages say can be asked.</summary>
public sealed partial class HostileSite(TestCluster cluster) : GuideHost(cluster, withDemo: true, onRealPort: true)
{
    private readonly HtmlParser parser = new();

    /// <summary>By name of a route's parameter: values that lead somewhere.</summary>
    internal Dictionary<string, string[]> Known { get; } = [];

    internal IReadOnlyList<(string Pattern, string[] Methods)> Routes { get; private set; } = [];

    /// <summary>Names of query values, from the API's description, the pages' parameters and their links.</summary>
    internal SortedSet<string> QueryNames { get; } = new(StringComparer.Ordinal) { "at", "back", "begun", "facing", "from", "id", "kind", "name", "near", "order", "place", "proposal", "q", "sent", "session", "stance", "to", "wanted", "within", "years", "zone" };

    internal Sender[] Senders { get; } = [new(Role.Visitor), new(Role.Member), new(Role.Warden), new(Role.Admin)];

    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        Client.Dispose();
        Routes = [.. Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.RoutePattern.RawText is { } text && !text.StartsWith("lib/", StringComparison.Ordinal) && !text.StartsWith("_framework", StringComparison.Ordinal))
            .Where(endpoint => endpoint.Metadata.GetMetadata<Microsoft.AspNetCore.StaticAssets.StaticAssetDescriptor>() is null)
            .Select(endpoint => ("/" + endpoint.RoutePattern.RawText!.TrimStart('/'), endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.ToArray() ?? ["GET", "POST"]))
            .OrderBy(route => route.Item1, StringComparer.Ordinal)];
        await using var db = Open();
        var places = await db.Locations.Include(l => l.VantagePoints).ThenInclude(v => v.Compositions).OrderBy(l => l.Id).ToListAsync();
        string[] slugs = [.. places.Select(l => l.Slug)], stances = [.. places.SelectMany(l => l.VantagePoints).Select(v => v.Slug)];
        string[] pictures = [.. places.SelectMany(l => l.VantagePoints).SelectMany(v => v.Compositions).Select(c => c.Slug)];
        foreach (var (name, values) in new[] { ("slug", slugs), ("location", slugs), ("stanceslug", stances), ("vantage", stances), ("pictureslug", pictures), ("composition", pictures) })
            Known[name] = values;
        Known["id"] = [.. (await db.Proposals.Select(p => p.Id).ToListAsync()).Select(id => id.ToString()).Order(), .. Enumerable.Range(1, 12).Select(id => id.ToString(System.Globalization.CultureInfo.InvariantCulture))];
        Known["kind"] = ["stance", "composition", "place", "parking", "overnight", "route", "leg", "location"];
        Known["station"] = ["noaa-8410140", "noaa-8411060"];
        Known["documentname"] = ["v1"];
        Known["name"] = ["nothing"];
        Known["code"] = ["404", "500"];
    }

    /// <summary>A session, where there is none or the last one was ended by what was sent.</summary>
    internal async Task RenewAsync(Sender who)
    {
        who.Cookies.Clear();
        who.Forms.Clear();
        if (who.Role == Role.Visitor)
            return;
        var (_, name, value) = await this.SignInAsync(who.Role);
        who.Cookies[name] = value;
    }

    /// <summary>The forms of a page, as it offers them; the names of its links' query values are learned on the way.</summary>
    internal IReadOnlyList<OfferedForm> FormsOf(string address, string html)
    {
        var document = parser.ParseDocument(html);
        foreach (var link in document.QuerySelectorAll("a[href*='?']").Select(a => a.GetAttribute("href")!))
            foreach (Match name in QueryName().Matches(link))
                QueryNames.Add(name.Groups[1].Value);
        return [.. document.QuerySelectorAll("form").OfType<IHtmlFormElement>().Where(form => string.Equals(form.Method, "post", StringComparison.OrdinalIgnoreCase)).Select(form => new OfferedForm(
            form.GetAttribute("action") is { Length: > 0 } action && action.StartsWith('/') ? action : address,
            form.Enctype == "multipart/form-data",
            [.. form.Elements.SelectMany(FieldsOf)]))];
    }

    private static IEnumerable<(string, string)> FieldsOf(AngleSharp.Dom.IElement element) => element switch
    {
        IHtmlInputElement { Name.Length: > 0 } input => [(input.Name!, input.Value)],
        IHtmlTextAreaElement { Name.Length: > 0 } area => [(area.Name!, area.Value)],
        IHtmlSelectElement { Name.Length: > 0 } select => [(select.Name!, select.Value ?? "")],
        IHtmlButtonElement { Name.Length: > 0 } button => [(button.Name!, button.Value)],
        _ => [],
    };

    [GeneratedRegex(@"[?&]([A-Za-z.\-]+)=")]
    private static partial Regex QueryName();
}
