using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Outlooks;

/// <summary>What is read off a place for an outlook, and what it comes to on the board. The rules are the project's own.</summary>
public class StanceTests
{
    [Fact]
    public void Dry_open_ground_with_a_right_of_way_suits_by_day()
    {
        var shore = new Shore().By(Shore.Path());

        Assert.Equivalent(new { NoWayIn = (string?)null, Stops = Array.Empty<string>(), NotKnown = Array.Empty<string>(), Doubts = Array.Empty<string>() }, shore.Facts());
        Assert.Equal(Verdict.Suits, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Theory]
    [InlineData(Reach.Unknown)]
    [InlineData(Reach.StillWaterOnly)]
    [InlineData(Reach.Waves)]
    public void Where_water_can_come_nothing_is_judged_while_tide_limit_or_sea_is_missing(Reach reach)
    {
        var shore = new Shore().By(Shore.Path());
        shore.Stance.Reached(reach, "Said so");

        Assert.Equal(reach != Reach.StillWaterOnly, shore.Facts().NotKnown.Contains(Stance.SeaNotJudged));
        // Where nobody can watch the sea first there is no window at all, and that comes before what is not judged.
        var unwatched = shore.Cell(SessionKind.Day).Judgement!;
        Assert.Equal(reach == Reach.StillWaterOnly ? Verdict.NotJudged : Verdict.DoesNotSuit, unwatched.Verdict);
        if (reach != Reach.StillWaterOnly) Assert.Equal(StayWords.NoWatchPlace, unwatched.Reasons[0]);

        shore.Stance.WatchFrom(new NearbyPlace("The wall", shore.Stance.Position, 5));
        Assert.Equal(Verdict.NotJudged, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Theory]
    [InlineData("tide limit")]
    [InlineData("sea limit")]
    [InlineData("path cut off")]
    [InlineData("sea wish")]
    [InlineData("ground wish")]
    [InlineData("walk not timed")]
    [InlineData("cliff not measured")]
    [InlineData("only way cut off")]
    [InlineData("hours on request")]
    [InlineData("hours in words alone")]
    [InlineData("nobody knows whether the tide cuts it off")]
    public void A_limit_or_wish_without_a_value_is_never_suits(string unknown)
    {
        var shore = unknown switch
        {
            "cliff not measured" => new Shore(kind: VantageKind.UnderCliff),
            "walk not timed" => new Shore(walkMinutes: null),
            _ => new Shore(),
        };
        switch (unknown)
        {
            case "tide limit": shore.Stance.UsableBelow(Low); break;
            case "sea limit": shore.Stance.UsableIn(new SeaLimit(1, 9, 50, 200)); break;
            case "path cut off": shore.Stance.CutOffAbove(Low); break;
            case "sea wish": shore.Picture.WishSea(SeaWish.Reflections); break;
            case "ground wish": shore.Picture.WishGround(new GroundWish(GroundState.FreshlyWashed, null)); break;
            case "only way cut off": shore.By(Shore.Path().PassableWhile(new Crossing(Low, false, null))); break;
            case "hours on request": shore.By(Shore.Path().OpenBy(OpeningHours.Every(new DayHours.OnRequest()))); break;
            case "hours in words alone": shore.By(Shore.Path().OpenBy(null, "Sunrise to sunset, says the board")); break;
            case "nobody knows whether the tide cuts it off": shore.Place.AddRoute("Sands").Then(Shore.Path()); break;
            case "walk not timed": shore.By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(1, 0), new LocalTime(22, 0)))); break;
            default: break;
        }

