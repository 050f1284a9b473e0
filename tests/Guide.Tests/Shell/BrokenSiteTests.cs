using System.Net;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Shell;

/// <summary>Class fixture: a site that started well and whose database then went away.</summary>
public sealed class GuideWithoutDatabase(TestCluster cluster) : GuideHost(cluster, withDemo: false)
{
    private readonly TestCluster cluster = cluster;

    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        await cluster.DropAsync(Database.Name);
    }
}

public sealed class BrokenSiteTests(GuideWithoutDatabase guide) : IClassFixture<GuideWithoutDatabase>
{
    [Theory]
    [InlineData("/")]
    [InlineData("/weekend")]
    [InlineData("/coast/halfmoon-light")]
    public async Task A_page_without_its_database_says_so_in_words_and_tells_nothing_of_the_inside(string address)
    {
        var answer = await guide.Client.GetAsync(address);
        var text = await answer.Content.ReadAsStringAsync();
        var page = await ShellPagesTests.DocumentAsync(answer);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Equal("The guide is not ready", page.QuerySelector("main h1")!.TextContent);
        Assert.Equal($"{address}#main", page.QuerySelector("a.skip")!.GetAttribute("href"));
        Assert.All(["   at ", "Exception", "Npgsql", "does not exist", "foreshore_", ".cs:"],
            inside => Assert.DoesNotContain(inside, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_program_without_its_database_gets_a_problem_document()
    {
        var answer = await guide.Client.GetAsync("/api/v1/locations");
        var text = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.DoesNotContain("Npgsql", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_needs_no_database_is_still_there() =>
        Assert.Equal(HttpStatusCode.OK, (await guide.Client.GetAsync("/about")).StatusCode);
}
