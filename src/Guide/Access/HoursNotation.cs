using System.Text.RegularExpressions;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>
/// Opening hours as one line of text, as members type them and as the database and the history keep them:
/// "1 May-31 Oct 08:00-20:00; Sat,Sun sunrise-30 min after sunset or by permit; closed".
/// </summary>
internal static partial class HoursNotation
{
    private const string ByPermit = "by permit";
    private const string OnRequest = "on request";
    private const string Open = "open";
    private const string Closed = "closed";
    private const string SunShape = "([0-9]{1,3} min (before|after) )?(sunrise|sunset)";
    private const string BodyShape = $"({Open}|{Closed}|{ByPermit}|{OnRequest}|({RuleNotation.TimeShape}-({RuleNotation.TimeShape}|24:00)|{SunShape}-{SunShape})( or {ByPermit})?)";

    /// <summary>The condition of PostgreSQL that a column of hours is held to.</summary>
    public static string Check(string column) => $"({column} || '; ') ~ '^({RuleNotation.DatesShape}{BodyShape}; )+$'";

    public static string Write(OpeningHours hours) => string.Join("; ", hours.Rules.Select(rule => RuleNotation.Write(rule.Dates) + Write(rule)));

    public static OpeningHours Read(string text)
    {
        var rules = RuleNotation.Rules(text);
        Require.That(rules.Count > 0, "There are no hours in that. Enter them like \"1 May-31 Oct 08:00-18:00; closed\", or leave the field empty.");
        return new(rules.Select(Rule));
    }

    private static HoursRule Rule(string text)
    {
        var (dates, body) = RuleNotation.Dates(text);
        var otherwise = body.Length > ByPermit.Length && OrByPermit().Match(body) is { Success: true } match ? match.Length : 0;
        var hours = Hours(otherwise > 0 ? body[..^otherwise] : body, text);
        Require.That(otherwise == 0 || hours is DayHours.Clock or DayHours.Sun, $"\"{text}\": \"or by permit\" stands after hours, like \"sunrise-sunset or by permit\". For a permit alone write \"by permit\".");
        return new(dates, hours) { OtherwiseByPermit = otherwise > 0 };
    }

    private static DayHours Hours(string body, string rule)
    {
        switch (body)
        {
            case Open or "always" or "at any hour" or "any hour" or "open at any hour" or "24 hours": return new DayHours.Always();
            case Closed or "shut" or "never": return new DayHours.Closed();
            case ByPermit or "permit": return new DayHours.ByPermit();
            case OnRequest or "request": return new DayHours.OnRequest();
        }

        if (ByClock().Match(body) is { Success: true } clock)
        {
            var (from, until) = (RuleNotation.Time(clock.Groups[1].Value), RuleNotation.Time(clock.Groups[2].Value, isEnd: true));
            Require.That(from != until, $"\"{rule}\" opens and shuts at the same time. Write \"open\" for the whole day, or \"closed\".");
            return new DayHours.Clock(from, until);
        }

        if (BySun().Match(body) is { Success: true } sun)
            return new DayHours.Sun(Edge(sun, "from"), Edge(sun, "until"));
        throw new NotAcceptedException($"\"{rule}\" cannot be read as hours. After the dates write hours like 08:00-18:00 or sunrise-sunset, or one of: open, closed, by permit, on request. Part several rules with semicolons.");
    }

    private static SunEdge Edge(Match match, string end)
    {
        var minutes = match.Groups[$"{end}Minutes"] is { Success: true } typed ? int.Parse(typed.Value, System.Globalization.CultureInfo.InvariantCulture) : 0;
        Require.That(minutes <= 360, "Hours by the sun lie within 360 minutes of sunrise or sunset.");
        return new(match.Groups[end].Value == "sunrise" ? SunEvent.Sunrise : SunEvent.Sunset, match.Groups[$"{end}Side"].Value == "before" ? -minutes : minutes);
    }

    private static string Write(HoursRule rule) => rule.Hours switch
    {
        DayHours.Always => Open,
        DayHours.Closed => Closed,
        DayHours.ByPermit => ByPermit,
        DayHours.OnRequest => OnRequest,
        DayHours.Clock clock => $"{RuleNotation.Write(clock.From)}-{(clock.Until == LocalTime.Midnight ? "24:00" : RuleNotation.Write(clock.Until))}{Otherwise(rule)}",
        DayHours.Sun sun => $"{Write(sun.From)}-{Write(sun.Until)}{Otherwise(rule)}",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "No such hours."),
    };

    private static string Otherwise(HoursRule rule) => rule.OtherwiseByPermit ? $" or {ByPermit}" : "";

    private static string Write(SunEdge edge)
    {
        var offset = edge.OffsetMinutes == 0 ? "" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Math.Abs(edge.OffsetMinutes)} min {(edge.OffsetMinutes < 0 ? "before" : "after")} ");
        return offset + (edge.Event == SunEvent.Sunrise ? "sunrise" : "sunset");
    }

    [GeneratedRegex("[ ,](?:or |otherwise |except )by permit$")]
    private static partial Regex OrByPermit();

    [GeneratedRegex("^(?:open )?([0-9]{1,2}:[0-9]{2})-([0-9]{1,2}:[0-9]{2})$")]
    private static partial Regex ByClock();

    [GeneratedRegex("^(?:open )?(?:(?<fromMinutes>[0-9]{1,3}) min(?:utes)? (?<fromSide>before|after) )?(?<from>sunrise|sunset)-(?:(?<untilMinutes>[0-9]{1,3}) min(?:utes)? (?<untilSide>before|after) )?(?<until>sunrise|sunset)$")]
    private static partial Regex BySun();
}
