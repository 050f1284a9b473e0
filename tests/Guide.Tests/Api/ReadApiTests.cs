using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Snapshooter.Xunit3;
using Xunit;

namespace Foreshore.Guide.Api;

public sealed partial class ReadApiTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private static readonly string[] Addresses =
    [
        "/api/v1/locations", "/api/v1/locations/pigeon-neck", "/api/v1/locations/skerrin-hollow", "/api/v1/almanac/day?lat=44.6&lon=-67.2&date=2026-11-25&zone=America/New_York",
    ];

    [Fact]
    public async Task Places_come_in_coast_order_and_the_demo_says_so_first()
    {
        var text = await site.Client.GetStringAsync("/api/v1/locations");
        Assert.StartsWith("{\"notice\":\"Demo:", text, StringComparison.Ordinal);
        Snapshot.Match(Indented(text));
    }

    [Fact]
    public async Task A_place_comes_with_cautions_and_all_that_is_known_of_it()
    {
        var answer = JsonDocument.Parse(await site.Client.GetStringAsync("/api/v1/locations/pigeon-neck")).RootElement;
        Assert.Equal("notice", answer.EnumerateObject().First().Name);
        Assert.NotEmpty(answer.GetProperty("cautions").EnumerateArray());
        Assert.Contains("Not for navigation", answer.GetProperty("notForNavigation").GetString()!, StringComparison.Ordinal);
        Assert.NotEmpty(answer.GetProperty("routes").EnumerateArray());
        Assert.All(answer.GetProperty("vantagePoints").EnumerateArray(), v => Assert.NotEmpty(v.GetProperty("compositions").EnumerateArray()));
        Assert.Matches(IsoDate(), answer.GetProperty("hazardRatings")[0].GetProperty("lastChecked").GetString()!);
        Assert.DoesNotContain("\"safe\"", answer.ToString(), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Every_composition_leads_to_its_season()
    {
        var coast = JsonDocument.Parse(await site.Client.GetStringAsync("/api/v1/locations")).RootElement.GetProperty("locations");
        var first = coast.EnumerateArray().First(l => l.GetProperty("position").GetProperty("withinMetres").ValueKind == JsonValueKind.Null).GetProperty("slug").GetString();
        var place = JsonDocument.Parse(await site.Client.GetStringAsync($"/api/v1/locations/{first}")).RootElement;
        foreach (var picture in place.GetProperty("vantagePoints").EnumerateArray().SelectMany(v => v.GetProperty("compositions").EnumerateArray()))
        {
            var season = JsonDocument.Parse(await site.Client.GetStringAsync(picture.GetProperty("season").GetString())).RootElement;
            var months = season.GetProperty("months").EnumerateArray().ToList();
            Assert.Equal("2026-11", months[0].GetProperty("month").GetString());
            Assert.Equal("2027-10", months[^1].GetProperty("month").GetString());
            Assert.All(months, m => Assert.Equal(24, m.GetProperty("shareByHour").GetArrayLength()));
            Assert.All(months, m => Assert.All(m.GetProperty("shareByHour").EnumerateArray(), s => Assert.InRange(s.GetDouble(), 0, 1)));
            Assert.Contains("not judged", season.GetProperty("notJudged").GetString()!, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("/api/v1/locations/pidgeon-neck", "/api/v1/locations/pigeon-neck")]
    public async Task An_old_slug_answers_301(string old, string now)
    {
        var answer = await site.Client.GetAsync(old);
        Assert.Equal(HttpStatusCode.MovedPermanently, answer.StatusCode);
        Assert.Equal(now, answer.Headers.Location!.OriginalString);
    }

    [Theory]
    [InlineData("/api/v1/locations/nowhere")]
    [InlineData("/api/v1/locations/cannery-point")] // members only: told apart from nothing by nobody
    [InlineData("/api/v1/compositions/pigeon-neck/none/none/season")]
    [InlineData("/api/v1/compositions/skerrin-hollow/rim-of-the-bowl/pink-bowl/season")]
    [InlineData("/api/v1/nothing")]
    [InlineData("/api/v2/locations")]
    public async Task What_is_not_there_is_a_404_in_words(string address)
    {
        var answer = await site.Client.GetAsync(address);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.DoesNotContain("Skerrin", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_answer_tells_where_a_sensitive_place_is_nor_that_a_members_place_exists()
    {
        await using var db = site.Open();
        var warden = new Reader(Role.Warden);
        var sensitive = await db.CoastAsync(warden, Parts.All);
        var secrets = sensitive.Where(l => l.Visibility == Visibility.Sensitive)
            .SelectMany(l => l.VantagePoints.Select(v => v.Position).Append(l.Position)
                .Concat(l.Parking.Select(p => p.Position)).Concat(l.HazardNotes.Select(n => n.Position).OfType<Almanac.Earth.Position>()))
            .SelectMany(p => new[] { p.LatitudeDegrees, p.LongitudeDegrees })
            // Three decimals are a hundred metres: finer than the cell, whose own centre is not among them.
            .Select(d => d.ToString("0.000", CultureInfo.InvariantCulture)).Distinct().ToList();
        Assert.NotEmpty(secrets);
        var texts = new List<string>();
        foreach (var address in Addresses) texts.Add(await site.Client.GetStringAsync(address));
        var all = string.Concat(texts);
        Assert.Contains("skerrin-hollow", all, StringComparison.Ordinal);
        Assert.All(secrets, secret => Assert.DoesNotContain(secret, all, StringComparison.Ordinal));
        Assert.DoesNotContain("annery", all, StringComparison.Ordinal);
        Assert.DoesNotContain("rim-of-the-bowl", all, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_answer_names_a_member()
    {
        await using var db = site.Open();
        var names = (await db.CoastAsync(new Reader(Role.Warden), Parts.All)).SelectMany(l => l.Parking.Select(p => p.Check.CheckedBy)).OfType<string>().Distinct().ToList();
        Assert.NotEmpty(names);
        foreach (var address in Addresses)
        {
            var text = await site.Client.GetStringAsync(address);
            Assert.All(names, name => Assert.DoesNotContain(name, text, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task Asks_the_database_at_most_five_times()
    {
        foreach (var address in Addresses)
        {
            site.Commands.Reset();
            await site.Client.GetAsync(address);
            Assert.True(site.Commands.Commands.Count <= 5, $"{address}: {string.Join("\n", site.Commands.Commands)}");
        }
    }

    [Fact]
    public async Task An_unchanged_answer_costs_a_304_and_head_works()
    {
        foreach (var address in Addresses)
        {
            var first = await site.Client.GetAsync(address);
            using var again = new HttpRequestMessage(HttpMethod.Get, address);
            again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
            Assert.Equal(HttpStatusCode.NotModified, (await site.Client.SendAsync(again)).StatusCode);
            using var head = new HttpRequestMessage(HttpMethod.Head, address);
            Assert.Equal(HttpStatusCode.OK, (await site.Client.SendAsync(head)).StatusCode);
        }
    }

    [Fact]
    public async Task The_description_names_every_address_with_words()
    {
        var document = JsonDocument.Parse(await site.Client.GetStringAsync("/openapi/v1.json")).RootElement;
        var paths = document.GetProperty("paths").EnumerateObject().ToList();
        Assert.Superset(
            new HashSet<string> { "/api/v1/locations", "/api/v1/locations/{location}", "/api/v1/compositions/{location}/{vantage}/{composition}/season", "/api/v1/compositions/{location}/{vantage}/{composition}/alignments", "/api/v1/almanac/day" },
            paths.Select(p => p.Name).ToHashSet());
        Assert.All(paths, p => Assert.StartsWith("/api/v1/", p.Name, StringComparison.Ordinal));
        foreach (var get in paths.Select(p => p.Value.GetProperty("get")))
        {
            Assert.NotEmpty(get.GetProperty("summary").GetString()!);
            Assert.Contains("Not for navigation", get.GetProperty("description").GetString()!, StringComparison.Ordinal);
            if (!get.TryGetProperty("parameters", out var parameters)) continue;
            Assert.All(parameters.EnumerateArray(), p => Assert.True(p.TryGetProperty("description", out _), p.ToString()));
        }
        var sun = document.GetProperty("components").GetProperty("schemas").GetProperty("SunAnswer").GetProperty("properties");
        Assert.Contains("Apparent upper limb", sun.GetProperty("rise").GetProperty("description").GetString()!, StringComparison.Ordinal);
        Assert.Equal("date-time", sun.GetProperty("rise").GetProperty("format").GetString());
    }

    private static string Indented(string json)
    {
        using var document = JsonDocument.Parse(json);
        return JsonSerializer.Serialize(document, Pretty);
    }

    private static readonly JsonSerializerOptions Pretty = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    [GeneratedRegex(@"^\d{4}-\d\d-\d\d$")]
    private static partial Regex IsoDate();
}
