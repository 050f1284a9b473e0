using System.Globalization;
using System.Text;

namespace Foreshore.Guide.Locations;

/// <summary>Folds text for search: case and accents go, so that "Étretat" is found by "etretat"; the index folds nothing itself.</summary>
public static class SearchWords
{
    public const int MostWords = 8;

    /// <summary>Longer queries are answered with nothing: nobody searches a coast with a page of text.</summary>
    public const int LongestQuery = 200;

    /// <summary>Letters that canonical decomposition leaves whole.</summary>
    private static readonly Dictionary<char, string> Whole = new()
    {
        ['ß'] = "ss",
        ['æ'] = "ae",
        ['œ'] = "oe",
        ['ø'] = "o",
        ['đ'] = "d",
        ['ð'] = "d",
        ['þ'] = "th",
        ['ł'] = "l",
        ['ı'] = "i",
        ['ħ'] = "h",
    };

    /// <summary>Lower-case words of letters and digits, parted by single spaces.</summary>
    public static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        // Lone surrogates cannot be normalised: they are no letters of any word.
        var valid = new string([.. text.EnumerateRunes().Where(r => r.Value != 0xFFFD).SelectMany(r => r.ToString())]);
        foreach (var letter in valid.Normalize(NormalizationForm.FormKD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(letter) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark || letter is '\'' or '’')
                continue;

            var lower = char.ToLowerInvariant(letter);
            if (Whole.TryGetValue(lower, out var letters))
                folded.Append(letters);
            else if (char.IsLetterOrDigit(lower))
                folded.Append(lower);
            else if (folded.Length > 0 && folded[^1] != ' ')
                folded.Append(' ');
        }
        return folded.ToString().TrimEnd();
    }

    /// <summary>
    /// The query as a prefix search that all words must meet, for example <c>long:* sli:*</c> joined by &amp;. Null when nothing is left to
    /// search for. Folding leaves letters and digits alone, so nothing in it can be an operator; quotes are put round all the same.
    /// </summary>
    public static string? ToPrefixQuery(string? query)
    {
        if (query is null || query.Length > LongestQuery)
            return null;

        var words = Fold(query).Split(' ', StringSplitOptions.RemoveEmptyEntries).Distinct().Take(MostWords).ToList();
        return words.Count == 0 ? null : string.Join(" & ", words.Select(word => $"'{word}':*"));
    }
}
