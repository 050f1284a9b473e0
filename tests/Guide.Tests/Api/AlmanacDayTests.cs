using System.Net;
using System.Text.Json;
using Foreshore.Guide.Support;
using Snapshooter.Xunit3;
using Xunit;

namespace Foreshore.Guide.Api;

public sealed class AlmanacDayTests(EmptyGuide site) : IClassFixture<EmptyGuide>
{
    [Fact]
    public async Task A_day_on_the_coast_reads_as_written_down()
    {
        var text = await site.Client.GetStringAsync("/api/v1/almanac/day?lat=44.66&lon=-67.20&date=2026-11-25&zone=America/New_York&heightMetres=12");
        using var document = JsonDocument.Parse(text);
        Snapshot.Match(JsonSerializer.Serialize(document, Pretty));
    }

    // Astronomical Almanac's sunrise and sunset tables are for the upper limb at 34' of refraction, to the minute. Values here: the
    // United States Naval Observatory's yearly table for Eastport, Maine (44°54' N, 66°59' W), Eastern Standard Time, from memory
    // of that table and so rounded to five minutes.
    [Theory]
    [InlineData("2026-06-21", 3, 45, 19, 20)]
    [InlineData("2026-12-21", 7, 5, 15, 50)]
    public async Task Sunrise_and_sunset_at_Eastport_are_near_the_published_ones(string date, int riseHour, int riseMinute, int setHour, int setMinute)
    {
        var sun = (await Day($"lat=44.9&lon=-66.983&date={date}&zone=EST")).GetProperty("sun");
        Assert.InRange((Time(sun, "standardRise").TimeOfDay - new TimeSpan(riseHour, riseMinute, 0)).TotalMinutes, -6, 6);
        Assert.InRange((Time(sun, "standardSet").TimeOfDay - new TimeSpan(setHour, setMinute, 0)).TotalMinutes, -6, 6);
    }

    [Fact]
    public async Task At_78_north_in_June_the_sun_stays_up_and_there_is_only_day()
    {
        var day = await Day("lat=78.22&lon=15.65&date=2026-06-21&zone=Arctic/Longyearbyen");
        var sun = day.GetProperty("sun");
        Assert.Equal("up", sun.GetProperty("stays").GetString());
        foreach (var none in new[] { "rise", "set", "standardRise", "civilDawn", "astronomicalDusk" }) Assert.Equal(JsonValueKind.Null, sun.GetProperty(none).ValueKind);
        var session = Assert.Single(day.GetProperty("sessions").EnumerateArray());
        Assert.Equal("day", session.GetProperty("kind").GetString());
        Assert.All(day.GetProperty("missingSessions").EnumerateArray(), m => Assert.NotEmpty(m.GetProperty("why").GetString()!));
        Assert.Equal(3, day.GetProperty("missingSessions").GetArrayLength());
    }

    [Fact]
    public async Task At_78_north_in_December_the_sun_stays_down_and_noon_is_dawn_turning_into_dusk()
    {
        var day = await Day("lat=78.22&lon=15.65&date=2026-12-21&zone=Arctic/Longyearbyen");
        Assert.Equal("down", day.GetProperty("sun").GetProperty("stays").GetString());
        // At noon the sun stands 11.7° below the horizon (90° − 78.22° − 23.44°): just above the −12° where night ends.
        Assert.InRange(day.GetProperty("sun").GetProperty("noonAltitudeDegrees").GetDouble(), -11.70, -11.62);
        Assert.Equal(["dawn", "dusk", "night"], day.GetProperty("sessions").EnumerateArray().Select(s => s.GetProperty("kind").GetString()!));
        Assert.Equal("day", Assert.Single(day.GetProperty("missingSessions").EnumerateArray()).GetProperty("kind").GetString());
    }

    [Fact]
    public async Task On_the_Chatham_Islands_times_stand_at_twelve_and_three_quarter_hours()
    {
        var sun = (await Day("lat=-43.95&lon=-176.55&date=2026-06-21&zone=Pacific/Chatham")).GetProperty("sun");
        Assert.All(sun.EnumerateObject().Where(p => p.Value.ValueKind == JsonValueKind.String), p => Assert.EndsWith("+12:45", p.Value.GetString()!, StringComparison.Ordinal));
        Assert.Equal(new DateTime(2026, 6, 21), Time(sun, "solarNoon").Date);
    }

