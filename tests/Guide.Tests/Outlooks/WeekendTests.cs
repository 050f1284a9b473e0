using NodaTime;
using Xunit;

namespace Foreshore.Guide.Outlooks;

public class WeekendTests
{
    private static readonly DateTimeZone NewYork = DateTimeZoneProviders.Tzdb["America/New_York"];

    [Theory]
    [InlineData("2026-11-25T12:00:00Z", 27)] // Wednesday
    [InlineData("2026-11-27T23:30:00Z", 27)] // Friday evening
    [InlineData("2026-11-28T12:00:00Z", 27)] // Saturday
    [InlineData("2026-11-29T20:00:00Z", 27)] // Sunday afternoon, dusk still to end
    [InlineData("2026-11-30T04:00:00Z", 34)] // Sunday 23:00 local, dusk over: 4 December
    [InlineData("2026-11-30T12:00:00Z", 34)] // Monday
    public void This_weekend_lasts_until_its_last_session_has_ended(string now, int dayOfNovember)
    {
        var duskEnd = Instant.FromUtc(2026, 11, 29, 22, 10);

        var friday = Weekend.Default(NodaTime.Text.InstantPattern.General.Parse(now).Value, NewYork, _ => duskEnd);

        Assert.Equal(new LocalDate(2026, 11, 1).PlusDays(dayOfNovember - 1), friday);
    }

    [Fact]
    public void A_dusk_that_ends_after_midnight_keeps_the_weekend_open_on_Monday()
    {
        var oneOnMonday = Instant.FromUtc(2026, 6, 22, 5, 0);

        Assert.Equal(new LocalDate(2026, 6, 19), Weekend.Default(oneOnMonday, NewYork, _ => oneOnMonday + Duration.FromMinutes(30)));
    }

    [Fact]
    public void Nine_sessions_run_from_dusk_to_dusk_two_days_on()
    {
        var sessions = Weekend.From(new LocalDate(2026, 11, 27));

        Assert.Equal(
            ["fri-dusk", "fri-night", "sat-dawn", "sat-day", "sat-dusk", "sat-night", "sun-dawn", "sun-day", "sun-dusk"],
            sessions.Select(session => session.Key));
        Assert.Equal(Enumerable.Range(0, 9), sessions.Select(session => session.Index));
    }

    [Theory]
    [InlineData(2026, 11, 27, "27–29 November")]
    [InlineData(2026, 10, 30, "30 October – 1 November")]
    public void Days_are_named_once_a_month(int year, int month, int day, string words) =>
        Assert.Equal(words, Weekend.Words(new LocalDate(year, month, day)));
}
