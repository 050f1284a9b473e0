using System.Net;
using System.Text.RegularExpressions;
using Foreshore.Almanac.Earth;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Elevation;

public sealed class ElevationPagesTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private const string Stance = "/coast/halfmoon-light/bog-boardwalk";

    [Fact]
    public async Task A_file_is_stored_listed_replaced_and_deleted()
    {
        Assert.Contains("No elevation file is stored", await site.Client.GetStringAsync("/admin/elevation"), StringComparison.Ordinal);

        for (var round = 0; round < 2; round++)
            Assert.Equal(HttpStatusCode.Found, (await site.UploadAsync("N44W068.hgt", MadeFile.Hgt((_, column) => (short)(column / 10)))).StatusCode);

        var page = WebUtility.HtmlDecode(await site.Client.GetStringAsync("/admin/elevation"));
        Assert.Single(Regex.Matches(page, "scope=\"row\">N44W068.hgt"));
        Assert.Contains("44° to 45° north", page, StringComparison.Ordinal);

        var handler = Regex.Match(page, "value=\"(delete-\\d+)\"").Groups[1].Value;
        Assert.Equal(HttpStatusCode.Found, (await site.PostAsync("/admin/elevation", handler, [])).StatusCode);
        await using var db = site.Open();
        Assert.Empty(await db.ElevationFiles.ToListAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_bad_file_is_refused_beside_its_field_and_nothing_is_stored()
    {
        var answer = await site.UploadAsync("N91W068.hgt", [1, 2, 3]);
        var page = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("There is a problem", page, StringComparison.Ordinal);
        Assert.Contains("N91 is no southern edge", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await site.PostAsync("/admin/elevation", "add-elevation", [])).StatusCode);
        await using var db = site.Open();
        Assert.False(await db.ElevationFiles.AnyAsync(f => f.Name.StartsWith("N91"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_skyline_is_drawn_by_hand_with_the_compass_reckoned_in()
    {
        Assert.Equal(HttpStatusCode.Found, (await site.PostAsync($"{Stance}/skyline", "draw", new()
        {
            ["Form.Rows"] = "20 3 land\n80 0 sea\n200 1.5 land",
            ["Form.Bearings"] = "compass",
            ["Form.ReadOn"] = "2026-11-20",
        })).StatusCode);

        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "bog-boardwalk", TestContext.Current.CancellationToken);
        var declination = Math.Round(MagneticField.On(new(2026, 11, 20), stance.Position)!.Value.DeclinationDegrees, 1);
        Assert.Equal(20 + declination, stance.Skyline.Points.Min(p => p.AzimuthDegrees), 0.011);
        Assert.Contains("WMM2025, 20 Nov 2026", stance.SkylineOrigin, StringComparison.Ordinal);
        Assert.Contains("Taken on the spot with a compass", await site.Client.GetStringAsync(Stance), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("20 3 land\n20 4 land", "true", "2026-11-20", "share the azimuth 20")]
    [InlineData("20 three land", "true", "2026-11-20", "line 1")]
    [InlineData("20 3 land\n400 4 land", "true", "2026-11-20", "line 2")]
    [InlineData("20 3,5 land", "true", "2026-11-20", "decimal point")]
    [InlineData("20 3 rock", "true", "2026-11-20", "none of land, sea, unknown")]
    [InlineData("20 3", "true", "2026-11-20", "2 parts")]
    [InlineData("20 3 land", "compass", "", "day of the reading")]
    [InlineData("20 3 land", "compass", "2031-01-01", "outside its years")]
    public async Task A_bad_drawing_comes_back_with_words_and_what_was_typed(string rows, string bearings, string readOn, string words)
    {
        var answer = await site.PostAsync($"{Stance}/skyline", "draw", new() { ["Form.Rows"] = rows, ["Form.Bearings"] = bearings, ["Form.ReadOn"] = readOn });
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, page, StringComparison.Ordinal);
        Assert.Contains(rows.Split('\n')[0], page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("truncated", "N44W068.hgt", "cut short")]
    [InlineData("swapped", "N44W068.hgt", "wrong way round")]
    [InlineData("lying name", "N44W168.tif", "neither a height file")]
    [InlineData("lying header", "land.tif", "at most")]
    [InlineData("only voids", "N44W068.hgt", "only voids")]
    [InlineData("zip bomb", "N44W068.hgt.zip", "more than")]
    [InlineData("long", "N44W068.hgt", "larger than 64 MB")]
    public async Task A_file_that_is_not_what_it_says_is_refused_beside_its_field(string what, string name, string words)
    {
        await using var db = site.Open();
        var before = await db.ElevationFiles.CountAsync(TestContext.Current.CancellationToken);
        var answer = await site.UploadAsync(name, what switch
        {
            "truncated" => MadeFile.Hgt((_, _) => 5)[..^100],
            "swapped" => MadeFile.Hgt((row, column) => (short)(100 + row / 30 + column / 40), isSwapped: true),
            "lying name" => MadeFile.Hgt((_, _) => 5),
            "lying header" => MadeFile.LyingTiff(),
            "only voids" => MadeFile.Hgt((_, _) => short.MinValue),
            "zip bomb" => MadeFile.Zip(("N44W068.hgt", new byte[40_000_000])),
            _ => new byte[UploadedFile.MostBytes + 1],
        });
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, Regex.Match(page, "id=\"file-fault\".*?</p>", RegexOptions.Singleline).Value, StringComparison.Ordinal);
        Assert.Equal(before, await db.ElevationFiles.CountAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_form_larger_than_the_page_takes_and_one_without_its_token_are_refused_in_words()
    {
        var tooLarge = await site.UploadAsync("N44W068.hgt", new byte[UploadedFile.MostBytesPosted + 1]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, tooLarge.StatusCode);
        Assert.Contains("larger than this page takes, 64 MB at a time", await tooLarge.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        foreach (var (address, handler) in new[] { ("/admin/elevation", "add-elevation"), ($"{Stance}/skyline", "draw"), ($"{Stance}/skyline", "compute") })
        {
            var without = await site.Client.PostAsync(address, new FormUrlEncodedContent(new Dictionary<string, string> { ["_handler"] = handler, ["Form.Rows"] = "20 3 land" }));
            Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
            Assert.Contains("That form could not be taken", await without.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }
}
