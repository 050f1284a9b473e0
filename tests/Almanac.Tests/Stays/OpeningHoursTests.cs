using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>Hours by the clock, season and permit, in New York's time: its clock is put on at 07:00 UTC on 8 March 2026 and back at 06:00 UTC on 1 November.</summary>
public class OpeningHoursTests
{
    private static readonly SunEphemeris Sun = SunEphemeris.Covering(Instant.FromUtc(2025, 12, 1, 0, 0), Instant.FromUtc(2028, 2, 1, 0, 0));
    private static readonly RuleDates Every = RuleDates.Every;

    [Fact]
    public void Hours_of_the_clock_open_and_shut_on_their_dates() =>
        Assert.Equal([Local(10, 8, 18), Local(11, 8, 18)], Over([new(Every, Clock(8, 18))], Days(10, 12)).Open);

    [Fact]
    public void Hours_that_shut_before_they_open_run_into_the_next_day_whatever_its_rule()
    {
        HoursRule[] rules = [new(new(null, Weekdays.Friday), Clock(18, 2)), new(Every, new DayHours.Closed())];

        // 12 June 2026 is a Friday.
        Assert.Equal([new Interval(At(12, 18), At(13, 2))], Over(rules, Days(11, 15)).Open);
    }

    [Fact]
    public void The_span_cuts_hours_off_and_hours_that_touch_are_one()
    {
        HoursRule[] rules = [new(new(null, Weekdays.Friday), Clock(18, 0)), new(new(null, Weekdays.Saturday), new DayHours.Always())];

        Assert.Equal([new Interval(At(12, 20), At(14, 0))], Over(rules, new Interval(At(12, 20), At(15, 0))).Open);
    }

    [Fact]
    public void The_first_rule_that_speaks_for_a_date_counts_and_a_date_without_one_is_shut()
    {
        HoursRule[] rules = [new(new(null, Weekdays.Wednesday), Clock(9, 12)), new(new(null, Weekdays.Wednesday | Weekdays.Thursday), Clock(8, 18))];

        Assert.Equal([Local(10, 9, 12), Local(11, 8, 18)], Over(rules, Days(9, 16)).Open);
        Assert.Empty(Over(rules, Days(9, 16)).Unknown);
    }

    [Fact]
    public void On_request_is_unknown_and_never_open()
    {
        var found = Over([new(new(null, Weekdays.Wednesday), Clock(18, 2)), new(Every, new DayHours.OnRequest())], Days(10, 12));

        Assert.Equal([new Interval(At(10, 18), At(11, 2))], found.Open);
        // What Wednesday's hours hold open until two is known.
        Assert.Equal([new Interval(At(11, 2), At(12, 0))], found.Unknown);
    }

    [Fact]
    public void By_permit_it_is_open_on_the_dates_of_a_letter_in_force_and_shut_on_all_others()
    {
        var letter = new DateInterval(new LocalDate(2026, 6, 11), new LocalDate(2026, 6, 12));

        Assert.Equal([new Interval(At(11, 0), At(13, 0))], Over([new(Every, new DayHours.ByPermit())], Days(10, 20), letter).Open);
        Assert.Equal(new Availability([], []), Over([new(Every, new DayHours.ByPermit())], Days(10, 20)), (one, other) => one!.Open.SequenceEqual(other!.Open) && one.Unknown.SequenceEqual(other.Unknown));
    }

    [Fact]
    public void Otherwise_by_permit_adds_the_rest_of_the_dates_of_a_letter()
    {
        var letter = new DateInterval(new LocalDate(2026, 6, 11), new LocalDate(2026, 6, 11));
        HoursRule[] rules = [new(Every, Clock(8, 18)) { OtherwiseByPermit = true }];

        Assert.Equal([Local(10, 8, 18), new Interval(At(11, 0), At(12, 0)), Local(12, 8, 18)], Over(rules, Days(10, 13), letter).Open);
    }

    [Theory]
    [InlineData(2026, 11, 14, false)]
    [InlineData(2026, 11, 15, true)]
    [InlineData(2026, 12, 31, true)]
    [InlineData(2027, 1, 1, true)]
    [InlineData(2027, 3, 1, true)]
    [InlineData(2027, 3, 2, false)]
    public void A_season_may_cross_New_Year(int year, int month, int day, bool holds)
    {
        var date = new LocalDate(year, month, day);
        var open = Over([new(new(new(new(11, 15), new(3, 1))), Clock(8, 18))], new Interval(At(date, 0), At(date.PlusDays(1), 0))).Open;

        Assert.Equal(holds ? [new Interval(At(date, 8), At(date, 18))] : [], open);
    }

    [Fact]
    public void A_season_that_begins_on_29_February_begins_on_the_28th_in_a_common_year()
    {
        var season = new Season(new(2, 29), new(3, 31));

        Assert.True(season.Holds(new(2027, 2, 28)));
        Assert.False(season.Holds(new(2028, 2, 28)));
        Assert.True(season.Holds(new(2028, 2, 29)));
        Assert.False(new Season(new(3, 1), new(2, 28)).Holds(new(2028, 2, 29)));
    }

