using AngleSharp.Html.Parser;
using Foreshore.Guide.Keeping;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Outlooks;
using Foreshore.Guide.Support;
using Foreshore.Guide.Tides;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

/// <summary>Where the season table and the good dates count tide and the way back, and what they say where they cannot.</summary>
public class PictureUseTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private static readonly Instant Now = Instant.FromUtc(2026, 11, 25, 12, 0);

    [Fact]
    public void Dry_ground_without_a_wish_asks_nothing_of_the_tide()
    {
        var use = Use(new Shore().By(Shore.Path()));

        Assert.Null(use.Missing);
        Assert.Equal([UseAsk.Way], use.Asks);
    }

    [Fact]
    public void A_wish_without_a_station_leaves_light_alone_and_says_why()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Picture.WishTide(TideWish.About(TideTurn.LowWater, -60, 60));

        var use = Use(shore);

        Assert.Null(use.Over(Now, Now + Duration.FromDays(3), shore.Sky));
        Assert.Equal("Light alone: no tide station has been chosen for this place, so the tide and the way back are not in it.", use.Words);
    }

    [Fact]
    public async Task A_picture_below_a_tide_limit_marks_its_hours_and_tells_turn_back_beside_each_date()
    {
        var page = await PageAsync("/coast/gannet-stairs/lower-stair/two-stacks");
        var dates = page.QuerySelector("#dates")!.TextContent;

        Assert.NotEmpty(page.QuerySelectorAll(".ink-season .ink-cross"));
        Assert.Contains("with the tide on half of the days", page.QuerySelector(".ink-season table")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("These minutes have the wanted light and tide", dates, StringComparison.Ordinal);
        Assert.Contains("The sea is left out", dates, StringComparison.Ordinal);
        Assert.Contains(TideWords.Disclaimer, dates, StringComparison.Ordinal);
        Assert.Matches(@"tide −?\d\.\d m to −?\d\.\d m; .*turn back \d\d:\d[05]", dates);
    }

    [Fact]
    public async Task A_height_that_needs_checking_leaves_light_alone_and_says_so()
    {
        var page = await PageAsync("/coast/anvil-ledges/middle-trench/black-into-pink");

        Assert.Empty(page.QuerySelectorAll(".ink-season .ink-cross"));
        Assert.Contains("needs checking, so the tide and the way back are not in it", page.QuerySelector("#season")!.TextContent, StringComparison.Ordinal);
    }

    private static PictureUse Use(Shore shore) =>
        PictureUse.Of(new StanceView(new PlaceView(shore.Place, shore.Date, ((CountryCautions?)null).ToPrint()), shore.Stance), shore.Picture, new TideCurves(Shelf.Empty()), Now);

    private async Task<AngleSharp.Html.Dom.IHtmlDocument> PageAsync(string address) =>
        new HtmlParser().ParseDocument(await guide.Client.GetStringAsync(address));
}
