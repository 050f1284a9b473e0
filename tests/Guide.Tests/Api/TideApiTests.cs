using System.Net;
using System.Text.Json;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Api;

public sealed class TideApiTests(EmptyGuide site) : IClassFixture<EmptyGuide>
{
    /// <summary>Seattle and Eastport on 15 January 2025, as the predictor @neaps/tide-predictor keeps them among its own test values (MIT); metres above MLLW.</summary>
    [Theory]
    [InlineData("noaa-9447130", "00:06:03 H 3.234; 07:09:51 L -0.668; 14:54:01 H 3.846; 20:26:14 L 2.173")]
    [InlineData("noaa-8410140", "04:19:20 H 5.618; 10:34:16 L 0.173; 16:35:06 H 6.078; 23:03:38 L -0.206")]
    public async Task High_and_low_waters_are_those_of_a_second_predictor(string station, string day)
    {
        using var answer = await JsonAsync($"/api/v1/tides/{station}/extremes?from=2025-01-15");
        var waters = answer.RootElement.GetProperty("waters").EnumerateArray().ToList();
        var expected = day.Split("; ").Select(one => one.Split(' ')).ToList();

        Assert.Equal(expected.Count, waters.Count);
        foreach (var (water, want) in waters.Zip(expected))
        {
            // That predictor's own nodal factors and, at Seattle, its known fault with M1 (6 cm in 2026) lie between the two.
            var time = DateTimeOffset.Parse($"2025-01-15T{want[0]}Z", System.Globalization.CultureInfo.InvariantCulture);
            Assert.InRange((water.GetProperty("time").GetDateTimeOffset() - time).Duration().TotalMinutes, 0, 5);
            Assert.Equal(want[1] == "H", water.GetProperty("isHigh").GetBoolean());
            Assert.Equal(double.Parse(want[2], System.Globalization.CultureInfo.InvariantCulture), water.GetProperty("metres").GetDouble(), 0.08);
        }
    }

