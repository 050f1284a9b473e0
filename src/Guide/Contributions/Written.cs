using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Contributions;

/// <summary>Values as fields keep them: one way to write each, so that equal values are equal texts and differences are true.</summary>
internal static class Written
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public static string Of(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    public static string Of(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

    public static string Money(decimal? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

    public static string Of(bool yes) => yes ? "yes" : "no";

    public static string Of(LocalDate? date) => date is { } day ? LocalDatePattern.Iso.Format(day) : "";

    public static string Of(LocalTime? time) => time is { } clock ? Clock.Format(clock) : "";

    public static string Of(OpeningHours? hours) => hours is null ? "" : HoursNotation.Write(hours);

    public static string Of(Timetable? sailings) => sailings is null ? "" : SailingsNotation.Write(sailings);

    public static string Of(Position? position) =>
        position is { } at ? string.Create(CultureInfo.InvariantCulture, $"{at.LatitudeDegrees:R}, {at.LongitudeDegrees:R}") : "";

    public static string Of<TEnum>(TEnum? value) where TEnum : struct, Enum => value?.ToString() ?? "";

    public static string Of<TEnum>(IEnumerable<TEnum> values) where TEnum : struct, Enum => string.Join(' ', values);
}
