using System.Net;
using System.Text;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>A real port: the test server would not count bytes or lines as Kestrel does.</summary>
public sealed class ServedGuide(TestCluster cluster) : GuideHost(cluster, withDemo: false, onRealPort: true);

public class RefusalTests(ServedGuide guide) : IClassFixture<ServedGuide>
{
    [Fact]
    public async Task A_form_from_another_site_is_refused()
    {
        using var post = new HttpRequestMessage(HttpMethod.Post, "/theme") { Content = new FormUrlEncodedContent([new("theme", "lamp")]) };
        post.Headers.Add("Sec-Fetch-Site", "cross-site");

        Assert.Equal(HttpStatusCode.Forbidden, (await guide.Client.SendAsync(post)).StatusCode);
    }

    [Fact]
    public async Task Trace_is_not_answered()
    {
        using var trace = new HttpRequestMessage(HttpMethod.Trace, "/");

        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await guide.Client.SendAsync(trace)).StatusCode);
    }

    [Fact]
    public async Task Another_name_than_the_sites_own_is_refused()
    {
        using var asked = new HttpRequestMessage(HttpMethod.Get, "/");
        asked.Headers.Host = "evil.example";

        Assert.Equal(HttpStatusCode.BadRequest, (await guide.Client.SendAsync(asked)).StatusCode);
    }

    [Fact]
    public async Task A_form_of_two_megabytes_is_refused_as_too_large()
    {
        using var form = new StringContent($"theme={new string('x', 2 << 20)}", Encoding.ASCII, "application/x-www-form-urlencoded");

        var answer = await guide.Client.PostAsync("/theme", form);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task A_search_of_a_megabyte_is_refused()
    {
        var answer = await guide.Client.GetAsync($"/?q={new string('x', 1 << 20)}");

        Assert.Equal(HttpStatusCode.RequestUriTooLong, answer.StatusCode);
    }

    [Theory]
    [InlineData("/no-such-page")]
    [InlineData("/coast/no-such-place")]
    [InlineData("/api/v1/no-such-thing")]
    [InlineData("/.git/config")]
    [InlineData("/appsettings.json")]
    [InlineData("/lib/")]
    [InlineData("/..%2f..%2fetc%2fpasswd")]
    public async Task What_is_not_there_is_not_found_and_tells_nothing(string address)
    {
        var answer = await guide.Client.GetAsync(address);
        var text = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Npgsql", text, StringComparison.Ordinal);
    }
}
