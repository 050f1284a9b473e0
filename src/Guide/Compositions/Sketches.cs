using System.Collections.Frozen;
using Microsoft.AspNetCore.Components;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// Drawn sketches, to be put into a page where the theme's inks should reach their classes; <see cref="SketchEndpoint"/> answers
/// the same as pictures.
/// </summary>
public static class Sketches
{
    private const string Folder = "sketches/";

    private static readonly FrozenDictionary<string, MarkupString> ByName = Read();

    /// <summary>The drawing as an <c>svg</c> element of class <c>sketch</c> with a title; null when there is none.</summary>
    public static MarkupString? Inline(string? fileName) =>
        fileName is not null && ByName.TryGetValue(fileName, out var drawing) ? drawing : null;

    /// <summary>The composition's own sketch, else its vantage point's.</summary>
    public static MarkupString? Of(Composition composition, VantagePoint vantagePoint) =>
        Inline(composition.Sketch) ?? Inline(vantagePoint.Sketch);

    internal static IEnumerable<string> Names => ByName.Keys;

    private static FrozenDictionary<string, MarkupString> Read()
    {
        var assembly = typeof(Sketches).Assembly;
        return assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)).ToFrozenDictionary(name => name[Folder.Length..], name =>
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            return new MarkupString(reader.ReadToEnd().TrimEnd());
        });
    }
}
