using Foreshore.Almanac.Tides;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Outlooks;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>
/// Turn back on a place's tide page, worked by hand over a tide of half cosines (0.8 to 5.4 m in 6.2 h, low water at noon of the
/// first day): a limit of 2.5 m, less 0.3 m, is passed 2.307 h from low water. Margins are the project's own rules.
/// </summary>
public class StanceTurnsTests
{
    private const string Station = "club/wharf";

    [Fact]
    public void Every_open_period_of_the_two_days_has_its_turn_back_with_its_cause()
    {
        var shore = Wet();

        var turns = Turns(shore);
        var way = Assert.Single(turns.Ways);

        // Closing at low water + 2:18.4, less a reserve of 15, the walk off of 10 (14 by night) and packing of 5, rounded down; the last in the night after the second day.
        Assert.Equal([shore.At(1, 20), shore.At(13, 45), shore.At(2, 5, 1), shore.At(14, 35, 1), shore.At(2, 55, 2)],
            turns.Coming(way).Select(one => one.TurnBack!.Value));
        // 12:00 − 2:18.4 + 0:15 set-up, rounded up.
        Assert.Equal(shore.At(10), turns.NotBefore(way.Stays[1]));
        Assert.Equal("tide above your ledge from 14:18 (0.3 m taken off its limit)", StayWords.Closing(way.Stays[1], shore.Place.Zone));
        Assert.False(turns.LeavesWavesOut);
    }

    [Fact]
    public void The_curve_has_a_bar_at_each_turn_back_to_come_and_is_hatched_outside_the_open_periods()
    {
        var shore = Wet();
        var turns = Turns(shore, now: shore.At(12));
        var drawn = TideDrawing.Of(Tide(shore), shore.Date, shore.Place.Zone, shore.At(12), 2.2, turns);

        Assert.Equal([shore.At(13, 45), shore.At(2, 5, 1), shore.At(14, 35, 1)], drawn.TurnBacks.Select(mark => mark.Time));
        Assert.Equal((shore.At(13, 45) - turns.Drawn.Start) / turns.Drawn.Duration, drawn.TurnBacks[0].At, 1e-12);
        // 01:20 to 09:56, 13:45 to 22:20, …: shut between the stays, and never within one.
        Assert.Equal(4, drawn.NotUsable.Count);
        Assert.All(turns.Ways[0].Stays, stay => Assert.DoesNotContain(drawn.NotUsable, shut =>
            shut.From < (stay.TurnBack!.Value - turns.Drawn.Start) / turns.Drawn.Duration && shut.To > (stay.From!.Value - turns.Drawn.Start) / turns.Drawn.Duration));
    }

    [Fact]
    public void A_crossing_takes_the_walk_past_it_off_and_where_waves_reach_it_the_time_is_the_latest()
    {
        var crossing = new Crossing(new TideHeight(2.5, Station), false, 20);
        var sheltered = Dry(Shore.Path().PassableWhile(crossing.Sheltered("Inside the bar")));
        var open = Dry(Shore.Path().PassableWhile(crossing));

        // 14:18.4 less 15, one and a half times 20, and 5: 13:28, rounded down.
        Assert.Contains(sheltered.At(13, 25), Turns(sheltered).Coming(Turns(sheltered).Ways[0]).Select(one => one.TurnBack!.Value));
        Assert.False(Turns(sheltered).LeavesWavesOut);
        Assert.Equal((true, true), (Turns(open).LeavesWavesOut, Turns(open).Ways[0].Way.IsAtTheLatest));
    }

    [Fact]
    public void No_stay_reaches_into_a_closed_date_and_the_date_says_why()
    {
        var shore = Wet();
        shore.Place.Close(Closure.Between(shore.Date.PlusDays(1), null, "Cliff fall", "Guide warden").Of(shore.Stance));

        var turns = Turns(shore);

        Assert.Equal([(shore.Date.PlusDays(1), "closed: Cliff fall")], turns.Stops);
        // The late evening's period ends as the closure begins: midnight less 14 of walk and 5 of packing.
        Assert.Equal([shore.At(1, 20), shore.At(13, 45), shore.At(23, 40)], turns.Coming(turns.Ways[0]).Select(one => one.TurnBack!.Value));
    }

    /// <summary>The stay of Saturday's late evening would end after midnight: nobody is still on a way that is closed on Sunday.</summary>
    [Fact]
    public void A_way_that_closes_tomorrow_holds_no_stay_over_midnight()
    {
        var shore = Wet();
        shore.Place.Close(Closure.Between(shore.Date.PlusDays(1), null, "Bridge out", "Council").Of(shore.Place.Routes[0].Legs[0]));

        var turns = Turns(shore);

        Assert.Contains(shore.Date.PlusDays(1), turns.Stops.Select(stop => stop.Date));
        Assert.Equal(shore.At(23, 40), turns.Coming(turns.Ways[0]).Last().TurnBack);
    }

