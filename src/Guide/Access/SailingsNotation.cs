using System.Globalization;
using System.Text.RegularExpressions;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Locations;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Access;

/// <summary>
/// The sailings of one direction as one line of text, as members type them and as the database and the history keep them:
/// "1 May-31 Oct Mon-Fri first 05:30 last 20:15 every 45; 1 May-31 Oct 08:00 12:00 17:30; 1 Nov-30 Nov on request; agreed 2026-11-28 14:15".
/// Empty: nothing is known.
/// </summary>
internal static partial class SailingsNotation
{
    private const string OnRequest = "on request";
    private const string None = "no sailings";
    private const string BodyShape = $"(first {RuleNotation.TimeShape} last {RuleNotation.TimeShape}( every [0-9]{{1,4}})?|{RuleNotation.TimeShape}( {RuleNotation.TimeShape})*|{OnRequest}|{None})";
    private const string RuleShape = $"({RuleNotation.DatesShape}{BodyShape}|agreed [0-9]{{4}}-[0-9]{{2}}-[0-9]{{2}} {RuleNotation.TimeShape})";

    /// <summary>The condition of PostgreSQL that a column of sailings is held to.</summary>
    public static string Check(string column) => $"{column} = '' OR ({column} || '; ') ~ '^({RuleShape}; )+$'";

    private static readonly LocalDateTimePattern Agreed = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    public static string Write(Timetable timetable) => string.Join("; ",
        [.. timetable.Rules.Select(rule => RuleNotation.Write(rule.Dates) + Write(rule.Sailings)), .. timetable.Agreed.Select(time => $"agreed {Agreed.Format(time)}")]);

    public static Timetable Read(string text)
    {
        List<SailingRule> rules = [];
        List<LocalDateTime> agreed = [];
        foreach (var rule in RuleNotation.Rules(text))
        {
            if (rule.StartsWith("agreed ", StringComparison.Ordinal))
            {
                agreed.Add(Agreed.Parse(rule["agreed ".Length..]) is { Success: true, Value: var time } ? time
                    : throw new NotAcceptedException($"\"{rule}\" cannot be read. Write an agreed sailing like \"agreed 2026-11-28 14:15\", each in a rule of its own."));
                continue;
            }

            var (dates, body) = RuleNotation.Dates(rule);
            rules.Add(new(dates, Sailings(body, rule)));
        }

        return new(rules, agreed);
    }

    private static DaySailings Sailings(string body, string rule)
    {
        switch (body)
        {
            case OnRequest or "request": return new DaySailings.OnRequest();
            case None or "none" or "no sailing" or "does not sail" or "no boat": return new DaySailings.None();
        }

        if (FirstLast().Match(body) is { Success: true } match)
        {
            int? every = match.Groups[3].Success ? int.Parse(match.Groups[3].Value, CultureInfo.InvariantCulture) : null;
            Require.That(every is null or (>= 1 and <= 1440), $"\"{rule}\": the interval between sailings is 1 to 1440 minutes.");
            return new DaySailings.FirstLast(RuleNotation.Time(match.Groups[1].Value), RuleNotation.Time(match.Groups[2].Value), every);
        }

        if (Times().IsMatch(body))
            return new DaySailings.Times(body.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(time => RuleNotation.Time(time)));
        throw new NotAcceptedException($"\"{rule}\" cannot be read as sailings. After the dates write \"first 07:00 last 18:30 every 90\", or the times like 07:00 09:30 17:00, or one of: on request, no sailings. Part several rules with semicolons.");
    }

    private static string Write(DaySailings sailings) => sailings switch
    {
        DaySailings.FirstLast day => string.Create(CultureInfo.InvariantCulture,
            $"first {RuleNotation.Write(day.First)} last {RuleNotation.Write(day.Last)}{(day.IntervalMinutes is { } every ? $" every {every}" : "")}"),
        DaySailings.Times day => string.Join(' ', day.At.Select(RuleNotation.Write)),
        DaySailings.OnRequest => OnRequest,
        DaySailings.None => None,
        _ => throw new ArgumentOutOfRangeException(nameof(sailings), sailings, "No such sailings."),
    };

    [GeneratedRegex("^first ([0-9]{1,2}:[0-9]{2})[ ,]last ([0-9]{1,2}:[0-9]{2})(?:[ ,]every ([0-9]{1,4})(?: min(?:utes)?)?)?$")]
    private static partial Regex FirstLast();

    [GeneratedRegex("^[0-9]{1,2}:[0-9]{2}(?:[ ,][0-9]{1,2}:[0-9]{2})*$")]
    private static partial Regex Times();
}
