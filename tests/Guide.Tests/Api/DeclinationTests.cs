using System.Net;
using System.Text.Json;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Support;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Api;

public sealed class DeclinationTests(EmptyGuide site) : IClassFixture<EmptyGuide>
{
    // WMM2025_TEST_VALUES, first rows: at height; at the ellipsoid's level the field differs, so a row at height 0 is taken.
    // 2027.5, 0 km, 13° S, 59° W: D −17.49, I −15.26, F 23220.4. 2 July 2027 is day 182 of 365: 2027.4986.
    [Fact]
    public async Task A_compass_is_told_the_official_value()
    {
        using var answer = JsonDocument.Parse(await site.Client.GetStringAsync("/api/v1/almanac/declination?lat=-13&lon=-59&date=2027-07-02"));
        var root = answer.RootElement;

        Assert.Equal(-17.49, root.GetProperty("declinationDegrees").GetDouble(), 0.011);
        Assert.Equal(-15.26, root.GetProperty("inclinationDegrees").GetDouble(), 0.011);
        Assert.Equal("WMM2025", root.GetProperty("model").GetString());
        Assert.Equal("usual", root.GetProperty("compassZone").GetString());
    }

    [Theory]
    [InlineData("lat=44&lon=-67&date=2031-01-01", "outside its years")]
    [InlineData("lat=44&lon=-67&date=2024-12-31", "outside its years")]
    [InlineData("lat=44&lon=-67", "date is missing")]
    [InlineData("lat=44&lon=-67&date=25.11.2026", "year-month-day")]
    [InlineData("lat=91&lon=-67&date=2026-11-25", "lat must be")]
    [InlineData("lat=44,5&lon=-67&date=2026-11-25", "decimal point")]
    [InlineData("lat=44&lon=x&date=2026-11-25", "lon must be")]
    public async Task Bad_questions_are_answered_in_words(string query, string words)
    {
        var answer = await site.Client.GetAsync($"/api/v1/almanac/declination?{query}");

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_keeps_declination_model_and_truth()
    {
        var place = new Position(44.7856, -67.0123);
        var reading = CompassReading.ByModel(214, place, new LocalDate(2026, 11, 25));
        var picture = new Composition("a", "A", "A picture.", 0, new Almanac.Camera.Lens(24, Almanac.Camera.Sensor.FullFrame, default), Almanac.Light.WantedLight.GoldenLight).FaceByCompass(reading);

        Assert.Equal(Math.Round(MagneticField.On(new LocalDate(2026, 11, 25), place)!.Value.DeclinationDegrees, 1), reading.DeclinationDegrees);
        Assert.Equal(214 + reading.DeclinationDegrees, picture.FacingDegrees, 1e-9);
        Assert.StartsWith("198° true (read 214° by compass, declination 15", picture.FacingWords(), StringComparison.Ordinal);
        Assert.EndsWith("° W (WMM2025, 25 Nov 2026))", picture.FacingWords(), StringComparison.Ordinal);
        Assert.Throws<NotAcceptedException>(() => CompassReading.ByModel(214, place, new LocalDate(2031, 1, 1)));
        Assert.Throws<NotAcceptedException>(() => CompassReading.ByModel(214, new Position(86.1, 139), new LocalDate(2026, 1, 1)));
        Assert.Throws<NotAcceptedException>(() => CompassReading.ByModel(360, place, new LocalDate(2026, 1, 1)));
    }
}