    [Fact]
    public void A_time_that_the_clock_skips_is_the_moment_of_the_change()
    {
        var change = Instant.FromUtc(2026, 3, 8, 7, 0);
        var span = new Interval(change - Duration.FromHours(6), change + Duration.FromHours(6));

        Assert.Equal([new Interval(change, Instant.FromUtc(2026, 3, 8, 9, 0))], Over([new(new(null, Weekdays.Sunday), new DayHours.Clock(new(2, 30), new(5, 0)))], span).Open);
        Assert.Equal([new Interval(Instant.FromUtc(2026, 3, 8, 6, 0), change)], Over([new(new(null, Weekdays.Sunday), new DayHours.Clock(new(1, 0), new(2, 30)))], span).Open);
        // Hours that lie wholly in what is skipped are none.
        Assert.Empty(Over([new(new(null, Weekdays.Sunday), new DayHours.Clock(new(2, 10), new(2, 50)))], span).Open);
    }

    [Fact]
    public void Of_a_time_shown_twice_the_later_opens_and_the_earlier_shuts()
    {
        var change = Instant.FromUtc(2026, 11, 1, 6, 0);
        var span = new Interval(change - Duration.FromHours(6), change + Duration.FromHours(6));

        Assert.Equal([new Interval(Instant.FromUtc(2026, 11, 1, 6, 30), Instant.FromUtc(2026, 11, 1, 10, 0))], Over([new(new(null, Weekdays.Sunday), new DayHours.Clock(new(1, 30), new(5, 0)))], span).Open);
        Assert.Equal([new Interval(Instant.FromUtc(2026, 11, 1, 4, 30), Instant.FromUtc(2026, 11, 1, 5, 30))], Over([new(new(null, Weekdays.Sunday), new DayHours.Clock(new(0, 30), new(1, 30)))], span).Open);
        Assert.Empty(Over([new(new(null, Weekdays.Sunday), new DayHours.Clock(new(1, 10), new(1, 50)))], span).Open);
    }

    [Fact]
    public void A_whole_day_has_23_or_25_hours_where_the_clock_is_changed()
    {
        HoursRule[] rules = [new(new(null, Weekdays.Sunday), new DayHours.Always())];

        Assert.Equal(Duration.FromHours(23), Assert.Single(Over(rules, Around(new(2026, 3, 8))).Open).Duration);
        Assert.Equal(Duration.FromHours(25), Assert.Single(Over(rules, Around(new(2026, 11, 1))).Open).Duration);
    }

    [Fact]
    public void Always_is_the_whole_span_and_knows_itself()
    {
        Assert.Equal([Days(10, 20)], Over(OpeningHours.Always.Rules, Days(10, 20)).Open);
        Assert.True(OpeningHours.Always.IsAlways);
        Assert.True(new OpeningHours([new(new(null, Weekdays.Sunday), new DayHours.Always()), new(Every, new DayHours.Always())]).IsAlways);
        Assert.False(new OpeningHours([new(new(null, Weekdays.Sunday), new DayHours.Always())]).IsAlways);
        Assert.False(new OpeningHours([new(new(null, Weekdays.Sunday), new DayHours.Closed()), new(Every, new DayHours.Always())]).IsAlways);
        Assert.Equal(OpeningHours.Always, OpeningHours.Every(new DayHours.Always()));
    }

    [Fact]
    public void What_cannot_be_hours_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new OpeningHours([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RuleDates(null, Weekdays.None));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SunEdge(SunEvent.Sunrise, 361));
        Assert.Throws<ArgumentOutOfRangeException>(() => Over([new(Every, Clock(8, 18))], new Interval(Instant.FromUtc(2025, 1, 1, 0, 0), Instant.FromUtc(2026, 1, 1, 0, 0))));
    }

    private static DayHours.Clock Clock(int from, int until) => new(new(from, 0), new(until, 0));

    private static Availability Over(IEnumerable<HoursRule> rules, Interval span, params DateInterval[] permits) =>
        new OpeningHours(rules).Over(span, Shore.Zone, Shore.Place, Sun, permits);

    private static Instant At(LocalDate date, int hour) => date.At(new LocalTime(hour, 0)).InZoneLeniently(Shore.Zone).ToInstant();

    private static Instant At(int day, int hour) => At(new LocalDate(2026, 6, day), hour);

    private static Interval Local(int day, int from, int until) => new(At(day, from), At(day, until));

    /// <summary>From midnight to midnight in June 2026, the 10th of which is a Wednesday.</summary>
    private static Interval Days(int from, int until) => new(At(from, 0), At(until, 0));

    private static Interval Around(LocalDate date) => new(At(date.PlusDays(-1), 0), At(date.PlusDays(2), 0));
}
