using System.Globalization;
using AngleSharp;
using AngleSharp.Dom;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>What car park and cut-off do to turn back on the tide page of the lower stair, on Saturday and Sunday.</summary>
public class TidePageWaysTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private const string LotName = "Trust car park, Boot Road";
    private const string Address = "/coast/gannet-stairs/tide?stance=lower-stair&day=2026-11-28";
    private static readonly LocalDate Sunday = new(2026, 11, 29);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // domain.md: a height is judged with 0.3 m taken off, for weather. So a car park floods 0.3 m sooner, never later.
    [Fact]
    public async Task Car_park_floods_thirty_centimetres_before_the_height_that_is_recorded()
    {
        await using var db = guide.Open();
        var lot = await db.Set<ParkingArea>().SingleAsync(lot => lot.Name == LotName, Cancel);
        var station = await StationAsync(db);
        var highest = await HighestAsync();
        try
        {
            lot.FloodAbove(new TideHeight(highest + 0.15, station));
            await db.SaveChangesAsync(Cancel);
            Assert.Contains($"{LotName} floods from", (await TurnBackAsync()).TextContent, StringComparison.Ordinal);

            lot.FloodAbove(new TideHeight(highest + 0.5, station));
            await db.SaveChangesAsync(Cancel);
            Assert.DoesNotContain("floods", (await TurnBackAsync()).TextContent, StringComparison.Ordinal);
        }
        finally
        {
            lot.FloodAbove(null);
            await db.SaveChangesAsync(Cancel);
        }
    }

    [Fact]
    public async Task No_turn_back_leads_to_a_car_park_on_a_day_it_is_closed()
    {
        await using var db = guide.Open();
        var place = await db.Set<Location>().Include(place => place.Closures).Include(place => place.ParkingAreas).SingleAsync(place => place.Slug == "gannet-stairs", Cancel);
        Assert.Contains(Told(await TurnBackAsync()), one => one.Words.Contains("Sun 29", StringComparison.Ordinal));
        var closure = place.Close(Closure.Between(Sunday, null, "Resurfacing", "Trust").Of(place.ParkingAreas.Single(lot => lot.Name == LotName)));
        await db.SaveChangesAsync(Cancel);
        try
        {
            var told = Told(await TurnBackAsync());
            Assert.DoesNotContain(told, one => one.Way.Contains(LotName, StringComparison.Ordinal) && !one.Words.Contains("Sat 28", StringComparison.Ordinal));
        }
        finally
        {
            db.Remove(closure);
            await db.SaveChangesAsync(Cancel);
        }
    }

    [Fact]
    public async Task Cut_off_judged_by_another_station_tells_no_turn_back()
    {
        await using var db = guide.Open();
        var stance = await db.Set<VantagePoint>().SingleAsync(stance => stance.Slug == "lower-stair", Cancel);
        var before = stance.PathCutOff!;
        Assert.NotEmpty(Told(await TurnBackAsync()));
        try
        {
            stance.CutOffAbove(new TideHeight(before.Metres, "noaa/8418150", isRepeated: true));
            await db.SaveChangesAsync(Cancel);
            var section = await TurnBackAsync();
            Assert.Empty(Told(section));
            Assert.Contains("cut off", section.TextContent, StringComparison.Ordinal);
            Assert.Contains("needs checking", section.TextContent, StringComparison.Ordinal);
        }
        finally
        {
            stance.CutOffAbove(new TideHeight(before.Metres, before.StationId, before.IsRepeated));
            await db.SaveChangesAsync(Cancel);
        }
    }

    private static async Task<string> StationAsync(DbContext db) =>
        (await db.Set<Location>().Where(place => place.Slug == "gannet-stairs").Select(place => place.TideStationId).SingleAsync(Cancel))!;

    /// <summary>The highest water of the two days, as the page's month prints it, to a tenth of a metre.</summary>
    private async Task<double> HighestAsync()
    {
        var rows = (await PageAsync()).QuerySelectorAll(".tide-month tbody tr").Where(row => row.QuerySelector("th")!.TextContent.Trim() is "Sat 28" or "Sun 29");
        return rows.SelectMany(row => row.QuerySelectorAll("td time")).Max(time => double.Parse(time.NextElementSibling!.TextContent.Replace('−', '-'), CultureInfo.InvariantCulture));
    }

    /// <summary>Each turn back with the way it belongs to; a way that is the only one has no heading.</summary>
    private static List<(string Way, string Words)> Told(IElement section)
    {
        var told = new List<(string, string)>();
        var way = LotName;
        foreach (var part in section.QuerySelectorAll("h4, .turn-back"))
        {
            if (part.LocalName == "h4") way = part.TextContent;
            else told.Add((way, part.TextContent));
        }

        return told;
    }

    private async Task<IElement> TurnBackAsync() => (await PageAsync()).QuerySelector("#turn-back")!;

    private async Task<IDocument> PageAsync()
    {
        var text = await guide.Client.GetStringAsync(Address, Cancel);
        return await BrowsingContext.New().OpenAsync(response => response.Content(text), Cancel);
    }
}