    // The date line: one place, two zones a day apart, one sun.
    [Fact]
    public async Task Either_side_of_the_date_line_the_same_sun_bears_two_dates()
    {
        var west = (await Day("lat=-13.8&lon=-171.8&date=2026-03-21&zone=Pacific/Apia")).GetProperty("sun");
        var east = (await Day("lat=-13.8&lon=-171.8&date=2026-03-20&zone=Pacific/Pago_Pago")).GetProperty("sun");
        Assert.Equal(Time(west, "rise"), Time(east, "rise"));
        Assert.Equal(24, (Time(west, "rise").Offset - Time(east, "rise").Offset).TotalHours);
    }

    [Theory]
    [InlineData("2026-03-08", "-05:00", "-04:00")]
    [InlineData("2026-11-01", "-04:00", "-05:00")]
    public async Task On_the_days_the_clocks_change_each_time_has_its_own_offset(string date, string before, string after)
    {
        var sun = (await Day($"lat=44.66&lon=-67.20&date={date}&zone=America/New_York")).GetProperty("sun");
        Assert.EndsWith(before, sun.GetProperty("solarMidnightBefore").GetString()!, StringComparison.Ordinal);
        Assert.EndsWith(after, sun.GetProperty("rise").GetString()!, StringComparison.Ordinal);
        Assert.InRange((Time(sun, "solarMidnightAfter") - Time(sun, "solarMidnightBefore")).TotalHours, 23.99, 24.01);
    }

    [Fact]
    public async Task An_old_zone_with_seconds_in_its_offset_keeps_the_moment()
    {
        // Liberia stood at −0:44:30 until 1972; the answer prints −00:45 or −00:44 and the same moment as UTC.
        var local = (await Day("lat=6.3&lon=-10.8&date=1960-05-01&zone=Africa/Monrovia")).GetProperty("sun");
        var utc = (await Day("lat=6.3&lon=-10.8&date=1960-05-01")).GetProperty("sun");
        Assert.Equal(Time(utc, "rise").UtcDateTime, Time(local, "rise").UtcDateTime);
    }

    [Fact]
    public async Task Height_lowers_the_horizon_and_brings_sunrise_forward()
    {
        var low = (await Day("lat=0&lon=0&date=2026-03-20")).GetProperty("sun");
        var high = (await Day("lat=0&lon=0&date=2026-03-20&heightMetres=100")).GetProperty("sun");
        Assert.True(Time(high, "rise") < Time(low, "rise"));
        Assert.Equal(Time(high, "standardRise"), Time(low, "standardRise"));
    }

    [Theory]
    [InlineData("lat=91&lon=0&date=2026-01-01", "lat must be a number from -90 to 90")]
    [InlineData("lat=NaN&lon=0&date=2026-01-01", "lat must be")]
    [InlineData("lat=44,6&lon=0&date=2026-01-01", "lat must be")]
    [InlineData("lon=0&date=2026-01-01", "lat is missing")]
    [InlineData("lat=0&lon=-181&date=2026-01-01", "lon must be")]
    [InlineData("lat=0&lon=Infinity&date=2026-01-01", "lon must be")]
    [InlineData("lat=0&lon=0&date=0001-01-01", "date must be a day from 1950 to 2100")]
    [InlineData("lat=0&lon=0&date=2026-02-30", "date must be")]
    [InlineData("lat=0&lon=0", "date is missing")]
    [InlineData("lat=0&lon=0&date=2026-01-01&zone=Mars/Olympus", "zone must be a name of the IANA list")]
    [InlineData("lat=0&lon=0&date=2026-01-01&heightMetres=-1", "heightMetres must be")]
    public async Task What_cannot_be_answered_is_said_in_words(string query, string words)
    {
        var answer = await site.Client.GetAsync($"/api/v1/almanac/day?{query}");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Contains(words, problem.GetProperty("detail").GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_guide_that_is_no_demo_carries_no_notice()
    {
        Assert.False((await Day("lat=0&lon=0&date=2026-01-01")).TryGetProperty("notice", out _));
    }

    [Fact]
    public async Task First_and_last_years_are_answered()
    {
        foreach (var date in new[] { "1950-01-01", "2100-12-31" })
            Assert.NotEqual(JsonValueKind.Null, (await Day($"lat=0&lon=180&date={date}")).GetProperty("sun").GetProperty("rise").ValueKind);
    }

    private static readonly JsonSerializerOptions Pretty = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private async Task<JsonElement> Day(string query) => JsonDocument.Parse(await site.Client.GetStringAsync($"/api/v1/almanac/day?{query}")).RootElement;

    private static DateTimeOffset Time(JsonElement sun, string name) => sun.GetProperty(name).GetDateTimeOffset();
}
