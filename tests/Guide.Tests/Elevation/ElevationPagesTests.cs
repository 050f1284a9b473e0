using System.Net;
using System.Text.RegularExpressions;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Elevation;

public sealed partial class ElevationPagesTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private const string Stance = "/coast/halfmoon-light/bog-boardwalk";

    [Fact]
    public async Task A_file_is_stored_listed_replaced_and_deleted()
    {
        Assert.Contains("No elevation file is stored", await site.Client.GetStringAsync("/admin/elevation"), StringComparison.Ordinal);

        for (var round = 0; round < 2; round++)
            Assert.Equal(HttpStatusCode.Found, (await UploadAsync("N44W068.hgt", MadeFile.Hgt((_, column) => (short)(column / 10)))).StatusCode);

        var page = WebUtility.HtmlDecode(await site.Client.GetStringAsync("/admin/elevation"));
        Assert.Single(Regex.Matches(page, "scope=\"row\">N44W068.hgt"));
        Assert.Contains("44° to 45° north", page, StringComparison.Ordinal);

        var handler = Regex.Match(page, "value=\"(delete-\\d+)\"").Groups[1].Value;
        Assert.Equal(HttpStatusCode.Found, (await PostAsync("/admin/elevation", handler, [])).StatusCode);
        await using var db = site.Open();
        Assert.Empty(await db.ElevationFiles.ToListAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_bad_file_is_refused_beside_its_field_and_nothing_is_stored()
    {
        var answer = await UploadAsync("N91W068.hgt", [1, 2, 3]);
        var page = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("There is a problem", page, StringComparison.Ordinal);
        Assert.Contains("N91 is no southern edge", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, (await PostAsync("/admin/elevation", "add-elevation", [])).StatusCode);
        await using var db = site.Open();
        Assert.False(await db.ElevationFiles.AnyAsync(f => f.Name.StartsWith("N91"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_skyline_is_drawn_by_hand_with_the_compass_reckoned_in()
    {
        Assert.Equal(HttpStatusCode.Found, (await PostAsync($"{Stance}/skyline", "draw", new()
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
        var answer = await PostAsync($"{Stance}/skyline", "draw", new() { ["Form.Rows"] = rows, ["Form.Bearings"] = bearings, ["Form.ReadOn"] = readOn });
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync());

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, page, StringComparison.Ordinal);
        Assert.Contains(rows.Split('\n')[0], page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_skyline_is_computed_by_a_job_and_stays_with_where_it_is_from()
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "bog-boardwalk", cancel);
        await UploadAsync("N44W068.hgt", MadeFile.Hgt((_, column) => (short)(column < 600 ? 200 : 0)));
        Assert.Equal(HttpStatusCode.Found, (await PostAsync($"{Stance}/skyline", "compute", new() { ["Form.OutsideIsSea"] = "true" })).StatusCode);

        var job = await EndedAsync(stance.Slug);

        Assert.Equal((SkylineJobState.Done, 100), (job.State, job.PercentDone));
        var drawn = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Id == stance.Id, cancel);
        Assert.StartsWith("Computed from N44W068.hgt", drawn.SkylineOrigin, StringComparison.Ordinal);
        Assert.Equal(SkylineKind.Land, drawn.Skyline.KindAt(Bearing.FromDegrees(270)));
        Assert.Contains("Computed from N44W068.hgt", await site.Client.GetStringAsync(Stance), StringComparison.Ordinal);
        await db.ElevationFiles.ExecuteDeleteAsync(cancel);
    }

    [Fact]
    public async Task A_job_that_a_stopped_site_left_open_is_told_as_not_done()
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "lower-stair", cancel);
        db.SkylineJobs.Add(new SkylineJob(stance.Id, false, GuideHost.UsualNow));
        await db.SaveChangesAsync(cancel);

        await site.Services.GetRequiredService<SkylineQueue>().SweepAsync(cancel);

        var left = await db.LatestSkylineJobAsync(stance.Id, cancel);
        Assert.Equal((SkylineJobState.Failed, SkylineJob.Interrupted), (left!.State, left.Outcome));
    }

    [Fact]
    public async Task Without_a_file_near_the_job_says_what_to_do()
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().FirstAsync(v => v.Slug != "bog-boardwalk" && v.Slug != "lower-stair", cancel);
        await db.ElevationFiles.ExecuteDeleteAsync(cancel);
        await site.Services.GetRequiredService<SkylineQueue>().AskAsync(stance.Id, false, cancel);

        var job = await EndedAsync(stance.Slug);

        Assert.Equal(SkylineJobState.Failed, job.State);
        Assert.Contains("No stored elevation file", job.Outcome, StringComparison.Ordinal);
    }

    /// <summary>Asked for by many in one moment: all get the answer that the second gets, and none a fault of the site.</summary>
    [Fact]
    public async Task Asking_at_once_is_asking_once()
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var db = site.Open();
        await db.ElevationFiles.ExecuteDeleteAsync(cancel);
        var token = await TokenAsync($"{Stance}/skyline");
        for (var round = 0; round < 5; round++)
        {
            var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => site.Client.PostAsync($"{Stance}/skyline", new FormUrlEncodedContent(
                new Dictionary<string, string> { ["_handler"] = "compute", ["__RequestVerificationToken"] = token }), cancel)));

            Assert.All(answers, answer => Assert.Equal((HttpStatusCode.Found, $"{Stance}/skyline?asked"), (answer.StatusCode, answer.Headers.Location!.PathAndQuery)));
        }

        Assert.Empty(site.Log.Errors);
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
        var answer = await UploadAsync(name, what switch
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
        var tooLarge = await UploadAsync("N44W068.hgt", new byte[UploadedFile.MostBytesPosted + 1]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, tooLarge.StatusCode);
        Assert.Contains("larger than this page takes, 64 MB at a time", await tooLarge.Content.ReadAsStringAsync(), StringComparison.Ordinal);

        foreach (var (address, handler) in new[] { ("/admin/elevation", "add-elevation"), ($"{Stance}/skyline", "draw"), ($"{Stance}/skyline", "compute") })
        {
            var without = await site.Client.PostAsync(address, new FormUrlEncodedContent(new Dictionary<string, string> { ["_handler"] = handler, ["Form.Rows"] = "20 3 land" }));
            Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
            Assert.Contains("That form could not be taken", await without.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }

    /// <summary>A quarter of the square unmeasured: its share is listed, and what it hides stays unknown in the skyline.</summary>
    [Fact]
    public async Task Void_cells_are_listed_and_stay_unknown()
    {
        var cancel = TestContext.Current.CancellationToken;
        await UploadAsync("N44W067.hgt", MadeFile.Hgt((row, column) => row < 600 && column >= 601 ? short.MinValue : (short)(row > 1190 ? 200 : 0)));
        Assert.Contains("24.96 %", WebUtility.HtmlDecode(await site.Client.GetStringAsync("/admin/elevation", cancel)), StringComparison.Ordinal);
        Assert.Contains("67° to 66° west", WebUtility.HtmlDecode(await site.Client.GetStringAsync("/admin/elevation", cancel)), StringComparison.Ordinal);

        await PostAsync($"{Stance}/skyline", "compute", new() { ["Form.OutsideIsSea"] = "true" });
        var job = await EndedAsync("bog-boardwalk");

        Assert.Equal(SkylineJobState.Done, job.State);
        Assert.Contains("per cent of the circle stay unknown", job.Outcome, StringComparison.Ordinal);
        await using var db = site.Open();
        var drawn = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "bog-boardwalk", cancel);
        Assert.Equal(SkylineKind.Unknown, drawn.Skyline.KindAt(Bearing.FromDegrees(80)));
        Assert.NotEqual(SkylineKind.Unknown, drawn.Skyline.KindAt(Bearing.FromDegrees(225)));
        await db.ElevationFiles.ExecuteDeleteAsync(cancel);
    }

    [Fact]
    public async Task Where_every_direction_leaves_the_files_the_skyline_stays_as_it_was_and_the_words_say_what_to_do()
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var db = site.Open();
        var before = (await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "stack-overlook", cancel)).SkylineText;
        // The stance lies a little to the east of the square.
        await UploadAsync("N44W068.hgt", MadeFile.Hgt((_, column) => (short)(column < 600 ? 200 : 0)));

        await PostAsync("/coast/halfmoon-light/stack-overlook/skyline", "compute", []);
        var job = await EndedAsync("stack-overlook");

        Assert.Equal(SkylineJobState.Failed, job.State);
        Assert.Contains("Hardly a direction could be computed", job.Outcome, StringComparison.Ordinal);
        Assert.Equal(before, (await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "stack-overlook", cancel)).SkylineText);
        await db.ElevationFiles.ExecuteDeleteAsync(cancel);
    }

    /// <summary>While the work goes on the page loads itself anew, so that it holds no form; one that came back with a fault does not.</summary>
    [Fact]
    public async Task While_the_work_goes_on_nothing_typed_is_swept_away()
    {
        var cancel = TestContext.Current.CancellationToken;
        const string address = "/coast/halfmoon-light/high-edge/skyline";
        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "high-edge", cancel);
        var token = await TokenAsync(address);
        db.SkylineJobs.Add(new SkylineJob(stance.Id, false, GuideHost.UsualNow));
        await db.SaveChangesAsync(cancel);

        var waiting = await site.Client.GetStringAsync(address, cancel);
        var faulty = await site.Client.PostAsync(address, new FormUrlEncodedContent(new Dictionary<string, string> { ["_handler"] = "draw", ["__RequestVerificationToken"] = token, ["Form.Rows"] = "20 3 rock" }), cancel);
        var page = await faulty.Content.ReadAsStringAsync(cancel);

        Assert.Contains("waiting for its turn", waiting, StringComparison.Ordinal);
        Assert.Contains("http-equiv=\"refresh\"", waiting, StringComparison.Ordinal);
        Assert.DoesNotContain("<textarea", waiting, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.BadRequest, faulty.StatusCode);
        Assert.DoesNotContain("http-equiv=\"refresh\"", page, StringComparison.Ordinal);
        Assert.Contains("20 3 rock", page, StringComparison.Ordinal);
        await db.SkylineJobs.Where(j => j.VantagePointId == stance.Id).ExecuteDeleteAsync(cancel);
    }

    /// <summary>The latest job of a stance once it has ended.</summary>
    private async Task<SkylineJob> EndedAsync(string slug)
    {
        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == slug, TestContext.Current.CancellationToken);
        SkylineJob? job;
        do job = await db.LatestSkylineJobAsync(stance.Id, TestContext.Current.CancellationToken);
        while (job is null or { IsOpen: true });
        return job;
    }

    private async Task<HttpResponseMessage> UploadAsync(string name, byte[] bytes)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent("add-elevation"), "_handler" },
            { new StringContent(await TokenAsync("/admin/elevation")), "__RequestVerificationToken" },
            { new ByteArrayContent(bytes), "file", name },
        };
        using var post = new HttpRequestMessage(HttpMethod.Post, "/admin/elevation") { Content = form };
        // What is too large is refused by its announced length, before all of it is sent.
        post.Headers.ExpectContinue = true;
        return await site.Client.SendAsync(post);
    }

    private async Task<HttpResponseMessage> PostAsync(string address, string handler, Dictionary<string, string> fields)
    {
        fields["_handler"] = handler;
        fields["__RequestVerificationToken"] = await TokenAsync(address);
        return await site.Client.PostAsync(address, new FormUrlEncodedContent(fields));
    }

    private async Task<string> TokenAsync(string address) =>
        Token().Match(await site.Client.GetStringAsync(address)).Groups[1].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
