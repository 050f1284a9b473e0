using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>Follows every link of the demo site from its first page, as a visitor or a link checker would.</summary>
public partial class SiteWalkTests(WalkedSite site) : IClassFixture<WalkedSite>
{
    [Fact]
    public void No_link_is_broken()
    {
        Assert.True(site.Pages.Count > 60);
        Assert.Empty(site.Pages.Where(page => page.Status >= HttpStatusCode.BadRequest).Select(page => $"{page.Address} ({(int)page.Status}) linked from {page.LinkedFrom}"));
        Assert.Empty(site.Log.Errors);
    }

    [Fact]
    public void Every_answer_carries_the_strict_policy()
    {
        foreach (var page in site.Pages)
        {
            var policy = Assert.Single(page.Headers.GetValues("Content-Security-Policy"));
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
            Assert.Contains("style-src 'self';", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", Assert.Single(page.Headers.GetValues("X-Content-Type-Options")));
            Assert.False(page.Headers.Contains("Server"));
            Assert.False(page.Headers.Contains("X-Powered-By"));
        }
    }

    [Fact]
    public void No_page_holds_what_the_policy_would_stop()
    {
        var found =
            from page in site.Pages
            where page.Document is not null
            from element in page.Document!.All
            where element.HasAttribute("style") || element.LocalName == "style" || element.LocalName == "base"
                || element.Attributes.Any(attribute => attribute.Name.StartsWith("on", StringComparison.Ordinal))
                || (element.LocalName == "script" && !element.HasAttribute("src") && element.GetAttribute("type") != "application/json")
            select $"{page.Address}: <{element.LocalName}>";

        Assert.Empty(found);
    }

    [Fact]
    public async Task Head_answers_wherever_get_does()
    {
        foreach (var page in site.Pages)
        {
            using var asked = new HttpRequestMessage(HttpMethod.Head, page.Address);
            var answer = await site.Client.SendAsync(asked);
            Assert.True(page.Status == answer.StatusCode, $"{page.Address}: GET {page.Status}, HEAD {answer.StatusCode}");
            Assert.Empty(await answer.Content.ReadAsByteArrayAsync());
        }
    }

    [Theory]
    [InlineData("br")]
    [InlineData("gzip")]
    public async Task Pages_are_compressed(string encoding)
    {
        foreach (var page in site.Pages.Where(page => page.Document is not null && page.Status == HttpStatusCode.OK).Take(12))
        {
            using var asked = new HttpRequestMessage(HttpMethod.Get, page.Address);
            asked.Headers.AcceptEncoding.ParseAdd(encoding);
            var answer = await site.Client.SendAsync(asked);
            Assert.Equal(encoding, Assert.Single(answer.Content.Headers.ContentEncoding));
            var bytes = (await answer.Content.ReadAsByteArrayAsync()).Length;
            Assert.True(bytes < page.Length / 2 || page.Length < 2_000, $"{page.Address}: {bytes} of {page.Length} bytes");
        }
    }

    [Fact]
    public async Task Static_files_keep_their_name_for_good()
    {
        var sheet = site.Pages[0].Document!.QuerySelector("link[rel=stylesheet]")!.GetAttribute("href")!;
        var answer = await site.Client.GetAsync(sheet);

        Assert.Matches(Fingerprint(), sheet);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("immutable", answer.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\.[a-z0-9]{10}\.css$")]
    private static partial Regex Fingerprint();
}
