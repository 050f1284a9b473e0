using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Outlooks;

/// <summary>
/// When one can be there. The rules are the project's own; times of twilight come from the almanac, which has checks of its
/// own. 28 November at 44.6 N: light from about 6:09 to 16:18 by the clock of Maine (civil twilight).
/// </summary>
public class WayTests
{
    [Fact]
    public void A_way_known_in_the_dark_without_gates_is_never_bounded()
    {
        var shore = new Shore().By(Shore.Path());

        Assert.All(Enum.GetValues<SessionKind>(), kind => Assert.Equal((null, null), Ends(Assert.Single(shore.Stays(kind)), shore.Of(kind))));
    }

    [Fact]
    public void A_way_not_known_in_the_dark_is_walked_in_after_civil_dawn_and_out_before_civil_dusk_ends()
    {
        var shore = new Shore(darkWay: false, walkMinutes: 30).By(Shore.Path());

        Assert.Equal(0, (shore.Day.CivilDawn!.Value + Duration.FromMinutes(30 + 15) - Assert.Single(shore.Stays(SessionKind.Dawn)).From!.Value).TotalSeconds, 1.0);
        var until = Assert.Single(shore.Stays(SessionKind.Dusk)).TurnBack!.Value;
        Assert.InRange((shore.Day.CivilDusk!.Value - Duration.FromMinutes(30 + 5) - until).TotalMinutes, 0, 5);
        Assert.Equal(0, until.ToUnixTimeSeconds() % 300);
    }

    [Fact]
    public void By_night_such_a_way_leaves_nothing_and_says_why()
    {
        var shore = new Shore(darkWay: false).By(Shore.Path());
        shore.Want(WantedLight.StarTrails);

        Assert.Empty(shore.Stays(SessionKind.Night));
        Assert.Equal("the way is not known in the dark", shore.Cell(SessionKind.Night).Judgement!.Reasons[0]);
    }

    [Fact]
    public void A_night_whose_civil_twilight_never_ends_leaves_such_a_way_open()
    {
        var shore = new Shore(65, 20, "Europe/Stockholm", darkWay: false, on: new LocalDate(2026, 6, 20)).By(Shore.Path());
        var night = shore.Of(SessionKind.Night);

        Assert.True(night.IsWhiteNight);
        var stay = Assert.Single(shore.Stays(SessionKind.Night));
        Assert.True(stay.From <= night.Start && stay.TurnBack >= night.End);
    }

    [Fact]
    public void Where_the_sun_never_comes_to_civil_twilight_such_a_way_is_dark_all_day()
    {
        var shore = new Shore(80, 20, "Arctic/Longyearbyen", darkWay: false, on: new LocalDate(2026, 12, 12)).By(Shore.Path());

        Assert.True(shore.Day.NoonAltitudeDegrees < -6);
        Assert.All([SessionKind.Dawn, SessionKind.Dusk, SessionKind.Night], kind =>
        {
            if (Almanac.Light.Sessions.On(shore.Date, shore.Stance.Position, shore.Place.Zone, shore.Sky.Sun).Of(kind) is not null)
                Assert.Empty(shore.Stays(kind));
        });
    }

