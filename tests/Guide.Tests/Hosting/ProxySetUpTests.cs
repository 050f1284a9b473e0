using System.Net;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.Extensions.Configuration;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>The site as https, behind a proxy that nobody named.</summary>
public sealed class MisledGuide(TestCluster cluster) : AddressedHost(cluster, withDemo: false)
{
    protected override IEnumerable<(string Name, string Value)> Settings => [("Site:Address", "https://guide.example.org")];
}

/// <summary>Counted by visitor behind a named proxy, by proxy behind one that is not.</summary>
public sealed class CountedProxiedGuide(TestCluster cluster) : GuideHost(cluster, withDemo: false, onRealPort: true)
{
    protected override IEnumerable<(string Name, string Value)> Settings => [("Proxy:Networks", "127.0.0.1/32, ::1/128"), ("Limits:Pages", "2")];
}

public sealed class CountedOpenGuide(TestCluster cluster) : GuideHost(cluster, withDemo: false, onRealPort: true)
{
    protected override IEnumerable<(string Name, string Value)> Settings => [("Limits:Pages", "2")];
}

public class ProxySetUpTests(MisledGuide guide, CountedProxiedGuide named, CountedOpenGuide unnamed)
    : IClassFixture<MisledGuide>, IClassFixture<CountedProxiedGuide>, IClassFixture<CountedOpenGuide>
{
    [Fact]
    public async Task A_page_with_a_form_says_what_to_set_and_the_others_are_there()
    {
        var answer = await guide.Client.GetAsync("/sign-in");
        var words = (await Person.DocumentAsync(answer)).QuerySelector("section.fault")!.TextContent;

        Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
        Assert.Contains("Proxy:Networks=192.0.2.200/32", words, StringComparison.Ordinal);
        Assert.Contains("https://guide.example.org", words, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await guide.Client.PostAsync("/sign-in", new FormUrlEncodedContent([new("Form.Email", "a@b.example")]))).StatusCode);
        foreach (var page in new[] { "/", "/about", "/weekend", "/health", "/api/v1/locations" })
            Assert.Equal(HttpStatusCode.OK, (await guide.Client.GetAsync(page)).StatusCode);
    }

    [Theory]
    [InlineData("https://guide.example.org", null, null, true)]
    [InlineData("https://guide.example.org", "127.0.0.1/32", null, false)]
    [InlineData("https://guide.example.org", null, "https://0.0.0.0:443", false)]
    [InlineData("http://localhost:5080", null, null, false)]
    [InlineData(null, null, null, false)]
    public void At_start_it_is_said_what_will_not_work(string? address, string? proxies, string? urls, bool isTold)
    {
        var doubt = NamedProxies.DoubtAbout(new ConfigurationBuilder().AddInMemoryCollection([new("Site:Address", address), new("Proxy:Networks", proxies), new("urls", urls)]).Build());

        Assert.Equal(isTold, doubt?.Contains("Proxy:Networks", StringComparison.Ordinal) == true);
    }

    [Fact]
    public async Task Visitors_behind_a_named_proxy_are_counted_each_and_nobody_else_can_say_who_they_are()
    {
        for (var i = 1; i <= 4; i++)
            Assert.Equal(HttpStatusCode.OK, await AskAsync(named, $"203.0.113.{i}"));
        Assert.Equal(HttpStatusCode.OK, await AskAsync(named, "203.0.113.1"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(named, "203.0.113.1"));

        Assert.Equal(HttpStatusCode.OK, await AskAsync(unnamed, "203.0.113.1"));
        Assert.Equal(HttpStatusCode.OK, await AskAsync(unnamed, "203.0.113.2"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await AskAsync(unnamed, "203.0.113.3"));
    }

    private static async Task<HttpStatusCode> AskAsync(GuideHost site, string visitor)
    {
        using var asked = new HttpRequestMessage(HttpMethod.Get, "/about");
        asked.Headers.Add("X-Forwarded-For", visitor);
        using var answer = await site.Client.SendAsync(asked);
        return answer.StatusCode;
    }
}
