using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// Each rule of a stay by hand. The tide is the half cosine whose cut-offs are worked out from t = T/π · acos(1 − 2(z − LW)/(HW − LW)):
/// with LW 0.8, HW 5.4, T 6.2 h a height of 2.5 m is covered 2.579 h after low water, 2.2 m 2.307 h, 2.7 m 2.755 h after. The
/// margins themselves are common practice, no source.
/// </summary>
public class StayTimesTests
{
    // 10 June: light all around low water at 12:00 local; 10 December: dark around low water at 02:00 local.
    private static readonly Instant Noon = Instant.FromUtc(2026, 6, 10, 16, 0);
    private static readonly Instant NightLow = Instant.FromUtc(2026, 12, 10, 7, 0);

    [Fact]
    public void A_causeway_closes_as_the_half_cosine_says_with_the_allowance_taken_off()
    {
        var stay = Shore.After(Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 20, false)], WalkIn = 25, WalkOut = 25 }, Shore.Tide(Noon), Noon);

        Assert.Equal(2.307, Shore.Hours(stay.ClosesAt, Noon), 0.001);
        Assert.Equal((StayCause.TideGate, "bar"), (stay.Closing, stay.ClosesBy));
        // Both ways: on the falling tide it opens as long before low water.
        Assert.Equal(-2.307, Shore.Hours(stay.OpensAt, Noon), 0.001);
    }

    [Theory]
    [InlineData(20.0, false, 1, "13:25")] // 14:18.4 − 15 − 1.5 × 20 − 5 = 13:28.4
    [InlineData(20.0, true, 1, "13:20")] // wet rock 1.75 × 20 = 35: 13:23.4
    [InlineData(20.0, false, 4, "13:20")] // ten minutes of packing: 13:23.4
    [InlineData(null, false, 1, "13:05")] // the whole walk to beyond reach, 33 × 1.5 = 49.5: 13:08.9
    public void Turn_back_is_the_closing_less_reserve_walk_and_packing_rounded_down_to_five_minutes(double? beyond, bool wet, int count, string expected)
    {
        var plan = Shore.Plan with
        {
            TideGates = [new TideGate("bar", 2.5, beyond, false)],
            WalkIn = 40,
            WalkOut = 40,
            BeyondReach = 33,
            Party = new Party { WetRock = wet, Count = count },
        };

        Assert.Equal(expected, Clock(Shore.After(plan, Shore.Tide(Noon), Noon).TurnBack));
    }

    [Theory]
    [InlineData(false, "03:25")] // by night 1.4 is less than the least of 1.5: as by day
    [InlineData(true, "03:05")] // dark and wet 2.45 × 20 = 49: 04:18.4 − 15 − 49 − 5 = 03:09.4
    public void The_dark_counts_in_a_walk_that_the_sun_does_not_light(bool wet, string expected)
    {
        var plan = Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 20, false)], WalkOut = 20, Party = new Party { WetRock = wet } };

        Assert.Equal(expected, Clock(Shore.After(plan, Shore.Tide(NightLow), NightLow).TurnBack));
    }

    [Fact]
    public void All_factors_together_are_taken_no_higher_than_three() =>
        Assert.Equal(3, new Party { WetRock = true, SoftGround = true, HeavyKit = true }.Factor(isDark: true));

    [Fact]
    public void Through_a_crossing_one_counts_from_its_opening_the_whole_walk_and_the_setting_up()
    {
        var stay = Shore.After(Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 20, false)], WalkIn = 30 }, Shore.Tide(Noon), Noon);

        Assert.Equal(-2.307 + 30 / 60.0, Shore.Hours(stay.Arrival, Noon), 0.001);
        Assert.Equal(-2.307 + 45 / 60.0, Shore.Hours(stay.From, Noon), 0.001);
    }

    [Fact]
    public void Of_several_crossings_the_last_to_open_and_the_first_to_close_count()
    {
        // The far ford closes later (2.755 h) but its walk of an hour binds before the near bar (2.307 h).
        var plan = Shore.Plan with { TideGates = [new TideGate("bar", 2.5, 5, false), new TideGate("ford", 3.0, 60, false)], WalkIn = 60 };

        var stay = Shore.After(plan, Shore.Tide(Noon), Noon);

        Assert.Equal("bar", stay.OpensBy);
        Assert.Equal("ford", stay.ClosesBy);
        Assert.Equal("12:55", Clock(stay.TurnBack)); // 14:45.3 − 15 − 90 − 5 = 12:55.3
    }

    [Fact]
    public void A_ledge_counts_between_its_falling_and_its_rising_tide()
    {
        var stay = Shore.After(Shore.Plan with { LedgeLimitMetres = 2.5 }, Shore.Tide(Noon), Noon);

        Assert.Equal(StayCause.Ledge, stay.Closing);
        Assert.Equal(-2.307 + 0.25, Shore.Hours(stay.From, Noon), 0.001);
        Assert.Equal("13:55", Clock(stay.TurnBack)); // 14:18.4 − 5 − 15 = 13:58.4
    }

    [Fact]
    public void Half_the_waves_come_off_an_open_crossing_and_not_off_a_sheltered_one()
    {
        var rough = Allowance.From(null, null, null, 1.0);
        StayPlan Over(bool takesWaves) => Shore.Plan with { Allowance = rough, TideGates = [new TideGate("bar", 3.0, 20, takesWaves)] };

        Assert.Equal(2.307, Shore.Hours(Shore.After(Over(true), Shore.Tide(Noon), Noon).ClosesAt, Noon), 0.001); // 2.2 m
        Assert.Equal(2.755, Shore.Hours(Shore.After(Over(false), Shore.Tide(Noon), Noon).ClosesAt, Noon), 0.001); // 2.7 m
        Assert.Contains(StayUnknown.WavesAtCrossing, (Over(true) with { Allowance = Allowance.Usual }).Unknown(tideIsKnown: true, seaIsLeftOut: false));
        Assert.DoesNotContain(StayUnknown.WavesAtCrossing, (Over(true) with { Allowance = Allowance.Usual }).Unknown(tideIsKnown: true, seaIsLeftOut: true));
        Assert.DoesNotContain(StayUnknown.WavesAtCrossing, Over(true).Unknown(tideIsKnown: true, seaIsLeftOut: false));
    }

    [Theory]
    [InlineData(null, null, null, 0.3)]
    [InlineData(20.0, null, null, 0.3)]
    [InlineData(45.0, null, null, 0.45)]
    [InlineData(45.0, 0.8, null, 0.8)]
    [InlineData(null, null, 15.0, 0.3)]
    [InlineData(null, null, 15.1, 0.5)]
    [InlineData(70.0, null, 20.0, 0.7)]
    public void The_largest_allowance_counts(double? hectopascals, double? surge, double? wind, double expected) =>
        Assert.Equal(expected, Allowance.From(hectopascals, surge, wind, null).TideMetres, 1e-12);

    [Fact]
    public void A_way_not_known_in_the_dark_is_walked_between_civil_dawn_and_dusk()
    {
        var day = Sun.SunDays.On(new LocalDate(2026, 6, 10), new Earth.Observer(Shore.Place, null, Earth.Skyline.AssumedSea), Shore.Zone, Coast.Year2026.Sun);
        var stay = Shore.After(Shore.Plan with { KnownInTheDark = false, WalkIn = 30, WalkOut = 40 }, null, Noon);

        Assert.Equal(0, (stay.From!.Value - day.CivilDawn!.Value - Duration.FromMinutes(45)).TotalSeconds, 2);
        Assert.InRange((day.CivilDusk!.Value - Duration.FromMinutes(45) - stay.TurnBack!.Value).TotalMinutes, 0, 5);
        Assert.Equal(StayCause.Dark, stay.Closing);
    }

    [Fact]
    public void A_gate_is_walked_from_after_it_opens_and_to_before_it_shuts()
    {
        var plan = Shore.Plan with { ClockGates = [Shore.Gate(new LocalTime(9, 0), new LocalTime(17, 0), 10, 20, 25, "road")] };

        var stay = Shore.After(plan, null, Noon);

        Assert.Equal("09:45", Clock(stay.From)); // 09:00 + 10 + 20 + 15
        Assert.Equal("16:20", Clock(stay.TurnBack)); // 17:00 − 10 − 25 − 5
        Assert.Equal(("road", "road"), (stay.OpensBy, stay.ClosesBy));
    }

    [Fact]
    public void Where_waves_come_thirty_minutes_of_watching_by_light_come_first()
    {
        var plan = Shore.Plan with { IsWaveExposed = true, WatchPlace = 6, LedgeLimitMetres = 2.5, TideGates = [new TideGate("bar", 3.5, 10, false)], WalkIn = 20 };

        var stay = Shore.After(plan, Shore.Tide(Noon), Noon);

        Assert.Equal(stay.Arrival, stay.Watch!.Value.Start);
        Assert.Equal(30, stay.Watch.Value.Duration.TotalMinutes, 1e-3);
        // The bar opens 3.186 h before low water (3.2 m), the walk, the watching and the way down take 56 min, the setting up 5; the ledge is bare before that.
        Assert.Equal(Math.Max(Shore.Hours(stay.Watch.Value.End, Noon) + 0.1, -2.307) + 5 / 60.0, Shore.Hours(stay.From, Noon), 0.002);
    }

    [Fact]
    public void At_night_nothing_counts_that_was_not_watched_before_dusk()
    {
        var plan = Shore.Plan with { IsWaveExposed = true, WatchPlace = 5, LedgeLimitMetres = 5.0 };
        var night = StayTimes.Between(plan, Shore.Tide(NightLow), NightLow - Duration.FromHours(3), NightLow + Duration.FromHours(3), Coast.Year2026.Sun);

        // Low water 02:00, covered at 20:00 and 08:00: whoever watched before dusk was driven off by the evening's high water.
        Assert.Empty(night);

        var evening = Instant.FromUtc(2026, 12, 10, 22, 0);
        var stay = Shore.After(plan, Shore.Tide(evening), evening);
        Assert.True(stay.Watch!.Value.End < Instant.FromUtc(2026, 12, 10, 21, 30), "watched by the light of the afternoon");
        // Dusk is at 16:20, 40 min before low water: 0.93 m. The tide passes 1.93 m 122.8 min after low water, at 19:02.8.
        Assert.Equal((StayCause.Watch, "19:00"), (stay.Closing, Clock(stay.TurnBack)));
        // Until the sun stands 12 degrees down, an hour and a quarter after sunset, it belongs to the dusk; what is left is told apart.
        Assert.Equal(stay.Until, stay.IfWatched!.Value.Start);
        Assert.Equal(stay.TurnBack, stay.IfWatched.Value.End);
        Assert.InRange(stay.Until!.Value.InZone(Shore.Zone).TimeOfDay, new LocalTime(16, 50), new LocalTime(17, 0));
        // On a falling tide three hours after dusk end it.
        var late = Instant.FromUtc(2026, 12, 11, 1, 0);
        Assert.InRange((Shore.After(plan with { LedgeLimitMetres = 6 }, Shore.Tide(late), late - Duration.FromHours(3)).TurnBack!.Value - Instant.FromUtc(2026, 12, 10, 21, 20)).TotalMinutes, 170, 181);
    }

    [Fact]
    public void Where_the_tide_is_not_known_a_watch_holds_no_longer_than_the_light() =>
        Assert.All(StayTimes.Between(Shore.Plan with { IsWaveExposed = true, WatchPlace = 5 }, null, Noon, Noon + Duration.FromDays(2), Coast.Year2026.Sun),
            stay => Assert.Null(stay.IfWatched));

    [Fact]
    public void From_a_watch_place_that_a_warden_vouches_for_watching_begins_and_ends_at_minus_nine()
    {
        var plan = Shore.Plan with { IsWaveExposed = true, WatchPlace = 5, LedgeLimitMetres = 6 };
        Stay First(StayPlan of) => StayTimes.Between(of, Shore.Tide(Noon), Noon - Duration.FromHours(9), Noon, Coast.Year2026.Sun)[^1];

        var (usual, early) = (First(plan).Watch!.Value.Start, First(plan with { WatchesFromMinusNine = true }).Watch!.Value.Start);

        Assert.Equal(-6, Sun(usual), 0.01);
        Assert.Equal(-9, Sun(early), 0.01);

        static double Sun(Instant time) => Coast.Year2026.Sun.At(time, Shore.Place).AltitudeDegrees;
    }

    [Fact]
    public void Without_a_watch_place_no_minute_counts_where_waves_come() =>
        Assert.Empty(StayTimes.Between(Shore.Plan with { IsWaveExposed = true }, null, Noon, Noon + Duration.FromDays(2), Coast.Year2026.Sun));

    [Fact]
    public void Watching_holds_no_longer_than_to_the_next_dawn()
    {
        var plan = Shore.Plan with { IsWaveExposed = true, WatchPlace = 5 };

        var stays = StayTimes.Between(plan with { LedgeLimitMetres = 9 }, Shore.Tide(Noon), Noon, Noon + Duration.FromDays(2), Coast.Year2026.Sun);

        Assert.All(stays.SkipLast(1), stay => Assert.Equal(StayCause.Watch, stay.Closing));
        Assert.All(stays.Zip(stays.Skip(1)), pair => Assert.True(pair.First.TurnBack <= pair.Second.Watch!.Value.Start));
    }

    [Fact]
    public void Beyond_what_is_known_of_the_tide_nothing_counts()
    {
        var tide = Shore.Tide(Noon);
        var plan = Shore.Plan with { LedgeLimitMetres = 2.5 };

        Assert.Empty(StayTimes.Between(plan, tide, tide.To + Duration.FromHours(1), tide.To + Duration.FromDays(3), Coast.Year2026.Sun));
        Assert.All(StayTimes.Between(plan, tide, tide.To - Duration.FromDays(2), tide.To + Duration.FromDays(3), Coast.Year2026.Sun), stay => Assert.True(stay.TurnBack < tide.To));
        Assert.Throws<ArgumentNullException>(() => StayTimes.Between(plan, null, Noon, Noon + Duration.FromDays(1), Coast.Year2026.Sun));
    }

    private static string Clock(Instant? time) => time!.Value.InZone(Shore.Zone).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
}
