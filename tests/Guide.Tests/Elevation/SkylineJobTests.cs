using System.Net;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Elevation;

public sealed class SkylineJobTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private const string Stance = "/coast/halfmoon-light/bog-boardwalk";

    [Fact]
    public async Task A_skyline_is_computed_by_a_job_and_stays_with_where_it_is_from()
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "bog-boardwalk", cancel);
        await site.UploadAsync("N44W068.hgt", MadeFile.Hgt((_, column) => (short)(column < 600 ? 200 : 0)));
        Assert.Equal(HttpStatusCode.Found, (await site.PostAsync($"{Stance}/skyline", "compute", new() { ["Form.OutsideIsSea"] = "true" })).StatusCode);

        var job = await site.EndedAsync(stance.Slug);

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
        var admin = await db.Members.AsNoTracking().FirstAsync(m => m.Role == Role.Admin, cancel);
        await site.Services.GetRequiredService<SkylineQueue>().AskAsync(new SignedIn(Guid.NewGuid(), admin.Id, admin.Name, admin.Email, admin.Role, 2, true, GuideHost.UsualNow), stance.Id, false, cancel);

        var job = await site.EndedAsync(stance.Slug);

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
        var token = await site.TokenAsync($"{Stance}/skyline");
        for (var round = 0; round < 5; round++)
        {
            var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => site.Client.PostAsync($"{Stance}/skyline", new FormUrlEncodedContent(
                new Dictionary<string, string> { ["_handler"] = "compute", ["__RequestVerificationToken"] = token }), cancel)));

            Assert.All(answers, answer => Assert.Equal((HttpStatusCode.Found, $"{Stance}/skyline?asked"), (answer.StatusCode, answer.Headers.Location!.PathAndQuery)));
        }

        Assert.Empty(site.Log.Errors);
    }

    /// <summary>A quarter of the square unmeasured: its share is listed, and what it hides stays unknown in the skyline.</summary>
    [Fact]
    public async Task Void_cells_are_listed_and_stay_unknown()
    {
        var cancel = TestContext.Current.CancellationToken;
        await site.UploadAsync("N44W067.hgt", MadeFile.Hgt((row, column) => row < 600 && column >= 601 ? short.MinValue : (short)(row > 1190 ? 200 : 0)));
        Assert.Contains("24.96 %", WebUtility.HtmlDecode(await site.Client.GetStringAsync("/admin/elevation", cancel)), StringComparison.Ordinal);
        Assert.Contains("67° to 66° west", WebUtility.HtmlDecode(await site.Client.GetStringAsync("/admin/elevation", cancel)), StringComparison.Ordinal);

        await site.PostAsync($"{Stance}/skyline", "compute", new() { ["Form.OutsideIsSea"] = "true" });
        var job = await site.EndedAsync("bog-boardwalk");

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
        await site.UploadAsync("N44W068.hgt", MadeFile.Hgt((_, column) => (short)(column < 600 ? 200 : 0)));

        await site.PostAsync("/coast/halfmoon-light/stack-overlook/skyline", "compute", []);
        var job = await site.EndedAsync("stack-overlook");

        Assert.Equal(SkylineJobState.Failed, job.State);
        Assert.Contains("Hardly a direction could be computed", job.Outcome, StringComparison.Ordinal);
        Assert.Equal(before, (await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "stack-overlook", cancel)).SkylineText);
        await db.ElevationFiles.ExecuteDeleteAsync(cancel);
    }

    /// <summary>Ground far above the recorded eye would wall the stance in: the record or the file is wrong, and nothing is drawn of it.</summary>
    [Fact]
    public async Task Where_the_files_put_the_ground_far_above_the_eye_nothing_is_drawn()
    {
        await site.UploadAsync("N44W067.hgt", MadeFile.Hgt((_, _) => 180));

        await site.PostAsync($"{Stance}/skyline", "compute", new() { ["Form.OutsideIsSea"] = "true" });
        var job = await site.EndedAsync("bog-boardwalk");

        Assert.Equal(SkylineJobState.Failed, job.State);
        Assert.Contains("The files put the ground there at 180 m", job.Outcome, StringComparison.Ordinal);
        await using var db = site.Open();
        await db.ElevationFiles.ExecuteDeleteAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>While the work goes on the page loads itself anew, so that it holds no form; one that came back with a fault does not.</summary>
    [Fact]
    public async Task While_the_work_goes_on_nothing_typed_is_swept_away()
    {
        var cancel = TestContext.Current.CancellationToken;
        const string address = "/coast/halfmoon-light/high-edge/skyline";
        await using var db = site.Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "high-edge", cancel);
        var token = await site.TokenAsync(address);
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
}
