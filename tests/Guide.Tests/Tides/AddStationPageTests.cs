using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using AngleSharp;
using AngleSharp.Dom;
using Foreshore.Guide.Elevation;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>Adding a station in two steps: looked at, then stored. Words and bounds are the project's own.</summary>
public sealed partial class AddStationPageTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private const string Good = "constituent,amplitude,phase\nM2,1.5,98.4\nS2,0.4,138.8\n";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_station_is_looked_at_stored_used_and_kept_while_in_use()
    {
        var looked = await AddAsync(Station("wharf-pole"), Good);
        Assert.Equal(HttpStatusCode.OK, looked.StatusCode);
        var page = await TextAsync(looked);
        Assert.Contains("As it would be", page, StringComparison.Ordinal);
        Assert.Contains("2 harmonic constituents", page, StringComparison.Ordinal);
        Assert.Contains("M2,1.5,98.4", page, StringComparison.Ordinal);
        await using var db = site.Open();
        Assert.False(await db.TideStations.AnyAsync(s => s.Id == "club/wharf-pole", Cancel));

        Assert.Equal(HttpStatusCode.Found, (await SaveAsync(looked)).StatusCode);
        var stored = await db.TideStations.AsNoTracking().SingleAsync(s => s.Id == "club/wharf-pole", Cancel);
        Assert.True(stored.IsOfClub);
        Assert.Equal(HttpStatusCode.BadRequest, (await AddAsync(Station("wharf-pole"), Good)).StatusCode);

        var waters = await site.Client.GetStringAsync("/api/v1/tides/club-wharf-pole/extremes?from=2026-11-25", Cancel);
        Assert.Contains("\"isOfClub\":true", waters, StringComparison.Ordinal);

        var chosen = new AssignForm { Place = "pigeon-neck", Other = "club/wharf-pole", AllTheSame = true };
        Assert.Equal(HttpStatusCode.Found, (await PostAsync("/admin/tides?place=pigeon-neck", "assign",
            new() { ["Assigning.Place"] = "pigeon-neck", ["Assigning.Other"] = "club/wharf-pole", ["Assigning.AllTheSame"] = "true", ["Assigning.Looked"] = chosen.Stamp, ["Assigning.Reason"] = "Nearest" })).StatusCode);
        var refused = await PostAsync("/admin/tides", "remove-club-wharf-pole", []);
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Contains("was not removed", await TextAsync(refused), StringComparison.Ordinal);
        Assert.Contains("the harbour-master's pole", await PageAsync("/coast/pigeon-neck/tide"), StringComparison.Ordinal);

        await db.Database.ExecuteSqlRawAsync("UPDATE locations SET tide_station_id = 'noaa/8412581' WHERE slug = 'pigeon-neck'", Cancel);
        Assert.Equal(HttpStatusCode.Found, (await PostAsync("/admin/tides", "remove-club-wharf-pole", [])).StatusCode);
        Assert.False(await db.TideStations.AnyAsync(s => s.Id == "club/wharf-pole", Cancel));
        var log = await db.AuditEntries.Where(e => e.Words.StartsWith("club/wharf-pole")).OrderBy(e => e.Id).ToListAsync(Cancel);
        Assert.Equal([Act.StationAdded, Act.StationRemoved], log.Select(line => line.Act));
        Assert.All(log, line => Assert.NotNull(line.By));
    }

    [Fact]
    public async Task A_table_of_waters_becomes_a_station_that_says_where_it_ends()
    {
        var fields = Station("printed-table", kind: AddStationForm.FromTable);
        fields["Form.Zone"] = "America/New_York";
        Assert.Equal(HttpStatusCode.Found, (await SaveAsync(await AddAsync(fields, "time;height\n2026-11-25 04:21;0,0\n2026-11-25 10:34;5,0\n2026-11-25 16:57;-0,5\n"))).StatusCode);

        var beyond = await site.Client.GetAsync("/api/v1/tides/club-printed-table/extremes?from=2026-12-25", Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, beyond.StatusCode);
        Assert.Contains("is known from 2026-11-25T09:21:00Z", await beyond.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        var within = await site.Client.GetStringAsync("/api/v1/tides/club-printed-table?from=2026-11-25T15:34:00Z&to=2026-11-25T15:35:00Z&step=1", Cancel);
        Assert.Contains("\"metres\":5", within, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("constituent,amplitude,phase\nM2,-1,0\nNOPE,1,0", "Line 2: The amplitude is below zero")]
    [InlineData("constituent,amplitude,phase\nM2,-1,0\nNOPE,1,0", "Line 3: \"NOPE\" is no constituent")]
    [InlineData("", "is empty")]
    public async Task A_bad_table_is_refused_with_every_line_named_and_nothing_is_stored(string table, string words)
    {
        var answer = await AddAsync(Station("bad-one"), table);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, await TextAsync(answer), StringComparison.Ordinal);
        await using var db = site.Open();
        Assert.False(await db.TideStations.AnyAsync(s => s.Id == "club/bad-one", Cancel));
    }

    [Theory]
    [InlineData("Form.Id", "No Slug!", "does not work in an address")]
    [InlineData("Form.Name", "", "The station's name is empty")]
    [InlineData("Form.Latitude", "91", "latitude between -90 and 90")]
    [InlineData("Form.Longitude", "east", "longitude between -180 and 180")]
    [InlineData("Form.ChartDatum", "XYZ", "none of the levels")]
    [InlineData("Form.MeanSeaLevel", "", "how far the one lies above the other")]
    [InlineData("Form.Zone", "Mars/Base", "time zone of the IANA list")]
    [InlineData("Form.Attribution", "", "Whom the figures come from is empty")]
    [InlineData("Form.LicenceLink", "ftp://x", "not a web address")]
    public async Task A_bad_field_is_refused_in_words(string field, string value, string words)
    {
        var fields = Station("bad-two");
        fields[field] = value;
        var answer = await AddAsync(fields, Good);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, await TextAsync(answer), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_goes_before_the_pasted_table_and_a_large_one_is_refused()
    {
        var fields = Station("by-file");
        fields["Form.Rows"] = "nonsense";
        Assert.Equal(HttpStatusCode.OK, (await AddAsync(fields, null, [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(Good)])).StatusCode);
        var large = await AddAsync(fields, null, new byte[StationTable.MostBytes + 1]);
        Assert.Equal(HttpStatusCode.BadRequest, large.StatusCode);
        Assert.Contains("larger than 512 kB", await TextAsync(large), StringComparison.Ordinal);
        Assert.Contains("is no text in UTF-8", await TextAsync(await AddAsync(fields, null, [0xC3, 0x28])), StringComparison.Ordinal);
    }

    /// <summary>What was read, two days of curve, the next waters and what speaks against it; and nothing is stored by looking.</summary>
    [Fact]
    public async Task Looking_shows_what_was_read_the_curve_and_the_next_waters()
    {
        var page = await OpenAsync(await AddAsync(Station("looked-at"), Good));
        var read = page.QuerySelectorAll("#look dl dd").Select(dd => dd.TextContent).ToList();

        Assert.Contains("2; the largest are M2 1.50 m, S2 0.40 m", read);
        Assert.Contains("above chart datum, here mean lower low water (MLLW); mean sea level lies 2.10 m above it", read);
        Assert.Contains(read, words => words.Contains("node corrections after the IHO", StringComparison.Ordinal));
        Assert.Contains("the club's own figures", read);
        Assert.NotNull(page.QuerySelector("#look svg .ink-sea-line"));
        Assert.InRange(page.QuerySelectorAll("#look ul li").Length, 4, 8);
        Assert.Contains(TideWords.Disclaimer, page.QuerySelector("#look")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Cutler", page.QuerySelector("#look")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("#file"));
        Assert.Equal([AddStationForm.Keep, AddStationForm.Change], page.QuerySelectorAll("#look form button").Select(button => button.GetAttribute("value")));
        await using var db = site.Open();
        Assert.False(await db.TideStations.AnyAsync(s => s.Id == "club/looked-at", Cancel));
    }

    [Fact]
    public async Task Nothing_is_stored_that_was_not_looked_at()
    {
        var fields = Station("unseen");
        fields["Form.Then"] = AddStationForm.Keep;
        var unseen = await AddAsync(fields, Good);
        fields["Form.Looked"] = (await OpenAsync(unseen)).QuerySelector("[name='Form.Looked']")!.GetAttribute("value")!;
        var changed = await AddAsync(fields, Good.Replace("1.5", "2.5", StringComparison.Ordinal));

        Assert.All([unseen, changed], answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
        Assert.Contains("not what you looked at", await TextAsync(changed), StringComparison.Ordinal);
        await using var db = site.Open();
        Assert.False(await db.TideStations.AnyAsync(s => s.Id == "club/unseen", Cancel));
    }

    /// <summary>A file with a mark of its encoding, semicolons, decimal commas and lines ended by two signs, saved from the second page.</summary>
    [Fact]
    public async Task The_text_of_a_file_survives_the_step_and_what_is_stored_is_what_was_read()
    {
        const string text = "constituent;amplitude;phase\r\nM2;2,648;98,4\r\nS2;0,412;−138,5\r\n";
        var looked = await AddAsync(Station("from-file"), null, [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(text)]);
        var back = await SaveAsync(looked, AddStationForm.Change);

        Assert.Equal(text.Replace("\r\n", "\n", StringComparison.Ordinal).Trim(), (await OpenAsync(back)).QuerySelector("#rows")!.TextContent.Trim());
        Assert.Equal(HttpStatusCode.Found, (await SaveAsync(looked)).StatusCode);
        await using var db = site.Open();
        var stored = await db.TideStations.AsNoTracking().SingleAsync(s => s.Id == "club/from-file", Cancel);
        Assert.Equal(["M2", "S2"], stored.ConstituentNames);
        Assert.Equal([2.648, 0.412], stored.AmplitudesMetres);
        Assert.Equal([98.4, 221.5], stored.PhasesDegrees);
        await db.TideStations.Where(s => s.Id == "club/from-file").ExecuteDeleteAsync(Cancel);
    }

    [Theory]
    [InlineData("time,height\n2025-11-25 04:21,0.0\n2025-11-25 10:34,5.0\n2025-11-25 16:57,-0.5", "The table ended on Tue 25 Nov 2025")]
    [InlineData("time,height\n2026-11-25 04:21,0.0\n2026-11-25 10:34,5.0\n2026-11-26 05:12,-0.5", "The table ends on Thu 26 Nov 2026")]
    [InlineData("time,height\n2027-11-25 04:21,0.0\n2027-11-25 10:34,5.0\n2027-11-25 16:57,-0.5", "The table begins on Thu 25 Nov 2027")]
    public async Task Where_a_table_ends_or_begins_is_said_and_its_own_days_are_drawn(string table, string words)
    {
        var answer = await AddAsync(Station("short-table", kind: AddStationForm.FromTable), table);
        var page = await OpenAsync(answer);

        Assert.Contains(words, page.QuerySelector("#look")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("#look svg .ink-sea-line"));
    }

    [Fact]
    public async Task A_pasted_table_that_is_too_long_is_refused_beside_its_field_and_a_form_too_large_by_a_page()
    {
        var refused = await AddAsync(Station("long-one"), new string('a', StationTable.MostBytes + 1));
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("longer than 512 kB", (await OpenAsync(refused)).QuerySelector("#rows-fault")!.TextContent, StringComparison.Ordinal);

        var tooLarge = await AddAsync(Station("long-one"), null, new byte[StationTable.MostBytesPosted + 1]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, tooLarge.StatusCode);
        Assert.Contains("larger than this page takes, 2 MB at a time", await TextAsync(tooLarge), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused_in_words()
    {
        using var form = new FormUrlEncodedContent(new Dictionary<string, string> { ["_handler"] = "add-station", ["Form.Id"] = "no-token" });
        var answer = await site.Client.PostAsync("/admin/tides/new", form, Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("That form could not be taken", await TextAsync(answer), StringComparison.Ordinal);
    }

    /// <summary>Two people save the same name at once: one is stored, the other is told so beside the field.</summary>
    [Fact]
    public async Task Of_two_that_are_saved_at_once_one_is_stored_and_the_other_told()
    {
        var looked = await AddAsync(Station("at-once"), Good);
        var page = await looked.Content.ReadAsStringAsync(Cancel);
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SaveAsync(page)));

        Assert.Single(answers, answer => answer.StatusCode == HttpStatusCode.Found);
        Assert.All(answers.Where(answer => answer.StatusCode != HttpStatusCode.Found), answer => Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode));
        await using var db = site.Open();
        await db.TideStations.Where(s => s.Id == "club/at-once").ExecuteDeleteAsync(Cancel);
    }

    private static Dictionary<string, string> Station(string id, string kind = AddStationForm.FromConstituents) => new()
    {
        ["Form.Id"] = id,
        ["Form.Name"] = "Pole at the wharf",
        ["Form.Latitude"] = "44.65",
        ["Form.Longitude"] = "-67,25",
        ["Form.Kind"] = kind,
        ["Form.ChartDatum"] = "MLLW",
        ["Form.MeanSeaLevel"] = "2.1",
        ["Form.Model"] = "Iho",
        ["Form.Zone"] = "UTC",
        ["Form.Attribution"] = "Read off the harbour-master's pole by the club",
        ["Form.Licence"] = "the club's own figures",
        ["Form.Then"] = AddStationForm.Look,
    };

    private async Task<HttpResponseMessage> AddAsync(Dictionary<string, string> fields, string? table, byte[]? file = null)
    {
        using var form = new MultipartFormDataContent();
        if (table is not null) fields["Form.Rows"] = table;
        fields["_handler"] = "add-station";
        fields["__RequestVerificationToken"] = await TokenAsync("/admin/tides/new");
        foreach (var (name, value) in fields) form.Add(new StringContent(value), name);
        if (file is not null) form.Add(new ByteArrayContent(file), "file", "station.csv");
        return await site.Client.PostAsync("/admin/tides/new", form, Cancel);
    }

    private async Task<HttpResponseMessage> SaveAsync(HttpResponseMessage looked, string then = AddStationForm.Keep) =>
        await SaveAsync(await looked.Content.ReadAsStringAsync(Cancel), then);

    /// <summary>Posts the second page as a browser does: every hidden field as it stands, lines ended by two signs.</summary>
    private async Task<HttpResponseMessage> SaveAsync(string page, string then = AddStationForm.Keep)
    {
        using var form = new MultipartFormDataContent { { new StringContent(then), "Form.Then" } };
        foreach (var field in (await BrowsingContext.New().OpenAsync(response => response.Content(page), Cancel)).QuerySelectorAll("#look form input"))
        {
            form.Add(new StringContent((field.GetAttribute("value") ?? "").ReplaceLineEndings("\r\n")), field.GetAttribute("name")!);
        }
        return await site.Client.PostAsync("/admin/tides/new", form, Cancel);
    }

    private static async Task<IDocument> OpenAsync(HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync(Cancel);
        return await BrowsingContext.New().OpenAsync(response => response.Content(text), Cancel);
    }

    private async Task<HttpResponseMessage> PostAsync(string address, string handler, Dictionary<string, string> fields)
    {
        fields["_handler"] = handler;
        fields["__RequestVerificationToken"] = await TokenAsync(address.Contains('?', StringComparison.Ordinal) ? address : "/admin/tides/new");
        return await site.Client.PostAsync(address, new FormUrlEncodedContent(fields), Cancel);
    }

    private async Task<string> PageAsync(string address) => WebUtility.HtmlDecode(await site.Client.GetStringAsync(address, Cancel));

    private static async Task<string> TextAsync(HttpResponseMessage answer) => WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));

    private async Task<string> TokenAsync(string address) => Token().Match(await site.Client.GetStringAsync(address, Cancel)).Groups[1].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
