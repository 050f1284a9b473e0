using System.Text.Json;
using System.Text.Json.Nodes;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// <c>foreshore parts</c>: every library inside, with its version, from the lock files this program was built by; as CycloneDX 1.6, which
/// programs that watch for known faults read.
/// </summary>
internal static class BillOfMaterials
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    public static string Text() => new JsonObject
    {
        ["bomFormat"] = "CycloneDX",
        ["specVersion"] = "1.6",
        ["version"] = 1,
        ["metadata"] = new JsonObject { ["component"] = new JsonObject { ["type"] = "application", ["name"] = "foreshore" } },
        ["components"] = new JsonArray([.. NuGetPackages().Concat(NpmPackages()).DistinctBy(part => (string)part["purl"]!).OrderBy(part => (string)part["purl"]!, StringComparer.Ordinal)]),
    }.ToJsonString(Indented);

    /// <summary>Those built in, named by the lock file once for each platform; what comes with the .NET runtime is the runtime's own.</summary>
    private static IEnumerable<JsonObject> NuGetPackages() =>
        from framework in Lock("nuget-lock")["dependencies"]!.AsObject()
        from package in framework.Value!.AsObject()
        where (string?)package.Value!["type"] != "Project"
        select Part(package.Key, (string)package.Value!["resolved"]!, "nuget", null);

    /// <summary>Those served or run by the site; the others are tools.</summary>
    private static IEnumerable<JsonObject> NpmPackages() =>
        from package in Lock("npm-lock")["packages"]!.AsObject()
        where package.Key.Length > 0 && (bool?)package.Value!["dev"] != true
        select Part(package.Key[(package.Key.LastIndexOf("node_modules/", StringComparison.Ordinal) + "node_modules/".Length)..], (string)package.Value!["version"]!, "npm", (string?)package.Value!["license"]);

    private static JsonObject Part(string name, string version, string kind, string? licence)
    {
        // A package URL encodes the at sign of a scope.
        var part = new JsonObject { ["type"] = "library", ["name"] = name, ["version"] = version, ["purl"] = $"pkg:{kind}/{name.Replace("@", "%40", StringComparison.Ordinal)}@{version}" };
        if (licence is not null)
            part["licenses"] = new JsonArray(new JsonObject { ["expression"] = licence });
        return part;
    }

    private static JsonNode Lock(string resource)
    {
        using var file = typeof(BillOfMaterials).Assembly.GetManifestResourceStream(resource)!;
        return JsonNode.Parse(file)!;
    }
}
