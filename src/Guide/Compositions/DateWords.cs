using System.Globalization;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>Sessions and good dates in words, by the place's clock.</summary>
public static class DateWords
{
    public static string Words(this SessionKind kind) => kind switch
    {
        SessionKind.Dawn => "dawn",
        SessionKind.Day => "day",
        SessionKind.Dusk => "dusk",
        SessionKind.Night => "night",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such session."),
    };

    /// <summary>For example "Sat 28 Nov 2026 dawn"; a session bears the date of its place.</summary>
    public static string Words(this Session session) =>
        $"{session.Date.ToString("ddd d MMM uuuu", CultureInfo.InvariantCulture)} {session.Kind.Words()}";

    /// <summary>For example "05:37–06:48 EST" or "05:37–05:52 and 06:10–06:48 EST".</summary>
    public static string Words(this IReadOnlyList<Interval> windows, DateTimeZone zone) => windows.Count == 0 ? "" :
        $"{string.Join(" and ", windows.Select(w => $"{w.Start.Clock(zone)}–{w.End.Clock(zone)}"))} {zone.Abbreviation(windows[0].Start)}";

    /// <summary>"Sat 28 Nov 2026 dawn, 05:37–06:48 EST".</summary>
    public static string Words(this GoodDate date, DateTimeZone zone) => $"{date.Session.Words()}, {date.Windows.Words(zone)}";

    public static string UsableWords(this GoodDate date) => AccessWords.Minutes(date.Usable.TotalMinutes);

    /// <summary>"tide 2.1 m to 1.4 m": the tide of the longest window; null where it was not asked.</summary>
    public static string? TideWords(this GoodDate date) => date.Tide is { } tide
        ? $"tide {Tides.TideWords.Metres(tide.MetresAtStart)} to {Tides.TideWords.Metres(tide.MetresAtEnd)}" : null;

    /// <summary>"Over the bar, car at Bar Road; arrive by 16:20; light ends 17:52; turn back 17:40"; null where the way was not asked.</summary>
    public static string? WayWords(this GoodDate date, DateTimeZone zone)
    {
        if (date.Stay is not { } stay)
            return null;
        List<string> parts = [stay.Plan.Name];
        if (date.Itinerary is { } way)
            parts.Add($"{(way.Watch is null ? "arrive by" : "at the watch place by")} {way.ArriveBy.Clock(zone)}");
        parts.Add($"light ends {date.LightEnds.Clock(zone)}");
        if (TurnBackWords(date, zone) is { } turnBack)
            parts.Add(turnBack);
        return string.Join("; ", parts.Where(part => part.Length > 0));
    }

    private static string? TurnBackWords(GoodDate date, DateTimeZone zone)
    {
        var times = date.Stays.Zip(date.Windows).Select(one => one.First?.TurnBackFrom(one.Second.End)).OfType<Instant>().Distinct().Select(time => time.Clock(zone)).ToList();
        if (times.Count == 0)
            return null;
        var early = date.Stay!.TurnBack < date.LightEnds ? ": you will leave before the best of it" : "";
        return $"turn back {string.Join(" and ", times)}{(date.Stay.Plan.LeavesWavesOut ? StayWords.AtTheLatest : "")}{early}";
    }

    /// <summary>Why there is no date: the light doesn't come, or it can't be computed yet.</summary>
    public static string NoDatesWords(this Composition picture, bool isUseCounted = false) => isUseCounted
        && picture.Wanted.Any(light => LightTable.Of(light).IsComputed) ? "no usable date in the next year"
        : picture.Wanted.Any(light => LightTable.Of(light).IsComputed)
        ? "no such light in the next 365 days"
        : "next good date not known: cloud is not computed";
}
