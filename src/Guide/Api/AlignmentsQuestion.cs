using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Foreshore.Guide.Compositions;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Api;

/// <summary>Which dates and how near: read from the address, or refused with what to do.</summary>
internal sealed record AlignmentsQuestion(LocalDate From, LocalDate To, double ToleranceDegrees)
{
    private static readonly LocalDate Earliest = new(1950, 1, 1), Latest = new(2100, 12, 31);

    public static bool TryRead(
        string? from, string? to, string? tolerance, LocalDate today,
        [NotNullWhen(true)] out AlignmentsQuestion? question, [NotNullWhen(false)] out string? fault)
    {
        question = null;
        if (!TryDate(from, today, out var first))
            fault = "from is a date from 1950-01-01 to 2100-12-31, for example 2026-11-25.";
        else if (!TryDate(to, first.PlusYears(1) > Latest ? Latest : first.PlusYears(1), out var last))
            fault = "to is a date from 1950-01-01 to 2100-12-31, for example 2027-11-25.";
        else if (last < first || last > first.PlusYears(SubjectAlignments.MostYears))
            fault = "to lies no earlier than from and at most five years after it: ask for a shorter time.";
        else if (!TryTolerance(tolerance, out var degrees))
            fault = "tolerance is a number of degrees from 0.05 to 5, for example 0.5.";
        else
        {
            fault = null;
            question = new(first, last, degrees);
            return true;
        }

        return false;
    }

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
