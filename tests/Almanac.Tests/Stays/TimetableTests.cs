using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>Sailings in New York's time, June 2026: the 10th is a Wednesday.</summary>
public class TimetableTests
{
    private static readonly RuleDates Every = RuleDates.Every;

    [Fact]
    public void A_first_and_a_last_without_an_interval_are_two_sailings()
    {
        var sailings = Over([new(Every, new DaySailings.FirstLast(new(8, 0), new(17, 30)))], Day(10));

        Assert.Equal([At(10, 8, 0), At(10, 17, 30)], sailings.Departures);
        Assert.Empty(sailings.Unknown);
    }

    [Fact]
    public void An_interval_counts_from_the_first_and_the_last_sails_all_the_same() =>
        Assert.Equal([At(10, 8, 0), At(10, 9, 30), At(10, 11, 0), At(10, 11, 45)], Over([new(Every, new DaySailings.FirstLast(new(8, 0), new(11, 45), 90))], Day(10)).Departures);

    [Fact]
    public void A_last_sailing_before_the_first_is_on_the_next_day()
    {
        SailingRule[] rules = [new(new(null, Weekdays.Wednesday), new DaySailings.FirstLast(new(22, 0), new(0, 30), 60))];

        Assert.Equal([At(10, 22, 0), At(10, 23, 0), At(11, 0, 0), At(11, 0, 30)], Over(rules, new Interval(At(10, 0, 0), At(12, 0, 0))).Departures);
        Assert.Equal([At(11, 0, 0), At(11, 0, 30)], Over(rules, Day(11)).Departures);
    }

    [Fact]
    public void A_list_is_sailed_in_order_on_its_days_and_on_days_without_a_rule_nothing_sails()
    {
        SailingRule[] rules = [new(new(null, Weekdays.Saturday | Weekdays.Sunday), new DaySailings.Times([new(16, 0), new(9, 0), new(16, 0)]))];
        var sailings = Over(rules, new Interval(At(12, 0, 0), At(14, 0, 0)));

        Assert.Equal([At(13, 9, 0), At(13, 16, 0)], sailings.Departures);
        Assert.Empty(sailings.Unknown);
    }

    [Fact]
    public void On_request_is_unknown_until_a_sailing_is_agreed_for_the_date()
    {
        SailingRule[] rules = [new(new(new Season(new(6, 1), new(6, 30))), new DaySailings.OnRequest())];
        var asked = new Timetable(rules, [new(2026, 6, 11, 14, 15)]).Over(new Interval(At(10, 0, 0), At(13, 0, 0)), Shore.Zone);

        Assert.Equal([At(11, 14, 15)], asked.Departures);
        Assert.Equal([Day(10), Day(12)], asked.Unknown);
    }

    [Fact]
    public void A_sailing_agreed_in_a_pause_sails_and_comes_on_top_of_a_list()
    {
        SailingRule[] rules = [new(new(null, Weekdays.Wednesday), new DaySailings.Times([new(9, 0)])), new(Every, new DaySailings.None())];
        var sailings = new Timetable(rules, [new(2026, 6, 10, 7, 0), new(2026, 6, 11, 14, 15)]).Over(new Interval(At(10, 0, 0), At(12, 0, 0)), Shore.Zone);

        Assert.Equal([At(10, 7, 0), At(10, 9, 0), At(11, 14, 15)], sailings.Departures);
        Assert.Empty(sailings.Unknown);
    }

    [Fact]
    public void Without_a_rule_nothing_is_known()
    {
        Assert.Equal([Day(10)], Timetable.Unknown.Over(Day(10), Shore.Zone).Unknown);
        Assert.Empty(Timetable.Unknown.Over(Day(10), Shore.Zone).Departures);
        Assert.Null(Timetable.Unknown.On(new(2026, 6, 10)));
    }

    [Fact]
    public void A_sailing_in_the_hour_that_the_clock_skips_sails_when_it_is_changed()
    {
        var change = Instant.FromUtc(2026, 3, 8, 7, 0);

        var sailings = Over([new(Every, new DaySailings.Times([new(2, 15), new(2, 45), new(4, 0)]))], new Interval(change - Duration.FromHours(2), change + Duration.FromHours(2)));

        Assert.Equal([change, Instant.FromUtc(2026, 3, 8, 8, 0)], sailings.Departures);
    }

    [Fact]
    public void Of_a_time_shown_twice_the_earlier_sails_and_until_the_later_nothing_is_known()
    {
        var change = Instant.FromUtc(2026, 11, 1, 6, 0);

        var sailings = Over([new(Every, new DaySailings.Times([new(1, 30)]))], new Interval(change - Duration.FromHours(2), change + Duration.FromHours(2)));

        Assert.Equal([Instant.FromUtc(2026, 11, 1, 5, 30)], sailings.Departures);
        Assert.Equal([new Interval(Instant.FromUtc(2026, 11, 1, 5, 30), Instant.FromUtc(2026, 11, 1, 6, 30))], sailings.Unknown);
    }

    [Fact]
    public void Timetables_are_equal_by_what_they_say()
    {
        var one = new Timetable([new(Every, new DaySailings.Times([new(9, 0), new(8, 0)]))], [new(2026, 6, 10, 7, 0)]);

        Assert.Equal(one, new Timetable([new(Every, new DaySailings.Times([new(8, 0), new(9, 0)]))], [new(2026, 6, 10, 7, 0)]));
        Assert.NotEqual(one, new Timetable(one.Rules));
        Assert.Throws<ArgumentException>(() => new DaySailings.Times([]));
    }

    private static Sailings Over(IEnumerable<SailingRule> rules, Interval span) => new Timetable(rules).Over(span, Shore.Zone);

    private static Instant At(int day, int hour, int minute) => new LocalDateTime(2026, 6, day, hour, minute).InZoneStrictly(Shore.Zone).ToInstant();

    private static Interval Day(int day) => new(At(day, 0, 0), At(day + 1, 0, 0));
}
