using System.Numerics;
using Foreshore.Almanac.Checks;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// M1 of TICON, whose argument no text at hand gives: it is looked for in the data. The reading kept is number 155.555 without a
/// quarter turn, with f and u of the IHO's Annex A (f cos u = 2 cos p + 0.4 cos(p − N), f sin u = sin p + 0.2 sin(p − N)).
/// </summary>
public class M1Tests
{
    [Fact]
    public void No_other_reading_brings_TICONs_M1_as_near_to_NOAAs()
    {
        var pairs = PublishedTable.Read("Tides/m1-pairs.csv").Rows;
        Assert.True(pairs.Count >= 20, $"{pairs.Count} pairs");
        Assert.InRange(Median([.. pairs.Select(row => M1Checks.Error(row, M1Checks.NameOf(row)))]), 0, 0.45);
        foreach (var other in new[] { "M1", "M1B", "M1C", "NO1" })
            Assert.All(pairs.Where(row => !M1Checks.IsShort(row)), row => Assert.True(M1Checks.Error(row, other) > M1Checks.Error(row, "M1_TICON"), $"{other} of {row.Text}"));
    }

    // The middle of many, as some of them stand in rivers. A wave read a quarter turn off would stand 90 degrees off.
    [Theory]
    [InlineData("jpn-jodc_jma", 4)]
    [InlineData("aus-bom", 4)]
    [InlineData("chl-uhslc_fd", 4)]
    [InlineData("can-meds", 12)]
    public void M1_lies_between_O1_and_K1(string gauges, double mostDegrees)
    {
        var answers = new List<Complex>();
        foreach (var id in M1Answers.Stations(gauges))
            if (M1Answers.M1(id) is { Constituent.Name: "M1_TICON" } wave && M1Answers.Expected(id) is { } expected)
                answers.Add(M1Answers.Arrow(wave) / (expected * Complex.FromPolarCoordinates(1, Math.PI / 2)));

        Assert.True(answers.Count >= 8, $"{answers.Count} stations");
        Assert.InRange(Median([.. answers.Select(one => one.Phase * 180 / Math.PI)]), -mostDegrees, mostDegrees);
        Assert.InRange(Median([.. answers.Select(one => one.Magnitude)]), 0.9, 1.25);
    }

    // Read as the M1 of NOAA, the wave put some stations of the Strait of Georgia more than 10 cm off.
    [Fact]
    public void No_station_is_ten_centimetres_off_by_its_M1()
    {
        var (before, stations) = (0, 0);
        foreach (var id in M1Answers.Stations())
        {
            if (M1Answers.M1(id) is not { } wave || M1Answers.Expected(id) is not { } expected) continue;
            stations++;
            Assert.InRange(M1Answers.WorstMetres(wave, expected, wave.Constituent.Name), 0, 0.1);
            if (M1Answers.WorstMetres(wave, expected, "M1") > 0.1) before++;
        }

        Assert.True(stations > 1000, $"{stations} stations");
        Assert.True(before > 10, $"{before} stations");
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
