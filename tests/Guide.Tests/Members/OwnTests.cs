using System.Net;
using System.Text.Json.Nodes;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>What is kept about somebody is theirs: to take along, to have erased.</summary>
public sealed class OwnTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    [Fact]
    public async Task The_copy_holds_every_row_with_their_number_and_nothing_that_opens_the_account()
    {
        using var nell = new Person(guide);
        await nell.JoinWithCodeAsync("nell@example.org", Role.Admin, "Nell Tarn");
        var (id, place) = await TieAsync("nell@example.org");
        var made = await Person.DocumentAsync(await nell.SendAsync("/admin/members", "invite", ("Form.Email", "friend@example.org"), ("Form.Role", "Member")));
        var token = made.QuerySelector("code.link")!.TextContent.Split('/')[^1];

        var answer = await nell.SendAsync("/account", OwnExport.Address);
        Assert.Equal(("application/json", "no-store, private"), (answer.Content.Headers.ContentType!.MediaType, answer.Headers.CacheControl!.ToString()));
        var text = await answer.Content.ReadAsStringAsync();
        var tables = JsonNode.Parse(text)!["tables"]!.AsObject();

        Assert.Equal(["audit_entries", "invitations", "location_grants", "locations", "member_sessions", "members", "recovery_codes"], tables.Select(t => t.Key).Order());
        Assert.Equal(("nell@example.org", "Nell Tarn", "Admin"), (Of("members", 0, "email"), Of("members", 0, "name"), Of("members", 0, "role")));
        Assert.Equal(Member.RecoveryCodesGiven, tables["recovery_codes"]!.AsArray().Count);
        Assert.Equal((place, id.ToString()), (Of("locations", 0, "slug"), Of("locations", 0, "proposed_by")));
        Assert.Contains("Exported", tables["audit_entries"]!.AsArray().Select(row => (string)row!["act"]!));
        await using var db = guide.Open();
        var member = await db.Members.AsNoTracking().SingleAsync(m => m.Id == id);
        foreach (var secret in new[] { member.PasswordHash, Convert.ToHexString(member.AuthenticatorKey!), Convert.ToHexString(LinkSecret.HashOf(token)), token })
            Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase);

        string? Of(string table, int row, string column) => (string?)tables[table]![row]![column];
    }

    [Fact]
    public async Task Another_site_or_a_visitor_gets_no_copy()
    {
        using var nan = new Person(guide);
        await nan.JoinAsync("nan@example.org");
        await nan.SignInAsync("nan@example.org");
        Assert.Equal(HttpStatusCode.BadRequest, (await nan.SendAsync("/account", OwnExport.Address, ("__RequestVerificationToken", ""))).StatusCode);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await nan.GetAsync(OwnExport.Address)).StatusCode);
        using var visitor = new Person(guide);
        Assert.Equal(SignInAddress.Page, Person.Next(await visitor.PostAsync(OwnExport.Address)));
    }

    [Fact]
    public async Task Erasing_takes_name_and_address_from_the_whole_database()
    {
        using var mab = new Person(guide);
        await mab.JoinWithCodeAsync("mab.orrin@example.org", Role.Warden, "Mab Orrin");
        var (id, _) = await TieAsync("mab.orrin@example.org");
        Assert.NotEmpty(await WhereAsync("mab.orrin@example.org"));
        Assert.NotEmpty(await WhereAsync("Mab Orrin"));

        Assert.Equal(HttpStatusCode.BadRequest, (await mab.SendAsync("/account/erase", "erase", ("Form.IsMeant", ""))).StatusCode);
        Assert.NotEmpty(await WhereAsync("Mab Orrin"));
        Assert.Equal("/about", Person.Next(await mab.SendAsync("/account/erase", "erase", ("Form.IsMeant", "true"))));

        Assert.Empty(await WhereAsync("mab.orrin@example.org"));
        Assert.Empty(await WhereAsync("Mab Orrin"));
        Assert.Equal(SignInAddress.For("/account"), Person.Next(await mab.GetAsync("/account")));
        Assert.Equal(HttpStatusCode.BadRequest, (await mab.SignInAsync("mab.orrin@example.org")).StatusCode);
        await using var db = guide.Open();
        Assert.Equal((0, 0, 0), (await db.MemberSessions.CountAsync(s => s.MemberId == id), await db.Set<RecoveryCode>().CountAsync(c => c.MemberId == id),
            await db.Set<LocationGrant>().CountAsync(g => g.MemberId == id)));
        // What was proposed stays, under a number that names nobody; so does the log.
        Assert.True(await db.Locations.AnyAsync(l => l.ProposedBy == id));
        Assert.True(await db.AuditEntries.AnyAsync(e => e.Act == Act.MemberErased && e.By == id));
    }

    [Fact]
    public async Task The_last_admin_and_a_stale_sign_in_erase_nothing()
    {
        using var ivo = new Person(guide);
        await ivo.JoinWithCodeAsync("ivo@example.org", Role.Admin);
        await using var db = guide.Open();
        await db.Members.Where(m => m.Role == Role.Admin && m.Email != "ivo@example.org").ExecuteUpdateAsync(m => m.SetProperty(one => one.Role, Role.Member));
        var refused = await ivo.SendAsync("/account/erase", "erase", ("Form.IsMeant", "true"));
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("one admin at least", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.True(await db.Members.AnyAsync(m => m.Email == "ivo@example.org"));

        using var una = new Person(guide);
        await una.JoinAsync("una@example.org");
        await una.SignInAsync("una@example.org");
        guide.Clock.Advance(MemberSession.Fresh);
        Assert.Equal(HttpStatusCode.BadRequest, (await una.SendAsync("/account/erase", "erase", ("Form.IsMeant", "true"))).StatusCode);
        Assert.True(await db.Members.AnyAsync(m => m.Email == "una@example.org"));
    }

    [Fact]
    public async Task One_chooses_the_name_the_others_see()
    {
        using var kit = new Person(guide);
        await kit.JoinAsync("kit@example.org", name: "Katherine Long");
        await kit.SignInAsync("kit@example.org");
        Assert.Equal(HttpStatusCode.Redirect, (await kit.SendAsync("/account", "name", ("Form.Name", "Kit of the north shore"))).StatusCode);
        Assert.Contains("Kit of the north shore", (await kit.ReadAsync("/")).QuerySelector(".masthead nav")!.TextContent, StringComparison.Ordinal);
        foreach (var bad in new[] { "", "  ", new string('k', Member.LongestName + 1), "Kit\r\nBcc: all@example.org" })
            Assert.Equal(HttpStatusCode.BadRequest, (await kit.SendAsync("/account", "name", ("Form.Name", bad))).StatusCode);
    }

    /// <summary>Makes them proposer of one place and named for another, and leaves an invitation with their address.</summary>
    private async Task<(Guid Id, string Place)> TieAsync(string email)
    {
        await using var db = guide.Open();
        var id = await db.Members.Where(m => m.Email == email).Select(m => m.Id).SingleAsync();
        var place = await db.Locations.Include(l => l.Grants).OrderBy(l => l.Id).FirstAsync(l => l.Visibility == Visibility.Public && l.ProposedBy == null);
        place.ShowTo(Visibility.Public, id).Grant(id);
        db.Add(Invitation.Make(Role.Member, guide.Clock.GetCurrentInstant(), Invitations.Usual, by: Guid.NewGuid(), email: email).Invitation);
        await db.SaveChangesAsync();
        return (id, place.Slug);
    }

    /// <summary>Every table in which a text stands in some row, whatever the column.</summary>
    private async Task<IReadOnlyList<string>> WhereAsync(string text)
    {
        await using var connection = new NpgsqlConnection(guide.Database.AppConnection);
        await connection.OpenAsync();
        await using var db = guide.Open();
        List<string> found = [];
        foreach (var table in db.Model.GetEntityTypes().Select(e => e.GetTableName()!).Distinct())
        {
#pragma warning disable CA2100 // The table's name comes from the model.
            await using var command = new NpgsqlCommand($"""SELECT count(*) FROM "{table}" t WHERE position($1 in t::text) > 0""", connection) { Parameters = { new() { Value = text } } };
#pragma warning restore CA2100
            if ((long)(await command.ExecuteScalarAsync())! > 0)
                found.Add(table);
        }

        return found;
    }
}