        if (shore.Place.Routes.Count == 0)
            shore.By(Shore.Path());
        Assert.Equal(Verdict.NotJudged, shore.Cell(SessionKind.Day).Judgement!.Verdict);
        Assert.NotEmpty(shore.Cell(SessionKind.Day).Judgement!.Reasons);
    }

    [Fact]
    public void A_first_way_that_cannot_be_judged_is_never_replaced_by_another()
    {
        var shore = new Shore().By(Shore.Path().PassableWhile(new Crossing(Low, false, null))).By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(9, 0), new LocalTime(15, 0))));

        Assert.Empty(shore.Facts().NotKnown);
        // The club's first way can't be judged: the gated one never takes its place, and is told apart.
        var cell = shore.Cell(SessionKind.Day);
        Assert.Equal((Verdict.NotJudged, "Way 1"), (cell.Judgement!.Verdict, cell.By!.Way.Name));
        var other = Assert.Single(cell.Others);
        Assert.Equal(("Way 2", Verdict.Borderline, shore.At(14, 45)), (other.Way.Name, other.Judgement.Verdict, other.Plan!.TurnBack));
    }

    [Theory]
    [InlineData(HazardKind.Waves, Verdict.KeepOff)]
    [InlineData(HazardKind.BoatWash, Verdict.KeepOff)]
    [InlineData(HazardKind.CutOff, Verdict.KeepOff)]
    [InlineData(HazardKind.SoftGround, Verdict.KeepOff)]
    [InlineData(HazardKind.ColdWater, Verdict.KeepOff)]
    [InlineData(HazardKind.Rockfall, Verdict.KeepOff)]
    [InlineData(HazardKind.Path, Verdict.KeepOff)]
    [InlineData(HazardKind.Slip, Verdict.Borderline)]
    [InlineData(HazardKind.Fall, Verdict.Borderline)]
    [InlineData(HazardKind.Animals, Verdict.Borderline)]
    [InlineData(HazardKind.Traffic, Verdict.Borderline)]
    [InlineData(HazardKind.Firing, Verdict.Borderline)]
    [InlineData(HazardKind.Other, Verdict.Borderline)]
    public void A_severe_note_about_water_rockfall_or_the_way_back_keeps_off_and_others_cap_at_borderline(HazardKind kind, Verdict verdict)
    {
        var shore = new Shore().By(Shore.Path());
        // Its last day is past: a severe note does not end by date alone.
        var note = shore.Place.Report(new HazardNote(kind, HazardNote.Severe, "Seen.", shore.Date.PlusDays(-30), shore.Date.PlusDays(-20)));

        var judged = shore.Cell(SessionKind.Day).Judgement!;
        Assert.Equal(verdict, judged.Verdict);
        Assert.Contains("Seen. (reported, not yet checked)", judged.Reasons);

        note.Confirm(shore.Date.PlusDays(-1));
        Assert.Equal(verdict, shore.Cell(SessionKind.Day).Judgement!.Verdict);
        note.End(shore.Date.PlusDays(-1));
        Assert.Equal(Verdict.Suits, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Fact]
    public void A_severe_note_at_another_stance_leaves_this_one_alone()
    {
        var shore = new Shore().By(Shore.Path());
        var other = shore.Place.AddVantagePoint(new VantagePoint("ledge", "Ledge", VantageKind.Ledge, shore.Stance.Position, Footing.Steady, "Rock."));
        shore.Place.Report(new HazardNote(HazardKind.Waves, HazardNote.Severe, "Swept.", shore.Date).At("Ledge", vantagePoint: other));

        Assert.Equal(Verdict.Suits, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Theory]
    [InlineData(ClosureState.UnderReview, Verdict.KeepOff)]
    [InlineData(ClosureState.InForce, Verdict.KeepOff)]
    [InlineData(ClosureState.LiftAsked, Verdict.KeepOff)]
    [InlineData(ClosureState.Lifted, Verdict.Suits)]
    public void A_closure_counts_until_it_is_lifted(ClosureState state, Verdict verdict)
    {
        var shore = new Shore().By(Shore.Path());
        shore.Place.Close(Closure.Between(shore.Date, shore.Date, "Nesting", "Refuge", state).Of(shore.Stance));

        Assert.Equal(verdict, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Theory]
    [InlineData(2026, 12, 30, Verdict.KeepOff)]
    [InlineData(2027, 1, 3, Verdict.KeepOff)]
    [InlineData(2027, 1, 7, Verdict.Suits)]
    [InlineData(2026, 12, 18, Verdict.Suits)]
    public void A_yearly_closure_holds_over_New_Year(int year, int month, int day, Verdict verdict)
    {
        var shore = new Shore(on: new LocalDate(year, month, day)).By(Shore.Path());
        shore.Place.Close(Closure.EveryYear(new AnnualDate(12, 20), new AnnualDate(1, 5), "Holidays", "Park"));

        Assert.Equal(verdict, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Fact]
    public void A_closure_that_begins_at_midnight_keeps_off_the_night_before_but_not_its_dusk()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Place.Close(Closure.Between(shore.Date.PlusDays(1), null, "Nesting", "Refuge"));

        Assert.Equal(Verdict.KeepOff, shore.Cell(SessionKind.Night).Judgement!.Verdict);
        Assert.Equal(Verdict.Suits, shore.Want(WantedLight.GoldenLight).Cell(SessionKind.Dusk).Judgement!.Verdict);
    }

    [Fact]
    public void A_closed_leg_keeps_off_only_where_no_other_way_is_open()
    {
        var (first, second) = (Shore.Path(), Shore.Path());
        var shore = new Shore().By(first).By(second);
        shore.Place.Close(Closure.Between(shore.Date, null, "Bridge out", "Town").Of(first));
        Assert.Equal(Verdict.Suits, shore.Cell(SessionKind.Day).Judgement!.Verdict);

        shore.Place.Close(Closure.Between(shore.Date, null, "Slip", "Town").Of(second));
        Assert.Equal(Verdict.KeepOff, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Fact]
    public void Without_a_way_that_the_club_may_recommend_a_place_never_suits()
    {
        var shore = new Shore().By(Shore.Path(status: LegalStatus.Private));
        var judged = shore.Cell(SessionKind.Day).Judgement!;

        Assert.Equal(Verdict.DoesNotSuit, judged.Verdict);
        Assert.Equal(["no way in that the club may recommend"], judged.Reasons);
    }

    [Fact]
    public void Nearer_to_a_cliffs_foot_than_its_height_keeps_off_unless_a_warden_wrote_why_not()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Stance.Under(new CliffAbove(18, 9));
        Assert.Equal(Verdict.KeepOff, shore.Cell(SessionKind.Day).Judgement!.Verdict);

        shore.Stance.Under(new CliffAbove(18, 9, "Netted and inspected"));
        Assert.Equal(Verdict.Suits, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Theory]
    [InlineData(EdgeDistance.WithinFiveMetres)]
    [InlineData(EdgeDistance.OnIt)]
    public void Gusts_unknown_by_an_edge_are_at_most_borderline(EdgeDistance edge)
    {
        var shore = new Shore().By(Shore.Path());
        shore.Stance.OnEdge(edge);

        Assert.Equal(Verdict.Borderline, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Fact]
    public void Light_that_turn_back_cuts_short_is_borderline()
    {
        var shore = new Shore().By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(9, 0), new LocalTime(13, 0))));
        var judged = shore.Cell(SessionKind.Day).Judgement!;

        Assert.Equal(Verdict.Borderline, judged.Verdict);
        Assert.Equal("ends within 15 min of turn back", judged.Reasons[0]);
        Assert.Equal(shore.At(12, 45), judged.Window!.Value.End);
    }

    [Fact]
    public void A_stance_page_keeps_off_a_cliffs_foot_and_calls_no_night_open_that_runs_into_a_closure()
    {
        var shore = new Shore().By(Shore.Path());
        var view = new StanceView(new PlaceView(shore.Place, shore.Date, ((CountryCautions?)null).ToPrint()), shore.Stance);
        Assert.Null(view.KeepOff);
        Assert.False(view.IsClosedIn(shore.Of(SessionKind.Night)));

        shore.Place.Close(Closure.Between(shore.Date.PlusDays(1), null, "Nesting", "Refuge"));
        Assert.True(view.IsClosedIn(shore.Of(SessionKind.Night)));
        Assert.False(view.IsClosedIn(shore.Of(SessionKind.Dusk)));

        shore.Stance.Under(new CliffAbove(18, 9));
        Assert.NotNull(view.KeepOff);
    }

    private static TideHeight Low => new(2.1, "8410140");
}
