using Foreshore.Almanac.Light;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

public sealed class SeasonDrawingTests
{
    private static readonly SeasonTable Table = SeasonTables.For(
        new Scene(Scenes.Ledge, Scenes.WideToSea, [WantedLight.SunInFrame, WantedLight.TwilightGlow]),
        Scenes.Zone, new YearMonth(2026, 10), HoursOut.Unrestricted, Scenes.Sky);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.001, 1)]
    [InlineData(1 / 6.0, 1)]
    [InlineData(0.17, 2)]
    [InlineData(0.5, 3)]
    [InlineData(0.999, 6)]
    [InlineData(1, 6)]
    public void Six_densities_share_the_days_evenly_and_a_single_day_is_seen(double share, int density) =>
        Assert.Equal(density, SeasonDrawing.Density(share));

    [Fact]
    public void The_runs_hold_every_cell_of_the_table_with_its_density()
    {
        var drawing = SeasonDrawing.Of(Table);
        for (var row = 0; row < 12; row++)
            for (var hour = 0; hour < 24; hour++)
            {
                var held = drawing.Runs.Where(r => r.Row == row && hour >= r.FromHour && hour < r.FromHour + r.Hours).ToList();
                Assert.Equal(SeasonDrawing.Density(Table.Months[row].ShareByHour[hour]), held.Count == 0 ? 0 : Assert.Single(held).Density);
            }
        Assert.NotEmpty(drawing.Runs);
    }

    [Fact]
    public void The_three_best_months_are_marked_and_no_other()
    {
        var lines = SeasonDrawing.Of(Table).Lines;
        Assert.Equal(["I", "II", "III"], lines.Select(l => l.Rank).OfType<string>().Order());
        var first = Table.Months.Single(m => m.Rank == 1);
        Assert.Equal(first.Month.ToString("MMM", System.Globalization.CultureInfo.InvariantCulture), lines.Single(l => l.Rank == "I").Name);
    }

    [Theory]
    [InlineData(0.002, "under 1 %")]
    [InlineData(0, "0 %")]
    [InlineData(0.996, "100 %")]
    public void Shares_are_whole_hundredths(double share, string words) => Assert.Equal(words, SeasonDrawing.Share(share));
}
