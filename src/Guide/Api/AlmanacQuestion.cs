using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Foreshore.Almanac.Earth;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Api;

/// <summary>A place and a date, read from a query; whatever is wrong is said in words with what to write instead.</summary>
internal sealed record AlmanacQuestion(Position Position, LocalDate Date, DateTimeZone Zone, double? HeightMetres)
{
    // The almanac's own checks cover these years; outside them it would answer without anybody having looked.
    private const int FirstYear = 1950, LastYear = 2100;

    public static bool TryRead(string? lat, string? lon, string? date, string? zone, string? heightMetres,
        [NotNullWhen(true)] out AlmanacQuestion? question, [NotNullWhen(false)] out string? fault)
    {
        question = null;
        fault = null;
        var latitude = Number("lat", lat, -90, 90, ref fault);
        var longitude = Number("lon", lon, -180, 180, ref fault);
        var day = Day(date, ref fault);
        var place = Zoned(zone, ref fault);
        double? height = heightMetres is null ? null : Number("heightMetres", heightMetres, 0, 9000, ref fault);
        if (fault is not null) return false;
        question = new(new Position(latitude, longitude), day, place, height);
        return true;
    }

    private static double Number(string name, string? text, double least, double most, ref string? fault)
    {
        if (text is null)
            fault ??= $"{name} is missing. Give it as a number from {least} to {most}.";
        else if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !(value >= least && value <= most))
            fault ??= $"{name} must be a number from {least} to {most} with a decimal point; \"{Short(text)}\" is not.";
        else
            return value;
        return least;
    }

    private static LocalDate Day(string? text, ref string? fault)
    {
        if (text is not null && LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var date } && date.Year is >= FirstYear and <= LastYear)
            return date;
        fault ??= text is null
            ? "date is missing. Give it as year-month-day, for example 2026-11-25."
            : $"date must be a day from {FirstYear} to {LastYear} as year-month-day, for example 2026-11-25; \"{Short(text)}\" is not.";
        return default;
    }

    private static DateTimeZone Zoned(string? text, ref string? fault)
    {
        if (text is null) return DateTimeZone.Utc;
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(text) is { } zone) return zone;
        fault ??= $"zone must be a name of the IANA list, for example America/New_York; \"{Short(text)}\" is not in it.";
        return DateTimeZone.Utc;
    }

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
