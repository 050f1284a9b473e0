using System.Globalization;
using Foreshore.Almanac.Stays;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>Hours and sailings in plain English, for pages, print and the API.</summary>
public static class HoursWords
{
    private static readonly string[] Days = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

    /// <summary>For example "May–October daily 08:00–18:00; November on request: ask the boatman; closed on all other dates".</summary>
    public static string Words(this OpeningHours hours, string? askWhom = null)
    {
        var rules = hours.Rules.Select(rule => $"{Dates(rule.Dates, isDaily: rule.Hours is DayHours.Clock or DayHours.Sun)}{Words(rule)}{(Asks(rule) ? Ask(askWhom) : "")}");
        return string.Join("; ", CoverTheYear(hours.Rules.Select(rule => rule.Dates)) ? rules : [.. rules, "closed on all other dates"]);
    }

    /// <summary>For example "May–October daily 05:30–20:15, every 45 min; November on request: ask the boatman; no sailings on all other dates".</summary>
    public static string Words(this Timetable sailings, string? askWhom = null)
    {
        List<string> rules = [.. sailings.Rules.Select(rule => $"{Dates(rule.Dates, isDaily: rule.Sailings is DaySailings.FirstLast or DaySailings.Times)}{Words(rule.Sailings)}{(rule.Sailings is DaySailings.OnRequest ? Ask(askWhom) : "")}")];
        if (rules.Count == 0)
            rules.Add($"not known{Ask(askWhom)}");
        else if (!CoverTheYear(sailings.Rules.Select(rule => rule.Dates)))
            rules.Add("no sailings on all other dates");
        return string.Join("; ", [.. rules, .. sailings.Agreed.Select(time => time.ToString("'agreed:' d MMM uuuu HH':'mm", CultureInfo.InvariantCulture))]);
    }

    /// <summary>Whether some rule speaks for each day of the week on each day of the year.</summary>
    private static bool CoverTheYear(IEnumerable<RuleDates> rules)
    {
        List<RuleDates> all = [.. rules];
        for (var date = new LocalDate(2028, 1, 1); date.Year == 2028; date = date.PlusDays(1))
        {
            var days = all.Where(rule => rule.Season?.Holds(date) != false).Aggregate(Weekdays.None, (sum, rule) => sum | rule.Days);
            if (days != Weekdays.All)
                return false;
        }

        return true;
    }

    /// <summary>Words after what has to be asked for; nothing where nobody wrote whom to ask.</summary>
    private static string Ask(string? whom) => whom is null ? "" : $": ask {whom}";

    private static bool Asks(HoursRule rule) => rule.OtherwiseByPermit || rule.Hours is DayHours.OnRequest or DayHours.ByPermit;

    private static string Words(HoursRule rule) => rule.Hours switch
    {
        DayHours.Always => "at any hour",
        DayHours.Closed => "closed",
        DayHours.ByPermit => "by permit only",
        DayHours.OnRequest => "on request",
        DayHours.Clock clock => $"{Time(clock.From)}–{(clock.Until == LocalTime.Midnight ? "24:00" : Time(clock.Until))}{(clock.Until <= clock.From && clock.Until != LocalTime.Midnight ? " of the next day" : "")}",
        DayHours.Sun sun => $"{Words(sun.From)} to {Words(sun.Until)}",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "No such hours."),
    } + (rule.OtherwiseByPermit ? ", otherwise by permit" : "");

    private static string Words(SunEdge edge) =>
        $"{(edge.OffsetMinutes == 0 ? "" : $"{AccessWords.Minutes(Math.Abs(edge.OffsetMinutes))} {(edge.OffsetMinutes < 0 ? "before" : "after")} ")}{(edge.Event == SunEvent.Sunrise ? "sunrise" : "sunset")}";

    private static string Words(DaySailings sailings) => sailings switch
    {
        DaySailings.FirstLast { IntervalMinutes: { } every } day => $"{Time(day.First)}–{Time(day.Last)}, every {AccessWords.Minutes(every)}",
        DaySailings.FirstLast day => $"first {Time(day.First)}, last {Time(day.Last)}, none counted between",
        DaySailings.Times day => Listed([.. day.At.Select(Time)]),
        DaySailings.OnRequest => "on request",
        DaySailings.None => "no sailings",
        _ => throw new ArgumentOutOfRangeException(nameof(sailings), sailings, "No such sailings."),
    };

    private static string Dates(RuleDates dates, bool isDaily)
    {
        var season = dates.Season is { } given ? Words(given) + " " : "";
        var days = dates.Days == Weekdays.All ? (isDaily ? "daily " : "")
            : Listed([.. RuleNotation.Runs(dates.Days).Select(run => run.First == run.Last ? Days[run.First] : $"{Days[run.First]} to {Days[run.Last]}")]) + " ";
        return season + days;
    }

    /// <summary>"May–October" for whole months, else "15 May – 14 September".</summary>
    private static string Words(Season season)
    {
        var (from, until) = (season.From.InYear(2028), season.Until.InYear(2028));
        if (from.Day == 1 && until.Day == CalendarSystem.Iso.GetDaysInMonth(2028, until.Month))
            return from.Month == until.Month ? Month(from) : $"{Month(from)}–{Month(until)}";
        return from == until ? Day(from) : $"{Day(from)} – {Day(until)}";

        static string Month(LocalDate date) => date.ToString("MMMM", CultureInfo.InvariantCulture);
        static string Day(LocalDate date) => date.ToString("d MMMM", CultureInfo.InvariantCulture);
    }

    private static string Listed(IReadOnlyList<string> words) =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}";

    private static string Time(LocalTime time) => time.ToString("HH':'mm", CultureInfo.InvariantCulture);
}
