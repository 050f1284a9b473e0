using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Almanac.Moon;

/// <summary>The moon over a stretch of time that is not a date.</summary>
public class MoonSpanTests
{
    private static readonly Observer Shore = new(Coast.Eastport, 6, Coast.Bay);

    [Fact]
    public void Over_a_whole_date_it_is_the_dates_own()
    {
        for (var date = new LocalDate(2026, 3, 1); date < new LocalDate(2026, 5, 1); date = date.PlusDays(1))
        {
            var day = MoonDays.On(date, Shore, Coast.NewYork, Coast.Year2026.Moon);
            var span = MoonDays.Between(Midnight(date), Midnight(date.PlusDays(1)), Shore, Coast.Year2026.Moon);
            Assert.Equal((day.Rise, day.Set), (span.Rise, span.Set));
        }
    }

    // Asked every ten seconds by the plain forms: no event lies outside the stretch, none within it is missed.
    [Theory]
    [InlineData(11, 4, 8)]
    [InlineData(14, 6, 9)]
    [InlineData(20, 3, 12)]
    public void In_a_session_it_tells_what_a_scan_sees(int day, int hour, int hours)
    {
        var from = Instant.FromUtc(2026, 4, day, hour, 0);
        var to = from + Duration.FromHours(hours);
        var span = MoonDays.Between(from, to, Shore, Coast.Year2026.Moon);

        Assert.Equal(IsUp(from), span.IsUpAtStart);
        var (rise, set) = ((Instant?)null, (Instant?)null);
        for (var time = from; time < to; time += Duration.FromSeconds(10))
        {
            if (!IsUp(time) && IsUp(time + Duration.FromSeconds(10))) rise ??= time;
            if (IsUp(time) && !IsUp(time + Duration.FromSeconds(10))) set = time;
        }

        Near(rise, span.Rise);
        Near(set, span.Set);
        Assert.False(rise is null && set is null && !span.IsUpAtStart, "Nothing happens here that could be missed.");

        static void Near(Instant? scanned, Instant? told)
        {
            Assert.Equal(scanned is null, told is null);
            if (scanned is { } known) Assert.InRange((told!.Value - known).TotalSeconds, -1, 11);
        }
    }

    [Fact]
    public void A_stretch_turned_round_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() =>
        MoonDays.Between(Midnight(new(2026, 4, 2)), Midnight(new(2026, 4, 1)), Shore, Coast.Year2026.Moon));

    [Fact]
    public void Good_dates_carry_the_moon_of_their_session()
    {
        var dates = GoodDates.Next(Coast.Scene(Shore, 100, WantedLight.TwilightGlow), Coast.NewYork, Instant.FromUtc(2026, 2, 20, 15, 0), Coast.Year2026, 20);
        Assert.NotEmpty(dates);
        foreach (var date in dates)
        {
            var (moon, session) = (date.Moon, date.Session);
            Assert.Equal(MoonPhases.At(session.Start + session.Span.Duration / 2), moon.Phase);
            Assert.Equal(IsUp(session.Start), moon.Span.IsUpAtStart);
            if (moon.Span.Rise is { } rise) Assert.InRange(rise, session.Start, session.End);
            if (moon.Span.Set is { } set) Assert.InRange(set, session.Start, session.End);
            Assert.Equal(moon.Span.IsUpAtStart || moon.Span.Rise is not null, moon.IsUp);
        }
    }

    private static bool IsUp(Instant time)
    {
        var moon = Coast.Year2026.Moon.At(time, Shore.Position);
        var km = Coast.Year2026.Moon.DistanceKmAt(time);
        // From the surface the disc is nearer by the sine of its altitude in Earth radii: a hundredth of a degree at most here.
        var semidiameter = MoonDisc.SemidiameterDegrees(km - 6371 * Math.Sin(moon.AltitudeDegrees * Math.PI / 180));
        return Refraction.Apparent(moon.AltitudeDegrees + semidiameter) > Shore.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(moon.AzimuthDegrees), Shore.DipDegrees);
    }

    private static Instant Midnight(LocalDate date) => Coast.NewYork.AtStartOfDay(date).ToInstant();
}
