using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>The next dates on which a scene works.</summary>
public static class GoodDates
{
    private static readonly Duration Ahead = Duration.FromDays(365);

    /// <summary>
    /// The best sessions of the next 365 days by usable minutes, listed by date. Of a session under way only what is left
    /// counts. Of sessions with equal minutes the earlier goes first.
    /// </summary>
    /// <param name="scene">From where, which picture, which lights.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="from">Now.</param>
    /// <param name="ephemeris">Covers the 365 days.</param>
    /// <param name="count">How many at most, above 0.</param>
    /// <param name="usable">What tide and access leave of the 365 days, where a limit, a wish or a way asks for them; null: all.</param>
    /// <param name="hours">
    /// The hours somebody goes out: dates rank by the minutes within them, and one without any is none. A night counts whole
    /// unless they hold at night too. Null: at any hour.
    /// </param>
    /// <param name="goes">Sessions in which one may go at all; null: all.</param>
    /// <exception cref="ArgumentOutOfRangeException">The days leave the ephemeris, or the count is below 1.</exception>
    public static IReadOnlyList<GoodDate> Next(Scene scene, DateTimeZone zone, Instant from, SkyEphemeris ephemeris, int count = 40, UsableTime? usable = null, HoursOut? hours = null, Predicate<Session>? goes = null)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var runs = LightRuns.Between(scene, from, from + Ahead, ephemeris).Runs;
        var sessions = Sessions.Between(from, from + Ahead, scene.Observer.Position, zone, ephemeris.Sun);

        var found = new List<(Session Session, IReadOnlyList<Interval> Windows, Duration Usable, Instant LightEnds)>();
        var first = 0;
        foreach (var session in sessions)
        {
            // Runs lie by their start, the longest within a day or, at the poles, more: those long past are left behind.
            while (first < runs.Count && runs[first].End <= session.Start) first++;
            var touching = runs.Skip(first).TakeWhile(run => run.Start < session.End).Where(run => run.End > session.Start);
            IReadOnlyList<LightRun> light = LightAnswer.Cut(touching, session.Span);
            var windows = usable?.Windows(light) ?? LightUnion.Of(light);
            var counted = Total(windows, (hours ?? HoursOut.Unrestricted).For(session.Kind == SessionKind.Night), zone);
            if (counted > Duration.Zero && goes?.Invoke(session) != false)
                found.Add((session, windows, counted, EndOf(light, windows)));
        }

        var best = found.OrderByDescending(date => date.Usable).ThenBy(date => date.Session.Start).Take(count).OrderBy(date => date.Session.Start)
            .Select(date => new GoodDate(date.Session, date.Windows, date.Usable) { LightEnds = date.LightEnds, Moon = GoodDateMoon.Of(date.Session, scene.Observer, ephemeris) });
        return [.. usable is null ? best : best.Select(date => WithTide(date, usable, ephemeris.Sun))];
    }

    private static GoodDate WithTide(GoodDate date, UsableTime usable, SunEphemeris sun)
    {
        var longest = date.Windows.MaxBy(window => window.Duration);
        var stay = usable.StayAt(longest.Start);
        return date with { Stay = stay, Stays = [.. date.Windows.Select(window => usable.StayAt(window.Start))], Itinerary = stay is null ? null : StayItinerary.Of(stay, longest, sun), Tide = GoodDateTide.Of(usable.Tide, date.Session, longest) };
    }

    /// <summary>When the light of the longest window ends, whether or not one can stay so long.</summary>
    private static Instant EndOf(IReadOnlyList<LightRun> light, IReadOnlyList<Interval> windows)
    {
        var longest = windows.MaxBy(window => window.Duration);
        return LightUnion.Of(light).Where(run => run.Start <= longest.Start && run.End >= longest.End).Select(run => run.End).DefaultIfEmpty(longest.End).Max();
    }

    /// <summary>Minutes that two windows share count once.</summary>
    private static Duration Total(IReadOnlyList<Interval> windows, HoursOut hours, DateTimeZone zone)
    {
        var (total, until) = (Duration.Zero, Instant.MinValue);
        foreach (var window in windows)
        {
            var start = Instant.Max(window.Start, until);
            if (start < window.End) total += hours.Within(new Interval(start, window.End), zone);
            until = Instant.Max(until, window.End);
        }

        return total;
    }
}
