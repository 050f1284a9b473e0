using NodaTime;

namespace Foreshore.Guide.Itineraries;

/// <summary>Hours and sailings by the words of domain.md 5.10, date by date.</summary>
internal static class OwnHours
{
    private static readonly double[] Nothing = [];

    /// <summary>When it is open, and when nobody knows.</summary>
    public static (IReadOnlyList<Span> Open, IReadOnlyList<Span> Unknown) Over(Series series, IReadOnlyList<Rule>? rules, IReadOnlyList<Permit> permits)
    {
        if (rules is null) return ([new(double.NegativeInfinity, double.PositiveInfinity)], []);
        List<Span> open = [], unknown = [];
        foreach (var date in series.Dates(1))
        {
            var rule = rules.FirstOrDefault(each => Speaks(each.Begins, each.Ends, each.Weekdays, date));
            var day = new Span(series.MinuteOf(date, 0), series.MinuteOf(date.PlusDays(1), 0));
            if (rule is null || rule.Kind == Opens.Closed) continue;
            if (rule.Kind == Opens.Always || ((rule.OrPermit || rule.Kind == Opens.Permit) && permits.Any(permit => date >= permit.From && (permit.Until is null || date <= permit.Until))))
                open.Add(day);
            else if (rule.Kind == Opens.Request)
                unknown.Add(day);
            else if (rule.Kind == Opens.Clock)
                open.Add(new(series.MinuteOf(date, rule.From), series.MinuteOf(rule.Until <= rule.From ? date.PlusDays(1) : date, rule.Until)));
            else if (rule.Kind == Opens.Sun && BySun(series, rule, date) is { } lit)
                open.Add(lit);
        }

        return (Joined(open), Joined(unknown));
    }

    /// <summary>Sailings of one local date, minutes of the series; null: nobody knows.</summary>
    public static IReadOnlyList<double>? On(Series series, Sails sails, LocalDate date)
    {
        var agreed = sails.Agreed.Where(sailing => sailing.Date == date).Select(sailing => series.MinuteOf(sailing.InZoneLeniently(series.Zone).ToInstant())).ToList();
        if (sails.Rules.Count == 0) return agreed.Count > 0 ? agreed : null;
        var rule = sails.Rules.FirstOrDefault(each => Speaks(each.Begins, each.Ends, each.Weekdays, date));
        var listed = rule is null ? Nothing : rule.Minutes;
        if (listed is null) return agreed.Count > 0 ? agreed : null;
        return [.. listed.Select(minutes => series.MinuteOf(date, minutes)).Concat(agreed).Order()];
    }

    /// <summary>Whole dates on which nothing is closed.</summary>
    public static IReadOnlyList<Span> OpenDates(Series series, IReadOnlyList<Shut> closures) =>
        Joined(series.Dates(1).Where(date => !IsShut(closures, date)).Select(date => new Span(series.MinuteOf(date, 0), series.MinuteOf(date.PlusDays(1), 0))));

    public static bool IsShut(IReadOnlyList<Shut> closures, LocalDate date)
    {
        var day = date.Month * 100 + date.Day;
        return closures.Any(shut => shut is { YearlyFrom: { } from, YearlyUntil: { } until }
            ? from <= until ? day >= from && day <= until : day >= from || day <= until
            : (shut.From is null || date >= shut.From) && (shut.Until is null || date <= shut.Until));
    }

    public static IReadOnlyList<Span> Joined(IEnumerable<Span> spans)
    {
        var found = new List<Span>();
        foreach (var span in spans.Where(span => span.To > span.From).OrderBy(span => span.From))
        {
            if (found.Count > 0 && span.From <= found[^1].To + 1e-6)
                found[^1] = found[^1] with { To = Math.Max(found[^1].To, span.To) };
            else
                found.Add(span);
        }

        return found;
    }

    private static Span? BySun(Series series, Rule rule, LocalDate date)
    {
        var from = series.Passing(date, rule.FromRise) + rule.From;
        var until = series.Passing(date, rule.UntilRise) + rule.Until;
        if (until <= from) until = series.Passing(date.PlusDays(1), rule.UntilRise) + rule.Until;
        return from is { } start && until is { } end && start < end ? new Span(start, end) : null;
    }

    private static bool Speaks(int begins, int ends, int weekdays, LocalDate date)
    {
        var day = date.Month * 100 + date.Day;
        return (weekdays >> ((int)date.DayOfWeek - 1) & 1) == 1 && (begins <= ends ? day >= begins && day <= ends : day >= begins || day <= ends);
    }
}
