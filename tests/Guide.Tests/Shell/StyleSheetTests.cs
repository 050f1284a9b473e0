using System.IO.Compression;
using System.Text.RegularExpressions;
using System.Text;
using Xunit;

namespace Foreshore.Guide.Shell;

public sealed partial class StyleSheetTests
{
    /// <summary>WCAG 2.2 success criterion 1.4.3, text under 24 px (18.66 px bold).</summary>
    private const double Text = 4.5;

    /// <summary>WCAG 2.2 success criterion 1.4.11, controls and graphics.</summary>
    private const double Graphics = 3.0;

    private static readonly (string Front, string Back)[] TextPairs =
    [
        .. from front in new[] { "ink", "quiet", "sea", "signal", "kelp" } from back in new[] { "ground", "card" } select (front, back),
        ("ink", "sea-wash"), ("quiet", "sea-wash"), ("sea", "sea-wash"), ("on-ink", "ink"),
    ];

    private static readonly (string Front, string Back)[] GraphicPairs =
    [
        .. from front in new[] { "mark", "edge", "focus", "sea", "kelp", "signal" } from back in new[] { "ground", "card", "sea-wash" } select (front, back),
    ];

    public static TheoryData<string> Themes => [.. StyleSheet.Themes.Keys];

    [Theory]
    [MemberData(nameof(Themes))]
    public void Every_text_pair_reads_at_four_and_a_half_to_one(string theme) => AllReach(theme, TextPairs, Text);

    [Theory]
    [MemberData(nameof(Themes))]
    public void Every_mark_and_control_stands_out_at_three_to_one(string theme) => AllReach(theme, GraphicPairs, Graphics);

    [Theory]
    [InlineData("paper", "ink")]
    [InlineData("slate", "ink")]
    [InlineData("lamp", "on-ink")]
    public void Picked_text_reads(string theme, string front) => AllReach(theme, [(front, "pick")], Text);

    /// <summary>The ratios that the W3C and everyone who checks contrast quote: black on white, and the palest grey that passes.</summary>
    [Theory]
    [InlineData("000000", "FFFFFF", 21.0)]
    [InlineData("767676", "FFFFFF", 4.54)]
    [InlineData("FF0000", "000000", 5.25)]
    public void The_ratio_is_the_one_that_is_published(string front, string back, double ratio) =>
        Assert.Equal(ratio, Colour.Parse(front).ContrastTo(Colour.Parse(back)), 0.005);

    [Fact]
    public void Lamp_uses_the_red_channel_alone() =>
        Assert.All(StyleSheet.Themes["lamp"], token => Assert.True(token.Value is { Green: 0, Blue: 0 }, $"--{token.Key} is not red alone"));

    [Fact]
    public void Lamp_sets_every_token_that_paper_sets() =>
        Assert.Equal(StyleSheet.Themes["paper"].Keys.Order(), StyleSheet.Themes["lamp"].Keys.Order());

    [Fact]
    public void Slate_is_the_same_by_choice_and_by_device() =>
        Assert.Equal(StyleSheet.Themes["slate"], StyleSheet.Themes["slate by device"]);

    [Fact]
    public void No_rule_names_a_colour_outside_the_tokens()
    {
        var named = Colours().Matches(StyleSheet.Rules).Select(match => match.Value);
        Assert.Empty(named);
    }

    /// <summary>Type is set in the fonts that travel along; a family of the machine's own may only stand behind them, for while they come.</summary>
    [Fact]
    public void Every_family_begins_with_a_font_that_is_shipped()
    {
        Assert.DoesNotContain("monospace", StyleSheet.Text, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(["\"Source Sans 3\"", "\"Source Serif 4\""], Families().Matches(StyleSheet.Text).Select(match => match.Groups[1].Value).Distinct().Order());
    }

    /// <summary>The sheet is one file of at most 12 kB as it travels.</summary>
    [Fact]
    public void The_sheet_travels_in_twelve_kilobytes()
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            brotli.Write(Encoding.UTF8.GetBytes(StyleSheet.Text));

        Assert.InRange(packed.Length, 1, 12_000);
    }

    private static void AllReach(string theme, IEnumerable<(string Front, string Back)> pairs, double least)
    {
        var tokens = StyleSheet.Themes[theme];
        var failing = pairs
            .Select(pair => (pair, Ratio: tokens[pair.Front].ContrastTo(tokens[pair.Back])))
            .Where(pair => pair.Ratio < least)
            .Select(pair => FormattableString.Invariant($"{theme}: {pair.pair.Front} on {pair.pair.Back} is {pair.Ratio:F2}, needs {least}"));
        Assert.Empty(failing);
    }

    [GeneratedRegex(@"#[0-9A-Fa-f]{3,8}\b|\b(rgba?|hsla?|oklch|oklab|lab|lch)\(|:\s*(white|black|red|blue|green|gr[ae]y)\b")]
    private static partial Regex Colours();

    [GeneratedRegex(@"(?:font-family|--sans|--serif): (""[^""]+""|[a-z-]+\b(?!\())")]
    private static partial Regex Families();
}
