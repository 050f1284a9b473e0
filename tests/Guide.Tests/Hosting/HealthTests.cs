using System.Diagnostics;
using System.Net;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Hosting;

public class HealthTests(EmptyGuide guide, TestCluster cluster) : IClassFixture<EmptyGuide>
{
    [Fact]
    public async Task Health_is_good_while_the_database_answers()
    {
        var answer = await guide.Client.GetAsync("/health");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("Healthy", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_reader_does_not_notice_that_the_database_dropped_its_connections()
    {
        Assert.Equal(HttpStatusCode.OK, (await guide.Client.GetAsync("/")).StatusCode);
        await guide.Database.EndSessionsAsync();

        Assert.Equal(HttpStatusCode.OK, (await guide.Client.GetAsync("/health")).StatusCode);
        await guide.Database.EndSessionsAsync();

        Assert.Equal(HttpStatusCode.OK, (await guide.Client.GetAsync("/")).StatusCode);
    }

    [Fact]
    public async Task Without_a_database_health_says_so_and_pages_tell_nothing_of_the_inside()
    {
        await using var lost = new EmptyGuide(cluster);
        await lost.InitializeAsync();
        await lost.Client.GetAsync("/health");
        await lost.Database.DisposeAsync();

        var since = Stopwatch.StartNew();
        var health = await lost.Client.GetAsync("/health");
        Assert.InRange(since.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(2));
        Assert.Equal(HttpStatusCode.ServiceUnavailable, health.StatusCode);
        Assert.Equal("Unhealthy", await health.Content.ReadAsStringAsync());

        var page = await lost.Client.GetAsync("/");
        var text = await page.Content.ReadAsStringAsync();
        Assert.True(page.StatusCode >= HttpStatusCode.InternalServerError);
        Assert.StartsWith("text/html", page.Content.Headers.ContentType!.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("Npgsql", text, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
    }
}
