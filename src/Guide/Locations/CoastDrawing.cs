using Foreshore.Almanac.Earth;
using Foreshore.Guide.Shell.Maps;

namespace Foreshore.Guide.Locations;

/// <summary>A place of the guide as the coast strip needs it; a blurred place comes with its cell's centre.</summary>
public sealed record CoastPlace(Position Position, bool IsBlurred = false, bool IsOverWater = false, string? Crossing = null);

/// <summary>The way on to the next place.</summary>
public sealed record CoastLeg(double Metres, Bearing Way, string? Crossing)
{
    private static readonly string[] Points =
        ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];

    /// <summary>The nearest of the compass's sixteen points.</summary>
    public string Point => Points[(int)Math.Round(Way.Degrees / 22.5) % 16];
}

/// <summary>
/// One row of the strip, in units across (0 is the land's side, <see cref="CoastDrawing.Width"/> the open sea) and hundredths of
/// the row down; rows are as high as their text, so only what runs up and down is stretched.
/// </summary>
public sealed record CoastRow(
    CoastPlace Place,
    double X,
    double MarkX,
    IReadOnlyList<(double X, double Y)> Shore,
    IReadOnlyList<IReadOnlyList<(double X, double Y)>> Islets,
    CoastLeg? Next)
{
    /// <summary>A line that follows the shore at a distance, as engravers drew water: the first to the third, each smoother.</summary>
    public IEnumerable<(double X, double Y)> Echo(int number)
    {
        for (var i = 0; i < Shore.Count; i++)
        {
            // Averaged over like neighbours on both sides, so that the ends stay where the next row's begin.
            var reach = Math.Min(2 * number, Math.Min(i, Shore.Count - 1 - i));
            var mean = 0.0;
            for (var k = i - reach; k <= i + reach; k++) mean += Shore[k].X / (2 * reach + 1);
            yield return (mean + 3 * number + number * number, Shore[i].Y);
        }
    }
}

/// <summary>
/// The guide's coast as a strip, one row to a place, in the manner of the old road books: every stretch is turned until its
/// way runs down the page (its own north arrow says how), and the rows join top to bottom. Bends at the places come from their
/// true positions, bays and capes between them from the coastline; the spacing is the list's.
/// </summary>
public static class CoastDrawing
{
    public const double Width = 88;

    private const double ShoreX = 32, BendUnits = 9, BayUnits = 17, IsletFrom = 16, IsletReach = 20;
    private const int Pieces = 32;
    private const double LeastDetailDegrees = 0.0005;

    public static IReadOnlyList<CoastRow> Of(IReadOnlyList<CoastPlace> places)
    {
        if (places.Count == 0) return [];
        var legs = new List<(double Metres, Bearing Way)>();
        for (var i = 0; i + 1 < places.Count; i++)
        {
            var segment = Geodesic.Between(places[i].Position, places[i + 1].Position);
            legs.Add((segment.Metres, segment.Initial));
        }
        var bends = Bends(places);
        var coast = new CoastPlane(Coastline.ClippedTo(BoxRound(places), LeastDetailDegrees));
        // Beyond both ends the coast goes on as it came.
        var before = Stretch(-1);
        var rows = new List<CoastRow>();
        for (var i = 0; i < places.Count; i++)
        {
            var after = Stretch(i);
            var shore = before.Shore.Where(p => p.Share >= 0.5).Select(p => (p.X, (p.Share - 0.5) * 100))
                .Concat(after.Shore.Where(p => p.Share is > 0 and <= 0.5).Select(p => (p.X, 50 + p.Share * 100))).ToList();
            var x = ShoreX + bends[i];
            rows.Add(new(places[i], x, places[i].IsOverWater ? x + IsletFrom : x, shore,
                [.. before.Islets(upper: false), .. after.Islets(upper: true)],
                i < legs.Count ? new(legs[i].Metres, legs[i].Way, places[i + 1].Crossing) : null));
            before = after;
        }
        return rows;

        Drawn Stretch(int i)
        {
            if (places.Count == 1) return Drawn.Of(null, bends[0], bends[0]);
            if (i < 0)
            {
                var back = legs[0].Way.Plus(180);
                var start = Geodesic.Along(places[0].Position, back, legs[0].Metres).Position;
                return Drawn.Of(new(coast, start, back.Plus(180), legs[0].Metres), bends[0], bends[0]);
            }
            return i < legs.Count
                ? Drawn.Of(new(coast, places[i].Position, legs[i].Way, legs[i].Metres), bends[i], bends[i + 1])
                : Drawn.Of(new(coast, places[i].Position, legs[^1].Way, legs[^1].Metres), bends[i], bends[i]);
        }
    }

