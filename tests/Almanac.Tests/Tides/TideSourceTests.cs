using NodaTime;

namespace Foreshore.Almanac.Tides;

public class TideSourceTests
{
    private static readonly Instant Low = Instant.FromUtc(2026, 6, 1, 4, 0);
    private static readonly TableTide Table = new([new(Low, 0.8, false), new(Low + Duration.FromHours(6.2), 5.4, true)]);

    // Half a cosine by hand: t = T/π·acos(1 − 2(z − LW)/(HW − LW)), LW 0.8 m, HW 5.4 m, rise 6.2 h.
    [Theory]
    [InlineData(2.5, 2.579)]
    [InlineData(2.2, 2.307)]
    [InlineData(3.0, 3.014)]
    [InlineData(2.7, 2.755)]
    public void Causeway_covers_when_half_a_cosine_says(double metres, double hours)
    {
        var crossing = Assert.Single(Table.Between(Low, Low + Duration.FromHours(6.2)).Crossings(metres));
        Assert.True(crossing.Rising);
        Assert.Equal(hours, (crossing.Time - Low).TotalHours, 0.0006);
    }

    // πR/(2T): 6 m in 6.2 h rises by 1.52 m/h at mid tide.
    [Fact]
    public void Mid_tide_rises_fastest()
    {
        var table = new TableTide([new(Low, 0, false), new(Low + Duration.FromHours(6.2), 6, true)]);
        Assert.Equal(1.52, table.Between(Low, Low + Duration.FromHours(6.2)).MetresPerHourAt(Low + Duration.FromHours(3.1)), 0.005);
    }

    [Fact]
    public void Table_answers_nothing_outside_its_rows() =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => Table.Between(Low - Duration.FromMinutes(1), Low + Duration.FromHours(2)));

    // By hand: high 10:12 at 5.4 m and low 04:00 at 0.8 m, +20 and −10 min, × 0.9 and × 0.5.
    [Fact]
    public void Subordinate_moves_each_water_by_its_own_offset()
    {
        var reference = new TableTide([new(Low, 0.8, false), new(Low + Duration.FromHours(6.2), 5.4, true), new(Low + Duration.FromHours(12.4), 1.0, false), new(Low + Duration.FromHours(18.6), 5.0, true)]);
        var place = new SubordinateTide(reference, new TideOffsets(20, -10, 0.9, 0.5, HeightOffset.Ratio), BetweenWaters.HalfCosine);
        var waters = place.Between(Low + Duration.FromHours(5), Low + Duration.FromHours(13)).Extremes;
        Assert.Equal([true, false], waters.Select(water => water.IsHigh));
        Assert.Equal(4.86, waters[0].Metres, 0.0001);
        Assert.Equal(0.5, waters[1].Metres, 0.0001);
        Assert.Equal(6.2 + 20 / 60.0, (waters[0].Time - Low).TotalHours, 0.0001);
        Assert.Equal(12.4 - 10 / 60.0, (waters[1].Time - Low).TotalHours, 0.0001);
    }

    // By hand: high 10:12 at 5.4 m and low 16:24 at 1.0 m, 25 min earlier and 5 later, 0.35 m higher and 0.2 m lower.
    [Fact]
    public void Fixed_offsets_are_added_to_the_heights()
    {
        var reference = new TableTide([new(Low, 0.8, false), new(Low + Duration.FromHours(6.2), 5.4, true), new(Low + Duration.FromHours(12.4), 1.0, false), new(Low + Duration.FromHours(18.6), 5.0, true)]);
        var place = new SubordinateTide(reference, new TideOffsets(-25, 5, 0.35, -0.2, HeightOffset.Fixed), BetweenWaters.HalfCosine);
        var waters = place.Between(Low + Duration.FromHours(5), Low + Duration.FromHours(13)).Extremes;
        Assert.Equal(5.75, waters[0].Metres, 0.0001);
        Assert.Equal(0.8, waters[1].Metres, 0.0001);
        Assert.Equal(6.2 - 25 / 60.0, (waters[0].Time - Low).TotalHours, 0.0001);
        Assert.Equal(12.4 + 5 / 60.0, (waters[1].Time - Low).TotalHours, 0.0001);
    }

    [Theory]
    [InlineData("noaa/9447130")]
    [InlineData("noaa/8410140")]
    [InlineData("noaa/8518750")]
    public void Tide_stays_within_its_own_nineteen_years(string id)
    {
        var tide = StationTides.Of(id, NodalModel.Schureman, []);
        var (highest, lowest) = TideYear.OfNodalCycle(tide, 2020);
        var year = tide.Between(Instant.FromUtc(2033, 1, 1, 0, 0), Instant.FromUtc(2034, 1, 1, 0, 0));
        var heights = new double[365 * 144];
        year.Metres(year.From, Duration.FromMinutes(10), heights);
        Assert.InRange(heights.Max(), highest.Metres - 0.5, highest.Metres + 1e-6);
        Assert.InRange(heights.Min(), lowest.Metres - 1e-6, lowest.Metres + 0.5);
        // The dataset's own bounds come from another span and program: the same within 15 cm.
        var stored = StationTides.Bounds(id);
        Assert.Equal(stored.Highest, highest.Metres, 0.15);
        Assert.Equal(stored.Lowest, lowest.Metres, 0.15);
    }
}
