using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Foreshore.Guide.Locations;

/// <summary>A value the guide does not take. The message says what, why and what to do, in words fit for the form that sent it.</summary>
public sealed class NotAcceptedException : Exception
{
    public NotAcceptedException(string message) : base(message) { }

    public NotAcceptedException(string message, Exception inner) : base(message, inner) { }

    public NotAcceptedException() { }
}

/// <summary>Checks that entities make before they take a value.</summary>
internal static class Require
{
    public static void That([DoesNotReturnIf(false)] bool holds, string message)
    {
        if (!holds)
            throw new NotAcceptedException(message);
    }

    public static string Text(string? value, int longest, string what)
    {
        var text = value?.Trim() ?? "";
        That(text.Length > 0, $"{what} is empty. Write at least a word.");
        return Within(text, longest, what);
    }

    public static string? TextOrNull(string? value, int longest, string what) =>
        string.IsNullOrWhiteSpace(value) ? null : Within(value.Trim(), longest, what);

    public static string? LinkOrNull(string? value, string what)
    {
        if (string.IsNullOrWhiteSpace(value))
            return null;

        That(Uri.TryCreate(value.Trim(), UriKind.Absolute, out var link) && link.Scheme is "https" or "http",
            $"{what} is \"{Shortened(value)}\", which is not a web address. Copy the whole address, beginning with https://.");
        return Within(value.Trim(), 400, what);
    }

    public static double Between(double value, double least, double most, string what, string unit)
    {
        That(double.IsFinite(value) && value >= least && value <= most,
            $"{what} is {Number(value)} {unit}; it must lie between {Number(least)} and {Number(most)} {unit}. Check the figure and its unit.");
        return value;
    }

    public static double? BetweenOrNull(double? value, double least, double most, string what, string unit) =>
        value is { } given ? Between(given, least, most, what, unit) : null;

    public static int Between(int value, int least, int most, string what, string unit) =>
        (int)Between((double)value, least, most, what, unit);

    public static double Degrees(double value, string what)
    {
        That(double.IsFinite(value) && value is >= 0 and < 360,
            $"{what} is {Number(value)}; directions run from 0 to just under 360 degrees true, clockwise from north. Enter it in that range.");
        return value;
    }

    private static string Within(string text, int longest, string what)
    {
        That(text.Length <= longest, $"{what} has {text.Length} characters; at most {longest} fit. Shorten it.");
        // PostgreSQL text cannot hold NUL; other control characters break prints and feeds.
        That(!text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')), $"{what} holds a control character. Type it again instead of pasting it.");
        return text;
    }

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    private static string Shortened(string text) => text.Length <= 60 ? text : text[..60] + "…";
}
