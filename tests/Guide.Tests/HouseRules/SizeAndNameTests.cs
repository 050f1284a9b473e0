using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace Foreshore.Guide.HouseRules;

public partial class SizeAndNameTests
{
    private const int LongestCode = 300;
    private const int LongestPage = 150;
    private const int LongestPageCode = 40;

    private static readonly string[] EmptySuffixes = ["Service", "Manager", "Helper", "Helpers", "Util", "Utils", "Dto", "Info", "Data"];

    [Fact]
    public void Files_stay_short()
    {
        var code = SourceTree.Files("src", ".cs").Concat(SourceTree.Files("tests", ".cs"))
            // Coefficients are read as a table, not as code.
            .Where(file => !file.EndsWith(".Terms.cs", StringComparison.Ordinal))
            .Where(file => Lines(file) > LongestCode);
        var pages = SourceTree.Files("src", ".razor").Where(file => Lines(file) > LongestPage);

        Assert.Empty(code.Concat(pages).Select(file => string.Create(CultureInfo.InvariantCulture, $"{SourceTree.Relative(file)}: {Lines(file)} lines")));
    }

    [Fact]
    public void Pages_are_glue()
    {
        var found = SourceTree.Files("src", ".razor").Where(file => LinesOfCode(file) > LongestPageCode);

        Assert.Empty(found.Select(file => string.Create(CultureInfo.InvariantCulture, $"{SourceTree.Relative(file)}: {LinesOfCode(file)} lines of @code")));
    }

    [Fact]
    public void Types_are_named_for_what_they_are()
    {
        var found =
            from file in SourceTree.Files("src", ".cs")
            from Match match in TypeName().Matches(File.ReadAllText(file))
            let name = match.Groups[1].Value
            where EmptySuffixes.Any(suffix => name.EndsWith(suffix, StringComparison.Ordinal))
            select $"{name} in {SourceTree.Relative(file)}";

        Assert.Empty(found);
    }

    [Fact]
    public void No_regions_and_nothing_left_to_do()
    {
        var found = SourceTree.Files("src", ".cs", ".razor")
            .Where(file => Leftovers().IsMatch(File.ReadAllText(file)))
            .Select(SourceTree.Relative);

        Assert.Empty(found);
    }

    private static int Lines(string file) => File.ReadLines(file).Count();

    private static int LinesOfCode(string file) =>
        File.ReadLines(file).SkipWhile(line => !line.StartsWith("@code", StringComparison.Ordinal)).Skip(1).TakeWhile(line => line != "}").Count();

    [GeneratedRegex(@"\b(?:class|record|struct|interface|enum)\s+(?:struct\s+|class\s+)?([A-Z]\w+)")]
    private static partial Regex TypeName();

    [GeneratedRegex(@"^\s*#region|\bTODO\b|\bFIXME\b|\bHACK\b|NotImplementedException", RegexOptions.Multiline)]
    private static partial Regex Leftovers();
}
