using Foreshore.Guide.Compositions;
using Foreshore.Guide.Shell;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// What a request costs the machine, in units of about ten milliseconds of processor time as measured (docs/reliability.md). What is not
/// named costs one.
/// </summary>
internal static class RequestCosts
{
    /// <summary>A year of alignments of sun and moon takes 36 ms.</summary>
    public const int OfAYear = 4;

    private static readonly Dictionary<string, int> OfPattern = new(StringComparer.OrdinalIgnoreCase)
    {
        ["/weekend"] = 3,
        ["/api/v1/weekend"] = 3,
        ["/coast/{Slug}/tide"] = 2,
        ["/coast/{Slug}/{StanceSlug}/{PictureSlug}"] = 3,
        ["/coast/{Slug}/{StanceSlug}/skyline"] = 2,
        ["/contribute/season"] = 2,
        ["/api/v1/compositions/{location}/{vantage}/{composition}/season"] = 2,
        [Alignments] = 1,
        ["/api/v1/tides/{station}"] = 2,
        ["/api/v1/tides/{station}/extremes"] = 2,
        ["/account/export"] = 5,
    };

    private const string Alignments = "/api/v1/compositions/{location}/{vantage}/{composition}/alignments";

    public static IEnumerable<string> Patterns => OfPattern.Keys;

    public static int Of(HttpContext http)
    {
        if (http.GetEndpoint() is not RouteEndpoint endpoint)
            return 1;
        var pattern = "/" + endpoint.RoutePattern.RawText?.TrimStart('/');
        var query = http.Request.Query;
        var years = pattern == Alignments ? YearsBetween(query["from"], query["to"]) : (TypedValue.Whole(query["years"], 1, SubjectAlignments.MostYears) ?? 1) - 1;
        return OfPattern.GetValueOrDefault(pattern, 1) + (years * OfAYear);
    }

    /// <summary>What cannot be read is refused before anything is computed.</summary>
    private static int YearsBetween(string? from, string? to) =>
        LocalDatePattern.Iso.Parse(from ?? "").TryGetValue(default, out var first) && LocalDatePattern.Iso.Parse(to ?? "").TryGetValue(default, out var last) && last > first
            ? Math.Min(Period.Between(first, last, PeriodUnits.Years).Years + 1, SubjectAlignments.MostYears) : 1;
}
