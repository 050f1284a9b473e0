using System.Collections.Frozen;
using System.IO.Compression;
using Microsoft.AspNetCore.Identity;

namespace Foreshore.Guide.Members;

/// <summary>
/// What may be a password (OWASP ASVS 5.0, V6.2; NIST SP 800-63B-4, 3.1.1.2): fifteen letters and more, for it may be all that guards an
/// account, anything one can type, no rules of composition, none that everybody tries first. And how it is kept: PBKDF2 with HMAC-SHA-512, as the framework does, with OWASP's count of rounds.
/// </summary>
public sealed class Passwords(IPasswordHasher<Member> hasher)
{
    public const int Shortest = 15;
    public const int Longest = 256;

    /// <summary>OWASP Password Storage Cheat Sheet, PBKDF2-HMAC-SHA512.</summary>
    public const int Rounds = 220_000;

    private static readonly string[] Rows = ["abcdefghijklmnopqrstuvwxyz", "1234567890qwertyuiopasdfghjklzxcvbnm", "qwertyuiopasdfghjklzxcvbnm", "1qaz2wsx3edc4rfv5tgb6yhn7ujm", "01234567890123456789"];

    /// <summary>Signs that people take for letters.</summary>
    private static readonly Dictionary<char, char> Masks = new() { ['0'] = 'o', ['1'] = 'l', ['3'] = 'e', ['4'] = 'a', ['5'] = 's', ['7'] = 't', ['@'] = 'a', ['$'] = 's', ['!'] = 'i' };

    private static readonly Lazy<FrozenSet<string>> Common = new(ReadCommon);

    /// <summary>A hash nobody has the password of: an unknown address costs as long as a known one.</summary>
    private readonly Lazy<string> nobodys = new(() => hasher.HashPassword(null!, Guid.NewGuid().ToString()));

    public static int CommonCount => Common.Value.Count;

    /// <summary>What to do about it, or null where it may be taken. The club's words and one's own name are tried first, too.</summary>
    public static string? Fault(string? password, params IEnumerable<string?> knownWords)
    {
        if (password is not { Length: >= Shortest })
            return "Enter fifteen characters or more: four words people do not usually say together, for example.";
        if (password.Length > Longest)
            return "Enter 256 characters at most.";

        var folded = password.ToLowerInvariant();
        if (IsTriedFirst(folded))
            return "Enter another password: this one is among those that are tried first everywhere.";

        var letters = OnlyLetters(folded);
        var words = knownWords.OfType<string>().Append("foreshore").SelectMany(Words).Where(word => word.Length > 2).Distinct().ToList();
        return IsMadeOf(letters, words)
            ? "Enter another password: figures alone, and names of the club, of the coast or your own, are tried first here."
            : null;
    }

    public string Hash(Member member, string password) => hasher.HashPassword(member, password);

    /// <summary>Always one verification, whoever it is. True where it fits; the new hash where the old one was made with fewer rounds.</summary>
    public (bool Fits, string? NewHash) Verify(Member? member, string? password)
    {
        var tried = password is { Length: <= Longest } ? password : "";
        var kept = member?.PasswordHash is { Length: > 0 } hash ? hash : null;
        var result = hasher.VerifyHashedPassword(member!, kept ?? nobodys.Value, tried);
        if (kept is null || tried.Length == 0 || result == PasswordVerificationResult.Failed)
            return (false, null);

        return (true, result == PasswordVerificationResult.SuccessRehashNeeded ? hasher.HashPassword(member!, tried) : null);
    }

    /// <summary>
    /// A common password, as it is, with figures and signs around it, with letters written as signs, or said again and again; a row of
    /// neighbours on the keyboard or in the alphabet; one or two characters over and over.
    /// </summary>
    private static bool IsTriedFirst(string folded)
    {
        var plain = folded.Trim([.. folded.Where(letter => !char.IsLetter(letter))]);
        return folded.Distinct().Count() <= 2 || IsRow(folded)
            || new[] { folded, plain, Unmasked(folded), Unmasked(plain), OnlyLetters(Unmasked(folded)), Once(folded), Once(OnlyLetters(folded)), Once(OnlyLetters(Unmasked(folded))) }.Any(Common.Value.Contains);
    }

    /// <summary>What a text says over and over, whole or broken off at its end; the text itself where it says it once.</summary>
    private static string Once(string text) => Enumerable.Range(1, text.Length / 2)
        .Where(length => Enumerable.Range(length, text.Length - length).All(at => text[at] == text[at - length])).Select(length => text[..length]).FirstOrDefault() ?? text;

    private static bool IsRow(string text) => Rows.Any(row => (row + row).Contains(text, StringComparison.Ordinal) || new string([.. (row + row).Reverse()]).Contains(text, StringComparison.Ordinal));

    private static string Unmasked(string text) => new([.. text.Select(letter => Masks.TryGetValue(letter, out var meant) ? meant : letter)]);

    /// <summary>True of no letters at all, too.</summary>
    private static bool IsMadeOf(string letters, IReadOnlyList<string> words)
    {
        var reached = new bool[letters.Length + 1];
        reached[0] = true;
        for (var at = 0; at < letters.Length; at++)
        {
            foreach (var word in words.Where(word => reached[at] && string.CompareOrdinal(letters, at, word, 0, word.Length) == 0))
                reached[at + word.Length] = true;
        }

        return reached[^1];
    }

    private static IEnumerable<string> Words(string text)
    {
        var folded = text.ToLowerInvariant();
        return [.. folded.Split([' ', '@', '.', '-', '_'], StringSplitOptions.RemoveEmptyEntries).Select(OnlyLetters), OnlyLetters(folded)];
    }

    private static string OnlyLetters(string text) => new([.. text.Where(char.IsLetter)]);

    private static FrozenSet<string> ReadCommon()
    {
        using var packed = typeof(Passwords).Assembly.GetManifestResourceStream("common-passwords")!;
        using var reader = new StreamReader(new BrotliStream(packed, CompressionMode.Decompress));
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).ToFrozenSet();
    }
}
