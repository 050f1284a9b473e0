using System.Collections.Concurrent;
using System.Globalization;

namespace Foreshore.Guide.Locations;

/// <summary>
/// Strips already drawn: every stretch cuts the land out of a large coastline, and the same coast is asked for again and
/// again. Keyed by what the drawing is made from, so a moved place is drawn anew.
/// </summary>
public sealed class CoastRows
{
    /// <summary>Filters shorten the coast in many ways; the least harm when there are too many is to start afresh.</summary>
    private const int Most = 200;

    private readonly ConcurrentDictionary<string, IReadOnlyList<CoastRow>> kept = new();

    public IReadOnlyList<CoastRow> Of(IReadOnlyList<CoastPlace> places)
    {
        var key = string.Join('|', places.Select(p => string.Create(CultureInfo.InvariantCulture,
            $"{p.Position.LatitudeDegrees:R},{p.Position.LongitudeDegrees:R},{p.IsBlurred},{p.IsOverWater},{p.Crossing}")));
        if (kept.TryGetValue(key, out var rows))
            return rows;
        if (kept.Count >= Most)
            kept.Clear();
        return kept.GetOrAdd(key, _ => CoastDrawing.Of(places));
    }
}
