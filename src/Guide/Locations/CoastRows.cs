using System.Globalization;
using Foreshore.Guide.Keeping;

namespace Foreshore.Guide.Locations;

/// <summary>
/// Strips already drawn: every stretch cuts the land out of a large coastline, and the same coast is asked for again and
/// again. Keyed by what the drawing is made from, so a moved place is drawn anew.
/// </summary>
public sealed class CoastRows(Kept kept)
{
    private const int Row = 800, Islet = 80, Point = 16;

    public ValueTask<IReadOnlyList<CoastRow>> OfAsync(IReadOnlyList<CoastPlace> places, CancellationToken cancel)
    {
        var key = new Key(string.Join('|', places.Select(p => string.Create(CultureInfo.InvariantCulture,
            $"{p.Position.LatitudeDegrees:R},{p.Position.LongitudeDegrees:R},{p.IsBlurred},{p.IsOverWater},{p.Crossing}"))));
        return kept.GetAsync(key, () => CoastDrawing.Of(places), rows => key.Places.Length * sizeof(char) + Weight(rows), cancel);
    }

    internal static long Weight(IReadOnlyList<CoastRow> rows) =>
        rows.Sum(row => Row + (long)Point * row.Shore.Count + row.Islets.Sum(islet => Islet + (long)Point * islet.Count));

    private sealed record Key(string Places);
}
