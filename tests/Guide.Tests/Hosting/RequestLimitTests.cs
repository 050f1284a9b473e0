using System.Net;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Hosting;

/// <summary>Limits so small that a test reaches them: what is left comes back one token in ten to thirty seconds.</summary>
public sealed class LimitedGuide(TestCluster cluster) : AddressedHost(cluster, withDemo: true)
{
    protected override IEnumerable<(string Name, string Value)> Settings => [("Limits:Pages", "4"), ("Limits:Api", "30"), ("Limits:Forms", "2"), ("Limits:SignIns", "3")];
}

public class RequestLimitTests(LimitedGuide guide) : IClassFixture<LimitedGuide>
{
    private const string Alignments = "/api/v1/compositions/halfmoon-light/high-edge/light-and-first-sun/alignments";

    [Fact]
    public async Task Who_asks_for_too_many_pages_is_told_when_to_come_back_and_nobody_else_is()
    {
        using var crowd = BrowserFrom("198.51.100.1");
        for (var i = 0; i < 4; i++)
            Assert.Equal(HttpStatusCode.OK, (await crowd.GetAsync("/about")).StatusCode);

        var refused = await crowd.GetAsync("/about");
        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        Assert.InRange(refused.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 60);
        var words = (await Person.DocumentAsync(refused)).QuerySelector("section.fault")!.TextContent;
        Assert.Contains("Too many requests in a short time", words, StringComparison.Ordinal);
        Assert.Contains("seconds, then try again", words, StringComparison.Ordinal);

        // What keeps the site alive, and everybody else, are not held up.
        Assert.Equal(HttpStatusCode.OK, (await crowd.GetAsync("/health")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await crowd.GetAsync("/site.webmanifest")).StatusCode);
        using var other = BrowserFrom("198.51.100.2");
        Assert.Equal(HttpStatusCode.OK, (await other.GetAsync("/about")).StatusCode);
    }

    [Fact]
    public async Task What_computes_takes_as_much_as_it_costs()
    {
        using var program = BrowserFrom("198.51.100.3");
        var dear = $"{Alignments}?from=2026-11-25&to=2031-11-25";
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync(dear)).StatusCode);

        var refused = await program.GetAsync(dear);
        Assert.Equal((HttpStatusCode.TooManyRequests, "application/problem+json"), (refused.StatusCode, refused.Content.Headers.ContentType!.MediaType));
        Assert.NotNull(refused.Headers.RetryAfter);
        Assert.Contains("Wait ", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync("/api/v1/almanac/declination?lat=44&lon=-67&date=2026-11-25")).StatusCode);
    }

    [Fact]
    public async Task Forms_and_sign_in_are_counted_apart_from_reading()
    {
        using var sender = BrowserFrom("198.51.100.4");
        var theme = new Dictionary<string, string> { ["theme"] = "slate", ["back"] = "/" };
        for (var i = 0; i < 2; i++)
            Assert.Equal(HttpStatusCode.SeeOther, (await sender.PostAsync("/theme", new FormUrlEncodedContent(theme))).StatusCode);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await sender.PostAsync("/theme", new FormUrlEncodedContent(theme))).StatusCode);
        for (var i = 0; i < 3; i++)
            Assert.Equal(HttpStatusCode.BadRequest, (await sender.PostAsync("/sign-in", new FormUrlEncodedContent(theme))).StatusCode);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await sender.PostAsync("/sign-in", new FormUrlEncodedContent(theme))).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await sender.GetAsync("/about")).StatusCode);
    }

    [Fact]
    public void What_costs_more_is_there()
    {
        var patterns = guide.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>().Select(endpoint => "/" + endpoint.RoutePattern.RawText?.TrimStart('/'));

        Assert.Empty(RequestCosts.Patterns.Except(patterns, StringComparer.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_limit_that_is_no_number_is_refused_at_start()
    {
        var settings = new ConfigurationBuilder().AddInMemoryCollection([new("Limits:Pages", "many")]).Build();

        Assert.Contains("Limits:Pages", Assert.Throws<SettingException>(() => RequestLimits.From(settings)).Message, StringComparison.Ordinal);
    }

    private HttpClient BrowserFrom(string address)
    {
        var browser = guide.CreateClient(new() { AllowAutoRedirect = false });
        browser.DefaultRequestHeaders.Add(AddressedHost.Header, address);
        return browser;
    }
}
