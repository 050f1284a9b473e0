using System.Globalization;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Shell;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Tides;

/// <summary>Tide in words: heights with their sign and unit, times by the place's clock, states as people say them.</summary>
public static class TideWords
{
    /// <summary>Stands wherever a height or time of tide does.</summary>
    public const string Disclaimer =
        "Predictions are for average weather. Wind and air pressure change height and time, as a rule by 10 to 50 cm. Not for navigation. Check the official table and look at the sea.";

    public const string Turns =
        "Where the water stands long at its turn, its height says more than its minute.";

    private static readonly LocalDatePattern Weekday = LocalDatePattern.CreateWithInvariantCulture("ddd d");
    private static readonly LocalDatePattern LongDay = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly YearMonthPattern MonthName = YearMonthPattern.CreateWithInvariantCulture("MMMM uuuu");

    /// <summary>For example "5.9 m", "−0.3 m".</summary>
    public static string Metres(double metres) => $"{Figure(metres)} m";

    /// <summary>To a tenth; the minus sign is one, and nothing reads −0.0.</summary>
    public static string Figure(double metres) =>
        Math.Round(metres, 1) switch { 0 => "0.0", var tenths => tenths.ToString("0.0", CultureInfo.InvariantCulture).Replace('-', '−') };

    public static string Of(bool isHigh) => isHigh ? "high water" : "low water";

    public static string Words(this TideState state) => state switch
    {
        TideState.Low => "low",
        TideState.Rising => "rising",
        TideState.High => "high",
        TideState.Falling => "falling",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "No such state."),
    };

    public static string Words(this RangeThird third) => third switch
    {
        RangeThird.Springs => "springs",
        RangeThird.Neaps => "neaps",
        _ => "",
    };

    public static string Words(this PrincipalPhase phase) => phase switch
    {
        PrincipalPhase.NewMoon => "new moon",
        PrincipalPhase.FirstQuarter => "first quarter",
        PrincipalPhase.FullMoon => "full moon",
        PrincipalPhase.LastQuarter => "last quarter",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "No such phase."),
    };

    public static string Words(this StationKind kind) => kind switch
    {
        StationKind.Harmonic => "own constituents",
        StationKind.Subordinate => "offsets from another station",
        StationKind.HighLowTable => "a table of high and low waters",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
    };

    /// <summary>For example "high water 5.9 m at 12:41 EST".</summary>
    public static string Words(this TideExtreme turn, DateTimeZone zone) =>
        $"{Of(turn.IsHigh)} {Metres(turn.Metres)} at {turn.Time.Clock(zone)} {zone.Abbreviation(turn.Time)}";

    /// <summary>For example "Falling, 4.2 m: low water 0.8 m at 14:32 EST, then high water 5.6 m at 20:41 EST".</summary>
    public static string Words(this TideNow now, DateTimeZone zone)
    {
        var state = now.State is TideState.High or TideState.Low ? $"About {Of(now.State == TideState.High)}" : now.State == TideState.Rising ? "Rising" : "Falling";
        return $"{state}, {Metres(now.Metres)}: {now.Next.Words(zone)}{(now.AfterNext is { } then ? $", then {then.Words(zone)}" : "")}";
    }

    /// <summary>The clock; where the clock shows that hour twice, with the zone it is meant in.</summary>
    public static string Clock(Instant at, DateTimeZone zone) =>
        zone.MapLocal(at.InZone(zone).LocalDateTime).Count > 1 ? $"{at.Clock(zone)} {zone.Abbreviation(at)}" : at.Clock(zone);

    public static string Day(LocalDate date) => Weekday.Format(date);

    public static string DayAndMonth(LocalDate date) => LongDay.Format(date);

    public static string Month(YearMonth month) => MonthName.Format(month);

    /// <summary>The zone of a stretch of days: "EST", or both with the hour at which the clocks change within it.</summary>
    public static string Zones(DateTimeZone zone, Instant from, Instant to) => zone.Abbreviations(from, to);
}
