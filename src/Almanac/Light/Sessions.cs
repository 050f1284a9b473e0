using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>
/// Dawn, day, dusk and night at a place. They go by the sun's altitude without air above the level horizon, so skyline and
/// height change nothing, and by the sun's own noon and midnight, so the clock changes nothing but the date they bear.
/// </summary>
public static class Sessions
{
    private const double NightDegrees = -12;
    private const double DayDegrees = 10;
    private const double NearlyDarkDegrees = -15;
    private const double DarkDegrees = -18;
    private static readonly Duration WhiteNightHalf = Duration.FromHours(1);

    /// <summary>The sessions of the solar day whose noon falls on a date by the place's clock.</summary>
    /// <param name="date">Local date.</param>
    /// <param name="position">Where.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="ephemeris">Covers that noon.</param>
    /// <exception cref="ArgumentOutOfRangeException">The noon lies outside the ephemeris.</exception>
    public static SessionDay On(LocalDate date, Position position, DateTimeZone zone, SunEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(ephemeris);
        var path = ephemeris.SeenFrom(position);
        var number = SolarDay.NumberOn(date, zone, path);
        // Clocks that left out or repeated a date are why dates are not simply counted on.
        var today = new SolarDay(path, number);
        ephemeris.DaysOf(today.Noon);
        return Of(date, today, new SolarDay(path, number + 1));
    }

    /// <summary>All sessions with a part in a stretch of time, by start.</summary>
    /// <param name="from">Beginning of the stretch.</param>
    /// <param name="to">End of the stretch.</param>
    /// <param name="position">Where.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="ephemeris">Covers the stretch.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch leaves the ephemeris.</exception>
    public static IReadOnlyList<Session> Between(Instant from, Instant to, Position position, DateTimeZone zone, SunEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(ephemeris);
        var (start, _) = (ephemeris.DaysOf(from), ephemeris.DaysOf(to));
        var path = ephemeris.SeenFrom(position);
        var found = new List<Session>();
        // The night of the day before may reach into the stretch.
        var number = SolarDay.NumberNearest(start, path) - 1;
        var today = new SolarDay(path, number);
        while (today.MidnightBefore < to)
        {
            var tomorrow = new SolarDay(path, ++number);
            foreach (var session in Of(today.Noon.InZone(zone).Date, today, tomorrow).All)
                if (session.End > from && session.Start < to)
                    found.Add(session);
            today = tomorrow;
        }

        return found;
    }

    private static SessionDay Of(LocalDate date, in SolarDay today, in SolarDay tomorrow)
    {
        var (dawn, noDawn) = Dawn(date, today);
        var (day, noDay) = Day(date, today);
        var (dusk, noDusk) = Dusk(date, today);
        var night = Night(date, today, tomorrow);
        return new SessionDay(date, dawn, day, dusk, night)
        {
            DawnAbsence = noDawn,
            DayAbsence = noDay,
            DuskAbsence = noDusk,
            NightAbsence = night is null ? SessionAbsence.StaysHigh : SessionAbsence.None,
        };
    }

    private static (Session?, SessionAbsence) Dawn(LocalDate date, in SolarDay today)
    {
        if (today.HighestDegrees < NightDegrees) return (null, SessionAbsence.StaysDark);
        if (today.LowestBeforeDegrees >= DayDegrees) return (null, SessionAbsence.StaysHigh);
        var start = today.Rising(NightDegrees) ?? today.MidnightBefore + WhiteNightHalf;
        var end = today.Rising(DayDegrees) ?? NoonOf(today);
        return Between(SessionKind.Dawn, date, start, end);
    }

    private static (Session?, SessionAbsence) Dusk(LocalDate date, in SolarDay today)
    {
        if (today.HighestDegrees < NightDegrees) return (null, SessionAbsence.StaysDark);
        if (today.LowestAfterDegrees >= DayDegrees) return (null, SessionAbsence.StaysHigh);
        var start = today.Setting(DayDegrees) ?? NoonOf(today);
        var end = today.Setting(NightDegrees) ?? today.MidnightAfter - WhiteNightHalf;
        return Between(SessionKind.Dusk, date, start, end);
    }

    private static (Session?, SessionAbsence) Between(SessionKind kind, LocalDate date, Instant start, Instant end) =>
        start < end ? (new Session(kind, date, start, end), SessionAbsence.None) : (null, SessionAbsence.WhiteNightToDay);

    private static (Session?, SessionAbsence) Day(LocalDate date, in SolarDay today)
    {
        if (today.HighestDegrees < NightDegrees) return (null, SessionAbsence.StaysDark);
        if (today.HighestDegrees <= DayDegrees) return (null, SessionAbsence.StaysLow);
        var start = today.Rising(DayDegrees) ?? today.MidnightBefore;
        var end = today.Setting(DayDegrees) ?? today.MidnightAfter;
        return (new Session(SessionKind.Day, date, start, end), SessionAbsence.None);
    }

    private static Session? Night(LocalDate date, in SolarDay today, in SolarDay tomorrow)
    {
        if (today.LowestAfterDegrees >= DayDegrees) return null;
        if (today.LowestAfterDegrees > NightDegrees)
        {
            // Where the sun comes back over +10 within the hour, day has begun.
            var start = Later(today.MidnightAfter - WhiteNightHalf, today.Setting(DayDegrees));
            var end = Earlier(today.MidnightAfter + WhiteNightHalf, tomorrow.Rising(DayDegrees));
            return new Session(SessionKind.Night, date, start, end) { IsWhiteNight = true };
        }

        var night = new Interval(today.Setting(NightDegrees) ?? today.Noon, tomorrow.Rising(NightDegrees) ?? tomorrow.Noon);
        return new Session(SessionKind.Night, date, night.Start, night.End)
        {
            NearlyDark = Below(NearlyDarkDegrees, today, tomorrow),
            Dark = Below(DarkDegrees, today, tomorrow),
        };
    }

    private static Interval? Below(double degrees, in SolarDay today, in SolarDay tomorrow) =>
        today.LowestAfterDegrees > degrees
            ? null
            : new Interval(today.Setting(degrees) ?? today.Noon, tomorrow.Rising(degrees) ?? tomorrow.Noon);

    // Near the poles the sun stands highest some minutes off noon: on a day when it hardly passes −12, noon may lie in the night.
    private static Instant NoonOf(in SolarDay today) =>
        Earlier(Later(today.Noon, today.Rising(NightDegrees)), today.Setting(NightDegrees));

    private static Instant Later(Instant time, Instant? other) => other is { } known ? Instant.Max(time, known) : time;

    private static Instant Earlier(Instant time, Instant? other) => other is { } known ? Instant.Min(time, known) : time;
}
