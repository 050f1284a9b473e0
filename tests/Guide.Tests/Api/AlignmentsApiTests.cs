using System.Net;
using System.Text.Json;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Api;

public sealed class AlignmentsApiTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private const string Root = "/api/v1/compositions/halfmoon-light/";
    private const string WithSubject = Root + "high-edge/light-and-first-sun/alignments";

    [Fact]
    public async Task Passages_come_by_time_within_the_tolerance_with_cautions()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync($"{WithSubject}?from=2026-12-01&to=2028-12-01&tolerance=1")).RootElement;
        Assert.NotEmpty(answer.GetProperty("cautions").EnumerateArray());
        Assert.Contains("Not for navigation", answer.GetProperty("notForNavigation").GetString()!, StringComparison.Ordinal);
        var all = answer.GetProperty("alignments").EnumerateArray().ToList();
        Assert.NotEmpty(all);
        Assert.All(all, one => Assert.InRange(one.GetProperty("offDegrees").GetDouble(), 0, 1));
        Assert.Equal(all.Select(one => one.GetProperty("time").GetDateTimeOffset()).Order(), all.Select(one => one.GetProperty("time").GetDateTimeOffset()));
        Assert.All(all, one => Assert.Equal(one.GetProperty("body").GetString() == "moon", one.GetProperty("illuminatedFraction").ValueKind == JsonValueKind.Number));
    }

    [Theory]
    [InlineData("from=2026-13-01")]
    [InlineData("from=2026-12-01&to=2026-11-01")]
    [InlineData("from=2026-12-01&to=2032-12-02")]
    [InlineData("tolerance=0")]
    [InlineData("tolerance=wide")]
    [InlineData("from=1900-01-01")]
    public async Task What_cannot_be_used_is_refused_in_words(string query)
    {
        var answer = await site.Client.GetAsync($"{WithSubject}?{query}");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("for example", (await answer.Content.ReadAsStringAsync()).Replace("shorter time", "for example", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_subject_it_says_why_there_are_none()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync(Root + "high-edge/cliffs-by-moonlight/alignments")).RootElement;
        Assert.Contains("No subject", answer.GetProperty("why").GetString()!, StringComparison.Ordinal);
        Assert.Empty(answer.GetProperty("alignments").EnumerateArray());
    }

    [Fact]
    public async Task A_sensitive_place_tells_nothing() =>
        Assert.Equal(HttpStatusCode.NotFound, (await site.Client.GetAsync("/api/v1/compositions/skerrin-hollow/rim-of-the-bowl/pink-bowl/alignments")).StatusCode);
}
