using System.Text.RegularExpressions;
using Xunit;

namespace Foreshore.Guide.HouseRules;

/// <summary>What pages and modules may hold.</summary>
public partial class PageTests
{
    /// <summary>Leaf components that need a circuit, each with its sentence in DEVELOPERS.md. None so far.</summary>
    private static readonly string[] Islands = [];

    [Fact]
    public void Only_named_islands_open_a_circuit()
    {
        var found = SourceTree.Files("src/Guide", ".razor", ".cs")
            .Where(file => Circuit().IsMatch(File.ReadAllText(file)))
            .Select(file => Path.GetFileNameWithoutExtension(file));

        Assert.Equal(Islands, found);
    }

    [Fact]
    public void No_style_or_script_stands_in_a_page()
    {
        var found =
            from file in SourceTree.Files("src/Guide", ".razor")
            from Match match in Inline().Matches(File.ReadAllText(file))
            select $"{SourceTree.Relative(file)}: {match.Value}";

        Assert.Empty(found);
    }

    [Fact]
    public void Modules_neither_run_text_nor_write_markup()
    {
        var found =
            from file in SourceTree.Files("wwwroot", ".js", ".mjs")
            from Match match in Risky().Matches(File.ReadAllText(file))
            select $"{SourceTree.Relative(file)}: {match.Value}";

        Assert.Empty(found);
    }

    [GeneratedRegex(@"@rendermode|InteractiveServer|InteractiveWebAssembly|blazor\.web\.js|blazor\.server\.js")]
    private static partial Regex Circuit();

    /// <summary>A style attribute or element, a handler attribute, or a script that is neither a data block nor a file.</summary>
    [GeneratedRegex(@"\sstyle\s*=|<style\b|\son[a-z]+\s*=\s*""(?!@)|<script(?![^>]*(?:\ssrc=|type=""application/json""))[^>]*>|javascript:", RegexOptions.IgnoreCase)]
    private static partial Regex Inline();

    [GeneratedRegex(@"\beval\s*\(|new Function\s*\(|\.(?:inner|outer)HTML\s*\+?=(?!=)|insertAdjacentHTML|document\.write")]
    private static partial Regex Risky();
}
