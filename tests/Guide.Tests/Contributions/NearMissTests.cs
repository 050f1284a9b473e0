using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>A near miss with the whole database in hand: nothing leads from it to whoever told of it.</summary>
public sealed class NearMissTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private readonly Club club = new(guide);

    [Fact]
    public async Task Only_harm_or_a_cut_way_closes_and_the_rest_is_a_note_that_caps_at_borderline()
    {
        using var member = new Person(guide);
        await member.BecomeAsync(Role.Member);
        const string Address = "/contribute/near-miss?place=farrow-harbour";
        var unanswered = await Person.DocumentAsync(await member.SendAsync(Address, "near-miss", ("f.text", "Slipped on the weed, caught the rail.")));
        Assert.Contains("What came of it?", unanswered.QuerySelector(".error-summary")!.TextContent, StringComparison.Ordinal);

        var told = Person.Next(await member.SendAsync(Address, "near-miss", ("f.harm", "None"), ("f.text", "Slipped on the weed, caught the rail.")))!;

        Assert.EndsWith("?reported", told, StringComparison.Ordinal);
        await using var db = club.Open();
        var note = await db.HazardNotes.SingleAsync(n => n.IsNearMiss);
        Assert.Equal((true, false, true, (Guid?)null, (NodaTime.Instant?)null), (note.IsSevere, note.KeepsOff, note.Stands, note.ReportedBy, note.ReportedAt));
        Assert.False(await db.Closures.AnyAsync(c => c.Reason.Contains("Slipped on the weed")));
        Assert.Contains("Near miss: Slipped on the weed", (await member.ReadAsync("/coast/farrow-harbour")).QuerySelector(".stop-bar")!.TextContent, StringComparison.Ordinal);

        Assert.EndsWith("?closed", Person.Next(await member.SendAsync("/contribute/near-miss?place=lantern-island", "near-miss", ("f.harm", "WaterReachedSomebody"), ("f.text", "Harm: WaterReachedSomebody.")))!, StringComparison.Ordinal);
        Assert.True(await db.Closures.AnyAsync(c => c.Reason == "Harm: WaterReachedSomebody."));
    }

    [Fact]
    public async Task With_the_database_in_hand_nothing_leads_to_the_teller()
    {
        var members = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => club.SomebodyAsync(Role.Member, $"Teller {i}")));
        var warden = await club.SomebodyAsync(Role.Warden);
        await CloseAsync(warden, "One before");
        var form = Guid.NewGuid();
        Assert.True((await club.Warding.NearMissAsync(members[3], "tern-bank", form, (_, today) => Closure.AfterNearMiss(today, "A green one over the pavilion bank.", form), default)).IsDone);
        await CloseAsync(warden, "One after");

        var tables = await TablesAsync();
        var closure = tables["closures"].Single(row => row.Text.Contains("A green one over", StringComparison.Ordinal));
        // No time finer than the day stands in it.
        Assert.DoesNotContain(JsonDocument.Parse(closure.Text).RootElement.EnumerateObject(), field => field.Name.EndsWith("_at", StringComparison.Ordinal) && field.Value.ValueKind != JsonValueKind.Null);
        // No other row was written in its transaction.
        Assert.Empty(tables.SelectMany(table => table.Value.Select(row => (table.Key, row.Transaction))).Where(row => row.Transaction == closure.Transaction).Skip(1));
        // Its number stands in no sequence with others whose times are known.
        await using var db = club.Open();
        var numbers = await db.Closures.Where(c => c.Reason == "One before" || c.Reason == "One after").Select(c => c.Id).ToListAsync();
        var number = (await db.Closures.SingleAsync(c => c.Reason == "A green one over the pavilion bank.")).Id;
        Assert.Equal(numbers.Min() + 1, numbers.Max());
        Assert.True(number < 0);
        // No number, name or hash of any member, under any key that lies in the database, stands beside it or anywhere else since.
        var keys = tables.SelectMany(table => table.Value).SelectMany(row => Blobs(row.Text)).Append([]).DistinctBy(Convert.ToHexString).ToList();
        var digests = members.SelectMany(who => keys.SelectMany(key => Spellings(who).SelectMany(text => (byte[][])[HMACSHA256.HashData(key, text), SHA256.HashData([.. key, .. text]), SHA256.HashData([.. text, .. key])]))).Select(Convert.ToHexString).ToHashSet();
        var kept = tables.SelectMany(table => table.Value).SelectMany(row => Blobs(row.Text)).Select(Convert.ToHexString);
        Assert.DoesNotContain(kept, digests.Contains);
        Assert.All(members, who => Assert.DoesNotContain(tables.Where(table => table.Key != "members").SelectMany(table => table.Value), row => row.Text.Contains(who.MemberId.ToString(), StringComparison.OrdinalIgnoreCase) || row.Text.Contains(who.Name, StringComparison.Ordinal)));
        Assert.DoesNotContain(tables.Keys, table => table.StartsWith("near_miss", StringComparison.Ordinal));
        Assert.DoesNotContain(guide.Log.Errors, line => members.Any(who => line.Contains(who.MemberId.ToString(), StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public async Task Once_the_day_is_over_its_near_misses_are_written_together_and_the_tallies_are_gone()
    {
        var members = await Task.WhenAll(Enumerable.Range(0, 3).Select(i => club.SomebodyAsync(Role.Member, $"Late {i}")));
        foreach (var member in members)
        {
            var form = Guid.NewGuid();
            Assert.True((await club.Warding.NearMissAsync(member, "sorrel-holm", form, (_, today) => Closure.AfterNearMiss(today, "Late, and the bar was covered.", form), default)).IsDone);
        }
        Assert.Equal(3, (await LateAsync()).Distinct().Count());

        guide.Clock.Advance(NodaTime.Duration.FromDays(1));
        try
        {
            await guide.Services.GetRequiredService<NearMissForgetting>().ForgetAsync(default);
            Assert.Single((await LateAsync()).Distinct());
            Assert.Equal(0, guide.Services.GetRequiredService<NearMissTally>().Forget());
        }
        finally
        {
            guide.Clock.Advance(NodaTime.Duration.FromDays(-1));
        }

        async Task<List<string>> LateAsync() => [.. (await TablesAsync())["closures"].Where(row => row.Text.Contains("Late, and the bar", StringComparison.Ordinal)).Select(row => row.Transaction)];
    }

    [Fact]
    public async Task A_closure_of_a_sensitive_place_does_not_name_its_owner_to_the_public()
    {
        var warden = await club.SomebodyAsync(Role.Warden);
        await using var db = club.Open();
        var hidden = await db.Locations.AsNoTracking().FirstAsync(l => l.Visibility == Locations.Visibility.Sensitive);
        await club.Warding.CloseAsync(warden, hidden.Slug, Guid.NewGuid(), (_, today) => Closure.Between(today, null, "Nesting birds", "The Ferrar estate").See("https://ferrar-estate.example.org/notice"), default);
        using var visitor = new Person(guide);
        using var keeper = new Person(guide);
        await keeper.BecomeAsync(Role.Warden);

        foreach (var address in (string[])[$"/coast/{hidden.Slug}", "/", $"/api/v1/locations/{hidden.Slug}", "/weekend?from=2026-11-27"])
        {
            var text = await (await visitor.GetAsync(address)).Content.ReadAsStringAsync();
            Assert.DoesNotContain("errar", text, StringComparison.Ordinal);
        }
        Assert.Contains("Nesting birds", await (await visitor.GetAsync($"/coast/{hidden.Slug}")).Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Contains("The Ferrar estate", await (await keeper.GetAsync($"/coast/{hidden.Slug}")).Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    private async Task CloseAsync(SignedIn warden, string reason) =>
        Assert.True((await club.Warding.CloseAsync(warden, "tern-bank", Guid.NewGuid(), (_, today) => Closure.Between(today, today, reason, "The club"), default)).IsDone);

    private static IEnumerable<byte[]> Spellings(SignedIn who) =>
        [who.MemberId.ToByteArray(), Encoding.UTF8.GetBytes($"{who.MemberId:N}"), Encoding.UTF8.GetBytes(who.MemberId.ToString()), Encoding.UTF8.GetBytes(who.Email)];

    /// <summary>Bytes in a row, as PostgreSQL writes them, and numbers of sixteen bytes.</summary>
    private static IEnumerable<byte[]> Blobs(string row)
    {
        foreach (var field in JsonDocument.Parse(row).RootElement.EnumerateObject().Where(field => field.Value.ValueKind == JsonValueKind.String))
        {
            var text = field.Value.GetString()!;
            if (text.StartsWith("\\x", StringComparison.Ordinal) && text.Length is > 2 and <= 130)
                yield return Convert.FromHexString(text[2..]);
            else if (Guid.TryParse(text, out var number))
                yield return number.ToByteArray();
        }
    }

    /// <summary>Every row of every table, with the transaction that wrote it.</summary>
    private async Task<Dictionary<string, List<(string Text, string Transaction)>>> TablesAsync()
    {
        await using var db = club.Open();
        Dictionary<string, List<(string, string)>> tables = [];
        foreach (var table in db.Model.GetEntityTypes().Select(entity => entity.GetTableName()).OfType<string>().Distinct().Where(table => table is not ("tide_stations" or "elevation_files" or "photo_files")))
        {
#pragma warning disable EF1002 // Names from the model alone.
            var rows = await db.Database.SqlQueryRaw<string>($"""SELECT xmin::text || ' ' || to_jsonb(t)::text AS "Value" FROM "{table}" t""").ToListAsync();
#pragma warning restore EF1002
            tables[table] = [.. rows.Select(row => (row[(row.IndexOf(' ', StringComparison.Ordinal) + 1)..], row[..row.IndexOf(' ', StringComparison.Ordinal)]))];
        }
        return tables;
    }
}
