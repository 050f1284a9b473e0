using System.Collections.Concurrent;
using System.Text;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// <c>/sketches/{name}.svg</c>: a sketch as a picture of its own, in the inks of paper; the style sheet turns them for the other
/// themes. It is asked for apart from its page, so who may see its place is asked again here.
/// </summary>
public static class SketchEndpoint
{
    private static readonly ConcurrentDictionary<string, byte[]> Inked = new();

    private static readonly (string Class, string Ink)[] PaperInks =
    [
        ("ink-sky", """fill="#FFFDF8" """), ("ink-sea", """fill="#DCECEC" """), ("ink-solid", """fill="#2B2722" """),
        ("ink-land", """fill="#FFFDF8" stroke="#2B2722" stroke-width="1.1" """), ("ink-line", """fill="none" stroke="#2B2722" stroke-width="1.1" """),
        ("ink-fine", """fill="none" stroke="#2B2722" stroke-width=".75" """), ("ink-sea-line", """fill="none" stroke="#1F6F78" stroke-width=".75" """),
    ];

    public static void MapSketches(this IEndpointRouteBuilder routes) => routes.MapGet("/sketches/{name}", AnswerAsync).ExcludeFromDescription();

    private static async Task<IResult> AnswerAsync(string name, IDbContextFactory<GuideDb> database, HttpResponse response, CancellationToken cancel)
    {
        if (Sketches.Inline(name) is not { } drawing)
            return Results.NotFound();

        var reader = response.HttpContext.Reader();
        await using var db = await database.CreateDbContextAsync(cancel);
        var place = await db.Locations.VisibleTo(reader).AsNoTracking().Include(l => l.Grants)
            .FirstOrDefaultAsync(l => l.VantagePoints.Any(v => v.Sketch == name || v.Compositions.Any(c => c.Sketch == name)), cancel);
        if (place is null || !place.MayBeSeenExactlyBy(reader))
            return Results.NotFound();

        response.Headers.CacheControl = "private, max-age=86400";
        return Results.Bytes(Inked.GetOrAdd(name, _ => Ink(drawing.Value)), "image/svg+xml");
    }

    private static byte[] Ink(string drawing)
    {
        foreach (var (name, ink) in PaperInks)
            drawing = drawing.Replace($"class=\"{name}\" ", ink + """vector-effect="non-scaling-stroke" """, StringComparison.Ordinal);
        return Encoding.UTF8.GetBytes(drawing);
    }
}
