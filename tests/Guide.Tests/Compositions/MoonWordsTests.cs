using System.Text.Json;
using AngleSharp.Html.Parser;
using Foreshore.Almanac.Moon;
using Foreshore.Guide.Support;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

/// <summary>The moon in words, and on the pages of places and pictures.</summary>
public sealed class MoonWordsTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];

    /// <summary>Phases of November and December 2026, UTC: new 9 Nov 07:02, first quarter 17 Nov 11:48, full 24 Nov 14:53, last quarter 1 Dec 06:09 (almanacs' tables, from memory).</summary>
    [Theory]
    [InlineData(9, 8, "new moon")]
    [InlineData(11, 12, "waxing crescent")]
    [InlineData(17, 12, "first quarter")]
    [InlineData(20, 12, "waxing gibbous")]
    [InlineData(24, 15, "full moon")]
    [InlineData(26, 12, "waning gibbous")]
    [InlineData(31, 6, "last quarter")]
    [InlineData(35, 12, "waning crescent")]
    public void Phases_bear_the_names_that_almanacs_give_them(int day, int hour, string name) =>
        Assert.Equal(name, MoonPhases.At(Instant.FromUtc(2026, 11, 1, hour, 0) + Duration.FromDays(day - 1)).Name());

    [Fact]
    public void A_sliver_is_never_rounded_to_nothing() =>
        Assert.Equal("under 1 %", MoonPhases.At(Instant.FromUtc(2026, 11, 9, 8, 0)).Lit());

    [Fact]
    public void Rise_and_set_stand_in_the_order_of_the_clock()
    {
        var (early, late) = (Instant.FromUtc(2026, 11, 25, 13, 11), Instant.FromUtc(2026, 11, 25, 21, 26));
        Assert.Equal("sets\u00a008:11, rises\u00a016:26", new MoonSpan(true, late, early).Words(Zone));
        Assert.Equal("up throughout", new MoonSpan(true, null, null).Words(Zone));
        Assert.Equal("down throughout", new MoonSpan(false, null, null).Words(Zone));
    }

    [Fact]
    public async Task Every_day_of_the_ten_and_every_good_date_has_its_moon()
    {
        var page = new HtmlParser().ParseDocument(await guide.Client.GetStringAsync("/coast/gannet-stairs/lower-stair/two-stacks"));
        var lines = page.QuerySelectorAll(".light-days .moon-line").Select(line => line.TextContent).ToList();
        Assert.Equal(10, lines.Count);
        Assert.All(lines, line => Assert.Matches(@"Moon .*; (new moon|full moon|(first|last) quarter|(waxing|waning) (crescent|gibbous)), .*% lit", line));
        Assert.All(page.QuerySelectorAll("#dates li"), date => Assert.Contains("; moon ", date.TextContent, StringComparison.Ordinal));
    }

    // The API looks at the same place over the same open sea.
    [Fact]
    public async Task A_places_nights_are_those_the_api_tells()
    {
        var page = new HtmlParser().ParseDocument(await guide.Client.GetStringAsync("/coast/tern-bank"));
        var rows = page.QuerySelectorAll("#nights table.nights tbody tr").Select(row => row.Children.Select(cell => cell.TextContent.Replace('\u00a0', ' ').Trim()).ToList()).ToList();
        Assert.Equal(7, rows.Count);
        Assert.Contains("EST", page.QuerySelector("#nights caption")!.TextContent, StringComparison.Ordinal);
        var place = JsonDocument.Parse(await guide.Client.GetStringAsync("/api/v1/locations/tern-bank")).RootElement.GetProperty("place").GetProperty("position");

        for (var night = 0; night < rows.Count; night++)
        {
            var date = new LocalDate(2026, 11, 25).PlusDays(night);
            var day = JsonDocument.Parse(await guide.Client.GetStringAsync(
                $"/api/v1/almanac/day?lat={place.GetProperty("latitudeDegrees")}&lon={place.GetProperty("longitudeDegrees")}&date={date:uuuu-MM-dd}&zone=America/New_York")).RootElement;
            var dark = day.GetProperty("milkyWay").GetProperty("dark").EnumerateArray().Select(one => $"{Clock(one, "start")}–{Clock(one, "end")}").ToList();
            if (dark.Count == 0) Assert.StartsWith("none:", rows[night][3], StringComparison.Ordinal);
            else Assert.Equal(dark, rows[night][3].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            if (day.GetProperty("moon").GetProperty("rise") is { ValueKind: JsonValueKind.String } rise && rise.GetDateTimeOffset().Hour >= 12)
                Assert.Contains($"rises {rise.GetDateTimeOffset():HH:mm}", rows[night][1], StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_sensitive_places_nights_are_those_of_its_cells_centre_and_cost_no_command()
    {
        guide.Commands.Reset();
        var page = new HtmlParser().ParseDocument(await guide.Client.GetStringAsync("/coast/skerrin-hollow"));
        Assert.Equal(7, page.QuerySelectorAll("#nights table.nights tbody tr").Length);
        Assert.True(guide.Commands.Commands.Count <= 6, string.Join("\n", guide.Commands.Commands));
    }

    private static string Clock(JsonElement span, string end) => span.GetProperty(end).GetDateTimeOffset().ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