    private static MapBox BoxRound(IReadOnlyList<CoastPlace> places)
    {
        const double MarginDegrees = 0.15; // of latitude, 17 km: farther than the shore is looked for
        var first = Bearing.FromDegrees(places[0].Position.LongitudeDegrees);
        var turns = places.Select(p => first.SignedTo(Bearing.FromDegrees(p.Position.LongitudeDegrees))).ToList();
        var (south, north) = (places.Min(p => p.Position.LatitudeDegrees), places.Max(p => p.Position.LatitudeDegrees));
        var margin = MarginDegrees / Math.Cos(Math.Min(85, Math.Max(Math.Abs(south), Math.Abs(north))) * Math.PI / 180);
        var west = Math.IEEERemainder(places[0].Position.LongitudeDegrees + turns.Min() - margin, 360);
        var width = Math.Min(360, turns.Max() - turns.Min() + 2 * margin);
        return new(west, Math.Max(-90, south - MarginDegrees), west + width, Math.Min(90, north + MarginDegrees));
    }

    /// <summary>How far each place stands out to the left of the straight way from the first to the last, in units.</summary>
    private static double[] Bends(IReadOnlyList<CoastPlace> places)
    {
        var bends = new double[places.Count];
        if (places.Count < 3) return bends;
        var whole = Geodesic.Between(places[0].Position, places[^1].Position);
        for (var i = 1; i + 1 < places.Count; i++)
        {
            var part = Geodesic.Between(places[0].Position, places[i].Position);
            bends[i] = part.Metres * Math.Sin(part.Initial.SignedTo(whole.Initial) * Math.PI / 180);
        }
        var most = bends.Max(Math.Abs);
        return most < 1 ? bends : [.. bends.Select(b => b / most * BendUnits)];
    }

    private sealed record Drawn(IReadOnlyList<(double Share, double X)> Shore, IReadOnlyList<(double Share, double X, CoastIslet Islet)> Held)
    {
        public static Drawn Of(CoastStretch? stretch, double fromBend, double toBend)
        {
            // A bay's depth is told up to a limit, and dies away towards the places, where the line must be met.
            var bays = Enumerable.Range(0, Pieces + 1).Select(k => k is 0 or Pieces || stretch is null ? 0
                : BayUnits * Math.Tanh(stretch.ShoreLeftMetres((double)k / Pieces) / 1200) * Math.Pow(Math.Sin(Math.PI * k / Pieces), 0.75)).ToArray();
            var shore = Enumerable.Range(0, Pieces + 1).Select(k =>
                (Share: (double)k / Pieces, X: ShoreX + fromBend + (toBend - fromBend) * k / Pieces + Smooth(bays, k))).ToList();
            var islets = (stretch?.Islets() ?? []).OrderByDescending(i => i.SizeMetres).Take(3)
                .Select(i => (i.Along, Math.Min(Width - 10, Across(i.Along) + IsletFrom + IsletReach * Math.Tanh(i.LeftMetres / 4000)), i)).ToList();
            return new(shore, islets);

            double Across(double share) => shore[(int)Math.Round(share * Pieces)].X;
        }

        /// <summary>Weights 1 4 6 4 1: a line that goes back on itself is told by one that doesn't.</summary>
        private static double Smooth(double[] bays, int k) => k is < 2 or > Pieces - 2
            ? bays[k]
            : (bays[k - 2] + 4 * bays[k - 1] + 6 * bays[k] + 4 * bays[k + 1] + bays[k + 2]) / 16;

        /// <summary>Islands of the half that lies in a row, held off its edges so that none is cut in two.</summary>
        public IEnumerable<IReadOnlyList<(double X, double Y)>> Islets(bool upper)
        {
            foreach (var (share, x, islet) in Held)
            {
                if (share < 0.5 != upper) continue;
                var half = Math.Clamp(islet.SizeMetres / 400, 3, 7);
                var scale = 2 * half / islet.SizeMetres;
                var y = upper ? Math.Clamp(50 + share * 100, 50 + half, 99 - half) : Math.Clamp((share - 0.5) * 100, 1 + half, 50 - half);
                yield return [.. islet.Outline.Select(p => (x + p.Left * scale, y + p.Down * scale * 0.7))];
            }
        }
    }
}
