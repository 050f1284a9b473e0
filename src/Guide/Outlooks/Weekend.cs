using Foreshore.Almanac.Light;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Outlooks;

/// <summary>One of the nine sessions of a weekend, by each place's own date.</summary>
public readonly record struct WeekendSession(int Index, LocalDate Date, SessionKind Kind)
{
    /// <summary>How an address names it: <c>sat-dawn</c>.</summary>
    public string Key => $"{Date.DayOfWeek.ToString()[..3]}-{Kind}".ToLowerInvariant();

    public string ShortName => $"{Date.DayOfWeek.ToString()[..3]} {Kind.ToString().ToLowerInvariant()}";

    public string Name => $"{Date.DayOfWeek} {Kind.ToString().ToLowerInvariant()}";
}

/// <summary>Friday dusk to Sunday dusk, or dusk of any date to dusk two days later.</summary>
public static class Weekend
{
    public static readonly LocalDate Earliest = new(1950, 1, 1);
    public static readonly LocalDate Latest = new(2100, 12, 20);
    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("d MMMM");

    public static IReadOnlyList<WeekendSession> From(LocalDate first) =>
    [
        new(0, first, SessionKind.Dusk),
        new(1, first, SessionKind.Night),
        new(2, first.PlusDays(1), SessionKind.Dawn),
        new(3, first.PlusDays(1), SessionKind.Day),
        new(4, first.PlusDays(1), SessionKind.Dusk),
        new(5, first.PlusDays(1), SessionKind.Night),
        new(6, first.PlusDays(2), SessionKind.Dawn),
        new(7, first.PlusDays(2), SessionKind.Day),
        new(8, first.PlusDays(2), SessionKind.Dusk),
    ];

    /// <summary>For example <c>27–29 November</c>, or <c>30 October – 1 November</c>.</summary>
    public static string Words(LocalDate first)
    {
        var last = first.PlusDays(2);
        return first.Month == last.Month
            ? $"{first.Day}–{Day.Format(last)}"
            : $"{Day.Format(first)} – {Day.Format(last)}";
    }

    /// <summary>The Friday of this weekend, until the last session of its Sunday has ended at the place.</summary>
    public static LocalDate Default(Instant now, DateTimeZone zone, Func<LocalDate, Instant?> sundayDuskEnd)
    {
        var today = now.InZone(zone).Date;
        var friday = today.DayOfWeek switch
        {
            IsoDayOfWeek.Saturday => today.PlusDays(-1),
            IsoDayOfWeek.Sunday => today.PlusDays(-2),
            // Sunday's dusk may end after midnight far north in summer.
            IsoDayOfWeek.Monday when sundayDuskEnd(today.PlusDays(-1)) is { } end && end > now => today.PlusDays(-3),
            _ => today.PlusDays(((int)IsoDayOfWeek.Friday - (int)today.DayOfWeek + 7) % 7),
        };
        var ended = today.DayOfWeek == IsoDayOfWeek.Sunday && sundayDuskEnd(today) is { } dusk && dusk <= now;
        return ended ? friday.PlusDays(7) : friday;
    }
}
