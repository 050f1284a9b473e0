using System.Text.Json.Nodes;
using Foreshore.Guide.HouseRules;
using Xunit;

namespace Foreshore.Guide.Hosting;

public class BillOfMaterialsTests
{
    [Fact]
    public void Every_library_inside_is_listed_once_with_its_version()
    {
        var parts = JsonNode.Parse(BillOfMaterials.Text())!["components"]!.AsArray().Select(part => (string)part!["purl"]!).ToList();
        var resolved = JsonNode.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "src/Guide/packages.lock.json")))!["dependencies"]!["net10.0"]!.AsObject()
            .Where(package => package.Value!["resolved"] is not null).Select(package => $"pkg:nuget/{package.Key}@{package.Value!["resolved"]}");

        Assert.Empty(resolved.Except(parts));
        Assert.Contains("pkg:npm/leaflet@1.9.4", parts);
        Assert.Contains(parts, part => part.StartsWith("pkg:npm/%40fontsource/source-sans-3@", StringComparison.Ordinal));
        Assert.DoesNotContain(parts, part => part.Contains("astronomy-engine", StringComparison.Ordinal));
        Assert.Equal(parts.Count, parts.Distinct().Count());
    }

    /// <summary>What is built in is argued for: each package asked for by name has its line in DEVELOPERS.md.</summary>
    [Fact]
    public void Every_package_asked_for_has_its_reason()
    {
        var table = File.ReadAllText(Path.Combine(SourceTree.Root, "DEVELOPERS.md"));
        var direct = JsonNode.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "src/Guide/packages.lock.json")))!["dependencies"]!["net10.0"]!.AsObject()
            .Where(package => (string?)package.Value!["type"] == "Direct").Select(package => package.Key)
            // Parts of those named there or of the SDK; and two that are kept out, as the project file says.
            .Where(name => name is not ("Microsoft.AspNetCore.App.Internal.Assets" or "Microsoft.Win32.SystemEvents" or "System.Drawing.Common" or "Npgsql.EntityFrameworkCore.PostgreSQL.NodaTime" or "SkiaSharp.NativeAssets.Linux.NoDependencies"));
        var npm = JsonNode.Parse(File.ReadAllText(Path.Combine(SourceTree.Root, "package.json")))!;
        var asked = npm["dependencies"]!.AsObject().Concat(npm["devDependencies"]?.AsObject() ?? []).Select(package => package.Key.Replace("source-serif-4", "source-sans-3", StringComparison.Ordinal));

        Assert.DoesNotContain(direct.Concat(asked), name => !table.Contains(name, StringComparison.Ordinal));
    }
}
