using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Access;
using Foreshore.Guide.Keeping;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Foreshore.Guide.Tides;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Api;

/// <summary>The season's second layer in the API: against the page, against a scan minute by minute, and where there is none.</summary>
public sealed partial class SeasonUseTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private const string TwoStacks = "gannet-stairs/lower-stair/two-stacks";

    [Fact]
    public async Task Api_and_page_tell_the_same_minutes_ranks_and_marked_hours()
    {
        var months = (await SeasonAsync(TwoStacks)).GetProperty("use").GetProperty("months").EnumerateArray().ToList();
        var page = new HtmlParser().ParseDocument(await site.Client.GetStringAsync($"/coast/{TwoStacks}"));
        var rows = page.QuerySelectorAll(".ink-season table tbody tr").Select(row => row.Children.Select(cell => cell.TextContent).ToList()).ToList();

        Assert.Equal(12, rows.Count);
        foreach (var (month, row) in months.Zip(rows))
        {
            AssertSame(month.GetProperty("meanMinutesWithinHours").GetDouble(), row[1]);
            AssertSame(month.GetProperty("meanMinutesUnrestricted").GetDouble(), row[2]);
            var rank = month.GetProperty("rank") is { ValueKind: JsonValueKind.Number } number ? number.GetInt32() : 99;
            Assert.Equal(rank switch { 1 => "I", 2 => "II", 3 => "III", _ => "" }, Ranked().Match(row[0]).Groups[1].Value);
            var marked = month.GetProperty("shareByHour").EnumerateArray().Select((share, hour) => (share: share.GetDouble(), hour)).Where(one => one.share >= 0.5).Select(one => one.hour.ToString("00", CultureInfo.InvariantCulture));
            Assert.Equal(string.Join(", ", marked), Marked().Match(row[3]).Groups[1].Value);
        }

        Assert.Contains(months, month => month.GetProperty("rank").ValueKind == JsonValueKind.Number);
    }

    [Theory]
    [InlineData("2026-12")]
    [InlineData("2027-01")]
    public async Task Usable_minutes_are_those_of_a_scan_of_light_tide_and_way(string month)
    {
        var answer = await SeasonAsync(TwoStacks);
        await using var db = site.Open();
        var view = (await db.PictureAsync("gannet-stairs", "lower-stair", "two-stacks", Reader.Visitor, GuideHost.UsualNow))!;
        var first = NodaTime.Text.YearMonthPattern.Iso.Parse(month).Value.OnDayOfMonth(1);
        var (from, to) = (Midnight(first), Midnight(first.PlusMonths(1)));
        var (curves, tide) = (new TideCurves(Shelf.Empty()), view.From.At.Tide!);
        var water = new PlaceWater(view.Place.TideStationId, tide, curves.Around(tide, GuideHost.UsualNow), year => curves.Year(tide, year));
        var sun = SunEphemeris.Covering(from - Duration.FromDays(4), to + Duration.FromDays(4));
        var scans = new StanceWays(view.Stance, view.Place, water, from, to, sun).All.Take(1)
            .Select(way => new StayScan(way.Plan, water.Curve!, sun, from, to)).ToList();
        var scene = view.Picture.ToScene(view.Stance, view.Place);
        var least = LightTable.Of(WantedLight.SideLight).LeastMinutes;

        var (counted, row) = (0, 0);
        for (var minute = 0; minute <= scans[0].Minutes; minute++)
        {
            if (minute < scans[0].Minutes && scans.Exists(scan => scan.IsUsable(minute)) && IsSideLit(from + Duration.FromMinutes(minute)))
                row++;
            else
            {
                if (row >= least) counted += row;
                row = 0;
            }
        }

        var days = (to - from).TotalDays;
        var told = answer.GetProperty("use").GetProperty("months").EnumerateArray().Single(one => one.GetProperty("month").GetString() == month).GetProperty("meanMinutesUnrestricted").GetDouble();
        // A window's two ends each fall within a minute of the scan's.
        Assert.Equal(counted / days, told, 1.0);
        Assert.True(told > 3, $"{told} minutes a day prove little.");

        bool IsSideLit(Instant time)
        {
            var place = sun.At(time, scene.Observer.Position);
            var edge = scene.Observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(place.AzimuthDegrees), scene.Observer.DipDegrees);
            var off = Math.Abs(Math.IEEERemainder(place.AzimuthDegrees - view.Picture.FacingDegrees, 360));
            return place.AltitudeDegrees <= 25 && off is >= 60 and <= 120 && SunDisc.UpperLimbDegrees(place.AltitudeDegrees, sun.DistanceAuAt(time)) > edge;
        }

        Instant Midnight(LocalDate date) => view.Place.Zone.AtStartOfDay(date).ToInstant();
    }

    [Fact]
    public async Task What_limits_is_named_and_the_sea_is_said_to_be_left_out()
    {
        var answer = await SeasonAsync(TwoStacks);
        var use = answer.GetProperty("use");

        Assert.Contains("highestUsableTide", use.GetProperty("counts").EnumerateArray().Select(one => one.GetString()));
        Assert.Equal(0.3, use.GetProperty("allowanceMetres").GetDouble());
        Assert.StartsWith("Sea and surge are left out", use.GetProperty("leftOut").GetString(), StringComparison.Ordinal);
        Assert.Contains("The sea is left out", answer.GetProperty("useWords").GetString()!, StringComparison.Ordinal);
        var light = answer.GetProperty("months").EnumerateArray().Select(month => month.GetProperty("meanMinutesUnrestricted").GetDouble());
        Assert.All(light.Zip(use.GetProperty("months").EnumerateArray()), pair => Assert.True(pair.Second.GetProperty("meanMinutesUnrestricted").GetDouble() <= pair.First));
    }

    [Fact]
    public async Task On_dry_ground_the_way_alone_counts_and_is_named()
    {
        var use = (await SeasonAsync("halfmoon-light/high-edge/winter-sun-on-the-horizon")).GetProperty("use");

        Assert.Equal(["way"], use.GetProperty("counts").EnumerateArray().Select(one => one.GetString()));
        Assert.Equal("Shore path, car at Light Road car park", use.GetProperty("way").GetString());
    }

    [Theory]
    [InlineData("anvil-ledges/middle-trench/black-into-pink", "Light alone: *needs checking, so the tide and the way back are not in it.")]
    public async Task Where_the_way_cannot_be_told_there_is_no_second_layer_and_why_is_said(string picture, string words)
    {
        var answer = await SeasonAsync(picture);

        Assert.Equal(JsonValueKind.Null, answer.GetProperty("use").ValueKind);
        Assert.StartsWith("Light alone.", answer.GetProperty("notJudged").GetString(), StringComparison.Ordinal);
        Assert.Matches($"^{Regex.Escape(words).Replace("\\*", ".*", StringComparison.Ordinal)}$", answer.GetProperty("useWords").GetString());
    }

    [Fact]
    public async Task Asks_the_database_at_most_five_times()
    {
        // The club's name and hours are kept for a minute: the first answer of the minute reads them.
        await site.Client.GetAsync("/about");
        site.Commands.Reset();
        await SeasonAsync(TwoStacks);
        Assert.True(site.Commands.Commands.Count <= 5, string.Join("\n", site.Commands.Commands));
    }

    /// <summary>The page rounds to whole minutes, the API to tenths.</summary>
    private static void AssertSame(double minutes, string printed)
    {
        if (printed == "under 1 min") Assert.InRange(minutes, 0, 0.5);
        else Assert.Equal(double.Parse(printed.Replace(" min", "", StringComparison.Ordinal), CultureInfo.InvariantCulture), minutes, 0.5501);
    }

    private async Task<JsonElement> SeasonAsync(string picture) =>
        JsonDocument.Parse(await site.Client.GetStringAsync($"/api/v1/compositions/{picture}/season")).RootElement;

    [GeneratedRegex(@"\((I+)\)")]
    private static partial Regex Ranked();

    [GeneratedRegex(@"with the tide on half of the days: ([\d, ]+) h")]
    private static partial Regex Marked();
}
