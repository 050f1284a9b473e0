using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Xunit;

namespace Foreshore.Guide.Outlooks;

/// <summary>
/// Light, tide and the way back on the board, worked by hand over a tide of half cosines (0.8 to 5.4 m in 6.2 h): a limit of
/// 2.5 m, less 0.3 m, is passed 2.307 h from low water. Margins and the order of verdicts are the project's own rules.
/// </summary>
public class TideBoardTests
{
    private const string Station = "club/wharf";

    [Fact]
    public void A_ledge_cuts_the_window_on_both_tides_and_turn_back_is_told_with_its_cause()
    {
        var shore = Wet(Reach.StillWaterOnly);

        var judged = shore.CellAtLow(SessionKind.Day, shore.At(12)).Judgement!;

        // 12:00 − 2:18.4 + 0:15 set-up; 12:00 + 2:18.4 − 0:15 in hand − 0:10 of walk − 0:05 rounded down.
        Assert.Equal(0, (judged.Window!.Value.Start - shore.At(9, 56)).TotalMinutes, 1.0);
        Assert.Equal(shore.At(13, 45), judged.Window.Value.End);
        Assert.Equal(Verdict.Borderline, judged.Verdict);
        Assert.Contains("turn back 13:45: tide above your ledge from 14:18 (0.3 m taken off its limit)", judged.Reasons);
    }

    [Fact]
    public void Light_that_the_tide_forbids_to_the_last_minute_keeps_off()
    {
        var shore = Wet(Reach.StillWaterOnly).Want(WantedLight.BlueLight);

        var judged = shore.CellAtLow(SessionKind.Dusk, shore.At(10, 30)).Judgement!;

        Assert.Equal(Verdict.KeepOff, judged.Verdict);
        Assert.Null(judged.Window);
        Assert.Equal("the tide stands over the ledge's limit for as long as the light lasts", judged.Reasons[0]);
    }

    [Fact]
    public void A_wished_tide_that_comes_suits_and_one_that_does_not_come_says_so()
    {
        var shore = Dry();
        shore.Picture.WishTide(TideWish.About(TideTurn.LowWater, -60, 60));

        var good = shore.CellAtLow(SessionKind.Day, shore.At(12)).Judgement!;
        Assert.Equal(Verdict.Suits, good.Verdict);
        Assert.Equal(0, (good.Window!.Value.Start - shore.At(11)).TotalSeconds, 1.0);
        Assert.Contains("low water 0.8 m in it", good.Reasons);

        shore.Want(WantedLight.BlueLight);
        var bad = shore.CellAtLow(SessionKind.Dusk, shore.At(12)).Judgement!;
        Assert.Equal((Verdict.DoesNotSuit, "wrong tide during the light"), (bad.Verdict, bad.Reasons[0]));
    }

    [Fact]
    public void Where_waves_come_light_and_tide_are_told_and_the_sea_leaves_it_not_judged()
    {
        var shore = Wet(Reach.Waves);
        shore.Stance.UsableIn(new SeaLimit(1, 9, 50, 200)).WatchFrom(new NearbyPlace("The wall", shore.Stance.Position, 5));

        var judged = shore.CellAtLow(SessionKind.Day, shore.At(12)).Judgement!;

        Assert.Equal(Verdict.NotJudged, judged.Verdict);
        Assert.NotNull(judged.Window);
        Assert.Contains("light and tide agree", judged.Reasons[0], StringComparison.Ordinal);
        Assert.Contains("the sea is not judged", judged.Reasons[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_judged_by_another_station_needs_checking_and_is_not_judged()
    {
        var shore = Wet(Reach.StillWaterOnly);
        shore.Stance.UsableBelow(new TideHeight(2.5, "club/elsewhere"));

        var judged = shore.CellAtLow(SessionKind.Day, shore.At(12)).Judgement!;

        Assert.Equal(Verdict.NotJudged, judged.Verdict);
        Assert.Contains(judged.Reasons, reason => reason.Contains("needs checking", StringComparison.Ordinal));
    }

    [Fact]
    public void A_crossing_binds_the_way_back_and_one_that_waves_reach_is_not_judged()
    {
        var crossing = new Crossing(new TideHeight(2.5, Station), false, 20);
        var sheltered = Dry(Shore.Path().PassableWhile(crossing.Sheltered("Inside the bar")));
        var open = Dry(Shore.Path().PassableWhile(crossing));

        // 14:18.4 less a reserve of 15, one and a half times 20, 5 of packing: 13:28, rounded down.
        Assert.Equal(sheltered.At(13, 25), sheltered.CellAtLow(SessionKind.Day, sheltered.At(12)).Judgement!.Window!.Value.End);
        Assert.Equal(Verdict.Borderline, sheltered.CellAtLow(SessionKind.Day, sheltered.At(12)).Judgement!.Verdict);
        Assert.Equal(Verdict.NotJudged, open.CellAtLow(SessionKind.Day, open.At(12)).Judgement!.Verdict);
    }

    [Fact]
    public void A_car_park_that_floods_in_the_night_keeps_off()
    {
        var shore = Dry().Want(WantedLight.StarTrails);
        shore.Park(Shore.Lot("Slip").FloodAbove(new TideHeight(5, Station)));

        var judged = shore.CellAtLow(SessionKind.Night, shore.At(15)).Judgement!;

        Assert.Equal(Verdict.KeepOff, judged.Verdict);
        Assert.Contains("Slip floods from", judged.Reasons[0], StringComparison.Ordinal);
    }

    [Fact]
    public void The_strip_draws_the_tide_hatches_what_is_lost_and_marks_turn_back()
    {
        var shore = Wet(Reach.StillWaterOnly);
        var cell = shore.CellAtLow(SessionKind.Day, shore.At(12));
        var drawn = WaterDrawing.Of(cell)!;
        double Share(NodaTime.Instant time) => (time - drawn.Span.Start) / drawn.Span.Duration;

        Assert.Equal(0.8, drawn.Curve.Min(point => point.Metres), 0.01);
        Assert.Equal((Share(shore.At(12)), false), (drawn.Turns.Single().At, drawn.Turns.Single().Turn.IsHigh));
        Assert.Equal((Share(shore.At(13, 45)), shore.At(13, 45)), drawn.TurnBack);
        // Hatched before the ledge is bare and set up on, and after turn back; between them one may stand there.
        Assert.Equal(2, drawn.Hatched.Count);
        Assert.Equal((0.0, Share(cell.Judgement!.Window!.Value.Start)), (drawn.Hatched[0].From, drawn.Hatched[0].To));
        Assert.Equal((Share(shore.At(13, 45)), 1.0), drawn.Hatched[1]);
        Assert.Equal(["walk in", "usable", "light you will miss", "walk out"], drawn.Parts.Select(part => part.Name));
    }

    [Fact]
    public void Without_a_tide_the_strip_shows_light_alone() =>
        Assert.Null(WaterDrawing.Of(new Shore().By(Shore.Path()).Cell(SessionKind.Day)));

    private static Shore Dry(Leg? path = null)
    {
        var shore = new Shore().By(path ?? Shore.Path());
        shore.Place.JudgeTideBy(Station, 2.9);
        return shore;
    }

    private static Shore Wet(Reach reach)
    {
        var shore = Dry();
        shore.Stance.Reached(reach, "Said so").UsableBelow(new TideHeight(2.5, Station));
        return shore;
    }
}
