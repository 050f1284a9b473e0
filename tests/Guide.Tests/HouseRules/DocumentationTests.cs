using System.Text.Json;
using System.Text.RegularExpressions;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.HouseRules;

/// <summary>What one can set, ask for or call has its name in the documentation.</summary>
public partial class DocumentationTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    [Fact]
    public void Every_setting_is_named()
    {
        var inCode = SourceTree.Files("src/Guide", ".cs", ".razor")
            .SelectMany(file => Setting().Matches(File.ReadAllText(file)))
            .Select(match => match.Groups["name"].Value)
            .Concat(ConnectionNames().Matches(string.Concat(SourceTree.Files("src/Guide", ".cs").Select(File.ReadAllText)))
                .Select(match => $"ConnectionStrings:{match.Groups[1].Value}"));
        var inFile = Names(JsonDocument.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "src/Guide/appsettings.json"))).RootElement, "")
            .Where(name => !name.StartsWith("Logging:", StringComparison.Ordinal));

        AssertNamed(inCode.Concat(inFile).Distinct());
    }

    [Fact]
    public void Every_address_is_named()
    {
        var patterns = guide.Services.GetRequiredService<EndpointDataSource>().Endpoints
            .OfType<RouteEndpoint>()
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText?.TrimStart('/'))
            .Where(pattern => !Path.HasExtension(pattern) && !pattern.StartsWith("/lib/", StringComparison.Ordinal) && !pattern.StartsWith("/_", StringComparison.Ordinal))
            // Asked for by the site itself, never by a person.
            .Where(pattern => pattern is not ("/error" or "/not-found") && !pattern.StartsWith("/status", StringComparison.Ordinal))
            .Select(pattern => Constraint().Replace(pattern, "}").ToLowerInvariant());

        AssertNamed(patterns.Distinct());
    }

    [Fact]
    public void Every_option_of_the_scripts_is_named()
    {
        var options = new[] { "run", "test" }
            .SelectMany(script => Option().Matches(File.ReadAllText(Path.Combine(SourceTree.Root, script))))
            .Select(match => match.Groups[1].Value)
            .Where(option => option is not "--help");

        AssertNamed(options.Distinct());
    }

    private static void AssertNamed(IEnumerable<string> names)
    {
        var pages = new[] { "README.md", "DEVELOPERS.md" }.Select(page => Path.Combine(SourceTree.Root, page)).Where(File.Exists).ToList();
        Assert.SkipWhen(pages.Count < 2, "README.md and DEVELOPERS.md are not written yet.");
        var text = string.Concat(pages.Concat(SourceTree.Files("docs", ".md")).Select(File.ReadAllText)).ToLowerInvariant();

        Assert.DoesNotContain(names, name => !text.Contains(name.ToLowerInvariant(), StringComparison.Ordinal));
    }

    private static IEnumerable<string> Names(JsonElement element, string prefix) => element.ValueKind == JsonValueKind.Object
        ? element.EnumerateObject().SelectMany(member => Names(member.Value, prefix.Length == 0 ? member.Name : $"{prefix}:{member.Name}"))
        : [prefix];

    [GeneratedRegex(@"(?:onfiguration|settings)\[""(?<name>[A-Z][\w:]+)""\]|GetValue(?:<[^>]+>)?\(""(?<name>[A-Z][\w:]+)""|GetSection\(""(?<name>[A-Z][\w:]+)""\)")]
    private static partial Regex Setting();

    [GeneratedRegex(@"GetConnectionString\(""(\w+)""\)")]
    private static partial Regex ConnectionNames();

    /// <summary>{slug:regex(…)} and {page?} are named as {slug} and {page}.</summary>
    [GeneratedRegex(@"[:?=][^}/]*\}")]
    private static partial Regex Constraint();

    [GeneratedRegex(@"^ *(?:\./test )?(--[a-z-]+)(?: \w+)?  ", RegexOptions.Multiline)]
    private static partial Regex Option();
}
