using System.Net;
using System.Text.RegularExpressions;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Elevation;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Tides;

public sealed partial class StationsPageTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_its_token_a_form_changes_nothing()
    {
        var answer = await site.Client.PostAsync("/admin/tides", new FormUrlEncodedContent(
            [new("_handler", "assign"), new("Assigning.Place", "tern-bank"), new("Assigning.Station", "noaa/8410140")]), Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("noaa/8411060", (await PlaceAsync("tern-bank")).TideStationId);
    }

    [Fact]
    public async Task Stations_are_searched_for_and_a_place_shows_those_near_it()
    {
        var found = await PageAsync("/admin/tides?q=%C3%85lesund");
        Assert.Contains("kartverket/AES", found, StringComparison.Ordinal);
        Assert.Contains("No station's name", await PageAsync("/admin/tides?q=zzzzzz"), StringComparison.Ordinal);

        var near = await PageAsync("/admin/tides?place=halfmoon-light");
        Assert.Contains("value=\"noaa/8410140\" checked", near, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_takes_another_station_and_its_heights_need_checking()
    {
        const string address = "/admin/tides?place=gannet-stairs";
        var before = await PlaceAsync("gannet-stairs");
        Assert.Equal("noaa/8411060", before.TideStationId);

        Dictionary<string, string> fields = new() { ["Assigning.Place"] = "gannet-stairs", ["Assigning.Station"] = "noaa/8412581", ["Assigning.HighMinutes"] = "-3", ["Assigning.HighRatio"] = "1" };
        var warned = await PostAsync(address, "assign", fields);
        // Over 25 km away: it is told first.
        Assert.Equal(HttpStatusCode.BadRequest, warned.StatusCode);
        Assert.Contains("across a headland", await TextAsync(warned), StringComparison.Ordinal);
        Assert.Equal("noaa/8411060", (await PlaceAsync("gannet-stairs")).TideStationId);

        fields["Assigning.AllTheSame"] = "true";
        // The levels are looked at before anything changes, and once.
        var looked = await PostAsync(address, "assign", fields);
        Assert.Equal(HttpStatusCode.OK, looked.StatusCode);
        var preview = await TextAsync(looked);
        foreach (var words in (string[])["Highest this year", "Lowest this year", "Next high water", "noaa/8411060", "noaa/8412581", "need", "Lower stair"])
            Assert.Contains(words, preview, StringComparison.Ordinal);
        Assert.Equal("noaa/8411060", (await PlaceAsync("gannet-stairs")).TideStationId);

        fields["Assigning.Looked"] = Looked().Match(preview).Groups[1].Value;
        var alone = await PostAsync(address, "assign", fields);
        Assert.Equal(HttpStatusCode.BadRequest, alone.StatusCode);
        Assert.Contains("You are the only warden", await TextAsync(alone), StringComparison.Ordinal);
        fields["Assigning.Reason"] = "The nearer gauge was moved";
        Assert.Equal("/admin/tides?changed#places", (await PostAsync(address, "assign", fields)).Headers.Location!.OriginalString.Replace(site.Client.BaseAddress!.GetLeftPart(UriPartial.Authority), "", StringComparison.Ordinal));
        var after = await PlaceAsync("gannet-stairs");
        Assert.Equal(("noaa/8412581", -3, 1.852), (after.TideStationId, after.TideCorrections!.HighWaterMinutes, after.MeanSeaLevelAboveChartDatumMetres));
        Assert.Contains("needs checking", await PageAsync("/coast/gannet-stairs/lower-stair"), StringComparison.Ordinal);
        Assert.Contains("3 min earlier", await PageAsync("/coast/gannet-stairs/tide"), StringComparison.Ordinal);

        await using var db = site.Open();
        var revision = await db.Revisions.SingleAsync(r => r.Matter == Matter.Tide && r.TargetId == before.Id, Cancel);
        Assert.Equal(("noaa/8411060", "noaa/8412581", true), (revision.Changes.Single(c => c.Field == "station").Before, revision.Changes.Single(c => c.Field == "station").After, revision.IsSingleHanded));
        Assert.Contains(await db.AuditEntries.ToListAsync(Cancel), entry => entry.Act == Act.ProposalAccepted && entry.Words.StartsWith("place’s tide", StringComparison.Ordinal) && entry.Words.EndsWith("single-handed", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Assigning.Other", "nobody/here", "There is no station")]
    [InlineData("Assigning.HighMinutes", "soon", "is not a number")]
    [InlineData("Assigning.HighRatio", "0", "from 0.1 to 10")]
    [InlineData("Assigning.MeanSeaLevel", "99", "from -2 to 12")]
    public async Task What_a_place_cannot_take_is_said_beside_its_field(string field, string value, string words)
    {
        var answer = await PostAsync("/admin/tides?place=ketch-point", "assign",
            new() { ["Assigning.Place"] = "ketch-point", ["Assigning.Station"] = "noaa/8411060", ["Assigning.AllTheSame"] = "true", [field] = value });

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var text = await TextAsync(answer);
        Assert.Contains("There is a problem", text, StringComparison.Ordinal);
        Assert.Contains(words, text, StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> PostAsync(string address, string handler, Dictionary<string, string> fields)
    {
        fields["_handler"] = handler;
        fields["__RequestVerificationToken"] = await TokenAsync(address.Contains('?', StringComparison.Ordinal) ? address : "/admin/tides/new");
        return await site.Client.PostAsync(address, new FormUrlEncodedContent(fields), Cancel);
    }

    private async Task<Location> PlaceAsync(string slug)
    {
        await using var db = site.Open();
        return (await db.LocationAsync(slug, new Reader(Role.Admin), Parts.None, cancel: Cancel))!;
    }

    private async Task<string> PageAsync(string address) => WebUtility.HtmlDecode(await site.Client.GetStringAsync(address, Cancel));

    private static async Task<string> TextAsync(HttpResponseMessage answer) => WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));

    private async Task<string> TokenAsync(string address) => Token().Match(await site.Client.GetStringAsync(address, Cancel)).Groups[1].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex Token();

    [GeneratedRegex("name=\"Assigning.Looked\" value=\"([^\"]+)\"")]
    private static partial Regex Looked();
}
