using Foreshore.Almanac.Earth;
using Foreshore.Guide.Keeping;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>Stations as pages ask for them: many places at once, the nearest ones, by name.</summary>
public class StationTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Many_places_and_their_cautions_take_one_command()
    {
        await using var db = guide.Services.GetService(typeof(Microsoft.EntityFrameworkCore.IDbContextFactory<GuideDb>)) is Microsoft.EntityFrameworkCore.IDbContextFactory<GuideDb> made
            ? await made.CreateDbContextAsync(Cancel) : throw new InvalidOperationException();
        var places = await db.CoastAsync(Reader.Visitor, Parts.None, cancel: Cancel);
        guide.Commands.Reset();
        var (tides, cautions) = await db.TidesAndCautionsAsync(places.Select(p => p.TideStationId).Append("noaa/1610367").Append("nobody/here"), places.Select(p => p.CountryCode), Cancel);

        Assert.Single(guide.Commands.Commands);
        Assert.All(places.Where(p => p.TideStationId is not null), place => Assert.NotNull(tides.Of(place)));
        Assert.NotEmpty(cautions);
        Assert.Equal("noaa/1612340", tides.Of("noaa/1610367")?.Reference?.Id);
        Assert.Null(tides.Of("nobody/here"));
        Assert.Null(tides.Of((string?)null));
    }

    /// <summary>Mean sea level above mean lower low water by the stations' published datums; the demo rounds to a centimetre.</summary>
    [Theory]
    [InlineData("noaa/8410140", 2.958)]
    [InlineData("noaa/8411060", 2.192)]
    [InlineData("noaa/8412581", 1.852)]
    public async Task The_demo_goes_by_stations_of_the_catalogue_and_their_sea_level(string id, double metres)
    {
        await using var db = guide.Open();
        var places = (await db.CoastAsync(Reader.Visitor, Parts.None, cancel: Cancel)).Where(p => p.TideStationId == id).ToList();
        var tide = (await db.TidesOfAsync([id], Cancel)).Of(id)!;

        Assert.NotEmpty(places);
        Assert.Equal(metres, tide.MeanSeaLevelMetres);
        Assert.All(places, place => Assert.Equal(metres, place.MeanSeaLevelAboveChartDatumMetres!.Value, 0.005));
    }

    [Fact]
    public async Task A_places_corrections_move_the_waters_and_make_it_another_tide()
    {
        await using var db = guide.Open();
        var tides = await db.TidesOfAsync(["noaa/8411060"], Cancel);
        var own = tides.Of("noaa/8411060")!;
        var corrected = tides.Of("noaa/8411060", new TideCorrections(11, 14, 0.86, 0.85))!;
        var (from, to) = (Instant.FromUtc(2026, 11, 25, 0, 0), Instant.FromUtc(2026, 11, 27, 0, 0));
        var (before, after) = (own.Source.Between(from, to).Extremes, corrected.Source.Between(from, to).Extremes);

        Assert.NotEqual(own.Stamp, corrected.Stamp);
        Assert.Equal(corrected.Stamp, tides.Of("noaa/8411060", new TideCorrections(11, 14, 0.86, 0.85))!.Stamp);
        Assert.Null(corrected.MeanSeaLevelMetres);
        var high = before.First(water => water.IsHigh);
        var moved = after.First(water => water.IsHigh);
        Assert.Equal(11, (moved.Time - high.Time).TotalMinutes, 0.5);
        Assert.Equal(high.Metres * 0.86, moved.Metres, 0.005);
    }

    [Fact]
    public async Task What_is_kept_is_the_same_curve_until_the_station_changes()
    {
        await using var db = guide.Open();
        var tide = (await db.TidesOfAsync(["noaa/8410140"], Cancel)).Of("noaa/8410140")!;
        var curves = new TideCurves(Shelf.Empty());
        var now = GuideHost.UsualNow;

        Assert.Same(curves.Around(tide, now), curves.Around(tide, now + Duration.FromHours(3)));
        Assert.NotSame(curves.Around(tide, now), curves.Around(tide, now + Duration.FromDays(1)));
        Assert.True(curves.Around(tide, now)!.From <= now - Duration.FromDays(33) && curves.Around(tide, now)!.To >= now + Duration.FromDays(402));
        Assert.Same(curves.Year(tide, 2026), curves.Year(tide, 2026));
        Assert.Null(TideCurves.Between(tide, Instant.FromUtc(1800, 1, 1, 0, 0), Instant.FromUtc(1800, 1, 3, 0, 0)));
    }

    /// <summary>Neighbours of the stations themselves, on both sides of the date line and near the pole.</summary>
    [Theory]
    [InlineData(44.9046, -66.9829, "noaa/8410140", 100)]
    [InlineData(78.93, 11.93, null, 1_000_000)]
    [InlineData(-17.0, 179.99, null, 1_500_000)]
    [InlineData(-17.0, -179.99, null, 1_500_000)]
    public async Task The_nearest_stations_come_first_across_the_date_line_too(double latitude, double longitude, string? first, double withinMetres)
    {
        await using var db = guide.Open();
        var at = new Position(latitude, longitude);
        var near = await db.StationsNearAsync(at, 5, Cancel);
        var all = await db.StationsNearAsync(at, 3000, Cancel);

        Assert.Equal(5, near.Count);
        Assert.Equal(near.Select(n => n.Metres).Order(), near.Select(n => n.Metres));
        Assert.Equal(all.Take(5).Select(n => n.Station.Id), near.Select(n => n.Station.Id));
        Assert.InRange(near[0].Metres, 0, withinMetres);
        if (first is not null) Assert.Equal(first, near[0].Station.Id);
    }

    [Fact]
    public async Task Far_stations_come_with_a_warning()
    {
        await using var db = guide.Open();
        var atSea = await db.StationsNearAsync(new Position(-45, -130), 1, Cancel);
        Assert.True(atSea[0].IsTooFar);
        Assert.Contains(atSea[0].Warnings, words => words.Contains("another sea", StringComparison.Ordinal));

        var station = atSea[0].Station with { LatitudeDegrees = 44, LongitudeDegrees = -67, Name = "Sand River Entrance", LowestMetres = -0.1, HighestMetres = 0.1, Disclaimer = "Possible datum issues" };
        var beside = NearStation.Of(station, new Position(44.3, -67));
        Assert.False(beside.IsTooFar);
        Assert.Equal(4, beside.Warnings.Count);
        Assert.Empty(NearStation.Of(station with { Name = "Cutler", HighestMetres = 5, Disclaimer = null }, new Position(44.1, -67)).Warnings);
    }

    [Fact]
    public async Task Stations_are_found_by_words_of_their_names_without_accents()
    {
        await using var db = guide.Open();
        Assert.Contains(await db.FindStationsAsync("alesund", Cancel), station => station.Name == "Ålesund");
        Assert.Contains(await db.FindStationsAsync("8410140", Cancel), station => station.Name == "Eastport");
        Assert.Empty(await db.FindStationsAsync("%", Cancel));
        Assert.Empty(await db.FindStationsAsync(null, Cancel));
        Assert.Empty(await db.FindStationsAsync(new string('a', 300), Cancel));
    }
}
