using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// A second reading of the rules: each case reckoned by hand from their words before it was asked of the code. Tide as in
/// <see cref="StayTimesTests"/>: 2.2 m is passed 138.4 min before and after low water, 2.7 m 165.3, 3.2 m 191.2 (6.2 h / π ·
/// acos(1 − 2 · 2.4 / 4.6)). Low water at 12:00 on 10 June, by day, or at 02:00 on 10 December, by night.
/// </summary>
public class RuleByRuleTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 6, 10, 16, 0);
    private static readonly Instant NightLow = Instant.FromUtc(2026, 12, 10, 7, 0);
    private static readonly StayPlan Watched = Shore.Plan with { IsWaveExposed = true, WatchPlace = 6, LedgeLimitMetres = 2.5 };

    [Fact]
    public void The_slowest_sets_the_pace_on_top_of_what_rock_ground_kit_and_dark_multiply_to()
    {
        var worst = new Party { WetRock = true, SoftGround = true, HeavyKit = true };

        Assert.Equal(1.75 * 1.45 * 1.15, worst.Factor(isDark: false), 1e-12); // 2.918
        Assert.Equal(3, worst.Factor(isDark: true), 1e-12); // 1.4 × 2.918 = 4.085, taken as 3
        Assert.Equal(3.6, (worst with { Pace = 1.2 }).Factor(isDark: true), 1e-12);
        Assert.Equal(1, new Party { Pace = 0.8 }.Factor(isDark: false)); // nobody's haste shortens a walk
    }

    [Fact]
    public void A_slow_party_turns_back_by_its_own_pace()
    {
        var plan = Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 20, false)], WalkOut = 20, Party = new Party { Pace = 2 } };

        // 14:18.4 − 15 − 2 × 20 − 5 = 13:18.4: the 1.5 of a walk that water cuts off is of the measured one, and 2 is more.
        Assert.Equal("13:15", Clock(Shore.After(plan, Shore.Tide(Noon), Noon).TurnBack));
    }

    [Theory]
    [InlineData(2.5, 2.9, 18, "13:25", StayCause.TideGate)] // bar 14:18.4 − 15 − 30 − 5 = 13:28.4
    [InlineData(3.5, 2.5, 18, "13:30", StayCause.Ledge)] // ledge 14:18.4 − 15 − 25 off it − 5 = 13:33.4; the bar 15:11.2 − 50 = 14:21.2
    [InlineData(3.5, 3.5, 14, "13:30", StayCause.ClockGate)] // gate 14:00 − 25 − 5 = 13:30
    public void The_earliest_of_all_that_closes_calls_one_back(double bar, double ledge, int gateShuts, string expected, StayCause cause)
    {
        var plan = Shore.Plan with
        {
            TideGates = [new TideGate("bar", bar, 20, false)],
            LedgeLimitMetres = ledge,
            ClockGates = [Shore.Gate(new LocalTime(6, 0), new LocalTime(gateShuts, 0), 0, 25, 25, "gate")],
            WalkIn = 25,
            WalkOut = 25,
        };

        var stay = Shore.After(plan, Shore.Tide(Noon), Noon);

        Assert.Equal((expected, cause), (Clock(stay.TurnBack), stay.Closing));
    }

    [Theory]
    [InlineData(15, 30, "14:55")] // 15:30 − 30 − 5, all of it by day
    [InlineData(17, 0, "16:10")] // the sun passes −6 at about 16:20: 17:00 − 1.4 × 30 − 5 = 16:13, though it is light then
    public void A_walk_that_runs_into_the_dusk_is_dark_from_its_first_minute(int hour, int minute, string expected)
    {
        var plan = Shore.Plan with { ClockGates = [Shore.Gate(new LocalTime(9, 0), new LocalTime(hour, minute), 0, 30, 30, "gate")] };

        Assert.Equal(expected, Clock(Shore.After(plan, null, Instant.FromUtc(2026, 12, 10, 17, 0)).TurnBack));
    }

    [Fact]
    public void A_gate_open_past_midnight_is_walked_to_in_the_dark()
    {
        var plan = Shore.Plan with { ClockGates = [Shore.Gate(new LocalTime(4, 0), new LocalTime(1, 0), 10, 20, 20, "gate")] };
        var stay = Shore.After(plan, null, Noon);

        Assert.Equal("00:15", Clock(stay.TurnBack)); // 01:00 − 10 of ride − 1.4 × 20 − 5 = 00:17
        Assert.Equal(new LocalDate(2026, 6, 11), stay.TurnBack!.Value.InZone(Shore.Zone).Date);
        // 04:00 + 10; the sun passes −6 at 04:11: 1.4 × 20 in the dark end at 04:38, 20 from the dawn on at 04:31; 15 of setting up.
        Assert.InRange(stay.From!.Value.InZone(Shore.Zone).TimeOfDay, new LocalTime(4, 43), new LocalTime(4, 49));
    }

    [Fact]
    public void Surge_comes_off_ledge_and_crossing_and_waves_off_the_crossing_alone()
    {
        var rough = Allowance.From(hectopascalsBelowMean: 45, surgeMetres: 0.8, onshoreWindMetresPerSecond: 16, significantWaveMetres: 1.0);
        Assert.Equal(new Allowance(0.8, 0.5), rough);
        var bar = Shore.After(Shore.Plan with { Allowance = rough, TideGates = [new TideGate("bar", 3.5, 5, TakesWaves: true)] }, Shore.Tide(Noon), Noon);
        var ledge = Shore.After(Shore.Plan with { Allowance = rough, IsWaveExposed = false, LedgeLimitMetres = 3.5 }, Shore.Tide(Noon), Noon);

        Assert.Equal(138.4, Minutes(bar.ClosesAt, Noon), 0.1); // 3.5 − 0.8 − 0.5 = 2.2 m
        Assert.Equal(165.3, Minutes(ledge.ClosesAt, Noon), 0.1); // 3.5 − 0.8 = 2.7 m
        Assert.Equal(-165.3, Minutes(ledge.OpensAt, Noon), 0.1); // on the falling tide too
    }

    [Fact]
    public void Each_open_period_has_its_own_way_in_and_its_own_turn_back()
    {
        var plan = Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 20, false)], WalkIn = 20, WalkOut = 20 };
        var stays = StayTimes.Between(plan, Shore.Tide(Noon), Noon, Noon + Duration.FromHours(13), Coast.Year2026.Sun);

        Assert.Equal(2, stays.Count);
        Assert.Equal(-138.4 + 20 + 15, Minutes(stays[0].From, Noon), 0.1);
        Assert.Equal("13:25", Clock(stays[0].TurnBack)); // 14:18.4 − 15 − 30 − 5
        // Low water again 12 h 24 min later: open from 22:05.6, dark: 1.4 × 20 of walk and 15 of setting up.
        Assert.Equal(744 - 138.4 + 28 + 15, Minutes(stays[1].From, Noon), 0.1);
        Assert.Equal("01:50", Clock(stays[1].TurnBack)); // 02:42.4 − 15 − 30 − 5 = 01:52.4: in the dark 1.4 is less than 1.5
    }

    [Fact]
    public void Where_a_crossing_never_opens_or_only_when_the_gate_is_shut_no_minute_counts()
    {
        var bar = new TideGate("bar", 1.0, 20, false); // 0.7 m: the tide falls to 0.8
        Assert.Empty(StayTimes.Between(Shore.Plan with { TideGates = [bar] }, Shore.Tide(Noon), Noon - Duration.FromDays(2), Noon + Duration.FromDays(2), Coast.Year2026.Sun));

        // The bar is open from 09:41.6 to 14:18.4 and from 22:05.6 on, the gate from 15 to 21.
        var plan = Shore.Plan with { TideGates = [bar with { ClosesAtMetres = 2.5 }], ClockGates = [Shore.Gate(new LocalTime(15, 0), new LocalTime(21, 0), 0, 20, 20, "gate")] };
        Assert.Empty(StayTimes.Between(plan, Shore.Tide(Noon), Noon - Duration.FromHours(6), Noon + Duration.FromHours(10), Coast.Year2026.Sun));
    }

    [Fact]
    public void Nothing_to_walk_to_beyond_reach_and_a_crossing_on_the_way_contradict_each_other()
    {
        var plan = Shore.Plan with { TideGates = [new TideGate("bar", 2.5, null, false)], BeyondReach = 0, WalkOut = 30 };

        Assert.Equal("13:10", Clock(Shore.After(plan, Shore.Tide(Noon), Noon).TurnBack)); // 14:18.4 − 15 − 45 − 5 = 13:13.4
        Assert.Contains(StayUnknown.WalkOut, (plan with { WalkOut = null }).Unknown(tideIsKnown: true, seaIsLeftOut: true));
    }

    [Fact]
    public void One_walks_in_watches_goes_down_and_sets_up_before_the_first_minute()
    {
        var plan = Watched with { TideGates = [new TideGate("bar", 3.5, 10, false)], WalkIn = 20 };

        var stay = Shore.After(plan, Shore.Tide(Noon), Noon);

        // Open at −191.2; + 20 of walk + 30 of watching + 6 down = −135.2, when the ledge has been bare for 3 min; + 5.
        Assert.Equal(-191.2 + 20, Minutes(stay.Watch!.Value.Start, Noon), 0.1);
        Assert.Equal(-191.2 + 20 + 30, Minutes(stay.Watch.Value.End, Noon), 0.1);
        Assert.Equal(-191.2 + 20 + 30 + 6 + 5, Minutes(stay.From, Noon), 0.1);
        // Over wet rock: 35 of walk, 10.5 down.
        Assert.Equal(-191.2 + 35 + 30 + 10.5 + 5, Minutes(Shore.After(plan with { Party = new Party { WetRock = true } }, Shore.Tide(Noon), Noon).From, Noon), 0.1);
    }

    [Theory]
    [InlineData(-10, true)]
    [InlineData(5, false)]
    public void A_ledge_is_used_by_night_when_one_is_on_it_by_dusk(int bareAfterDusk, bool isUsed)
    {
        // 2.5 − 0.3 m is passed 138.4 min before low water.
        var dusk = DuskOf(new LocalDate(2026, 12, 10));
        var low = dusk + Duration.FromMinutes(bareAfterDusk + 138.4);
        var stays = StayTimes.Between(Watched, Shore.Tide(low), dusk, low, Coast.Year2026.Sun);

        Assert.Equal(isUsed, stays.Count == 1);
        if (isUsed) Assert.Equal(bareAfterDusk + 5, (stays[0].From!.Value - dusk).TotalMinutes, 0.2);
    }

    [Fact]
    public void Whoever_works_by_night_watched_and_came_down_by_dusk()
    {
        var dusk = DuskOf(new LocalDate(2026, 12, 10));
        var low = dusk + Duration.FromHours(2);
        var plan = Watched with { LedgeLimitMetres = 5, WalkIn = 0 };
        var stay = Shore.After(plan, Shore.Tide(low), low);
        var window = new Interval(dusk + Duration.FromHours(2), dusk + Duration.FromHours(3));

        var way = StayItinerary.Of(stay, window, Coast.Year2026.Sun);

        // 6 min down end at dusk, and 30 of watching before them.
        Assert.Equal(-6, (way.Watch!.Value.End - dusk).TotalMinutes, 0.1);
        Assert.Equal(-36, (way.Watch.Value.Start - dusk).TotalMinutes, 0.1);
    }

    [Fact]
    public void A_way_not_known_in_the_dark_is_not_set_out_on_before_dawn_to_arrive_by_a_round_time()
    {
        var plan = Shore.Plan with { KnownInTheDark = false, WalkIn = 33, WalkOut = 33 };
        var stay = Shore.After(plan, null, Noon);
        var dawn = SunDays.On(new LocalDate(2026, 6, 10), new Observer(Shore.Place, null, Skyline.AssumedSea), Shore.Zone, Coast.Year2026.Sun).CivilDawn!.Value;
        Assert.Equal(33 + 15, (stay.From!.Value - dawn).TotalMinutes, 0.1);

        var way = StayItinerary.Of(stay, new Interval(stay.From.Value, stay.From.Value + Duration.FromMinutes(20)), Coast.Year2026.Sun);

        Assert.Equal(0, (way.WalkIn!.Value.Start - dawn).TotalMinutes, 0.1);
        Assert.Equal(33, (way.ArriveBy - dawn).TotalMinutes, 0.1);
    }

    [Fact]
    public void One_arrives_no_earlier_than_the_crossing_lets_one()
    {
        var plan = Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 20, false)], WalkIn = 20, WalkOut = 20 };
        var stay = Shore.After(plan, Shore.Tide(Noon), Noon);

        var way = StayItinerary.Of(stay, new Interval(stay.From!.Value, Noon), Coast.Year2026.Sun);

        // Open from 09:41.6; 20 of walk end at 10:01.6, not at 10:00.
        Assert.Equal(-138.4 + 20, Minutes(way.ArriveBy, Noon), 0.1);
        Assert.Equal(-138.4, Minutes(way.WalkIn!.Value.Start, Noon), 0.1);
    }

    [Fact]
    public void From_the_dark_stance_every_walk_is_longer_by_the_way_between()
    {
        var plan = Watched with { DarkStance = 8, TideGates = [new TideGate("bar", 2.5, 10, false)], WalkIn = 20, WalkOut = 20 };

        var dark = Assert.Single(StayTimes.AtDarkStance(plan, Shore.Tide(NightLow), NightLow - Duration.FromHours(3), NightLow + Duration.FromHours(3), Coast.Year2026.Sun));

        Assert.Equal(-138.4 + 28 * 1.4 + 15, Minutes(dark.Start, NightLow), 0.1);
        Assert.Equal("03:30", Clock(dark.End)); // 04:18.4 − 15 − 1.5 × 18 − 5 = 03:31.4
        // None of it counts for the ledge.
        Assert.Empty(StayTimes.Between(plan, Shore.Tide(NightLow), NightLow - Duration.FromHours(3), NightLow + Duration.FromHours(3), Coast.Year2026.Sun));
    }

    [Fact]
    public void A_window_lies_in_one_stay_with_its_own_turn_back_where_another_way_holds_in_another_session()
    {
        StayPlan Way(int opens, int shuts) => Shore.Plan with { ClockGates = [Shore.Gate(new LocalTime(opens, 0), new LocalTime(shuts, 0), 0, 0, 0, $"{opens}")] };
        var (from, to, turn) = (Noon - Duration.FromHours(8), Noon + Duration.FromHours(14), Noon - Duration.FromHours(2));
        UsableTime Time(StayPlan way) => UsableTime.Of(way, null, null, null, _ => null, from, to, Coast.Year2026.Sun);
        var usable = UsableTime.Joined([(new Interval(from, turn), Time(Way(6, 12))), (new Interval(turn, Noon), null), (new Interval(Noon, to), Time(Way(10, 16)))], null);
        var scene = Coast.Scene(Shore.Place, 100, WantedLight.AnyDaylight);

        // By the first way until 10:00 local, by none until noon, by the second after it; both would be open from 10:15 to 11:55.
        var runs = usable.Cut(LightRuns.Between(scene, from, to, Coast.Year2026).Runs);
        Assert.Equal([("06:15", "10:00"), ("12:00", "15:55")], runs.Select(run => (Clock(run.Start), Clock(run.End))));
        Assert.Equal(["11:55", "15:55"], runs.Select(run => Clock(usable.StayAt(run.Start)!.TurnBack)));
    }

    private static Instant DuskOf(LocalDate date) =>
        SunDays.On(date, new Observer(Shore.Place, null, Skyline.AssumedSea), Shore.Zone, Coast.Year2026.Sun).CivilDusk!.Value;

    private static double Minutes(Instant? time, Instant since) => (time!.Value - since).TotalMinutes;

    private static string Clock(Instant? time) => time!.Value.InZone(Shore.Zone).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
