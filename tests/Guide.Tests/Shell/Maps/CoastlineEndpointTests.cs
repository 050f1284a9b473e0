using System.Net;
using System.Text.Json;
using Foreshore.Guide.Shell.Maps;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.TestHost;
using Xunit;

namespace Foreshore.Guide.Tests.Shell.Maps;

public class CoastlineEndpointTests
{
    [Fact]
    public async Task Answers_land_and_shore_as_geojson_that_caches_may_keep()
    {
        var answer = await Get("/coastline?west=-68&south=44.4&east=-67&north=45");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/geo+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.True(answer.Headers.CacheControl!.Public);
        var json = JsonDocument.Parse(await answer.Content.ReadAsStreamAsync()).RootElement;
        Assert.Equal(Coastline.Note, json.GetProperty("notice").GetString());
        var features = json.GetProperty("features");
        Assert.Equal("MultiPolygon", features[0].GetProperty("geometry").GetProperty("type").GetString());
        Assert.Equal("MultiLineString", features[1].GetProperty("geometry").GetProperty("type").GetString());
        Assert.True(features[1].GetProperty("geometry").GetProperty("coordinates").GetArrayLength() > 0);
    }

    [Fact]
    public async Task A_view_across_the_date_line_is_cut_there()
    {
        var text = await (await Get("/coastline?west=175&south=60&east=-170&north=72")).Content.ReadAsStringAsync();
        var land = JsonDocument.Parse(text).RootElement.GetProperty("features")[0].GetProperty("geometry").GetProperty("coordinates");
        var longitudes = land.EnumerateArray().SelectMany(p => p.EnumerateArray()).SelectMany(r => r.EnumerateArray()).Select(c => c[0].GetDouble()).ToList();
        Assert.All(longitudes, l => Assert.True(l is >= 175 and <= 180 or >= -180 and <= -170, $"{l}"));
        Assert.Contains(longitudes, l => l < 0);
        Assert.Contains(longitudes, l => l > 0);
    }

    [Theory]
    [InlineData("")]
    [InlineData("?west=1&south=2&east=3")]
    [InlineData("?west=1&south=2&east=3&north=x")]
    [InlineData("?west=NaN&south=2&east=3&north=4")]
    [InlineData("?west=1&south=2&east=3&north=91")]
    [InlineData("?west=1&south=4&east=3&north=2")]
    [InlineData("?west=1&south=2&east=1&north=3")]
    [InlineData("?west=1&south=2&east=1e9&north=3")]
    [InlineData("?west=1,5&south=2&east=3&north=4")]
    public async Task A_box_that_is_none_is_a_clear_400(string query)
    {
        var answer = await Get("/coastline" + query);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.Contains("That is not a box on the map", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/coastline?west=-180&south=-90&east=180&north=90")]
    [InlineData("/coastline?west=180&south=-20&east=-178&north=-15")]
    public async Task The_world_and_the_date_line_itself_are_boxes(string address) =>
        Assert.Equal(HttpStatusCode.OK, (await Get(address)).StatusCode);

    private static async Task<HttpResponseMessage> Get(string address)
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        await using var app = builder.Build();
        app.MapCoastline();
        await app.StartAsync();
        var answer = await app.GetTestClient().GetAsync(address);
        await answer.Content.LoadIntoBufferAsync();
        return answer;
    }
}
