using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Foreshore.Guide.Elevation;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Tides;

public sealed partial class StationsPageTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private const string Good = "constituent,amplitude,phase\nM2,1.5,98.4\nS2,0.4,138.8\n";

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
        Assert.Equal(HttpStatusCode.Found, (await PostAsync(address, "assign", fields)).StatusCode);
        var after = await PlaceAsync("gannet-stairs");
        Assert.Equal(("noaa/8412581", -3, 1.852), (after.TideStationId, after.TideCorrections!.HighWaterMinutes, after.MeanSeaLevelAboveChartDatumMetres));
        Assert.Contains("needs checking", await PageAsync("/coast/gannet-stairs/lower-stair"), StringComparison.Ordinal);
        Assert.Contains("3 min earlier", await PageAsync("/coast/gannet-stairs/tide"), StringComparison.Ordinal);
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

    [Fact]
    public async Task A_station_is_looked_at_stored_used_and_kept_while_in_use()
    {
        var looked = await AddAsync(Station("wharf-pole", then: "look"), Good);
        Assert.Equal(HttpStatusCode.OK, looked.StatusCode);
        var page = await TextAsync(looked);
        Assert.Contains("As it would be", page, StringComparison.Ordinal);
        Assert.Contains("2 harmonic constituents", page, StringComparison.Ordinal);
        Assert.Contains("M2,1.5,98.4", page, StringComparison.Ordinal);
        await using var db = site.Open();
        Assert.False(await db.TideStations.AnyAsync(s => s.Id == "club/wharf-pole", Cancel));

        Assert.Equal(HttpStatusCode.Found, (await AddAsync(Station("wharf-pole"), Good)).StatusCode);
        var stored = await db.TideStations.AsNoTracking().SingleAsync(s => s.Id == "club/wharf-pole", Cancel);
        Assert.True(stored.IsOfClub);
        Assert.Equal(HttpStatusCode.BadRequest, (await AddAsync(Station("wharf-pole"), Good)).StatusCode);

        var waters = await site.Client.GetStringAsync("/api/v1/tides/club-wharf-pole/extremes?from=2026-11-25", Cancel);
        Assert.Contains("\"isOfClub\":true", waters, StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.Found, (await PostAsync("/admin/tides?place=pigeon-neck", "assign",
            new() { ["Assigning.Place"] = "pigeon-neck", ["Assigning.Other"] = "club/wharf-pole", ["Assigning.AllTheSame"] = "true" })).StatusCode);
        var refused = await PostAsync("/admin/tides", "remove-club-wharf-pole", []);
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Contains("was not removed", await TextAsync(refused), StringComparison.Ordinal);
        Assert.Contains("the harbour-master's pole", await PageAsync("/coast/pigeon-neck/tide"), StringComparison.Ordinal);

        await db.Database.ExecuteSqlRawAsync("UPDATE locations SET tide_station_id = 'noaa/8412581' WHERE slug = 'pigeon-neck'", Cancel);
        Assert.Equal(HttpStatusCode.Found, (await PostAsync("/admin/tides", "remove-club-wharf-pole", [])).StatusCode);
        Assert.False(await db.TideStations.AnyAsync(s => s.Id == "club/wharf-pole", Cancel));
    }

    [Fact]
    public async Task A_table_of_waters_becomes_a_station_that_says_where_it_ends()
    {
        var fields = Station("printed-table", kind: AddStationForm.FromTable);
        fields["Form.Zone"] = "America/New_York";
        Assert.Equal(HttpStatusCode.Found, (await AddAsync(fields, "time;height\n2026-11-25 04:21;0,0\n2026-11-25 10:34;5,0\n2026-11-25 16:57;-0,5\n")).StatusCode);

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
        var fields = Station("by-file", then: "look");
        fields["Form.Rows"] = "nonsense";
        Assert.Equal(HttpStatusCode.OK, (await AddAsync(fields, null, [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(Good)])).StatusCode);
        var large = await AddAsync(fields, null, new byte[StationTable.MostBytes + 1]);
        Assert.Equal(HttpStatusCode.BadRequest, large.StatusCode);
        Assert.Contains("larger than 512 kB", await TextAsync(large), StringComparison.Ordinal);
        Assert.Contains("is no text in UTF-8", await TextAsync(await AddAsync(fields, null, [0xC3, 0x28])), StringComparison.Ordinal);
    }

    private static Dictionary<string, string> Station(string id, string then = "keep", string kind = AddStationForm.FromConstituents) => new()
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
        ["Form.Then"] = then,
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

    private async Task<HttpResponseMessage> PostAsync(string address, string handler, Dictionary<string, string> fields)
    {
        fields["_handler"] = handler;
        fields["__RequestVerificationToken"] = await TokenAsync(address.Contains('?', StringComparison.Ordinal) ? address : "/admin/tides/new");
        return await site.Client.PostAsync(address, new FormUrlEncodedContent(fields), Cancel);
    }

    private async Task<Location> PlaceAsync(string slug)
    {
        await using var db = site.Open();
        return (await db.LocationAsync(slug, new Reader(Role.Admin), Parts.None, Cancel))!;
    }

    private async Task<string> PageAsync(string address) => WebUtility.HtmlDecode(await site.Client.GetStringAsync(address, Cancel));

    private static async Task<string> TextAsync(HttpResponseMessage answer) => WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));

    private async Task<string> TokenAsync(string address) => Token().Match(await site.Client.GetStringAsync(address, Cancel)).Groups[1].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
