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

    /// <summary>Any other type is read by the framework, which answers a slip with a fault of the site.</summary>
    [Fact]
    public void Values_of_an_address_are_texts_and_read_by_the_pages()
    {
        var found =
            from file in SourceTree.Files("src/Guide", ".razor", ".cs")
            from Match match in FromQuery().Matches(File.ReadAllText(file))
            where match.Groups[1].Value != "string?"
            select $"{SourceTree.Relative(file)}: {match.Value}";

        Assert.Empty(found);
    }

    /// <summary>What people type is tried, never trusted: whatever reads an address or a form takes nothing that throws.</summary>
    [Fact]
    public void Nothing_typed_is_read_by_what_throws()
    {
        var found =
            from file in SourceTree.Files("src/Guide", ".razor", ".cs")
            let text = File.ReadAllText(file)
            where ReadsRequests().IsMatch(text)
            from Match match in Throws().Matches(text)
            select $"{SourceTree.Relative(file)}: {match.Value}";

        Assert.Empty(found);
    }

    [GeneratedRegex(@"SupplyParameterFromQuery[^\]]*\]\s*(?:public|private)\s+(?:required\s+)?(\S+)")]
    private static partial Regex FromQuery();

    [GeneratedRegex(@"IQueryCollection|IFormCollection|Request\.Query|Request\.Form|SupplyParameterFrom|IReadOnlyDictionary<string, string> (?:typed|given|values)")]
    private static partial Regex ReadsRequests();

    [GeneratedRegex(@"\b(?:Guid|int|long|short|double|decimal|float|DateTime|DateTimeOffset|DateOnly|TimeOnly)\.Parse(?:Exact)?\(|\bEnum\.Parse\b|\bConvert\.To(?:Int|Double|DateTime)")]
    private static partial Regex Throws();

    [GeneratedRegex(@"@rendermode|InteractiveServer|InteractiveWebAssembly|blazor\.web\.js|blazor\.server\.js")]
    private static partial Regex Circuit();

    /// <summary>A style attribute or element, a handler attribute, or a script that is neither a data block nor a file.</summary>
    [GeneratedRegex(@"\sstyle\s*=|<style\b|\son[a-z]+\s*=\s*""(?!@)|<script(?![^>]*(?:\ssrc=|type=""application/json""))[^>]*>|javascript:", RegexOptions.IgnoreCase)]
    private static partial Regex Inline();

    [GeneratedRegex(@"\beval\s*\(|new Function\s*\(|\.(?:inner|outer)HTML\s*\+?=(?!=)|insertAdjacentHTML|document\.write")]
    private static partial Regex Risky();
}
