using System.Net;
using System.Text.Json;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Api;

public class WeekendAnswerTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    [Fact]
    public async Task Nine_sessions_stand_for_each_composition_with_offsets_in_their_times()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync("/api/v1/weekend")).RootElement;

        Assert.Equal("notice", answer.EnumerateObject().First().Name);
        Assert.NotEqual(0, answer.GetProperty("cautions").GetArrayLength());
        Assert.Equal("2026-11-27", answer.GetProperty("from").GetString());
        var rows = answer.GetProperty("compositions").EnumerateArray().ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Equal(9, row.GetProperty("sessions").GetArrayLength()));
        var starts = rows.SelectMany(row => row.GetProperty("sessions").EnumerateArray())
            .Select(cell => cell.GetProperty("windowStart")).Where(start => start.ValueKind == JsonValueKind.String).ToList();
        Assert.NotEmpty(starts);
        Assert.All(starts, start => Assert.EndsWith("-05:00", start.GetString(), StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_is_kept_off_offers_no_window()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync("/api/v1/weekend?from=2027-06-04")).RootElement;
        var kept = answer.GetProperty("compositions").EnumerateArray().SelectMany(row => row.GetProperty("sessions").EnumerateArray())
            .Where(cell => cell.GetProperty("verdict").GetString() == "keep off").ToList();

        Assert.NotEmpty(kept);
        Assert.All(kept, cell => Assert.Equal(JsonValueKind.Null, cell.GetProperty("windowStart").ValueKind));
        Assert.All(kept, cell => Assert.NotEqual(0, cell.GetProperty("reasons").GetArrayLength()));
    }

    [Theory]
    [InlineData("/api/v1/weekend?from=0001-01-01")]
    [InlineData("/api/v1/weekend?footing=flying")]
    public async Task A_question_that_cannot_be_read_is_a_problem_document(string address)
    {
        var answer = await site.Client.GetAsync(address);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
    }
}
