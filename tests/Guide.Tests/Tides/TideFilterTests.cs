using System.Net;
using AngleSharp;
using AngleSharp.Dom;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Tides;

public class TideFilterTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_four_states_share_out_the_coast_in_five_queries()
    {
        await using var db = guide.Open();
        var all = await db.CoastAsync(Reader.Visitor, Parts.None, cancel: Cancel);
        await guide.Client.GetAsync("/", Cancel);
        var names = new List<string>();
        foreach (var state in new[] { "low", "rising", "high", "falling" })
        {
            guide.Commands.Reset();
            var page = await PageAsync($"/?tide={state}");
            Assert.InRange(guide.Commands.Commands.Count, 1, 5);
            var items = page.QuerySelectorAll(".coast > li").ToList();
            names.AddRange(items.Select(li => li.QuerySelector("h2")!.TextContent));
            Assert.All(items, li => Assert.Matches(state switch { "low" => "About low water", "high" => "About high water", "rising" => "Rising", _ => "Falling" }, li.TextContent));
        }
        Assert.Equal(all.Select(place => place.Name).Order(), names.Order());
    }

    [Fact]
    public async Task A_place_whose_tide_is_not_known_is_left_out_and_counted()
    {
        await using var db = guide.Open();
        await db.Database.ExecuteSqlRawAsync("UPDATE locations SET tide_station_id = NULL WHERE slug = 'tern-bank'", Cancel);
        var text = (await PageAsync("/?tide=falling")).Body!.TextContent + (await PageAsync("/?tide=rising")).Body!.TextContent;
        await db.Database.ExecuteSqlRawAsync("UPDATE locations SET tide_station_id = 'noaa/8411060' WHERE slug = 'tern-bank'", Cancel);

        Assert.Contains("Left out, for their tide is not known: 1.", text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await guide.Client.GetAsync("/?tide=sideways", Cancel)).StatusCode);
    }

    /// <summary>By the rule itself: a sixth of the way from one turn to the next at either end belongs to the turn.</summary>
    [Theory]
    [InlineData(0, TideState.High)]
    [InlineData(59, TideState.High)]
    [InlineData(61, TideState.Falling)]
    [InlineData(299, TideState.Falling)]
    [InlineData(301, TideState.Low)]
    [InlineData(361, TideState.Low)]
    [InlineData(421, TideState.Rising)]
    public void An_hour_beside_a_turn_six_hours_off_belongs_to_the_turn(int minutes, TideState state)
    {
        var start = Instant.FromUtc(2026, 11, 25, 0, 0);
        var table = new TableTide([.. Enumerable.Range(-1, 8).Select(i => new TideExtreme(start + Duration.FromHours(6 * i), i % 2 == 0 ? 5 : 1, i % 2 == 0))]);
        var now = TideNow.Of(table.Between(table.Valid.Start, table.Valid.End), start + Duration.FromMinutes(minutes));

        Assert.Equal(state, now!.State);
    }

    private async Task<IDocument> PageAsync(string address)
    {
        var text = await guide.Client.GetStringAsync(address, Cancel);
        return await BrowsingContext.New().OpenAsync(response => response.Content(text), Cancel);
    }
}
