using CsCheck;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class SessionsTests
{
    private static readonly Position Longyearbyen = new(78.2, 15.6);
    private static readonly DateTimeZone Svalbard = Coast.Zone("Arctic/Longyearbyen");

    [Fact]
    public void Dawn_day_dusk_and_night_follow_the_sun_over_the_coast()
    {
        var day = On(2026, 10, 3, Coast.Eastport, Coast.NewYork);

        Assert.Equal(-12, Altitude(day.Dawn!.Start, Coast.Eastport), 1e-4);
        Assert.Equal(10, Altitude(day.Dawn.End, Coast.Eastport), 1e-4);
        Assert.Equal(day.Dawn.End, day.Day!.Start);
        Assert.Equal(day.Day.End, day.Dusk!.Start);
        Assert.Equal(10, Altitude(day.Dusk.Start, Coast.Eastport), 1e-4);
        Assert.Equal(-12, Altitude(day.Dusk.End, Coast.Eastport), 1e-4);
        Assert.Equal(day.Dusk.End, day.Night!.Start);
        Assert.Equal(-15, Altitude(day.Night.NearlyDark!.Value.Start, Coast.Eastport), 1e-4);
        Assert.Equal(-18, Altitude(day.Night.Dark!.Value.End, Coast.Eastport), 1e-4);
        Assert.Equal(On(2026, 10, 4, Coast.Eastport, Coast.NewYork).Dawn!.Start, day.Night.End);
        Assert.Equal(new LocalDate(2026, 10, 3), day.Night.Date);
        Assert.All(Enum.GetValues<SessionKind>(), kind => Assert.Null(day.WhyNo(kind)));
    }

    [Fact]
    public void Short_winter_day_has_dawn_to_noon_and_says_why_there_is_no_day()
    {
        var oslo = new Position(60, 10.75);
        var day = On(2026, 12, 21, oslo, Coast.Zone("Europe/Oslo"));

        Assert.Equal(day.Dawn!.End, day.Dusk!.Start);
        Assert.Null(day.Day);
        Assert.Equal(SessionAbsence.StaysLow, day.DayAbsence);
        Assert.Equal("the sun stays below 10°", day.WhyNo(SessionKind.Day));
    }

    [Fact]
    public void White_night_is_the_hour_each_side_of_solar_midnight_and_bears_the_evenings_date()
    {
        var place = new Position(60, 10.75);
        var zone = Coast.Zone("Europe/Oslo");
        var day = On(2026, 6, 20, place, zone);
        var sun = SunDays.On(new LocalDate(2026, 6, 20), new Observer(place, null, Skyline.AssumedSea), zone, Coast.Year2026.Sun);

        Assert.True(day.Night!.IsWhiteNight);
        Assert.Equal(sun.MidnightAfter - Duration.FromHours(1), day.Night.Start);
        Assert.Equal(sun.MidnightAfter + Duration.FromHours(1), day.Night.End);
        Assert.Equal(day.Night.Start, day.Dusk!.End);
        Assert.Equal(day.Night.End, On(2026, 6, 21, place, zone).Dawn!.Start);
        Assert.Equal(new LocalDate(2026, 6, 20), day.Night.Date);
        Assert.Equal(new LocalDate(2026, 6, 21), day.Night.Start.InZone(zone).Date);
        Assert.Null(day.Night.NearlyDark);
        Assert.Null(day.Night.Dark);
    }

    [Fact]
    public void Where_the_sun_stays_above_ten_there_is_only_day()
    {
        var day = On(2026, 6, 21, Longyearbyen, Svalbard);

        Assert.Equal([SessionKind.Day], day.All.Select(session => session.Kind));
        Assert.Equal(24, day.Day!.Length.TotalHours, 0.02);
        Assert.Equal("the sun stays above 10°: only day", day.WhyNo(SessionKind.Night));
        Assert.Equal(SessionAbsence.StaysHigh, day.DawnAbsence);
    }

    [Fact]
    public void Where_the_sun_stays_below_minus_twelve_night_runs_noon_to_noon()
    {
        var place = new Position(84, 15.6);
        var day = On(2026, 12, 21, place, Svalbard);
        var sun = SunDays.On(new LocalDate(2026, 12, 21), new Observer(place, null, Skyline.AssumedSea), Svalbard, Coast.Year2026.Sun);

        Assert.Equal([SessionKind.Night], day.All.Select(session => session.Kind));
        Assert.Equal(sun.Noon, day.Night!.Start);
        Assert.Equal(24, day.Night.Length.TotalHours, 0.02);
        Assert.False(day.Night.IsWhiteNight);
        Assert.Equal("the sun stays below −12°: only night", day.WhyNo(SessionKind.Dusk));
    }

    [Fact]
    public void White_night_ends_where_day_begins_when_the_sun_hardly_sinks_below_ten()
    {
        // Midnight sun a little below 10 degrees in late May.
        var days = Enumerable.Range(0, 60).Select(i => On(new LocalDate(2026, 5, 1).PlusDays(i), Longyearbyen, Svalbard)).ToList();
        var edge = days.First(day => day.DuskAbsence == SessionAbsence.WhiteNightToDay);

        Assert.True(edge.Night!.IsWhiteNight);
        Assert.Equal(edge.Day!.End, edge.Night.Start);
        Assert.True(edge.Night.Length < Duration.FromHours(2));
        Assert.Equal("the white night runs into the day", edge.WhyNo(SessionKind.Dusk));
    }

    [Theory]
    [InlineData("America/New_York", 44.9, -66.99)]
    [InlineData("Pacific/Chatham", -43.95, -176.55)]
    [InlineData("Pacific/Apia", -13.8, -171.8)]
    [InlineData("Pacific/Kiritimati", 1.9, -157.4)]
    [InlineData("Pacific/Pago_Pago", -14.3, -170.7)]
    [InlineData("Asia/Kamchatka", 53, 158.7)]
    [InlineData("Europe/Madrid", 43.4, -8.4)]
    [InlineData("Asia/Urumqi", 43.8, 87.6)]
    [InlineData("Asia/Shanghai", 39.5, 75.9)]
    [InlineData("Antarctica/Troll", -72, 2.5)]
    public void Solar_day_of_a_date_has_its_noon_on_that_date(string zone, double latitude, double longitude)
    {
        var position = new Position(latitude, longitude);
        for (var date = new LocalDate(2026, 1, 1); date.Year == 2026; date = date.PlusDays(1))
        {
            var day = On(date, position, Coast.Zone(zone));
            var noon = day.Day is { } light ? light.Start + light.Length / 2 : day.Dawn?.End ?? day.Night!.Start;
            Assert.Equal(date, noon.InZone(Coast.Zone(zone)).Date);
        }
    }

    [Fact]
    public void Clock_changes_leave_the_sessions_where_the_sun_has_them()
    {
        // 2026-03-08 springs forward, 2026-11-01 falls back: from one day to the next the dawn moves by minutes, not by an hour.
        foreach (var date in new[] { new LocalDate(2026, 3, 8), new LocalDate(2026, 11, 1) })
        {
            var (before, on, after) = (On(date.PlusDays(-1)), On(date), On(date.PlusDays(1)));
            Assert.InRange((on.Dawn!.Start - before.Dawn!.Start).TotalHours, 23.95, 24.05);
            Assert.InRange((after.Dawn!.Start - on.Dawn.Start).TotalHours, 23.95, 24.05);
            Assert.Equal(before.Night!.End, on.Dawn.Start);
        }

        SessionDay On(LocalDate date) => SessionsTests.On(date, Coast.Eastport, Coast.NewYork);
    }

    [Fact]
    public void At_the_equator_every_day_has_all_four()
    {
        for (var date = new LocalDate(2026, 1, 1); date.Year == 2026; date = date.PlusDays(7))
            Assert.Equal(4, On(date, new Position(0, -78.5), Coast.Zone("America/Guayaquil")).All.Count());
    }

    [Fact]
    public void Sessions_tile_time_without_gap_or_overlap_from_pole_to_pole() =>
        Gen.Select(Gen.Double[-89.5, 89.5], Gen.Double[-180, 180], Gen.Int[0, 355]).Sample((latitude, longitude, dayOfYear) =>
        {
            var from = Instant.FromUtc(2026, 1, 1, 0, 0) + Duration.FromDays(dayOfYear);
            var sessions = Sessions.Between(from, from + Duration.FromDays(8), new Position(latitude, longitude), DateTimeZone.Utc, Coast.Year2026.Sun);
            Assert.True(sessions[0].Start <= from && sessions[^1].End >= from + Duration.FromDays(8));
            for (var i = 1; i < sessions.Count; i++)
                Assert.True(sessions[i].Start == sessions[i - 1].End && sessions[i].Length > Duration.Zero, $"{sessions[i - 1]} then {sessions[i]}");
        }, iter: 400);

    [Fact]
    public void Between_gives_the_same_sessions_as_day_by_day()
    {
        var from = Instant.FromUtc(2026, 4, 1, 0, 0);
        var between = Sessions.Between(from, from + Duration.FromDays(20), Coast.Eastport, Coast.NewYork, Coast.Year2026.Sun);
        var daily = Enumerable.Range(-2, 24).SelectMany(i => On(new LocalDate(2026, 4, 1).PlusDays(i), Coast.Eastport, Coast.NewYork).All)
            .Where(session => session.End > from && session.Start < from + Duration.FromDays(20));
        Assert.Equal(daily, between);
    }

    [Fact]
    public void Date_outside_the_ephemeris_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => On(1999, 1, 1, Coast.Eastport, Coast.NewYork));

    private static double Altitude(Instant time, Position position) => Coast.Year2026.Sun.At(time, position).AltitudeDegrees;

    private static SessionDay On(int year, int month, int day, Position position, DateTimeZone zone) => On(new LocalDate(year, month, day), position, zone);

    private static SessionDay On(LocalDate date, Position position, DateTimeZone zone) => Sessions.On(date, position, zone, Coast.Year2026.Sun);
}
