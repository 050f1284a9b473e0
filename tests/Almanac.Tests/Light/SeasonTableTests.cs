using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class SeasonTableTests
{
    private static readonly YearMonth First = new(2026, 3);

    [Theory]
    [InlineData(44.9, -66.99, "America/New_York", 100, WantedLight.GoldenLight)]
    [InlineData(78.2, 15.6, "Arctic/Longyearbyen", 320, WantedLight.TwilightGlow)]
    [InlineData(-43.95, -176.55, "Pacific/Chatham", 95, WantedLight.SunburstOverSkyline)]
    public void Table_equals_a_count_by_the_clock(double latitude, double longitude, string zoneId, double facing, WantedLight light)
    {
        var zone = Coast.Zone(zoneId);
        var scene = Coast.Scene(new Observer(new Position(latitude, longitude), 20, Coast.Bay), facing, light);
        var hours = new HoursOut(new LocalTime(4, 30), new LocalTime(22, 15));
        var table = SeasonTables.For(scene, zone, First, hours, Coast.Year2026);
        var (start, end) = (zone.AtStartOfDay(First.OnDayOfMonth(1)).ToInstant(), zone.AtStartOfDay(First.PlusMonths(12).OnDayOfMonth(1)).ToInstant());
        // Each sample stands for the ten seconds round it.
        var step = Duration.FromSeconds(10);
        var rows = new MinuteScan(scene, Coast.Year2026).Rows([light], start - Duration.FromMinutes(30) + step / 2, end + Duration.FromMinutes(30), step)[light]
            .Where(row => row.Length + step >= Duration.FromMinutes(LightTable.Of(light).LeastMinutes)).ToList();

        var days = new HashSet<(LocalDate Date, int Hour)>();
        var (inAll, within) = (new Dictionary<YearMonth, int>(), new Dictionary<YearMonth, int>());
        foreach (var row in rows)
        {
            var samples = Enumerable.Range(0, (int)Math.Round(row.Length / step) + 1).Select(i => (row.Start + step * i).InZone(zone).LocalDateTime).ToList();
            foreach (var hour in samples.GroupBy(time => (time.Date, time.Hour)))
                if (hour.Count() >= 30 || hour.Count() * 2 > samples.Count)
                    days.Add(hour.Key);
            foreach (var time in samples)
            {
                var month = time.Date.ToYearMonth();
                inAll[month] = inAll.GetValueOrDefault(month) + 1;
                if (time.TimeOfDay >= hours.EarliestAlarm && time.TimeOfDay < hours.LatestHome) within[month] = within.GetValueOrDefault(month) + 1;
            }
        }

        foreach (var month in table.Months)
        {
            var length = month.Month.ToDateInterval().Length;
            // A run may go either way where its length is within ten seconds of the least; more than one a month is a fault.
            var either = 0.1 + LightTable.Of(light).LeastMinutes / (double)length;
            Assert.Equal(inAll.GetValueOrDefault(month.Month) / 6.0 / length, month.MeanMinutesUnrestricted, either);
            Assert.Equal(within.GetValueOrDefault(month.Month) / 6.0 / length, month.MeanMinutesWithinHours, either);
            for (var hour = 0; hour < 24; hour++)
            {
                var counted = days.Count(day => day.Date.ToYearMonth() == month.Month && day.Hour == hour);
                Assert.True(Math.Abs(counted - month.ShareByHour[hour] * length) <= 1.001, $"{month.Month} {hour} h: {counted} by the clock, {month.ShareByHour[hour] * length}");
            }
        }

        Assert.Contains(table.Months, month => month.MeanMinutesUnrestricted > 1);
    }

    [Fact]
    public void Twelve_whole_local_months_from_the_first()
    {
        var table = Table(HoursOut.Unrestricted, WantedLight.GoldenLight);

        Assert.Equal(Enumerable.Range(0, 12).Select(First.PlusMonths), table.Months.Select(month => month.Month));
        Assert.All(table.Months, month => Assert.Equal(24, month.ShareByHour.Count));
        Assert.All(table.Months.SelectMany(month => month.ShareByHour), share => Assert.InRange(share, 0, 1));
    }

    [Fact]
    public void Hour_that_the_clock_skips_is_a_no_and_one_that_it_repeats_counts_once()
    {
        // Near the pole it is light round the clock from March to September. Chile's clock repeats 23 to 24 h on 4 April 2026
        // and skips 0 to 1 h on 6 September.
        var table = Table(HoursOut.Unrestricted, Coast.Scene(new Position(89.8, 0), 0, WantedLight.AnyDaylight), Coast.Zone("America/Santiago"));
        var (april, september) = (table.Months[1], table.Months[6]);

        Assert.All(april.ShareByHour, share => Assert.Equal(1, share));
        Assert.Equal((30 * 24 + 1) * 60 / 30.0, april.MeanMinutesUnrestricted, 1e-6);
        Assert.Equal(29 / 30.0, september.ShareByHour[0]);
        Assert.All(september.ShareByHour.Skip(1), share => Assert.Equal(1, share));
        Assert.Equal((30 * 24 - 1) * 60 / 30.0, september.MeanMinutesUnrestricted, 1e-6);
    }

    [Fact]
    public void Months_rank_by_minutes_within_the_hours_and_beside_it_by_all()
    {
        var morning = new HoursOut(new LocalTime(6, 0), new LocalTime(12, 0));
        var table = Table(morning, WantedLight.GoldenLight);

        var some = table.Months.Where(month => month.MeanMinutesWithinHours > 0).OrderByDescending(month => month.MeanMinutesWithinHours).ToList();
        Assert.Equal(Enumerable.Range(1, some.Count), some.Select(month => month.Rank!.Value));
        Assert.All(table.Months.Except(some), month => Assert.Null(month.Rank));
        Assert.Equal(Enumerable.Range(1, 12), table.Months.OrderByDescending(month => month.MeanMinutesUnrestricted).Select(month => month.UnrestrictedRank!.Value));
        Assert.NotEqual(table.Months.Select(month => month.Rank), table.Months.Select(month => month.UnrestrictedRank));
        Assert.All(table.Months, month => Assert.True(month.MeanMinutesWithinHours <= month.MeanMinutesUnrestricted));
    }

    [Fact]
    public void Months_of_no_minutes_carry_no_rank()
    {
        // Before 3 in the morning the golden light never comes at 45 north.
        var table = Table(new HoursOut(new LocalTime(0, 0), new LocalTime(3, 0)), WantedLight.GoldenLight);

        Assert.All(table.Months, month => Assert.Null(month.Rank));
        Assert.All(table.Months, month => Assert.Equal(0, month.MeanMinutesWithinHours));
        Assert.All(table.Months, month => Assert.NotNull(month.UnrestrictedRank));
    }

    [Fact]
    public void Hours_out_past_midnight_are_both_ends_of_the_day()
    {
        var evening = Table(new HoursOut(new LocalTime(12, 0), new LocalTime(0, 0)), WantedLight.GoldenLight);
        var morning = Table(new HoursOut(new LocalTime(0, 0), new LocalTime(12, 0)), WantedLight.GoldenLight);
        var night = Table(new HoursOut(new LocalTime(18, 0), new LocalTime(6, 0)), WantedLight.GoldenLight);
        var day = Table(new HoursOut(new LocalTime(6, 0), new LocalTime(18, 0)), WantedLight.GoldenLight);

        for (var i = 0; i < 12; i++)
        {
            Assert.Equal(evening.Months[i].MeanMinutesUnrestricted, evening.Months[i].MeanMinutesWithinHours + morning.Months[i].MeanMinutesWithinHours, 1e-9);
            Assert.Equal(evening.Months[i].MeanMinutesUnrestricted, night.Months[i].MeanMinutesWithinHours + day.Months[i].MeanMinutesWithinHours, 1e-9);
        }
    }

    [Fact]
    public void Best_hours_are_at_most_three_of_at_least_a_fifth()
    {
        var table = Table(HoursOut.Unrestricted, WantedLight.GoldenLight);
        var greatest = Enumerable.Range(0, 24).Select(hour => table.Months.Max(month => month.ShareByHour[hour])).OrderDescending().Take(3);

        Assert.Equal(greatest, table.BestHours.Select(hour => hour.Share));
        Assert.Equal(3, table.BestHours.Select(hour => hour.Hour).Distinct().Count());
        foreach (var hour in table.BestHours)
        {
            var equals = table.Months.Where(month => month.ShareByHour[hour.Hour] == hour.Share);
            Assert.Equal(equals.MinBy(month => month.Rank)!.Month, hour.Month);
        }

        // Land up to the zenith: nothing reaches a fifth of a month.
        var never = Table(HoursOut.Unrestricted, Coast.Scene(new Observer(Coast.Eastport, null, new Skyline([new SkylinePoint(0, 89, SkylineKind.Land)])), 180, WantedLight.SunInFrame));
        Assert.Empty(never.BestHours);
    }

    [Fact]
    public void Several_lights_count_together_and_apart()
    {
        var scene = Coast.Scene(Coast.Eastport, 60, WantedLight.BlueLight, WantedLight.TwilightGlow, WantedLight.SoftLight);
        var table = Table(HoursOut.Unrestricted, scene);

        Assert.Equal([WantedLight.TwilightGlow, WantedLight.BlueLight], table.PerLight.Select(layer => layer.Light));
        Assert.Equal([WantedLight.SoftLight], table.Unknown);
        for (var month = 0; month < 12; month++)
        {
            var (glow, blue) = (table.PerLight[0].Months[month], table.PerLight[1].Months[month]);
            var together = table.Months[month];
            Assert.InRange(together.MeanMinutesUnrestricted, Math.Max(glow.MeanMinutesUnrestricted, blue.MeanMinutesUnrestricted), glow.MeanMinutesUnrestricted + blue.MeanMinutesUnrestricted);
            for (var hour = 0; hour < 24; hour++)
                Assert.InRange(together.ShareByHour[hour], Math.Max(glow.ShareByHour[hour], blue.ShareByHour[hour]), glow.ShareByHour[hour] + blue.ShareByHour[hour] + 1e-12);
        }

        var alone = Table(HoursOut.Unrestricted, Coast.Scene(Coast.Eastport, 60, WantedLight.BlueLight));
        Assert.Equal(alone.Months[5].ShareByHour, table.PerLight[1].Months[5].ShareByHour);
    }

    [Fact]
    public void Only_unknown_light_leaves_an_empty_table_that_says_so()
    {
        var table = Table(HoursOut.Unrestricted, WantedLight.SoftLight);

        Assert.Equal([WantedLight.SoftLight], table.Unknown);
        Assert.Empty(table.PerLight);
        Assert.All(table.Months, month => Assert.Null(month.UnrestrictedRank));
    }

    [Fact]
    public void Months_outside_the_ephemeris_are_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SeasonTables.For(Coast.Scene(Coast.Eastport, 0, WantedLight.BlueLight), Coast.NewYork, new YearMonth(2030, 1), HoursOut.Unrestricted, Coast.Year2026));

    private static SeasonTable Table(HoursOut hours, params WantedLight[] wanted) => Table(hours, Coast.Scene(Coast.Eastport, 100, wanted));

    private static SeasonTable Table(HoursOut hours, Scene scene, DateTimeZone? zone = null) =>
        SeasonTables.For(scene, zone ?? Coast.NewYork, First, hours, Coast.Year2026);
}