    [Fact]
    public async Task Heights_say_where_they_come_from_and_pass_through_the_waters()
    {
        using var answer = await JsonAsync("/api/v1/tides/noaa-8410140?from=2025-01-15T16:35:00Z&to=2025-01-15T17:35:00%2B00:00&step=30");
        var root = answer.RootElement;
        var origin = root.GetProperty("origin");
        var heights = root.GetProperty("heights").EnumerateArray().Select(h => h.GetProperty("metres").GetDouble()).ToList();

        Assert.Equal(3, heights.Count);
        Assert.Equal(6.078, heights[0], 0.03);
        Assert.True(heights[0] > heights[1] && heights[1] > heights[2]);
        Assert.Equal("schureman", origin.GetProperty("nodalModel").GetString());
        Assert.Contains("mean lower low water (MLLW)", origin.GetProperty("datum").GetString(), StringComparison.Ordinal);
        Assert.Contains("harmonic constituents", origin.GetProperty("method").GetString(), StringComparison.Ordinal);
        Assert.Contains(origin.GetProperty("disclaimers").EnumerateArray(), words => words.GetString()!.Contains("Not for navigation", StringComparison.Ordinal));
        Assert.Equal("public domain", origin.GetProperty("station").GetProperty("licence").GetString());
        Assert.Contains("Neaps tide database", origin.GetProperty("station").GetProperty("attribution").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stations_come_nearest_first_with_what_speaks_against_them()
    {
        using var answer = await JsonAsync("/api/v1/tides/stations?near=44.9046,-66.9829&count=3");
        var stations = answer.RootElement.GetProperty("stations").EnumerateArray().ToList();
        Assert.Equal(3, stations.Count);
        Assert.Equal("noaa-8410140", stations[0].GetProperty("station").GetProperty("station").GetString());
        Assert.InRange(stations[0].GetProperty("distanceMetres").GetDouble(), 0, 50);

        using var atSea = await JsonAsync("/api/v1/tides/stations?near=-45,-130&count=1");
        Assert.True(atSea.RootElement.GetProperty("stations")[0].GetProperty("isTooFar").GetBoolean());
    }

    /// <summary>Under CC BY the creator, the licence and "modified" are asked for wherever the figures stand.</summary>
    [Fact]
    public async Task A_station_under_CC_BY_carries_its_creators_credit()
    {
        using var answer = await JsonAsync("/api/v1/tides/kartverket-bgo/extremes?from=2026-11-25");
        var station = answer.RootElement.GetProperty("origin").GetProperty("station");

        Assert.Equal("CC BY 4.0", station.GetProperty("licence").GetString());
        Assert.Contains("Kartverket", station.GetProperty("attribution").GetString(), StringComparison.Ordinal);
        Assert.Contains("Modified", station.GetProperty("attribution").GetString(), StringComparison.Ordinal);
        Assert.Equal("iho", answer.RootElement.GetProperty("origin").GetProperty("nodalModel").GetString());
    }

    [Theory]
    [InlineData("/api/v1/tides/stations", "near must be")]
    [InlineData("/api/v1/tides/stations?near=44,9", "", HttpStatusCode.OK)]
    [InlineData("/api/v1/tides/stations?near=44,9,5", "near must be")]
    [InlineData("/api/v1/tides/stations?near=91,0", "near must be")]
    [InlineData("/api/v1/tides/stations?near=NaN,0", "near must be")]
    [InlineData("/api/v1/tides/stations?near=44,-67&count=0", "count must be")]
    [InlineData("/api/v1/tides/nowhere?from=2026-11-25", "no such station", HttpStatusCode.NotFound)]
    [InlineData("/api/v1/tides/noaa-8410140", "from is missing")]
    [InlineData("/api/v1/tides/noaa-8410140?from=25.11.2026", "from must be a time")]
    [InlineData("/api/v1/tides/noaa-8410140?from=2026-11-25T05:00:00", "from must be a time")]
    [InlineData("/api/v1/tides/noaa-8410140?from=2026-11-25&to=2026-11-24", "later than from")]
    [InlineData("/api/v1/tides/noaa-8410140?from=2026-11-25&to=2028-11-24", "more than 366 days")]
    [InlineData("/api/v1/tides/noaa-8410140?from=2026-11-25&to=2026-12-25&step=1", "more than 5000 heights")]
    [InlineData("/api/v1/tides/noaa-8410140?from=2026-11-25&step=0", "step must be")]
    [InlineData("/api/v1/tides/noaa-8410140/extremes?from=1850-01-01", "is known from")]
    [InlineData("/api/v1/tides/noaa-8410140/extremes?from=2500-12-31", "is known from")]
    [InlineData("/api/v1/tides/noaa-8410140/extremes?from=9999-12-31", "from is too far off. This station's tide is known from 1")]
    [InlineData("/api/v1/tides/noaa-8410140?from=2026-11-25&to=9999-12-31", "to is too far off. This station's tide is known from 1")]
    public async Task Bad_questions_are_answered_in_words(string address, string words, HttpStatusCode status = HttpStatusCode.BadRequest)
    {
        var answer = await site.Client.GetAsync(address, TestContext.Current.CancellationToken);

        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_description_tells_of_all_three()
    {
        var text = await site.Client.GetStringAsync("/openapi/v1.json", TestContext.Current.CancellationToken);
        using var description = JsonDocument.Parse(text);
        var paths = description.RootElement.GetProperty("paths");

        foreach (var path in new[] { "/api/v1/tides/stations", "/api/v1/tides/{station}", "/api/v1/tides/{station}/extremes" })
            Assert.Contains("Not for navigation", paths.GetProperty(path).GetProperty("get").GetProperty("description").GetString(), StringComparison.Ordinal);
    }

    private async Task<JsonDocument> JsonAsync(string address) => JsonDocument.Parse(await site.Client.GetStringAsync(address, TestContext.Current.CancellationToken));
}