    [Fact]
    public void A_gate_that_opens_in_the_morning_counts_the_walk_in_and_set_up()
    {
        var shore = new Shore().By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(9, 0), new LocalTime(15, 0))));
        var hours = Assert.Single(shore.Stays(SessionKind.Day));

        Assert.Equal(shore.At(9, 25), hours.From);
        Assert.Equal(shore.At(14, 45), hours.TurnBack);
    }

    [Fact]
    public void In_the_dark_the_walk_back_to_a_gate_takes_two_fifths_longer()
    {
        // 30 min by day are 42 in the dark: 19:00 less 42 less 5 is 18:13, rounded down.
        var shore = new Shore(walkMinutes: 30).By(Shore.Path(30).OpenBy(Shore.Daily(new LocalTime(9, 0), new LocalTime(19, 0))));

        Assert.Equal(shore.At(18, 10), Assert.Single(shore.Stays(SessionKind.Night)).TurnBack);
    }

    [Fact]
    public void The_night_after_a_gate_has_shut_is_lost_and_so_is_the_dawn_before_it_opens()
    {
        var shore = new Shore().By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(9, 0), new LocalTime(16, 0))));

        foreach (var kind in (SessionKind[])[SessionKind.Night, SessionKind.Dawn])
        {
            shore.Want(kind == SessionKind.Night ? WantedLight.StarTrails : WantedLight.TwilightGlow);
            Assert.Empty(shore.Stays(kind));
            Assert.Contains(kind == SessionKind.Night ? "Path is shut from 16:00" : "Path is shut until 09:00", shore.Cell(kind).Judgement!.Reasons[0], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_gate_that_shuts_after_midnight_shuts_in_the_night_of_the_evening_before()
    {
        var shore = new Shore().By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(8, 0), new LocalTime(4, 30))));
        var hours = Assert.Single(shore.Stays(SessionKind.Night));

        Assert.True(hours.From < shore.Of(SessionKind.Night).Start);
        Assert.Equal(shore.At(4, 10, daysOn: 1), hours.TurnBack); // 4:30 less 14 less 5, rounded down
    }

    [Fact]
    public void A_car_park_locked_over_midday_leaves_two_stays_and_never_one_across()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Park(Shore.Lot("School yard", new LocalTime(10, 0), new LocalTime(13, 0)));
        var choices = shore.Stays(SessionKind.Day);

        Assert.Equal(2, choices.Count);
        Assert.Equal(shore.At(9, 45), choices[0].TurnBack);
        Assert.Equal(shore.At(13, 25), choices[1].From);
    }

    [Fact]
    public void A_car_left_in_one_car_park_is_not_let_out_by_the_hours_of_another()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Park(Shore.Lot("Early", new LocalTime(12, 0), new LocalTime(5, 0)));
        shore.Park(Shore.Lot("Late", new LocalTime(22, 0), new LocalTime(13, 0)));
        var day = shore.Of(SessionKind.Day);

        Assert.NotEmpty(shore.Stays(SessionKind.Day));
        Assert.All(shore.Stays(SessionKind.Day), stay => Assert.True(stay.TurnBack <= shore.At(11, 45) || stay.From >= shore.At(13, 25)));
        Assert.All(shore.Stays(SessionKind.Day), stay => Assert.True(stay.From < day.End && stay.TurnBack > day.Start));
    }

    [Fact]
    public void One_car_park_that_is_never_locked_lifts_the_bound()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Park(Shore.Lot("Gated", new LocalTime(16, 0), new LocalTime(8, 0)));
        shore.Park(Shore.Lot("Verge"));

        Assert.Contains(shore.Stays(SessionKind.Night), stay => stay is { From: null, TurnBack: null });
    }

    [Fact]
    public void A_car_does_not_wait_inside_over_night_for_the_dawn()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Park(Shore.Lot("Gated", new LocalTime(20, 0), new LocalTime(8, 0)));
        var dawn = shore.Of(SessionKind.Dawn);

        Assert.All(shore.Stays(SessionKind.Dawn), stay => Assert.True(stay.From >= shore.At(8, 25) || stay.TurnBack <= dawn.Start));
    }

    [Fact]
    public void The_way_back_to_the_last_boat_counts_the_drive_on_the_island()
    {
        // Landed 8:20, 30 min drive, 10 min walk, set up: 9:15. Back: 15:00 less 15 check-in, 30 drive, 10 walk, 5 packing.
        var shore = new Shore().By(Shore.Boat(8, 15), Shore.Road(30), Shore.Path());
        var hours = Assert.Single(shore.Stays(SessionKind.Day));

        Assert.Equal(shore.At(9, 15), hours.From);
        Assert.Equal(shore.At(14, 0), hours.TurnBack);
    }

    [Fact]
    public void A_closed_car_park_is_no_choice()
    {
        var shore = new Shore().By(Shore.Path());
        var verge = shore.Park(Shore.Lot("Verge"));
        shore.Park(Shore.Lot("Gated", new LocalTime(16, 0), new LocalTime(8, 0)));
        shore.Place.Close(Closure.Between(shore.Date, null, "Snow", "Town").Of(verge));

        Assert.NotEmpty(shore.Stays(SessionKind.Day));
        Assert.DoesNotContain(shore.Stays(SessionKind.Day), stay => stay.TurnBack is null);
    }

    [Fact]
    public void The_same_gate_binds_by_the_clock_of_a_place_far_east()
    {
        var shore = new Shore(-43.9, -176.5, "Pacific/Chatham").By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(9, 0), new LocalTime(15, 0))));
        var hours = Assert.Single(shore.Stays(SessionKind.Day));

        // Daylight saving there: 13:45 ahead of Greenwich.
        Assert.Equal(Instant.FromUtc(2026, 11, 27, 19, 40), hours.From);
        Assert.Equal(Instant.FromUtc(2026, 11, 28, 1, 0), hours.TurnBack);
    }

    [Fact]
    public void The_walk_and_the_boat_out_to_a_lock_count()
    {
        // A leg of 40 min and a car park locked at 15:00: 15:00 less 40 less 5.
        var walk = new Shore(walkMinutes: 40).By(Shore.Path(40));
        walk.Park(Shore.Lot("Gated", new LocalTime(15, 0), new LocalTime(6, 0)));
        Assert.Equal(walk.At(14, 15), Assert.Single(walk.Stays(SessionKind.Day)).TurnBack);

        // The car park at the pier is locked at 15:00; the boat of 14:00 lands at 14:20, the one of 15:00 too late. Check-in 13:45, less 10 of walk, less 5.
        var boat = new Shore().By(Shore.Boat(8, 17), Shore.Path());
        boat.Park(Shore.Lot("Pier", new LocalTime(15, 0), new LocalTime(6, 0)));
        Assert.Equal(boat.At(13, 30), Assert.Single(boat.Stays(SessionKind.Day)).TurnBack);
    }

    [Fact]
    public void A_car_park_is_taken_in_the_clubs_order_and_another_only_by_name()
    {
        // Locked at 20:00: nothing of the night is left there, and the verge is named in its place.
        var shore = new Shore().By(Shore.Path()).Want(WantedLight.StarTrails);
        shore.Park(Shore.Lot("Gated", new LocalTime(16, 0), new LocalTime(8, 0)));
        shore.Park(Shore.Lot("Verge"));

        var night = shore.Cell(SessionKind.Night);
        Assert.Equal(("Way 1, car at Verge", "Way 1, car at Gated"), (night.By!.Way.Name, night.First!.Way.Name));
        Assert.Equal((Verdict.Suits, null), (night.Judgement!.Verdict, night.Plan!.TurnBack));

        shore.Want(WantedLight.AnyDaylight);
        var day = shore.Cell(SessionKind.Day);
        Assert.Equal(("Way 1, car at Gated", shore.At(15, 45)), (day.By!.Way.Name, day.Plan!.TurnBack));
        Assert.Null(day.First);
        Assert.Equal("Way 1, car at Verge", Assert.Single(day.Others).Way.Name);
    }

    [Fact]
    public void Weed_on_the_way_over_a_crossing_turns_one_back_sooner_than_firm_sand()
    {
        Instant Back(LegGround ground)
        {
            var shore = new Shore().By(Shore.Path(20).PassableWhile(new Crossing(new TideHeight(2.5, "club/wharf"), false, 20).Sheltered("Inside the bar")).Over(ground));
            shore.Place.JudgeTideBy("club/wharf", 2.9);
            return shore.CellAtLow(SessionKind.Day, shore.At(12)).Plan!.TurnBack!.Value;
        }

        // 14:18.4 less 15 less 5 less 1.5 × 20 by sand, 1.75 × 20 over weed.
        var at = new Shore();
        Assert.Equal((at.At(13, 25), at.At(13, 20)), (Back(LegGround.Firm), Back(LegGround.Weed)));
    }

    private static (Instant?, Instant?) Ends(Stay stay, Session session) =>
        (stay.From <= session.Start ? null : stay.From, stay.TurnBack >= session.End ? null : stay.TurnBack);
}
