using NodaTime;
using Xunit;

namespace Foreshore.Guide.Shell;

/// <summary>The zone's name over a stretch of time; rules of the IANA time zone database.</summary>
public sealed class SiteTimesTests
{
    private static readonly DateTimeZone NewYork = DateTimeZoneProviders.Tzdb["America/New_York"];

    // In the United States summer time ends on the first Sunday of November and begins on the second of March, at 2:00 (15 U.S.C. 260a).
    [Theory]
    [InlineData("2026-10-01", "2026-11-01", "EDT")]
    [InlineData("2026-11-01", "2026-12-01", "EDT, from 1 Nov 01:00 EST")]
    [InlineData("2026-12-01", "2027-01-01", "EST")]
    [InlineData("2027-03-01", "2027-04-01", "EST, from 14 Mar 03:00 EDT")]
    [InlineData("2026-09-01", "2027-04-01", "EDT, from 1 Nov 01:00 EST, from 14 Mar 03:00 EDT")]
    public void A_change_of_the_clocks_is_named_to_the_hour(string from, string to, string words) =>
        Assert.Equal(words, NewYork.Abbreviations(Midnight(NewYork, from), Midnight(NewYork, to)));

    // The Azores change at their midnight: on 29 March 2026 the day begins at 1:00, on 25 October 0:00 comes twice.
    [Theory]
    [InlineData("2026-03-29", "2026-03-30", "UTC+00:00")]
    [InlineData("2026-03-28", "2026-03-29", "UTC-01:00")]
    public void A_change_at_the_very_beginning_or_end_is_none(string from, string to, string words)
    {
        var azores = DateTimeZoneProviders.Tzdb["Atlantic/Azores"];
        Assert.Equal(words, azores.Abbreviations(Midnight(azores, from), Midnight(azores, to)));
    }

    private static Instant Midnight(DateTimeZone zone, string date) =>
        zone.AtStartOfDay(NodaTime.Text.LocalDatePattern.Iso.Parse(date).Value).ToInstant();
}
