using Foreshore.Almanac.Stays;
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
    /// <exception cref="ArgumentOutOfRangeException">The days leave the ephemeris, or the count is below 1.</exception>
    public static IReadOnlyList<GoodDate> Next(Scene scene, DateTimeZone zone, Instant from, SkyEphemeris ephemeris, int count = 40, UsableTime? usable = null)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var runs = LightRuns.Between(scene, from, from + Ahead, ephemeris).Runs;
        var sessions = Sessions.Between(from, from + Ahead, scene.Observer.Position, zone, ephemeris.Sun);

        var found = new List<(Session Session, IReadOnlyList<Interval> Windows, Duration Usable)>();
        var first = 0;
        foreach (var session in sessions)
        {
            // Runs lie by their start, the longest within a day or, at the poles, more: those long past are left behind.
            while (first < runs.Count && runs[first].End <= session.Start) first++;
            var touching = runs.Skip(first).TakeWhile(run => run.Start < session.End).Where(run => run.End > session.Start);
            IReadOnlyList<LightRun> light = LightAnswer.Cut(touching, session.Span);
            var windows = usable?.Windows(light) ?? LightUnion.Of(light);
            if (windows.Count > 0)
                found.Add((session, windows, Total(windows)));
        }

        var best = found.OrderByDescending(date => date.Usable).ThenBy(date => date.Session.Start).Take(count).OrderBy(date => date.Session.Start)
            .Select(date => new GoodDate(date.Session, date.Windows, date.Usable) { Moon = GoodDateMoon.Of(date.Session, scene.Observer, ephemeris) });
        return [.. usable is null ? best : best.Select(date => WithTide(date, usable))];
    }

    private static GoodDate WithTide(GoodDate date, UsableTime usable)
    {
        var longest = date.Windows.MaxBy(window => window.Duration);
        return date with { Stay = usable.StayAt(longest.Start), Tide = GoodDateTide.Of(usable.Tide, date.Session, longest) };
    }

    /// <summary>Minutes that two windows share count once.</summary>
    private static Duration Total(IReadOnlyList<Interval> windows)
    {
        var (total, until) = (Duration.Zero, Instant.MinValue);
        foreach (var window in windows)
        {
            total += Duration.Max(Duration.Zero, window.End - Instant.Max(window.Start, until));
            until = Instant.Max(until, window.End);
        }

        return total;
    }
}
