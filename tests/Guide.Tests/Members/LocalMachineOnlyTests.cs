using System.Net;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Members;

public class LocalMachineOnlyTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    [Theory]
    [InlineData("127.0.0.1", "localhost:5080")]
    [InlineData("127.0.0.1", "127.0.0.1:5080")]
    [InlineData("::1", "[::1]:5080")]
    [InlineData("::ffff:127.0.0.1", "LOCALHOST")]
    public void The_machine_itself_is_let_in(string from, string host) => Assert.True(LocalMachineOnlyAttribute.IsLocal(Request(from, host)));

    [Theory]
    [InlineData("192.0.2.7", "localhost")]
    [InlineData("2001:db8::7", "localhost")]
    [InlineData(null, "localhost")]
    [InlineData("127.0.0.1", "guide.example.org")]
    [InlineData("127.0.0.1", "localhost.example.org")]
    [InlineData("127.0.0.1", "")]
    public void Others_and_other_names_are_refused(string? from, string host) => Assert.False(LocalMachineOnlyAttribute.IsLocal(Request(from, host)));

    [Theory]
    [InlineData("X-Forwarded-For")]
    [InlineData("x-forwarded-host")]
    [InlineData("X-Forwarded-Proto")]
    [InlineData("Forwarded")]
    [InlineData("Via")]
    [InlineData("X-Original-For")]
    [InlineData("X-Real-IP")]
    public void Whoever_comes_through_a_proxy_is_refused(string header)
    {
        var request = Request("127.0.0.1", "localhost");
        request.Request.Headers[header] = "127.0.0.1";

        Assert.False(LocalMachineOnlyAttribute.IsLocal(request));
    }

    [Fact]
    public async Task Only_what_is_marked_is_refused()
    {
        var reached = 0;
        var marked = Request("192.0.2.7", "localhost");
        marked.SetEndpoint(new Endpoint(null, new EndpointMetadataCollection(new LocalMachineOnlyAttribute()), "marked"));
        await LocalMachineOnlyAttribute.RefuseOthersAsync(marked, Count);
        Assert.Equal((StatusCodes.Status403Forbidden, 0), (marked.Response.StatusCode, reached));

        await LocalMachineOnlyAttribute.RefuseOthersAsync(Request("192.0.2.7", "localhost"), Count);
        Assert.Equal(1, reached);

        Task Count(HttpContext http)
        {
            reached++;
            return Task.CompletedTask;
        }
    }

    [Fact]
    public void Every_address_below_admin_is_marked()
    {
        var open = guide.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.RoutePattern.RawText?.TrimStart('/').StartsWith("admin", StringComparison.OrdinalIgnoreCase) == true)
            .Where(endpoint => endpoint.Metadata.GetMetadata<LocalMachineOnlyAttribute>() is null && endpoint.Metadata.GetMetadata<OpenToAttribute>() is not { Least: Role.Admin });

        Assert.Empty(open.Select(endpoint => endpoint.RoutePattern.RawText));
    }

    private static DefaultHttpContext Request(string? from, string host)
    {
        var http = new DefaultHttpContext { RequestServices = new ServiceCollection().AddLogging().BuildServiceProvider() };
        http.Connection.RemoteIpAddress = from is null ? null : IPAddress.Parse(from);
        http.Request.Host = new HostString(host);
        return http;
    }
}
