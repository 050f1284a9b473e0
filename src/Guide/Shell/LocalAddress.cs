using System.Text;

namespace Foreshore.Guide.Shell;

/// <summary>Where a form goes back to: a page of this site, never anybody else's.</summary>
public static class LocalAddress
{
    private const int Longest = 2000;

    /// <summary>The address itself when it is a path of this site; otherwise the guide's front page. Letters beyond ASCII are encoded: a header holds none.</summary>
    public static string OrHome(string? address) => IsLocal(address) ? string.Concat(address!.EnumerateRunes().Select(Encoded)) : "/";

    private static string Encoded(Rune letter) => letter.IsAscii && letter.Value != ' ' ? letter.ToString() : Uri.EscapeDataString(letter.ToString());

    /// <summary>Browsers read <c>//host</c>, <c>/\host</c> and a tab or line break before it as another site.</summary>
    private static bool IsLocal(string? address) =>
        address is ['/', ..]
        && address.Length <= Longest
        && !address.StartsWith("//", StringComparison.Ordinal)
        && !address.Contains('\\')
        && !address.Any(char.IsControl)
        && TypedValue.IsText(address);
}
