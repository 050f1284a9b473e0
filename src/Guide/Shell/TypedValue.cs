using System.Globalization;

namespace Foreshore.Guide.Shell;

/// <summary>
/// What stands in an address or a form, where it is meant to be more than text. Null means nothing or nothing of that kind; whoever asks
/// says so in words. No page reads a number or an id in another way: the framework's own reading of query values throws.
/// </summary>
internal static class TypedValue
{
    public static Guid? Id(string? text) => Guid.TryParseExact(text?.Trim(), "D", out var id) ? id : null;

    /// <summary>Plain figures alone.</summary>
    public static int? Whole(string? text, int least = 0, int most = int.MaxValue) =>
        int.TryParse(text?.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most ? number : null;

    /// <summary>As people type it: a decimal comma is taken for a point, a typographer's minus for the key's.</summary>
    public static double? Number(string? text, double least = double.MinValue, double most = double.MaxValue) =>
        double.TryParse(text?.Trim().Replace(',', '.').Replace('−', '-'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && number >= least && number <= most ? number : null;

    /// <summary>
    /// False for text that nothing here can keep or print: PostgreSQL has no letter of number zero (its manual, 8.3), and half of a
    /// surrogate pair is no letter in UTF-8.
    /// </summary>
    public static bool IsText(string? text)
    {
        for (var at = 0; at < (text?.Length ?? 0); at++)
        {
            if (text![at] == '\0' || char.IsLowSurrogate(text[at]))
                return false;
            if (char.IsHighSurrogate(text[at]) && !(++at < text.Length && char.IsLowSurrogate(text[at])))
                return false;
        }

        return true;
    }
}
