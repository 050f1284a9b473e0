using System.Globalization;
using System.Text.RegularExpressions;
using Foreshore.Almanac.Earth;

namespace Foreshore.Guide.Locations;

/// <summary>
/// Reads a position in the notations people paste: decimal degrees, degrees and minutes, degrees, minutes and seconds, with
/// signs or letters; a geo: address (RFC 5870); the joined form of ISO 6709.
/// </summary>
public static partial class TypedPosition
{
    private const int Longest = 100;
    private const string Like = "Enter latitude and longitude, like 44.65, -67.25 or 44° 39.0' N, 67° 15.0' W.";

    /// <returns>The position, or in words what is wrong with the text and what to do.</returns>
    public static (Position? Position, string? Fault) Read(string? typed)
    {
        var text = Plain(typed ?? "");
        if (text.Length is 0 or > Longest)
            return (null, $"There is no position in this. {Like}");

        var halves = text.StartsWith("GEO:", StringComparison.Ordinal) ? OfAddress(text[4..]) : OfJoined(text) ?? OfHalves(text);
        if (halves is not ({ } latitude, { } longitude))
            return (null, $"This is not a notation the page can read. {Like}");
        if (!(Math.Abs(latitude) <= 90))
            return (null, $"{Shown(latitude)} is no latitude: those lie between -90 and 90. {(Math.Abs(longitude) <= 90 ? "Is the longitude first? Swap the two." : Like)}");
        if (!(Math.Abs(longitude) <= 180))
            return (null, $"{Shown(longitude)} is no longitude: those lie between -180 and 180, west negative. {Like}");
        return (new Position(latitude, longitude), null);
    }

    /// <summary>One sign for each meaning: keyboards, phones and printed tables use many.</summary>
    private static string Plain(string typed) => string.Concat(typed.Trim().Select(sign => sign switch
    {
        '−' or '–' or '‐' => '-',
        'º' or '˚' => '°',
        '′' or '’' or '‘' or 'ʹ' => '\'',
        '″' or '”' or '“' or 'ʺ' => '"',
        _ when char.IsWhiteSpace(sign) => ' ',
        _ => char.ToUpperInvariant(sign),
    })).Replace("''", "\"", StringComparison.Ordinal);

    private static (double?, double?)? OfAddress(string rest)
    {
        var parts = rest.Split(';');
        if (parts.Skip(1).Any(parameter => parameter.StartsWith("CRS=", StringComparison.Ordinal) && parameter != "CRS=WGS84"))
            return null;
        var numbers = parts[0].Split(',');
        return numbers.Length is 2 or 3 && (numbers.Length == 2 || Number(numbers[2]) is not null) ? (Number(numbers[0]), Number(numbers[1])) : null;
    }

    /// <summary>+4439-06715/: the digits before the point tell whether minutes and seconds are among them (ISO 6709, annex H).</summary>
    private static (double?, double?)? OfJoined(string text)
    {
        var match = Joined().Match(text);
        return match.Success ? (Half(match.Groups[1].Value, 2), Half(match.Groups[2].Value, 3)) : null;

        static double? Half(string signed, int ofDegrees)
        {
            var (digits, point) = (signed[1..], signed.IndexOf('.', StringComparison.Ordinal) - 1);
            var whole = point < 0 ? digits.Length : point;
            var value = (whole - ofDegrees) switch
            {
                0 => Parts(digits),
                2 => Parts(digits[..ofDegrees], digits[ofDegrees..]),
                4 => Parts(digits[..ofDegrees], digits[ofDegrees..(ofDegrees + 2)], digits[(ofDegrees + 2)..]),
                _ => null,
            };
            return signed[0] == '-' ? -value : value;
        }
    }

    private static (double?, double?)? OfHalves(string text)
    {
        if (LettersFirst().Match(text) is { Success: true } first)
            return Lettered(first.Groups[1].Value, first.Groups[2].Value, first.Groups[3].Value, first.Groups[4].Value);
        if (LettersLast().Match(text) is { Success: true } last)
            return Lettered(last.Groups[2].Value, last.Groups[1].Value, last.Groups[4].Value, last.Groups[3].Value);

        var halves = text.Contains(';', StringComparison.Ordinal) ? text.Split(';')
            : text.Contains(", ", StringComparison.Ordinal) ? text.Split(", ")
            : text.Count(sign => sign == ',') == 1 && !LoneSpace().IsMatch(text) ? text.Split(',')
            : InTheMiddle(text);
        return halves.Length == 2 ? (Half(halves[0]), Half(halves[1])) : null;
    }

    private static (double?, double?)? Lettered(string letter, string body, string otherLetter, string otherBody)
    {
        var (one, other) = (Towards(letter, body), Towards(otherLetter, otherBody));
        return (letter is "N" or "S", otherLetter is "N" or "S") switch
        {
            (true, false) => (one, other),
            (false, true) => (other, one),
            _ => null,
        };

        static double? Towards(string letter, string body) => Half(body) is { } value && !body.Contains('-', StringComparison.Ordinal)
            ? letter is "S" or "W" ? -value : value
            : null;
    }

    private static string[] InTheMiddle(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length is 2 or 4 or 6
            ? [string.Join(' ', words[..(words.Length / 2)]), string.Join(' ', words[(words.Length / 2)..])]
            : [];
    }

    private static double? Half(string text)
    {
        var body = text.Trim(' ', ',', ';');
        var isNegative = body.StartsWith('-');
        var numbers = body.TrimStart('-', '+').Replace(',', '.').Split(['°', '\'', '"', ':', ' '], StringSplitOptions.RemoveEmptyEntries);
        return numbers.Length is >= 1 and <= 3 && Parts(numbers) is { } value ? isNegative ? -value : value : null;
    }

    /// <summary>Degrees, minutes, seconds: all but the last whole, the latter two below 60.</summary>
    private static double? Parts(params ReadOnlySpan<string> numbers)
    {
        var (value, unit) = (0.0, 1.0);
        for (var i = 0; i < numbers.Length; i++)
        {
            if (Number(numbers[i]) is not { } part || part < 0 || (i > 0 && part >= 60) || (i < numbers.Length - 1 && part != Math.Floor(part)))
                return null;
            value += part / unit;
            unit *= 60;
        }

        return value;
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number) ? number : null;

    private static string Shown(double degrees) => degrees.ToString("0.#####", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([+-]\d{2,6}(?:\.\d+)?)([+-]\d{3,7}(?:\.\d+)?)(?:[+-]\d+(?:\.\d+)?)?(?:CRSWGS_84)?/?$")]
    private static partial Regex Joined();

    [GeneratedRegex("^([NSEW])([^NSEW]+)([NSEW])([^NSEW]+)$")]
    private static partial Regex LettersFirst();

    [GeneratedRegex("^([^NSEW]+)([NSEW])([^NSEW]+)([NSEW])$")]
    private static partial Regex LettersLast();

    [GeneratedRegex(@"\d\s+[\d+-]")]
    private static partial Regex LoneSpace();
}
