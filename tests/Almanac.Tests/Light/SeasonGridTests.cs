using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class SeasonGridTests
{
    [Theory]
    [InlineData("12:00", "12:05", "12")]
    [InlineData("12:00", "12:04:59", "12")]
    [InlineData("12:57", "13:02", "12")]
    [InlineData("12:56", "13:04", "")]
    [InlineData("12:55", "13:05", "12 13")]
    [InlineData("12:30", "15:04", "12 13 14")]
    [InlineData("12:30", "15:05", "12 13 14 15")]
    public void Day_counts_for_an_hour_with_five_minutes_or_the_greater_part_of_a_run(string from, string to, string hours) =>
        Assert.Equal(hours, Marked(Coast.NewYork, (On(5, from), On(5, to))));

    [Fact]
    public void Two_short_runs_do_not_add_up() =>
        Assert.Equal("", Marked(Coast.NewYork, (On(5, "12:56"), On(5, "13:04")), (On(5, "13:56"), On(5, "14:04"))));

    [Fact]
    public void Run_over_the_skipped_hour_leaves_it_out() =>
        Assert.Equal("1 3", Marked(Coast.NewYork, (On(8, "01:30"), On(8, "03:30"))));

    [Fact]
    public void Repeated_hour_is_one_hour_whose_parts_add_up()
    {
        // 2026-11-01, 1:57 before the change to 1:03 after it: six minutes, three on each side.
        var change = Instant.FromUtc(2026, 11, 1, 6, 0);
        var grid = new SeasonGrid(new YearMonth(2026, 3), Coast.NewYork);
        var marked = new bool[grid.HourCells];
        grid.Mark([StretchOf(change - Duration.FromMinutes(3), change + Duration.FromMinutes(3))], marked);

        // Before the change 1:57 to 2:00, after it 1:00 to 1:03.
        Assert.Equal(1, marked.Count(one => one));
        Assert.Equal(1, Array.IndexOf(marked, true) % 24);
        Assert.Equal(1 / 30.0, grid.Shares(marked)[8][1]);
        Assert.Equal(6 / 30.0, grid.MeanMinutes([StretchOf(change - Duration.FromMinutes(3), change + Duration.FromMinutes(3))], HoursOut.Unrestricted)[8], 1e-6);
    }

    [Fact]
    public void Run_across_midnight_is_two_days_and_across_the_months_end_two_months()
    {
        var grid = new SeasonGrid(new YearMonth(2026, 3), Coast.NewYork);
        var midnight = new LocalDate(2026, 4, 1).AtStartOfDayInZone(Coast.NewYork).ToInstant();
        var stretch = StretchOf(midnight - Duration.FromMinutes(10), midnight + Duration.FromMinutes(20));
        var marked = new bool[grid.HourCells];
        grid.Mark([stretch], marked);

        Assert.Equal(1 / 31.0, grid.Shares(marked)[0][23]);
        Assert.Equal(1 / 30.0, grid.Shares(marked)[1][0]);
        Assert.Equal(10 / 31.0, grid.MeanMinutes([stretch], HoursOut.Unrestricted)[0], 1e-6);
        Assert.Equal(20 / 30.0, grid.MeanMinutes([stretch], HoursOut.Unrestricted)[1], 1e-6);
    }

    [Fact]
    public void What_lies_before_the_first_month_does_not_count()
    {
        var grid = new SeasonGrid(new YearMonth(2026, 3), Coast.NewYork);
        var start = new LocalDate(2026, 3, 1).AtStartOfDayInZone(Coast.NewYork).ToInstant();
        var marked = new bool[grid.HourCells];
        // Four minutes inside of a run of ten: too few, although it began before.
        grid.Mark([StretchOf(start - Duration.FromMinutes(6), start + Duration.FromMinutes(4))], marked);
        Assert.DoesNotContain(true, marked);
        grid.Mark([StretchOf(start - Duration.FromMinutes(5), start + Duration.FromMinutes(5))], marked);
        Assert.True(marked[0]);
    }

    private static string Marked(DateTimeZone zone, params (LocalDateTime From, LocalDateTime To)[] runs)
    {
        var grid = new SeasonGrid(new YearMonth(2026, 3), zone);
        var marked = new bool[grid.HourCells];
        grid.Mark([.. runs.Select(run => StretchOf(run.From.InZoneLeniently(zone).ToInstant(), run.To.InZoneLeniently(zone).ToInstant()))], marked);
        return string.Join(" ", Enumerable.Range(0, marked.Length).Where(cell => marked[cell]).Select(cell => cell % 24));
    }

    private static LocalDateTime On(int day, string time) =>
        new LocalDate(2026, 3, day) + NodaTime.Text.LocalTimePattern.CreateWithInvariantCulture(time.Length > 5 ? "HH:mm:ss" : "HH:mm").Parse(time).Value;

    private static Stretch StretchOf(Instant from, Instant to) => new(JulianDay.DaysFromJ2000(from), JulianDay.DaysFromJ2000(to));
}
