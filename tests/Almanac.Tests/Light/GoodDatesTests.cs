using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class GoodDatesTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 20, 15, 0);

    [Fact]
    public void Best_forty_of_a_year_are_listed_by_date()
    {
        var scene = Coast.Scene(Coast.Eastport, 115, WantedLight.SunInFrame);
        var dates = GoodDates.Next(scene, Coast.NewYork, Now, Coast.Year2026);
        var all = GoodDates.Next(scene, Coast.NewYork, Now, Coast.Year2026, 5000);

        Assert.Equal(40, dates.Count);
        Assert.Equal(dates.OrderBy(date => date.Session.Start), dates);
        Assert.All(all, date => Assert.InRange(date.Session.Start, Now, Now + Duration.FromDays(365)));
        var leastTaken = dates.Min(date => date.Usable);
        var taken = dates.Select(date => date.Session).ToHashSet();
        Assert.All(all.Where(date => !taken.Contains(date.Session)), date => Assert.True(date.Usable <= leastTaken));
        Assert.True(all.Count > 100);
    }

    [Fact]
    public void Minutes_are_the_windows_of_the_session_and_the_answer_is_repeatable()
    {
        var scene = Coast.Scene(new Observer(Coast.Eastport, 10, Coast.Bay), 60, WantedLight.GoldenLight, WantedLight.TwilightGlow, WantedLight.SideLight);
        var dates = GoodDates.Next(scene, Coast.NewYork, Now, Coast.Year2026);
        var again = GoodDates.Next(scene, Coast.NewYork, Now, Coast.Year2026);

        Assert.Equal(dates.Select(date => date.Session), again.Select(date => date.Session));
        foreach (var date in dates)
        {
            var answer = LightRuns.Between(scene, date.Session.Start, date.Session.End, Coast.Year2026);
            Assert.Equal(answer.Union.Count, date.Windows.Count);
            Assert.Equal(answer.Union.Sum(window => window.Duration.TotalMinutes), date.Usable.TotalMinutes, 0.01);
            Assert.Equal(date.Windows.Sum(window => window.Duration.TotalMinutes), date.Usable.TotalMinutes, 1e-9);
            Assert.All(date.Windows, window => Assert.True(window.Start >= date.Session.Start && window.End <= date.Session.End));
        }
    }

    [Fact]
    public void Session_under_way_counts_what_is_left()
    {
        var scene = Coast.Scene(Coast.Eastport, 0, WantedLight.AnyDaylight);
        var first = GoodDates.Next(scene, Coast.NewYork, Now, Coast.Year2026, 5000)[0];

        Assert.Equal(SessionKind.Day, first.Session.Kind);
        Assert.True(first.Session.Start < Now);
        Assert.Equal(Now, first.Windows[0].Start);
    }

    [Fact]
    public void Nothing_suits_and_nothing_is_listed() =>
        Assert.Empty(GoodDates.Next(Coast.Scene(Coast.Eastport, 0, WantedLight.SunInFrame, WantedLight.SoftLight), Coast.NewYork, Now, Coast.Year2026));

    [Fact]
    public void Count_below_one_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            GoodDates.Next(Coast.Scene(Coast.Eastport, 0, WantedLight.BlueLight), Coast.NewYork, Now, Coast.Year2026, 0));
}
