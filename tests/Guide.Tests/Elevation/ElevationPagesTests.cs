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

        SkylineJob? job;
        do job = await db.LatestSkylineJobAsync(stance.Id, cancel);
        while (job is null or { IsOpen: true });

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

        SkylineJob? job;
        do job = await db.LatestSkylineJobAsync(stance.Id, cancel);
        while (job is null or { IsOpen: true });

        Assert.Equal(SkylineJobState.Failed, job.State);
        Assert.Contains("No stored elevation file", job.Outcome, StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> UploadAsync(string name, byte[] bytes)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent("add-elevation"), "_handler" },
            { new StringContent(await TokenAsync("/admin/elevation")), "__RequestVerificationToken" },
            { new ByteArrayContent(bytes), "file", name },
        };
        return await site.Client.PostAsync("/admin/elevation", form);
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

/// <summary>Class fixture: the demo guide on a real port of this machine, where limits and addresses are real, seen by an admin.</summary>
public sealed class LocalDemo(TestCluster cluster) : GuideHost(cluster, withDemo: true, onRealPort: true)
{
    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        await this.SignInAsync(Client, Members.Role.Admin);
    }
}
