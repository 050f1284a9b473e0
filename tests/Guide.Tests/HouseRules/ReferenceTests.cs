using System.Reflection;
using System.Text.RegularExpressions;
using Foreshore.Almanac.Earth;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.HouseRules;

/// <summary>What may lean on what.</summary>
public partial class ReferenceTests
{
    /// <summary>Computing alone: no files, network, database, web or console among them.</summary>
    private static readonly string[] PureAssemblies =
    [
        "NodaTime", "System.Collections", "System.Collections.Immutable", "System.Linq", "System.Memory", "System.Numerics.Vectors",
        "System.Runtime", "System.Runtime.Extensions", "System.Runtime.InteropServices", "System.Runtime.Intrinsics", "System.Runtime.Numerics", "System.Threading",
    ];

    /// <summary>
    /// Location, access, hazards, compositions and tide describe one place together and know each other. All else points towards them,
    /// never back (photos and maps, which their pages show, excepted); only the composition root (Hosting) and the loader of the demo see everything.
    /// </summary>
    private static readonly string[] Place = ["Locations", "Access", "Hazards", "Compositions", "Tides"];

    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Locations"] = [.. Place, "Photos", "Members", "Shell", "Database", "Maps", "Keeping"],
        ["Access"] = [.. Place, "Members", "Shell", "Database"],
        ["Hazards"] = [.. Place, "Photos", "Members", "Shell", "Database"],
        ["Compositions"] = [.. Place, "Photos", "Members", "Shell", "Database", "Maps", "Keeping"],
        ["Tides"] = [.. Place, "Members", "Shell", "Database", "Keeping"],
        ["Photos"] = [.. Place, "Members", "Shell", "Database"],
        ["Elevation"] = [.. Place, "Contributions", "Members", "Shell", "Database"],
        ["Contributions"] = [.. Place, "Photos", "Mail", "Maps", "Members", "Shell", "Database", "Keeping"],
        ["Outlooks"] = [.. Place, "Conditions", "Members", "Shell", "Database"],
        ["Maps"] = [.. Place, "Members", "Shell", "Hosting"],
        ["Members"] = ["Locations", "Photos", "Shell", "Database", "Hosting", "Mail"],
        ["Mail"] = ["Hosting"],
        ["Shell"] = ["Members", "Locations"],
        ["Database"] = [.. Place, "Hosting"],
        ["Api"] = [.. Place, "Outlooks", "Conditions", "Members", "Shell", "Hosting"],
        ["Running"] = ["Members", "Database", "Hosting"],
        ["Demo"] = [.. Place, "Contributions", "Members"],
    };

    private static readonly string[] SeesAll = ["Hosting"];

    [Fact]
    public void Almanac_refers_to_nothing_that_reads_or_writes()
    {
        var others = typeof(Position).Assembly.GetReferencedAssemblies().Select(assembly => assembly.Name!).Except(PureAssemblies);

        Assert.Empty(others);
    }

    [Fact]
    public void Features_refer_to_others_in_one_direction()
    {
        var root = Path.Combine(SourceTree.Root, "src/Guide");
        var wrong =
            from file in SourceTree.Files("src/Guide", ".cs", ".razor")
            let parts = Path.GetRelativePath(root, file).Split('/')
            where parts.Length > 1
            let feature = parts[0]
            where !SeesAll.Contains(feature)
            from other in FeatureName().Matches(File.ReadAllText(file)).Select(match => match.Groups[1].Value).Distinct()
            where other != feature && !Allowed.GetValueOrDefault(feature, []).Contains(other)
            select $"{feature} → {other} in {SourceTree.Relative(file)}";

        Assert.Empty(wrong);
    }

    [Fact]
    public void Nobody_is_given_a_context_all_take_the_factory()
    {
        const BindingFlags any = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance;
        var types = typeof(GuideDb).Assembly.GetTypes();
        var byConstructor = types.Where(type => type.GetConstructors(any).Any(made => made.GetParameters().Any(p => p.ParameterType == typeof(GuideDb))))
            // Queries may be a value made around an open context by the one who opened it; what the container makes may not.
            .Where(type => typeof(IComponent).IsAssignableFrom(type) || type.Name.EndsWith("Queries", StringComparison.Ordinal) || type.Name.EndsWith("Feed", StringComparison.Ordinal));
        var byProperty = types.Where(type => type.GetProperties(any).Any(p => p.PropertyType == typeof(GuideDb) && p.IsDefined(typeof(InjectAttribute))));
        var byText = SourceTree.Files("src/Guide", ".razor").Where(file => InjectedContext().IsMatch(File.ReadAllText(file))).Select(SourceTree.Relative);

        Assert.Empty(byConstructor);
        Assert.Empty(byProperty);
        Assert.Empty(byText);
        Assert.Contains(types, type => type.GetConstructors(any).Any(made => made.GetParameters().Any(p => p.ParameterType == typeof(IDbContextFactory<GuideDb>))));
    }

    [GeneratedRegex(@"^\s*@?using (?:static )?Foreshore\.Guide\.([A-Z]\w+)", RegexOptions.Multiline)]
    private static partial Regex FeatureName();

    [GeneratedRegex(@"@inject\s+GuideDb\b|\[Inject\][^;\n]*\bGuideDb\b")]
    private static partial Regex InjectedContext();
}
