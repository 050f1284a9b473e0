using Foreshore.Almanac.Light;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>Light, tide and access together: season tables, good dates, dark stances.</summary>
public class JoinedTests
{
    private static readonly YearMonth First = new(2026, 3);
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 20, 15, 0);
    private static readonly TideSource Source = new HarmonicTide(
        [new("M2", 2.1, 32), new("S2", 0.4, 70), new("N2", 0.5, 5), new("K1", 0.3, 120)], 2.9, NodalModel.Schureman);

    private static readonly TideCurve Tide = Source.Between(Coast.Year2026.From, Coast.Year2026.To);
    private static readonly StayPlan Ledge = Shore.Plan with { LedgeLimitMetres = 2.9, IsReachedByWater = true, CutOffIsRecorded = true };
    private static readonly Scene Scene = Coast.Scene(Shore.Place, 100, WantedLight.GoldenLight, WantedLight.BlueLight);

    [Fact]
    public void Second_layer_counts_the_minutes_that_a_scan_of_light_and_stays_counts()
    {
        var usable = Usable(Ledge, new WantedTide { Rising = false });
        var table = SeasonTables.For(Scene, Shore.Zone, First, HoursOut.Unrestricted, Coast.Year2026, usable);
        var month = Span(2);
        var runs = LightRuns.Between(Scene, month.Start - Duration.FromDays(1), month.End + Duration.FromDays(1), Coast.Year2026).Runs;
        var stays = StayTimes.Between(Ledge, Tide, month.Start - Duration.FromDays(1), month.End + Duration.FromDays(1), Coast.Year2026.Sun);

        // Each light's own minutes in rows at least as long as it asks, then together.
        var minutes = new HashSet<Instant>();
        foreach (var run in runs)
        {
            var row = new List<Instant>();
            for (var time = run.Start; time <= run.End; time += Duration.FromSeconds(20))
            {
                if (stays.Any(stay => stay.From <= time && time < stay.TurnBack) && !Tide.RisingAt(time)) row.Add(Instant.FromUnixTimeSeconds(time.ToUnixTimeSeconds() / 20 * 20));
                else Keep();
            }

            Keep();

            void Keep()
            {
                if (row.Count * 20 >= LightTable.Of(run.Light).LeastMinutes * 60) minutes.UnionWith(row);
                row.Clear();
            }
        }

        var counted = minutes.Count(time => time >= month.Start && time < month.End) / 3.0 / 31;
        Assert.Equal(counted, table.Use!.Months[2].MeanMinutesUnrestricted, 0.4);
        Assert.True(counted > 3);
        Assert.True(table.Use.Months[2].MeanMinutesUnrestricted < table.Months[2].MeanMinutesUnrestricted);
    }

    [Fact]
    public void Every_window_that_is_left_has_its_stay_with_its_turn_back()
    {
        var usable = Usable(Ledge, null);
        var runs = usable.Cut(LightRuns.Between(Scene, Span(2).Start, Span(2).End, Coast.Year2026).Runs);

        Assert.NotEmpty(runs);
        Assert.All(runs, run => Assert.True(usable.StayAt(run.Start)?.TurnBack >= run.End));
    }

    [Fact]
    public void Months_rank_by_usable_minutes_and_those_of_none_carry_no_rank()
    {
        // A ledge that is never bare but at the lowest waters of the year.
        var lowest = TideYear.Of(Source, 2026).Lowest.Metres;
        var table = SeasonTables.For(Scene, Shore.Zone, First, HoursOut.Unrestricted, Coast.Year2026, Usable(Ledge with { LedgeLimitMetres = lowest + 0.3 + 0.35 }, null));

        Assert.Same(table.Use!.Months, table.Ranked);
        Assert.Contains(table.Ranked, month => month.Rank is not null);
        Assert.Contains(table.Ranked, month => month.Rank is null);
        Assert.All(table.Ranked, month => Assert.Equal(month.MeanMinutesWithinHours > 0, month.Rank is not null));
        Assert.All(table.Months, month => Assert.NotNull(month.Rank));
    }

    [Fact]
    public void An_hour_is_marked_where_light_and_tide_hold_together_on_half_the_days()
    {
        var free = SeasonTables.For(Scene, Shore.Zone, First, HoursOut.Unrestricted, Coast.Year2026, Usable(Shore.Plan, null));
        Assert.Equal(free.Months.Select(month => month.MeanMinutesUnrestricted), free.Use!.Months.Select(month => month.MeanMinutesUnrestricted));
        for (var month = 0; month < 12; month++)
            for (var hour = 0; hour < 24; hour++)
                Assert.Equal(free.Months[month].ShareByHour[hour] >= 0.5, free.Use.IsMarked(month, hour));
        Assert.Null(SeasonTables.For(Scene, Shore.Zone, First, HoursOut.Unrestricted, Coast.Year2026).Use);
    }

    [Fact]
    public void Good_dates_are_the_best_by_usable_minutes_and_carry_the_tide()
    {
        var usable = Usable(Ledge, null);
        var dates = GoodDates.Next(Scene, Shore.Zone, Now, Coast.Year2026, 40, usable);

        Assert.Equal(40, dates.Count);
        Assert.All(dates, date =>
        {
            var longest = date.Windows.MaxBy(window => window.Duration);
            Assert.True(date.Stay!.From <= longest.Start && longest.End <= date.Stay.TurnBack);
            Assert.Equal(Tide.MetresAt(longest.Start), date.Tide!.MetresAtStart);
            Assert.Equal(Tide.MetresAt(longest.End), date.Tide.MetresAtEnd);
            Assert.True(date.Tide.MetresAtStart < 2.6 && date.Tide.MetresAtEnd < 2.6);
            Assert.Equal(date.Tide.Turns.OrderBy(turn => turn.Time), date.Tide.Turns);
            Assert.True(date.Tide.Turns[0].Time <= date.Session.Start && date.Tide.Turns[^1].Time >= date.Session.End);
        });
        var light = GoodDates.Next(Scene, Shore.Zone, Now, Coast.Year2026, 5000).ToDictionary(date => date.Session);
        Assert.All(dates, date => Assert.True(date.Usable <= light[date.Session].Usable));
        Assert.All(light.Values, date => Assert.Null(date.Tide));
    }

    [Fact]
    public void Dark_minutes_are_those_of_the_way_alone_while_the_sun_is_down()
    {
        var from = Instant.FromUtc(2026, 12, 10, 12, 0);
        var plan = Shore.Plan with { IsWaveExposed = true, WatchPlace = 5, DarkStance = 8, LedgeLimitMetres = 2.5, TideGates = [new TideGate("bar", 3.5, 10, false)], WalkIn = 20, WalkOut = 20 };
        var dark = StayTimes.AtDarkStance(plan, Tide, from, from + Duration.FromDays(3), Coast.Year2026.Sun);
        var ways = StayTimes.Between(plan.ToDarkStance(8), Tide, from, from + Duration.FromDays(3), Coast.Year2026.Sun);

        Assert.NotEmpty(dark);
        Assert.All(dark, one =>
        {
            Assert.Contains(ways, stay => stay.From <= one.Start && one.End <= stay.TurnBack);
            Assert.True(Altitude(one.Start + one.Duration / 2) < -6);
            Assert.True(Altitude(one.Start + Duration.FromSeconds(5)) < -5.99 && Altitude(one.End - Duration.FromSeconds(5)) < -5.99);
        });
        Assert.Empty(StayTimes.AtDarkStance(plan with { DarkStance = null }, Tide, from, from + Duration.FromDays(3), Coast.Year2026.Sun));
        Assert.Empty(StayTimes.AtDarkStance(plan with { IsWaveExposed = false }, Tide, from, from + Duration.FromDays(3), Coast.Year2026.Sun));

        static double Altitude(Instant time) => Coast.Year2026.Sun.At(time, Shore.Place).AltitudeDegrees;
    }

    [Fact]
    public void What_nobody_has_recorded_is_named_and_a_walk_nobody_timed_leaves_no_stay()
    {
        var bare = new StayPlan(Shore.Place, Shore.Zone) { IsReachedByWater = true, TideGates = [new TideGate("bar", 2.5, null, TakesWaves: true)] };

        Assert.Equal([StayUnknown.Tide, StayUnknown.LedgeLimit, StayUnknown.CutOff, StayUnknown.WalkIn, StayUnknown.WalkOut, StayUnknown.WavesAtCrossing], bare.Unknown(tideIsKnown: false, seaIsLeftOut: false));
        Assert.Empty(Ledge.Unknown(tideIsKnown: true, seaIsLeftOut: true));
        Assert.Empty(StayTimes.Between(bare, Tide, Now, Now + Duration.FromDays(2), Coast.Year2026.Sun));
        Assert.NotEmpty(StayTimes.Between(bare with { WalkIn = 5, WalkOut = 5 }, Tide, Now, Now + Duration.FromDays(2), Coast.Year2026.Sun));
    }

    [Fact]
    public void What_would_bind_next_is_told_beside_what_binds()
    {
        var noon = Instant.FromUtc(2026, 6, 10, 16, 0);
        var plan = Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 5, false), new TideGate("ford", 3.0, 60, false)], LedgeLimitMetres = 4.5, WalkIn = 60 };

        var stay = Shore.After(plan, Shore.Tide(noon), noon);

        Assert.Equal(("ford", StayCause.TideGate, "bar"), (stay.ClosesBy, stay.NextClosing, stay.NextClosesBy));
        Assert.Equal(2.307, Shore.Hours(stay.NextClosesAt, noon), 0.001);
        Assert.True(stay.NextTurnBack > stay.TurnBack && stay.NextTurnBack < stay.NextClosesAt);
    }

    [Fact]
    public void An_itinerary_walks_in_watches_sets_up_and_walks_out_from_turn_back()
    {
        var noon = Instant.FromUtc(2026, 6, 10, 16, 0);
        var plan = Shore.Plan with { IsWaveExposed = true, WatchPlace = 6, LedgeLimitMetres = 2.5, WalkIn = 20, WalkOut = 30 };
        var stay = Shore.After(plan, Shore.Tide(noon), noon);
        var window = new Interval(stay.TurnBack!.Value - Duration.FromMinutes(40), stay.TurnBack.Value - Duration.FromMinutes(10));

        var way = StayItinerary.Of(stay, window, Coast.Year2026.Sun);

        // 30 min of watching, 6 down, 5 setting up; rounded down to five.
        Assert.Equal(window.Start - Duration.FromMinutes(41), way.Watch!.Value.Start);
        Assert.InRange((way.Watch.Value.Start - way.ArriveBy).TotalMinutes, 0, 5);
        Assert.Equal((way.ArriveBy - Duration.FromMinutes(20), way.ArriveBy), (way.WalkIn!.Value.Start, way.WalkIn.Value.End));
        Assert.Equal((stay.TurnBack.Value + Duration.FromMinutes(5), stay.TurnBack.Value + Duration.FromMinutes(35)), (way.WalkOut!.Value.Start, way.WalkOut.Value.End));
    }

    [Fact]
    public void Tide_leaves_open_what_is_below_every_limit_less_the_allowance()
    {
        var noon = Instant.FromUtc(2026, 6, 10, 16, 0);
        var plan = Shore.Plan with { LedgeLimitMetres = 2.5, TideGates = [new TideGate("ford", 3.0, 60, false)], WalkIn = 60 };

        var open = Assert.Single(StayTimes.OpenByTide(plan, Shore.Tide(noon), noon - Shore.Half / 2, noon + Shore.Half / 2));

        Assert.Equal(-2.307, Shore.Hours(open.Start, noon), 0.001);
        Assert.Equal(2.307, Shore.Hours(open.End, noon), 0.001);
        Assert.Equal([new Interval(noon, noon + Shore.Half)], StayTimes.OpenByTide(Shore.Plan, null, noon, noon + Shore.Half));
    }

    private static Interval Span(int month) => new(
        Shore.Zone.AtStartOfDay(First.PlusMonths(month).OnDayOfMonth(1)).ToInstant(), Shore.Zone.AtStartOfDay(First.PlusMonths(month + 1).OnDayOfMonth(1)).ToInstant());

    private static UsableTime Usable(StayPlan plan, WantedTide? wish) =>
        UsableTime.Of(plan, wish, null, Tide, year => TideYear.Of(Source, year), Coast.Year2026.From, Coast.Year2026.To, Coast.Year2026.Sun);
}
