using System.Net;
using System.Net.Sockets;
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

    /// <summary>Sent by hand: no client library would.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("localhost;")]
    [InlineData("localhost:99999")]
    [InlineData("localhost:x")]
    [InlineData("user@localhost")]
    public async Task A_host_that_is_no_name_of_a_site_is_refused(string host)
    {
        var answer = await SendRawAsync($"GET /sign-in HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 400", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../")]
    [InlineData("http://[")]
    [InlineData("x")]
    public async Task A_referer_that_is_no_address_tells_nothing(string referer)
    {
        var answer = await SendRawAsync($"GET /sign-in HTTP/1.1\r\nHost: localhost\r\nReferer: {referer}\r\nConnection: close\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 200", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/?q=a%00b")]
    [InlineData("/contribute?sent=%00")]
    public async Task A_letter_that_nothing_can_keep_is_refused_in_words(string address)
    {
        var answer = await guide.Client.GetAsync(address);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("That address could not be read", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_of_more_than_a_thousand_fields_is_refused_in_words()
    {
        using var form = new FormUrlEncodedContent(Enumerable.Range(0, 1_100).Select(n => new KeyValuePair<string, string>($"field{n}", "x")));

        var answer = await guide.Client.PostAsync("/theme", form);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("more than a thousand fields", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    private async Task<string> SendRawAsync(string request)
    {
        using var socket = new TcpClient("127.0.0.1", guide.ClientOptions.BaseAddress.Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream, Encoding.ASCII);
        return await reader.ReadToEndAsync();
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
