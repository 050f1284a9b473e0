using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Access;

public sealed class ClosureTests
{
    [Theory]
    [InlineData("2026-03-14", false)]
    [InlineData("2026-03-15", true)]
    [InlineData("2031-07-31", true)]
    [InlineData("2026-08-01", false)]
    public void A_yearly_range_holds_every_year_with_both_its_days(string day, bool applies) =>
        Assert.Equal(applies, Closure.EveryYear(new AnnualDate(3, 15), new AnnualDate(7, 31), "Guillemots", "Park").AppliesOn(Day(day)));

    [Theory]
    [InlineData("2026-12-19", false)]
    [InlineData("2026-12-20", true)]
    [InlineData("2026-12-31", true)]
    [InlineData("2027-01-01", true)]
    [InlineData("2027-01-05", true)]
    [InlineData("2027-01-06", false)]
    [InlineData("2027-07-01", false)]
    public void A_yearly_range_may_cross_New_Year(string day, bool applies) =>
        Assert.Equal(applies, Closure.EveryYear(new AnnualDate(12, 20), new AnnualDate(1, 5), "Not ploughed", "Park").AppliesOn(Day(day)));

    [Theory]
    [InlineData("2027-02-28", true)]
    [InlineData("2027-03-01", false)]
    [InlineData("2028-02-29", true)]
    public void A_range_that_ends_on_leap_day_ends_on_the_last_of_February(string day, bool applies) =>
        Assert.Equal(applies, Closure.EveryYear(new AnnualDate(2, 1), new AnnualDate(2, 29), "Ice", "Park").AppliesOn(Day(day)));

    [Theory]
    [InlineData("2026-05-01", false)]
    [InlineData("2026-05-02", true)]
    [InlineData("2026-05-09", true)]
    [InlineData("2026-05-10", false)]
    public void A_dated_closure_holds_from_its_first_to_its_last_day(string day, bool applies) =>
        Assert.Equal(applies, Closure.Between(Day("2026-05-02"), Day("2026-05-09"), "Fire", "Refuge").AppliesOn(Day(day)));

    [Fact]
    public void Without_an_end_it_holds_until_lifted()
    {
        var closure = Closure.Between(Day("2026-05-02"), null, "Rockfall", "Warden", ClosureState.UnderReview);
        Assert.True(closure.AppliesOn(Day("2040-01-01")));
        closure.Confirm();
        closure.AskToLift();
        Assert.True(closure.AppliesOn(Day("2026-06-01")));
        closure.Lift();
        Assert.False(closure.AppliesOn(Day("2026-06-01")));
        Assert.Throws<NotAcceptedException>(() => closure.Lift());
        Assert.Throws<NotAcceptedException>(() => closure.AskToLift());
    }

    [Fact]
    public void An_end_before_the_beginning_is_refused_with_what_to_do() =>
        Assert.Contains("Check the two dates", Assert.Throws<NotAcceptedException>(
            () => Closure.Between(Day("2026-05-02"), Day("2026-05-01"), "Fire", "Refuge")).Message, StringComparison.Ordinal);

    private static LocalDate Day(string iso) => NodaTime.Text.LocalDatePattern.Iso.Parse(iso).Value;
}