    [Fact]
    public void Under_a_severe_note_about_water_nothing_is_told()
    {
        var shore = Wet();
        shore.Place.Report(new HazardNote(HazardKind.Waves, HazardNote.Severe, "Swept.", shore.Date.PlusDays(-9)).At("Ledge", vantagePoint: shore.Stance));

        var turns = Turns(shore);

        Assert.Equal(2, turns.Stops.Count);
        Assert.Empty(turns.Ways);
    }

    [Fact]
    public void Each_way_is_told_apart_with_its_car_park_and_what_the_tide_does_to_the_car()
    {
        var shore = Wet();
        shore.Park(Shore.Lot("Gate", new LocalTime(13, 0), new LocalTime(8, 0)));
        shore.Park(Shore.Lot("Slip").FloodAbove(new TideHeight(5, Station)));

        var turns = Turns(shore);

        Assert.Equal(["Way 1, car at Gate", "Way 1, car at Slip"], turns.Ways.Select(way => way.Way.Name));
        // Ten minutes back to a gate that shuts at 13:00, and packing.
        Assert.Contains(shore.At(12, 45), turns.Coming(turns.Ways[0]).Select(one => one.TurnBack!.Value));
        Assert.Equal((null, true), (turns.Ways[0].Flood, turns.Ways[1].Flood!.StartsWith("Slip floods from", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_is_not_recorded_is_said_instead_of_a_time()
    {
        var shore = Dry();
        shore.Stance.Reached(Reach.StillWaterOnly, "Said so");

        var turns = Turns(shore);
        var drawn = TideDrawing.Of(Tide(shore), shore.Date, shore.Place.Zone, shore.At(0), null, turns);

        Assert.Equal(["no highest usable tide is recorded"], turns.Ways[0].Untold);
        Assert.Null(turns.Shown);
        Assert.Empty(drawn.NotUsable);
        Assert.Empty(drawn.TurnBacks);
    }

    [Fact]
    public void Without_a_tide_no_time_is_told_where_a_limit_needs_one()
    {
        var shore = Wet();

        var turns = StanceTurns.Of(shore.Stance, shore.Place, shore.Date, PlaceWater.None with { StationId = Station }, shore.At(0));

        Assert.Contains("the tide of its station is not known for that time", turns.Ways[0].Untold);
    }

    [Fact]
    public void Where_waves_come_and_nobody_can_watch_there_is_no_open_period()
    {
        var shore = Wet(Reach.Waves);

        var turns = Turns(shore);

        Assert.Empty(turns.Coming(turns.Ways[0]));
        Assert.Contains("no place to watch the sea from is recorded", turns.WhyNone(turns.Ways[0]), StringComparison.Ordinal);
        Assert.Equal((true, true), (turns.LeavesWavesOut, turns.IsWatched));
    }

    [Fact]
    public void Days_that_are_past_have_no_turn_back_and_say_so()
    {
        var shore = Wet();
        var turns = Turns(shore, now: shore.At(0, 0, 3));

        Assert.Empty(turns.Coming(turns.Ways[0]));
        Assert.Equal("These days are past.", turns.WhyNone(turns.Ways[0]));
        Assert.Empty(TideDrawing.Of(Tide(shore), shore.Date, shore.Place.Zone, shore.At(0, 0, 3), 2.2, turns).TurnBacks);
    }

    private static StanceTurns Turns(Shore shore, Instant? now = null) => StanceTurns.Of(shore.Stance, shore.Place, shore.Date,
        new PlaceWater(Station, null, Tide(shore), _ => null), now ?? shore.At(0));

    private static TideCurve Tide(Shore shore)
    {
        var table = new TableTide([.. Enumerable.Range(-24, 49).Select(i => new TideExtreme(shore.At(12) + Duration.FromHours(6.2) * i, i % 2 == 0 ? 0.8 : 5.4, i % 2 != 0))]);
        return table.Between(table.Valid.Start, table.Valid.End);
    }

    private static Shore Dry(Leg? path = null)
    {
        var shore = new Shore().By(path ?? Shore.Path());
        shore.Place.JudgeTideBy(Station, 2.9);
        return shore;
    }

    private static Shore Wet(Reach reach = Reach.StillWaterOnly)
    {
        var shore = Dry();
        shore.Stance.Reached(reach, "Said so").UsableBelow(new TideHeight(2.5, Station));
        return shore;
    }
}
