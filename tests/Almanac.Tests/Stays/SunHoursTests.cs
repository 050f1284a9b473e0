using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Almanac.Stays;

/// <summary>Hours from sunrise to sunset, held against printed and computed tables; and what becomes of them where the sun does not rise or set.</summary>
public class SunHoursTests
{
    private static readonly DayHours.Sun ByDay = new(new(SunEvent.Sunrise), new(SunEvent.Sunset));
    private static readonly DayHours.Sun ByNight = new(new(SunEvent.Sunset), new(SunEvent.Sunrise));
    private static readonly Position Svalbard = new(78.22, 15.65);
    private static readonly DateTimeZone Longyearbyen = DateTimeZoneProviders.Tzdb["Arctic/Longyearbyen"];

    [Fact]
    public void They_open_and_shut_with_the_printed_tables_of_the_Naval_Observatory()
    {
        var compared = 0;
        foreach (var row in PublishedTable.Read("Sun/usno-rise-set.csv").Rows)
        {
            var zone = DateTimeZone.ForOffset(Offset.FromSeconds((int)Math.Round(row.Number("zoneHours") * 3600)));
            var date = LocalDatePattern.Iso.Parse(row["localDate"]).Value;
            var open = On(date, new Position(row.Number("latitude"), row.Number("longitude")), zone, ByDay);
            // Printed to the minute, and a second of differences in the sun's place: the bound of the table.
            if (row["rise"].Length > 0 && ++compared > 0) Assert.InRange((open!.Value.Start - row.Time("rise")).TotalSeconds, -31, 31);
            if (row["set"].Length > 0 && ++compared > 0) Assert.InRange((open!.Value.End - row.Time("set")).TotalSeconds, -31, 31);
        }

        Assert.True(compared > 40, $"{compared} sunrises and sunsets were compared.");
    }

    [Fact]
    public void Where_the_table_has_no_sunrise_they_are_shut_all_day_and_where_it_has_no_sunset_open()
    {
        var (dark, bright) = (0, 0);
        foreach (var row in PublishedTable.Read("Sun/astronomy-engine-events.csv").Rows)
        {
            double before = row.Number("lowestBefore"), highest = row.Number("highest"), after = row.Number("lowestAfter");
            var (isDark, isBright) = (highest < -0.9, before > -0.75 && after > -0.75);
            if (!isDark && !isBright) continue;
            var zone = DateTimeZone.ForOffset(Offset.FromSeconds((int)Math.Round(row.Number("longitude") / 15 * 3600)));
            var date = LocalDatePattern.Iso.Parse(row["date"]).Value;
            var position = new Position(row.Number("latitude"), row.Number("longitude"));
            Interval whole = new(zone.AtStartOfDay(date).ToInstant(), zone.AtStartOfDay(date.PlusDays(1)).ToInstant());

            Assert.Equal(isDark ? null : whole, On(date, position, zone, ByDay));
            if (isBright) Assert.Null(On(date, position, zone, ByNight));
            (dark, bright) = (dark + (isDark ? 1 : 0), bright + (isBright ? 1 : 0));
        }

        Assert.True(dark > 5 && bright > 5, $"{dark} dark and {bright} bright days were compared.");
    }

    /// <summary>From memory, as the town's own pages give it: midnight sun from about 20 April to 22 August, none from about 26 October to 16 February.</summary>
    [Fact]
    public void At_78_north_a_year_by_day_and_a_year_by_night_leave_no_gap_and_share_nothing()
    {
        var span = new Interval(Instant.FromUtc(2027, 1, 1, 0, 0), Instant.FromUtc(2028, 1, 1, 0, 0));
        var (day, night) = (Over(span, Svalbard, Longyearbyen, ByDay), Over(span, Svalbard, Longyearbyen, ByNight));

        Assert.Empty(day.Unknown);
        var joined = day.Open.Concat(night.Open).OrderBy(one => one.Start).ToList();
        Assert.All(joined.Zip(joined.Skip(1)), pair => Assert.Equal(pair.First.End, pair.Second.Start));
        Assert.Equal((span.Start, span.End), (joined[0].Start, joined[^1].End));

        var summer = day.Open.MaxBy(one => one.Duration);
        Assert.InRange(summer.Start.InZone(Longyearbyen).Date, new(2027, 4, 16), new(2027, 4, 22));
        Assert.InRange(summer.End.InZone(Longyearbyen).Date, new(2027, 8, 20), new(2027, 8, 26));
        Assert.Equal(span.Start, night.Open[0].Start);
        Assert.InRange(night.Open[0].End.InZone(Longyearbyen).Date, new(2027, 2, 13), new(2027, 2, 18));
    }

    [Fact]
    public void Offsets_move_the_ends_and_count_from_a_sunrise_that_happens()
    {
        var date = new LocalDate(2027, 6, 21);
        var plain = On(date, Shore.Place, Shore.Zone, ByDay)!.Value;
        var wider = On(date, Shore.Place, Shore.Zone, new(new(SunEvent.Sunrise, -30), new(SunEvent.Sunset, 45)))!.Value;
        var round = On(date, Shore.Place, Shore.Zone, new(new(SunEvent.Sunset, -60), new(SunEvent.Sunset, 60)))!.Value;

        Assert.Equal((plain.Start - Duration.FromMinutes(30), plain.End + Duration.FromMinutes(45)), (wider.Start, wider.End));
        Assert.Equal((plain.End - Duration.FromHours(1), plain.End + Duration.FromHours(1)), (round.Start, round.End));
        Assert.Null(On(new(2027, 12, 21), Svalbard, Longyearbyen, new(new(SunEvent.Sunrise, -60), new(SunEvent.Sunset, 60))));
        Assert.Null(On(new(2027, 6, 21), Svalbard, Longyearbyen, new(new(SunEvent.Sunset, -60), new(SunEvent.Sunset, 60))));
    }

    [Fact]
    public void From_sunset_to_sunrise_ends_on_the_next_morning()
    {
        var date = new LocalDate(2027, 3, 14);

        Assert.Equal(new Interval(On(date, Shore.Place, Shore.Zone, ByDay)!.Value.End, On(date.PlusDays(1), Shore.Place, Shore.Zone, ByDay)!.Value.Start),
            On(date, Shore.Place, Shore.Zone, ByNight));
    }

    /// <summary>The hours that begin on one date, by a rule for its weekday alone; null: none.</summary>
    private static Interval? On(LocalDate date, Position position, DateTimeZone zone, DayHours.Sun hours)
    {
        var noon = date.At(LocalTime.Noon).InZoneLeniently(zone).ToInstant();
        var span = new Interval(noon - Duration.FromHours(48), noon + Duration.FromHours(48));
        var rule = new HoursRule(new RuleDates(null, (Weekdays)(1 << ((int)date.DayOfWeek - 1))), hours);
        var open = new OpeningHours([rule]).Over(span, zone, position, SunEphemeris.Covering(span.Start, span.End), []).Open;
        return open.Count == 0 ? null : Assert.Single(open);
    }

    private static Availability Over(Interval span, Position position, DateTimeZone zone, DayHours hours) =>
        OpeningHours.Every(hours).Over(span, zone, position, SunEphemeris.Covering(span.Start, span.End), []);
}
