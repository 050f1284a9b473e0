using Foreshore.Almanac.Light;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Outlooks;

/// <summary>The order of verdicts is the project's own rule; there is no outside source for it.</summary>
public class JudgementTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 11, 28, 10, 0);
    private static readonly StanceFacts Nothing = new([], null, [], [], []);

    [Fact]
    public void A_closure_stands_above_any_light()
    {
        var judged = Judgement.Of(Nothing with { Stops = ["closed: nesting terns"] }, Lit(60));

        Assert.Equal(Verdict.KeepOff, judged.Verdict);
        Assert.Null(judged.Window);
        Assert.Equal("closed: nesting terns", judged.Reasons[0]);
    }

    [Fact]
    public void A_closure_stands_even_where_no_light_comes() =>
        Assert.Equal(Verdict.KeepOff, Judgement.Of(Nothing with { Stops = ["closed"] }, Lit(null)).Verdict);

    [Fact]
    public void No_way_in_that_the_club_may_recommend_never_suits()
    {
        var judged = Judgement.Of(Nothing with { NoWayIn = "no way in that the club may recommend", NotKnown = ["tide"] }, Lit(60));

        Assert.Equal(Verdict.DoesNotSuit, judged.Verdict);
        Assert.Equal("no way in that the club may recommend", judged.Reasons[0]);
    }

    [Fact]
    public void Unknown_water_is_not_judged_and_its_light_hours_stay_in_sight()
    {
        var judged = Judgement.Of(Nothing with { NotKnown = [Stance.SeaNotJudged] }, Lit(60));

        Assert.Equal(Verdict.NotJudged, judged.Verdict);
        Assert.Equal(Start, judged.Window!.Value.Start);
        Assert.Equal("the sea is not judged", judged.Reasons[0]);
    }

    [Fact]
    public void Without_any_wanted_light_unknown_water_does_not_matter() =>
        Assert.Equal(Verdict.DoesNotSuit, Judgement.Of(Nothing with { NotKnown = ["tide"] }, Lit(null)).Verdict);

    [Fact]
    public void A_light_that_cannot_be_computed_is_not_judged()
    {
        var judged = Judgement.Of(Nothing, new SessionLight([], [], [WantedLight.StarTrails], null));

        Assert.Equal(Verdict.NotJudged, judged.Verdict);
        Assert.Equal("star trails not computed yet", judged.Reasons[0]);
    }

    [Theory]
    [InlineData(19, Verdict.Borderline)]
    [InlineData(20, Verdict.Suits)]
    public void A_window_under_twenty_minutes_is_borderline(int minutes, Verdict verdict) =>
        Assert.Equal(verdict, Judgement.Of(Nothing, Lit(minutes)).Verdict);

    [Theory]
    [InlineData(0, Verdict.Borderline)]
    [InlineData(14, Verdict.Borderline)]
    [InlineData(15, Verdict.Suits)]
    public void A_window_that_ends_within_fifteen_minutes_of_turn_back_is_borderline(int minutesLater, Verdict verdict)
    {
        var window = Run(60);

        Assert.Equal(verdict, Judgement.Of(Nothing, new SessionLight([new(window, window.End + Duration.FromMinutes(minutesLater))], [window], [], null)).Verdict);
    }

    [Fact]
    public void The_best_window_is_one_without_doubt_before_a_longer_one_with_it()
    {
        var early = Run(25);
        var late = new LightRun(WantedLight.BlueLight, Start + Duration.FromHours(2), Start + Duration.FromHours(3));
        var judged = Judgement.Of(Nothing, new SessionLight([new(early, late.End), new(late, late.End)], [early, late], [], null));

        Assert.Equal((Verdict.Suits, early), (judged.Verdict, judged.Window!.Value));
    }

    [Fact]
    public void Gusts_unknown_near_an_edge_cap_it_at_borderline()
    {
        var judged = Judgement.Of(Nothing with { Doubts = ["within 5 m of an edge, and gusts are not known"] }, Lit(60));

        Assert.Equal(Verdict.Borderline, judged.Verdict);
    }

    [Fact]
    public void Remarks_lower_nothing()
    {
        var judged = Judgement.Of(Nothing with { Remarks = ["a sea horizon is assumed"] }, Lit(60));

        Assert.Equal(Verdict.Suits, judged.Verdict);
        Assert.Equal(["a sea horizon is assumed"], judged.Reasons);
    }

    [Fact]
    public void Light_that_exists_but_cannot_be_reached_says_why()
    {
        var judged = Judgement.Of(Nothing, new SessionLight([], [Run(30)], [], "the way is not known in the dark"));

        Assert.Equal(Verdict.DoesNotSuit, judged.Verdict);
        Assert.Equal("the way is not known in the dark", judged.Reasons[0]);
    }

    [Fact]
    public void Verdicts_sort_from_suits_to_keep_off() =>
        Assert.Equal(["suits", "borderline", "not judged", "does not suit", "keep off"], Enum.GetValues<Verdict>().Order().Select(verdict => verdict.Word()));

    private static SessionLight Lit(int? minutes) =>
        minutes is { } length ? new([new(Run(length))], [Run(length)], [], null) : new([], [], [], null);

    private static LightRun Run(int minutes) => new(WantedLight.GoldenLight, Start, Start + Duration.FromMinutes(minutes));
}
