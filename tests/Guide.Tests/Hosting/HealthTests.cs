using System.Net;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Hosting;

public class HealthTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    [Fact]
    public async Task Health_is_good_while_the_database_answers()
    {
        var answer = await guide.Client.GetAsync("/health");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("Healthy", await answer.Content.ReadAsStringAsync());
    }
}
