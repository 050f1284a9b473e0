using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace Foreshore.Guide.Shell;

/// <summary>The style sheet as text, and the colour tokens it sets for each theme.</summary>
internal static partial class StyleSheet
{
    public static readonly string Text = File.ReadAllText(Path.Combine(RepositoryRoot(), "wwwroot", "site.css"));

    /// <summary>Paper, slate by choice and by the device, lamp, print: the selector that sets each.</summary>
    public static readonly IReadOnlyDictionary<string, IReadOnlyDictionary<string, Colour>> Themes =
        new Dictionary<string, IReadOnlyDictionary<string, Colour>>
        {
            ["paper"] = Tokens(":root {"),
            ["slate"] = Tokens(":root[data-theme=\"slate\"] {"),
            ["slate by device"] = Tokens(":root:not([data-theme]) {"),
            ["lamp"] = Tokens(":root[data-theme=\"lamp\"] {"),
            ["print"] = Tokens(":root, :root[data-theme], :root:not([data-theme]) {"),
        };

    /// <summary>The sheet without its token blocks and comments: no colour may be written there.</summary>
    public static string Rules => TokenDeclaration().Replace(Comment().Replace(Text, ""), "");

    private static Dictionary<string, Colour> Tokens(string selector)
    {
        var start = Text.IndexOf($"\n{selector}", StringComparison.Ordinal);
        if (start < 0)
            start = Text.IndexOf($"  {selector}", StringComparison.Ordinal);
        Assert.True(start >= 0, $"site.css has no block {selector}");
        var block = Text[start..Text.IndexOf('}', start)];
        return TokenDeclaration().Matches(block).ToDictionary(m => m.Groups[1].Value, m => Colour.Parse(m.Groups[2].Value));
    }

    public static string RepositoryRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Foreshore.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("No folder above the tests holds Foreshore.slnx.");
    }

    [GeneratedRegex(@"--([a-z-]+):\s*#([0-9A-Fa-f]{6});")]
    private static partial Regex TokenDeclaration();

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline)]
    private static partial Regex Comment();
}

internal readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    public static Colour Parse(string hex)
    {
        var value = int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return new((byte)(value >> 16), (byte)(value >> 8), (byte)value);
    }

    /// <summary>Relative luminance, WCAG 2.2, "relative luminance" in its glossary.</summary>
    public double Luminance => (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    /// <summary>Contrast ratio, WCAG 2.2, "contrast ratio" in its glossary.</summary>
    public double ContrastTo(Colour other) =>
        (Math.Max(Luminance, other.Luminance) + 0.05) / (Math.Min(Luminance, other.Luminance) + 0.05);

    private static double Linear(byte channel)
    {
        var share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
