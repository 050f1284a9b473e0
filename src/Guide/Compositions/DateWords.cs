using System.Globalization;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>Sessions and good dates in words, by the place's clock.</summary>
public static class DateWords
{
    private static readonly Duration Soon = Duration.FromHours(4);

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

    /// <summary>"tide 2.1–1.4 m, turn back 13:55": the tide of the longest window, and what calls one back within hours of it; null where tide was not asked.</summary>
    public static string? TideWords(this GoodDate date, DateTimeZone zone)
    {
        if (date.Tide is not { } tide)
            return null;
        var end = date.Windows.MaxBy(window => window.Duration).End;
        var turnBack = date.Stay?.TurnBack is { } time && time < end + Soon ? $", turn back {time.Clock(zone)}" : "";
        return $"tide {Tides.TideWords.Metres(tide.MetresAtStart)} to {Tides.TideWords.Metres(tide.MetresAtEnd)}{turnBack}";
    }

    /// <summary>Why there is no date: the light doesn't come, or it can't be computed yet.</summary>
    public static string NoDatesWords(this Composition picture, bool isUseCounted = false) => isUseCounted
        ? "light, tide and the way back do not come together in the next 365 days"
        : picture.Wanted.Any(light => LightTable.Of(light).IsComputed)
        ? "no such light in the next 365 days"
        : "next good date not known: cloud is not computed";
}
