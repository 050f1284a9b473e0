using System.Globalization;
using System.Net.Sockets;
using System.Text;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>How much each address takes: what is not named takes a megabyte, and no size is taken on trust.</summary>
public class SizeLimitTests(ServedGuide guide) : IClassFixture<ServedGuide>
{
    private const int Megabyte = 1 << 20;

    /// <summary>In megabytes, as docs/security.md 5.1.1 has them: four photos of 25 and the form, a height file, a table of a tide station.</summary>
    private static readonly Dictionary<string, int> Larger = new()
    {
        ["/contribute/change/{kind}/{id}"] = 101,
        ["/contribute/hazard"] = 101,
        ["/contribute/stance/{id}"] = 101,
        ["/admin/elevation"] = 65,
        ["/admin/tides/new"] = 5,
    };

    [Fact]
    public void What_takes_more_than_a_megabyte_is_named()
    {
        var found = guide.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Select(endpoint => (Pattern: Plain(endpoint), Most: endpoint.Metadata.GetMetadata<IRequestSizeLimitMetadata>()?.MaxRequestBodySize))
            .Where(endpoint => endpoint.Most is not null).DistinctBy(endpoint => endpoint.Pattern).ToList();

        Assert.Equal(Larger.Keys.Order(), found.Select(endpoint => endpoint.Pattern).Order());
        foreach (var (pattern, most) in found)
            Assert.InRange(most!.Value, 1, (long)Larger[pattern] * Megabyte);
    }

    /// <summary>The length alone is sent: it is refused before a byte of it is read.</summary>
    [Theory]
    [InlineData("/contribute/hazard", 102)]
    [InlineData("/admin/elevation", 66)]
    [InlineData("/admin/tides/new", 6)]
    [InlineData("/still-correct", 2)]
    public async Task More_is_refused_by_its_length(string address, int megabytes)
    {
        var (_, name, value) = await guide.SignInAsync(Role.Admin);
        using var socket = new TcpClient("127.0.0.1", guide.ClientOptions.BaseAddress.Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture,
            $"POST {address} HTTP/1.1\r\nHost: localhost\r\nCookie: {name}={value}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {(long)megabytes * Megabyte}\r\nConnection: close\r\n\r\n")));
        using var reader = new StreamReader(stream, Encoding.UTF8);

        Assert.StartsWith("HTTP/1.1 413", await reader.ReadLineAsync(), StringComparison.Ordinal);
    }

    private static string Plain(RouteEndpoint endpoint) =>
        System.Text.RegularExpressions.Regex.Replace("/" + endpoint.RoutePattern.RawText!.TrimStart('/'), @"[:?=][^}/]*\}", "}").ToLowerInvariant();
}
