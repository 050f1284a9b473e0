using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Tides;

/// <summary>What a tide page is asked for: the first of its two days, its month, the stance whose limit is drawn in. All of it stands in the address.</summary>
public sealed record TideRequest(LocalDate Day, YearMonth Month, string? Stance, string? Fault)
{
    // The years for which constituents are argued; a table of the club's is shorter and says so itself.
    internal const int FirstYear = 1900, LastYear = 2100;

    private static readonly YearMonthPattern MonthPattern = YearMonthPattern.CreateWithInvariantCulture("uuuu-MM");

    public static TideRequest From(IQueryCollection query, LocalDate today)
    {
        string? fault = null;
        var day = today;
        if (Value("day") is { } typedDay)
        {
            if (LocalDatePattern.Iso.Parse(typedDay) is { Success: true, Value: var date } && IsKnown(date.Year)) day = date;
            else fault = $"The day in this address can't be read. Write it as year-month-day from {FirstYear} to {LastYear}, like {LocalDatePattern.Iso.Format(today)}.";
        }

        var month = new YearMonth(day.Year, day.Month);
        if (Value("month") is { } typedMonth)
        {
            if (MonthPattern.Parse(typedMonth) is { Success: true, Value: var given } && IsKnown(given.Year)) month = given;
            else fault ??= $"The month in this address can't be read. Write it as year-month from {FirstYear} to {LastYear}, like {MonthPattern.Format(month)}.";
        }
        return new(day, month, Value("stance"), fault);

        string? Value(string name) => query[name].ToString().Trim() is { Length: > 0 } value ? value : null;
    }

    /// <summary>The same page with another day, which brings its own month.</summary>
    public string? DayAddress(string page, int daysOn) =>
        Day.PlusDays(daysOn) is var day && IsKnown(day.Year) ? Address(page, day, new YearMonth(day.Year, day.Month)) : null;

    /// <summary>The same page with another month, the curve left as it is.</summary>
    public string? MonthAddress(string page, int monthsOn) =>
        Month.OnDayOfMonth(1).PlusMonths(monthsOn) is var day && IsKnown(day.Year) ? $"{Address(page, Day, new YearMonth(day.Year, day.Month))}#month" : null;

    private string Address(string page, LocalDate day, YearMonth month) =>
        $"{page}?day={LocalDatePattern.Iso.Format(day)}&month={MonthPattern.Format(month)}{(Stance is null ? "" : $"&stance={Uri.EscapeDataString(Stance)}")}";

    private static bool IsKnown(int year) => year is >= FirstYear and <= LastYear;
}
