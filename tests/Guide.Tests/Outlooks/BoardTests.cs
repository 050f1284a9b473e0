using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Outlooks;

/// <summary>The board over places of all kinds; sessions and their times are the almanac's and checked there.</summary>
public class BoardTests
{
    [Fact]
    public void A_session_that_has_ended_is_past_and_not_judged()
    {
        var shore = new Shore().By(Shore.Path());
        var end = shore.Of(SessionKind.Day).End;

        Assert.Equal((true, null), (shore.Cell(SessionKind.Day, end).IsPast, shore.Cell(SessionKind.Day, end).Judgement));
        Assert.False(shore.Cell(SessionKind.Day, end - Duration.FromSeconds(1)).IsPast);
    }

    [Fact]
    public void Of_a_session_under_way_only_what_is_left_counts()
    {
        var shore = new Shore().By(Shore.Path());
        var end = shore.Of(SessionKind.Day).End;

        Assert.Equal(end - Duration.FromHours(1), shore.Cell(SessionKind.Day, end - Duration.FromHours(1)).Judgement!.Window!.Value.Start);
        Assert.Equal(Verdict.Borderline, shore.Cell(SessionKind.Day, end - Duration.FromMinutes(15)).Judgement!.Verdict);
        Assert.Equal(Verdict.DoesNotSuit, shore.Cell(SessionKind.Day, end - Duration.FromMinutes(5)).Judgement!.Verdict);
    }

    [Theory]
    [InlineData("Pacific/Chatham", -43.9, -176.5)]
    [InlineData("Pacific/Kiritimati", 1.9, -157.4)]
    [InlineData("America/Adak", 51.9, -176.7)]
    public void Sessions_bear_the_places_own_date(string zone, double latitude, double longitude)
    {
        var shore = new Shore(latitude, longitude, zone).By(Shore.Path());

        Assert.Equal(shore.Date, shore.Cell(SessionKind.Day).Span!.Start.InZone(shore.Place.Zone).Date);
        Assert.Equal(shore.Date, shore.Cell(SessionKind.Dusk).Span!.End.InZone(shore.Place.Zone).Date);
        Assert.Equal(Verdict.Suits, shore.Cell(SessionKind.Day).Judgement!.Verdict);
    }

    [Fact]
    public void In_the_polar_night_sessions_are_missing_and_say_why()
    {
        var shore = new Shore(80, 20, "Arctic/Longyearbyen", on: new LocalDate(2026, 12, 12)).By(Shore.Path());

        Assert.Equal((null, "the sun stays below −12°: only night"), (shore.Cell(SessionKind.Day).Judgement, shore.Cell(SessionKind.Day).Missing));
        Assert.Equal(Verdict.DoesNotSuit, shore.Cell(SessionKind.Night).Judgement!.Verdict);
    }

    [Fact]
    public void In_the_polar_day_there_is_only_day()
    {
        var shore = new Shore(80, 20, "Arctic/Longyearbyen", on: new LocalDate(2026, 6, 20)).By(Shore.Path());

        Assert.Equal(Verdict.Suits, shore.Cell(SessionKind.Day).Judgement!.Verdict);
        Assert.Equal((null, "the sun stays above 10°: only day"), (shore.Cell(SessionKind.Night).Judgement, shore.Cell(SessionKind.Night).Missing));
    }

    [Fact]
    public void A_strip_brackets_the_window_as_the_way_cuts_it_and_nothing_where_one_keeps_off()
    {
        var shore = new Shore().By(Shore.Path().OpenBy(Shore.Daily(new LocalTime(9, 0), new LocalTime(13, 0))));
        Assert.Equal([new Interval(shore.At(9, 25), shore.At(12, 45))], shore.Cell(SessionKind.Day).Brackets);

        shore.Place.Close(Access.Closure.Between(shore.Date, null, "Fire", "Town"));
        Assert.NotEmpty(shore.Cell(SessionKind.Day).Light);
        Assert.Empty(shore.Cell(SessionKind.Day).Brackets);
    }

    [Fact]
    public void A_blurred_place_is_counted_and_never_judged()
    {
        var shore = new Shore().By(Shore.Path());
        shore.Place.ShowTo(Visibility.Sensitive);

        var board = WeekendBoard.Of([Blur.For(shore.Place, Members.Reader.Visitor)], shore.Date, shore.At(0, 0), BoardFilter.Everything, null, shore.Sky);

        Assert.Equal((0, 1), (board.Rows.Count, board.Blurred));
    }
}
