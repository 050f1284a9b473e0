using System.Net;
using System.Text.RegularExpressions;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Elevation;

/// <summary>What changes what others see leaves a line in the log, by whom; a skyline can be read beside the one before and brought back.</summary>
public sealed class QuietActsTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private const string Address = "/coast/halfmoon-light/bog-boardwalk/skyline";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Height_files_are_logged_when_stored_and_when_deleted()
    {
        Assert.Equal(HttpStatusCode.Found, (await site.UploadAsync("N45W070.hgt", MadeFile.Hgt((_, _) => 5))).StatusCode);
        var handler = Regex.Match(await site.Client.GetStringAsync("/admin/elevation", Cancel), "value=\"(delete-\\d+)\"").Groups[1].Value;
        Assert.Equal(HttpStatusCode.Found, (await site.PostAsync("/admin/elevation", handler, [])).StatusCode);

        await using var db = site.Open();
        var lines = await db.AuditEntries.Where(e => e.Words == "N45W070.hgt").OrderBy(e => e.Id).ToListAsync(Cancel);
        Assert.Equal([Act.ElevationStored, Act.ElevationDeleted], lines.Select(line => line.Act));
        Assert.All(lines, line => Assert.NotNull(line.By));
    }

    [Fact]
    public async Task A_skyline_is_logged_kept_beside_the_one_before_and_brought_back()
    {
        await using var db = site.Open();
        var before = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "bog-boardwalk", Cancel);
        Assert.Equal(HttpStatusCode.Found, (await site.PostAsync(Address, "draw", new() { ["Form.Rows"] = "20 3 land\n80 0 sea\n200 1.5 land", ["Form.Bearings"] = "true" })).StatusCode);

        var revision = await db.Revisions.SingleAsync(r => r.Matter == Matter.Stance && r.TargetId == before.Id, Cancel);
        var change = Assert.Single(revision.Changes);
        Assert.Equal(("skyline", before.SkylineText ?? "", "20 3 land; 80 0 sea; 200 1.5 land"), (change.Field, change.Before, change.After));
        Assert.NotNull((await db.AuditEntries.SingleAsync(e => e.Act == Act.SkylineDrawn, Cancel)).By);

        var admin = await db.Members.AsNoTracking().FirstAsync(m => m.Role == Role.Admin, Cancel);
        var signedIn = new SignedIn(Guid.NewGuid(), admin.Id, admin.Name, admin.Email, Role.Admin, 2, true, site.Clock.GetCurrentInstant());
        Assert.True((await site.Services.GetRequiredService<Reviewing>().RestoreAsync(signedIn, revision.Id, "It was drawn for another stance", Cancel)).IsDone);
        Assert.Equal(before.SkylineText, (await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == "bog-boardwalk", Cancel)).SkylineText);
    }

    [Fact]
    public async Task A_computation_is_logged_by_whom_it_was_asked()
    {
        Assert.Equal(HttpStatusCode.Found, (await site.PostAsync("/coast/ketch-point/the-ribs/skyline", "compute", [])).StatusCode);

        await using var db = site.Open();
        Assert.NotNull((await db.AuditEntries.SingleAsync(e => e.Act == Act.SkylineAsked, Cancel)).By);
    }
}
