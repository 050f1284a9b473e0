using System.Text.RegularExpressions;

namespace Foreshore.Guide.Locations;

/// <summary>The part of an address that names a place: lower-case words joined by hyphens, unique in its parent.</summary>
public static partial class Slug
{
    public const int Longest = 60;

    /// <summary>Words that pages of the site use in the same position.</summary>
    private static readonly HashSet<string> Reserved = ["tide", "skyline", "new", "edit", "map", "search", "history", "change"];

    public static string Of(string? value)
    {
        var slug = value?.Trim() ?? "";
        Require.That(slug.Length is > 0 and <= Longest && Shape().IsMatch(slug),
            $"The address name \"{(slug.Length > Longest ? slug[..Longest] + "…" : slug)}\" does not work in an address. Use lower-case letters, digits and single hyphens, at most {Longest}.");
        Require.That(!Reserved.Contains(slug), $"The address name \"{slug}\" belongs to a page of the site. Choose another.");
        return slug;
    }

    /// <summary>No page of the site answers at this word.</summary>
    public static bool IsFree(string slug) => !Reserved.Contains(slug);

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}

/// <summary>
/// Every slug ever given, kept by a trigger so that none is given twice in the same parent, even after its place is gone.
/// An address whose slug is here but is no longer current answers 301 to the current one.
/// </summary>
public sealed class UsedSlug
{
    private UsedSlug() { }

    /// <summary><c>coast</c>, <c>location:{id}</c> or <c>vantage:{id}</c>.</summary>
    public string Parent { get; private set; } = "";

    public string Slug { get; private set; } = "";

    /// <summary>The location, vantage point or composition that bears or bore it.</summary>
    public int TargetId { get; private set; }

    public const string OfCoast = "coast";

    public static string OfLocation(int locationId) => $"location:{locationId}";

    public static string OfVantagePoint(int vantagePointId) => $"vantage:{vantagePointId}";
}
