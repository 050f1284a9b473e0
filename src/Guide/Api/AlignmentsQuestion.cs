using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Foreshore.Guide.Compositions;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Api;

/// <summary>Which dates and how near: read from the address, or refused with what to do.</summary>
internal static class AlignmentsQuestion
{
    private static readonly LocalDate Earliest = new(1950, 1, 1), Latest = new(2100, 12, 31);

    public static bool TryRead(
        string? from, string? to, string? tolerance, string? body, string? daytimeMoon, LocalDate today,
        [NotNullWhen(true)] out BehindAsk? question, [NotNullWhen(false)] out string? fault)
    {
        question = null;
        if (!TryDate(from, today, out var first))
            fault = $"from must be a date from 1950-01-01 to 2100-12-31 as year-month-day, for example 2026-11-25; {Quoted(from)} is not.";
        else if (!TryDate(to, first.PlusYears(1) > Latest ? Latest : first.PlusYears(1), out var last))
            fault = $"to must be a date from 1950-01-01 to 2100-12-31 as year-month-day, for example 2027-11-25; {Quoted(to)} is not.";
        else if (last < first)
            fault = $"to, {last:uuuu-MM-dd}, lies before from, {first:uuuu-MM-dd}: exchange them, for example.";
        else if (last > first.PlusYears(SubjectAlignments.MostYears))
            fault = $"to lies more than {SubjectAlignments.MostYears} years after from: ask for a shorter time, to {first.PlusYears(SubjectAlignments.MostYears):uuuu-MM-dd} at the latest.";
        else if (!TryTolerance(tolerance, out var degrees))
            fault = $"tolerance must be a number of degrees from 0.05 to 5, for example 0.5; {Quoted(tolerance)} is not.";
        else if (body is not (null or "" or "sun" or "moon"))
            fault = $"body must be sun or moon, for example body=moon, or left out for both; {Quoted(body)} is neither.";
        else if (daytimeMoon is not (null or "" or "true" or "false"))
            fault = $"daytimeMoon must be true or false, for example daytimeMoon=false; {Quoted(daytimeMoon)} is neither.";
        else
        {
            fault = null;
            question = new(first, last, degrees, new WantedBodies(body != "moon", body != "sun", daytimeMoon != "false"));
            return true;
        }

        return false;
    }

    private static string Quoted(string? text) => $"\"{(text is { Length: > 40 } ? text[..40] + "…" : text)}\"";

    private static bool TryDate(string? text, LocalDate otherwise, out LocalDate date)
    {
        date = otherwise;
        if (string.IsNullOrEmpty(text)) return true;
        return LocalDatePattern.Iso.Parse(text).TryGetValue(default, out date) && date >= Earliest && date <= Latest;
    }

    private static bool TryTolerance(string? text, out double degrees)
    {
        degrees = SubjectAlignments.UsualToleranceDegrees;
        return string.IsNullOrEmpty(text)
            || (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out degrees) && degrees is >= 0.05 and <= 5);
    }
}
