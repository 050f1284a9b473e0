using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Support;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>What is warned of before a station is stored. Bounds are the project's own; towns, lakes and seas are where any atlas has them.</summary>
public class StationDoubtsTests
{
    private const string Whole = "constituent,amplitude,phase\nM2,1.5,98\nS2,0.3,140\nN2,0.3,70\nK2,0.1,140\nK1,0.1,1\nO1,0.1,2\nP1,0.1,3\nQ1,0.1,4";

    private static readonly (string, Position)[] Places = [("Tern Bank", new Position(44.65, -67.2))];

    [Fact]
    public void A_whole_table_at_the_guides_own_shore_raises_no_doubt() => Assert.Empty(Doubts());

    [Theory]
    [InlineData("47.0", "8.5", "Zug", "more than 10 km inland")]
    [InlineData("47.0", "8.5", "Zug", "from Tern Bank, the nearest place of this guide: that is another sea")]
    [InlineData("44.65", "-67.25", "Lower lock", "Its name tells of a river")]
    [InlineData("40.0", "-45.0", "Buoy", "more than 10 km from any land")]
    [InlineData("43.66", "-70.25", "Harbour", "across a headland")]
    [InlineData("90", "0", "Pole", "that is another sea")]
    [InlineData("44.65", "67.25", "Pole", "a sign is lost")]
    public void A_station_inland_at_sea_or_far_away(string latitude, string longitude, string name, string words) =>
        Assert.Contains(Doubts(latitude, longitude, name), doubt => doubt.Contains(words, StringComparison.Ordinal));

    [Theory]
    [InlineData(Whole, "LAT", "0.5", "under a datum that is meant to be its lowest")]
    [InlineData("constituent,amplitude,phase\nM2,0.05,98", "LAT", "0.5", "whole range is under 0.3 m")]
    [InlineData("constituent,amplitude,phase\nM2,1.5,98", "MLLW", "2.5", "It has no S2, N2, K2, K1, O1, P1, Q1")]
    public void Heights_and_gaps_that_look_wrong(string table, string datum, string level, string words) =>
        Assert.Contains(Doubts(table: table, datum: datum, level: level), doubt => doubt.Contains(words, StringComparison.Ordinal));

    [Fact]
    public void A_guide_without_places_has_nothing_to_be_far_from() =>
        Assert.DoesNotContain(Doubts("47.0", "8.5", places: []), doubt => doubt.Contains("nearest place", StringComparison.Ordinal));

    private static IReadOnlyList<string> Doubts(string latitude = "44.65", string longitude = "-67.25", string name = "Wharf", string table = Whole,
        string datum = "MLLW", string level = "2.5", (string, Position)[]? places = null)
    {
        var form = new AddStationForm
        {
            Id = "wharf",
            Name = name,
            Latitude = latitude,
            Longitude = longitude,
            ChartDatum = datum,
            MeanSeaLevel = level,
            Attribution = "The club",
            Rows = table,
        };
        var (station, faults) = form.Read();
        Assert.Empty(faults);
        var tide = PlaceTide.Of(station!, null, null);
        return StationDoubts.Of(tide, places ?? Places, TideYear.Of(tide.Source, 2026), DateTimeZone.Utc, GuideHost.UsualNow);
    }
}
