using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Hosting;

public sealed class ProxiedGuide(TestCluster cluster) : GuideHost(cluster, withDemo: false, onRealPort: true)
{
    protected override IEnumerable<(string Name, string Value)> Settings => [("Proxy:Networks", "127.0.0.1/32, ::1/128"), ("AllowedHosts", "localhost;127.0.0.1;[::1];guide.example")];
}

public class NamedProxiesTests(ServedGuide open, ProxiedGuide proxied) : IClassFixture<ServedGuide>, IClassFixture<ProxiedGuide>
{
    [Fact]
    public async Task Only_a_named_proxy_can_say_that_the_visitor_came_by_https()
    {
        Assert.False((await AskAsync(open)).Headers.Contains("Strict-Transport-Security"));

        var header = Assert.Single((await AskAsync(proxied)).Headers.GetValues("Strict-Transport-Security"));
        Assert.Contains("max-age=31536000", header, StringComparison.Ordinal);
        Assert.Contains("includeSubDomains", header, StringComparison.Ordinal);
    }

    private static async Task<HttpResponseMessage> AskAsync(GuideHost guide)
    {
        using var asked = new HttpRequestMessage(HttpMethod.Get, "/health");
        asked.Headers.Add("X-Forwarded-Proto", "https");
        asked.Headers.Add("X-Forwarded-For", "203.0.113.9");
        // HSTS leaves localhost out by itself.
        if (guide is ProxiedGuide)
            asked.Headers.Host = "guide.example";
        return await guide.Client.SendAsync(asked);
    }
}
