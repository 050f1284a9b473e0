using System.Net;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Compositions;

public sealed class SketchEndpointTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    [Fact]
    public async Task A_public_places_sketch_is_a_picture_with_inks_of_its_own()
    {
        using var answer = await site.Client.GetAsync(new Uri("/sketches/gannet-stairs-white-curtains.svg", UriKind.Relative));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("image/svg+xml", answer.Content.Headers.ContentType?.MediaType);
        var drawing = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("class=\"ink", drawing, StringComparison.Ordinal);
        Assert.DoesNotContain("style", drawing, StringComparison.Ordinal);
        Assert.Contains("fill=\"#FFFDF8\"", drawing, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("skerrin-hollow-rim-of-the-bowl.svg")]
    [InlineData("cannery-point-end-of-the-boards.svg")]
    [InlineData("no-such-sketch.svg")]
    [InlineData("..%2fappsettings.json")]
    public async Task Sketches_of_sensitive_and_members_places_are_not_there_for_strangers(string name)
    {
        using var answer = await site.Client.GetAsync(new Uri($"/sketches/{name}", UriKind.Relative));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
