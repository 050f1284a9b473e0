using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>A set of days of the week.</summary>
[Flags]
public enum Weekdays
{
    /// <summary>No day.</summary>
    None = 0,

    /// <summary>Monday.</summary>
    Monday = 1,

    /// <summary>Tuesday.</summary>
    Tuesday = 2,

    /// <summary>Wednesday.</summary>
    Wednesday = 4,

    /// <summary>Thursday.</summary>
    Thursday = 8,

    /// <summary>Friday.</summary>
    Friday = 16,

    /// <summary>Saturday.</summary>
    Saturday = 32,

    /// <summary>Sunday.</summary>
    Sunday = 64,

    /// <summary>Every day of the week.</summary>
    All = 127,
}

/// <summary>A season that comes back every year, by whole local dates.</summary>
/// <param name="From">First day. 29 February begins on 28 February in a common year.</param>
/// <param name="Until">Last day, included; before <paramref name="From"/> the season crosses New Year.</param>
public sealed record Season(AnnualDate From, AnnualDate Until)
{
    /// <summary>Whether a date lies in the season.</summary>
    public bool Holds(LocalDate date)
    {
        var day = new AnnualDate(date.Month, date.Day);
        // In a common year a season that begins on 29 February has begun on the last day of February.
        var hasBegun = day >= From || From is { Month: 2, Day: 29 } && day is { Month: 2, Day: 28 } && !CalendarSystem.Iso.IsLeapYear(date.Year);
        return From <= Until ? hasBegun && day <= Until : hasBegun || day <= Until;
    }
}

/// <summary>The local dates for which a rule of hours or sailings speaks.</summary>
public sealed record RuleDates
{
    /// <summary>Dates by season and day of the week.</summary>
    /// <param name="season">Null: the whole year.</param>
    /// <param name="days">At least one day.</param>
    /// <exception cref="ArgumentOutOfRangeException">No day of the week is named.</exception>
    public RuleDates(Season? season, Weekdays days = Weekdays.All)
    {
        if (days is Weekdays.None || (days & ~Weekdays.All) != 0)
            throw new ArgumentOutOfRangeException(nameof(days), days, "A rule names at least one day of the week.");
        (Season, Days) = (season, days);
    }

    /// <summary>Every date.</summary>
    public static RuleDates Every { get; } = new(season: null);

    /// <summary>The season; null: the whole year.</summary>
    public Season? Season { get; }

    /// <summary>The days of the week.</summary>
    public Weekdays Days { get; }

    /// <summary>Whether no date is left out.</summary>
    public bool IsEvery => Season is null && Days == Weekdays.All;

    /// <summary>Whether the rule speaks for a date.</summary>
    public bool Hold(LocalDate date) => Days.HasFlag((Weekdays)(1 << ((int)date.DayOfWeek - 1))) && Season?.Holds(date) != false;
}
