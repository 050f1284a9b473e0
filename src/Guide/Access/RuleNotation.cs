using System.Globalization;
using System.Text.RegularExpressions;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Locations;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Access;

/// <summary>
/// What the notations of hours and sailings share: rules parted by semicolons or lines, each with an optional season and optional
/// days before it: "1 May-31 Oct Mon-Fri,Sun". Written in one way alone, so that equal rules are equal texts.
/// </summary>
internal static partial class RuleNotation
{
    public const int Longest = 1000;

    private const int MostRules = 20;
    private const string Every = "daily";

    // As the database holds them to: the shape that Write makes.
    public const string MonthShape = "(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)";
    public const string DayShape = "(Mon|Tue|Wed|Thu|Fri|Sat|Sun)";
    public const string DatesShape = $"([0-9]{{1,2}} {MonthShape}-[0-9]{{1,2}} {MonthShape} )?({DayShape}(-{DayShape})?(,{DayShape}(-{DayShape})?)* )?";
    public const string TimeShape = "([01][0-9]|2[0-3]):[0-5][0-9]";

    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalTimePattern TypedClock = LocalTimePattern.CreateWithInvariantCulture("H:mm");
    private static readonly string[] Months = [.. CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames.Take(12)];
    private static readonly string[] Days = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

    /// <summary>The rules of a text, each in small letters with plain hyphens and single spaces.</summary>
    public static IReadOnlyList<string> Rules(string text)
    {
        Require.That(text.Length <= Longest, $"That is longer than {Longest} letters. Say the same with fewer rules.");
        var plain = text.ToLowerInvariant().Replace('–', '-').Replace('—', '-').Replace('−', '-');
        var rules = plain.Split([';', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Plain).Where(rule => rule.Length > 0).ToList();
        Require.That(rules.Count <= MostRules, $"That is more than {MostRules} rules. Join those that say the same.");
        return rules;

        static string Plain(string rule) => Joints().Replace(Ranges().Replace(Spaces().Replace(rule, " "), "-"), ",").Trim().TrimEnd('.', ',');
    }

    /// <summary>The dates at the head of a rule, and what is left of it.</summary>
    public static (RuleDates Dates, string Body) Dates(string rule)
    {
        var match = Head().Match(rule);
        var body = rule[match.Length..].Trim();
        if (body.Length == 0)
            throw new NotAcceptedException($"\"{rule}\" names dates and nothing for them. Add what holds then.");
        var season = match.Groups["season"] is { Success: true } found ? SeasonOf(found.Value) : null;
        var days = match.Groups["days"] is { Success: true } named ? DaysOf(named.Value) : Weekdays.All;
        return (season is null && days == Weekdays.All ? RuleDates.Every : new(season, days), body);
    }

    /// <summary>The dates before a rule, with a space after them; nothing for every date.</summary>
    public static string Write(RuleDates dates) =>
        $"{(dates.Season is { } season ? $"{Day(season.From)}-{Day(season.Until)} " : "")}{(dates.Days == Weekdays.All ? "" : Write(dates.Days) + " ")}";

    /// <summary>For example "Mon-Fri,Sun".</summary>
    public static string Write(Weekdays days) => string.Join(',', Runs(days).Select(run => run.First == run.Last ? Days[run.First] : $"{Days[run.First]}-{Days[run.Last]}"));

    /// <summary>Days of the week that follow each other, from 0 for Monday; two in a row stand alone.</summary>
    public static IEnumerable<(int First, int Last)> Runs(Weekdays days)
    {
        for (var day = 0; day < 7; day++)
        {
            var last = day;
            while (Has(day) && last < 6 && Has(last + 1)) last++;
            if (last >= day + 2)
            {
                yield return (day, last);
                day = last;
            }
            else if (Has(day))
            {
                yield return (day, day);
            }
        }

        bool Has(int day) => days.HasFlag((Weekdays)(1 << day));
    }

    public static string Write(LocalTime time) => Clock.Format(time);

    public static LocalTime Time(string typed, bool isEnd = false) => isEnd && typed == "24:00" ? LocalTime.Midnight
        : TypedClock.Parse(typed) is { Success: true, Value: var time } ? time
        : throw new NotAcceptedException($"\"{typed}\" is not a time of day. Enter hours and minutes by the 24-hour clock, like 08:00 or 18:30.");

    private static string Day(AnnualDate date) => string.Create(CultureInfo.InvariantCulture, $"{date.Day} {Months[date.Month - 1]}");

    private static Season SeasonOf(string typed)
    {
        var ends = typed.Split('-');
        return new(DayOf(ends[0], isEnd: false), DayOf(ends[^1], isEnd: true));

        static AnnualDate DayOf(string text, bool isEnd)
        {
            var parts = text.Split(' ');
            var month = Array.FindIndex(Months, name => parts[^1].StartsWith(name, StringComparison.OrdinalIgnoreCase)) + 1;
            // A leap year: the last of February is the 29th.
            var longest = CalendarSystem.Iso.GetDaysInMonth(2028, month);
            var day = parts.Length == 1 ? (isEnd ? longest : 1) : int.Parse(parts[0], CultureInfo.InvariantCulture);
            return day >= 1 && day <= longest ? new(month, day) : throw new NotAcceptedException($"There is no {text}. Enter a day of the month, like 15 May.");
        }
    }

    private static Weekdays DaysOf(string typed)
    {
        if (typed is Every or "every day")
            return Weekdays.All;
        var days = Weekdays.None;
        foreach (var part in typed.Split(','))
        {
            var ends = part.Split('-').Select(name => Array.FindIndex(Days, day => name.StartsWith(day, StringComparison.OrdinalIgnoreCase))).ToList();
            for (var day = ends[0]; ; day = (day + 1) % 7)
            {
                days |= (Weekdays)(1 << day);
                if (day == ends[^1]) break;
            }
        }

        return days;
    }

    private const string Month = "(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)";
    private const string DayName = "(?:mon(?:day)?|tue(?:s(?:day)?)?|wed(?:nesday)?|thu(?:rs?(?:day)?)?|fri(?:day)?|sat(?:urday)?|sun(?:day)?)s?";

    [GeneratedRegex($"^(?:(?<season>(?:[0-9]{{1,2}} )?{Month}(?:-(?:[0-9]{{1,2}} )?{Month})?)(?=$|[ ,:]) ?[,:]? ?)?(?:(?<days>daily|every day|{DayName}(?:-{DayName})?(?:,{DayName}(?:-{DayName})?)*)(?=$|[ ,:]) ?[,:]? ?)?")]
    private static partial Regex Head();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@" ?- ?| (?:to|until|till|through) ")]
    private static partial Regex Ranges();

    [GeneratedRegex(@" ?, ?| (?:and|&) ")]
    private static partial Regex Joints();
}
