namespace Foreshore.Guide.Shell.Maps;

internal sealed record CoastPolygon(CoastRing Outer, IReadOnlyList<CoastRing> Lakes);

/// <summary>
/// A closed ring with, for each point, the detail in degrees below which it is kept: Douglas and Peucker's line
/// generalisation (1973) run once for all scales, so that drawing at any scale is a filter.
/// </summary>
internal sealed class CoastRing
{
    private readonly MapPoint[] points;
    private readonly float[] keptBelow;
    private readonly double west, south, east, north;

    // Long rings are looked through in pieces: a piece that lies wholly on one side of the box cannot be seen, and its two
    // ends say as much to the clipper as all its points.
    private const int PieceLength = 128;
    private readonly Piece[] pieces;

    public CoastRing(MapPoint[] points)
    {
        this.points = points;
        west = points.Min(p => p.LongitudeDegrees);
        east = points.Max(p => p.LongitudeDegrees);
        south = points.Min(p => p.LatitudeDegrees);
        north = points.Max(p => p.LatitudeDegrees);
        keptBelow = new float[points.Length];
        pieces = [.. Enumerable.Range(0, (points.Length + PieceLength - 1) / PieceLength).Select(i => Piece.Around(points, i * PieceLength, Math.Min(points.Length, (i + 1) * PieceLength)))];

        // The ring is opened at its first point and the point farthest from it; these stay for as long as the ring is seen at all.
        var far = 1;
        for (var i = 1; i < points.Length; i++)
            if (Away(points[i], points[0], points[0]) > Away(points[far], points[0], points[0])) far = i;
        var size = (float)Away(points[far], points[0], points[0]);
        keptBelow[0] = keptBelow[far] = keptBelow[^1] = size;
        Rank(0, far, size);
        Rank(far, points.Length - 1, size);
    }

    public bool Meets(MapBox box, double turn) =>
        west + turn <= box.East && east + turn >= box.West && south <= box.North && north >= box.South;

    /// <summary>The ring's points that count at this detail, whole within the box, ends of pieces alone outside it.</summary>
    public List<MapPoint> Drawn(MapBox box, double detail, double turn)
    {
        var drawn = new List<MapPoint>();
        foreach (var piece in pieces)
        {
            if (piece.IsBeside(box, turn))
            {
                drawn.Add(Turned(piece.First, turn));
                drawn.Add(Turned(piece.End - 1, turn));
                continue;
            }
            for (var i = piece.First; i < piece.End; i++)
                if (keptBelow[i] >= detail) drawn.Add(Turned(i, turn));
        }
        // The clipper wants the ring closed, whichever points are left of it.
        if (drawn.Count > 1 && drawn[0] != drawn[^1]) drawn.Add(drawn[0]);
        return drawn;
    }

    private MapPoint Turned(int index, double turn) => points[index] with { LongitudeDegrees = points[index].LongitudeDegrees + turn };

    private void Rank(int firstIndex, int lastIndex, float cap)
    {
        var spans = new Stack<(int First, int Last, float Cap)>();
        spans.Push((firstIndex, lastIndex, cap));
        while (spans.TryPop(out var span))
        {
            if (span.Last - span.First < 2) continue;
            var (farthest, distance) = (span.First + 1, -1.0);
            for (var i = span.First + 1; i < span.Last; i++)
            {
                var away = Away(points[i], points[span.First], points[span.Last]);
                if (away > distance) (farthest, distance) = (i, away);
            }
            // Never more than its parent, or a filter would keep a point whose chord it was measured from is gone.
            var rank = Math.Min(span.Cap, (float)distance);
            keptBelow[farthest] = rank;
            spans.Push((span.First, farthest, rank));
            spans.Push((farthest, span.Last, rank));
        }
    }

    /// <summary>Distance of a point from a chord in degrees of latitude, longitudes narrowed by the chord's latitude.</summary>
    private static double Away(MapPoint p, MapPoint a, MapPoint b)
    {
        var narrow = Math.Cos((a.LatitudeDegrees + b.LatitudeDegrees) / 2 * Math.PI / 180);
        var (abX, abY) = ((b.LongitudeDegrees - a.LongitudeDegrees) * narrow, b.LatitudeDegrees - a.LatitudeDegrees);
        var (apX, apY) = ((p.LongitudeDegrees - a.LongitudeDegrees) * narrow, p.LatitudeDegrees - a.LatitudeDegrees);
        var length = abX * abX + abY * abY;
        var along = length == 0 ? 0 : Math.Clamp((apX * abX + apY * abY) / length, 0, 1);
        var (x, y) = (apX - along * abX, apY - along * abY);
        return Math.Sqrt(x * x + y * y);
    }

    private readonly record struct Piece(int First, int End, double West, double South, double East, double North)
    {
        public static Piece Around(MapPoint[] points, int first, int end)
        {
            var piece = points.AsSpan(first, end - first);
            var (west, south, east, north) = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
            foreach (var p in piece)
                (west, south, east, north) = (Math.Min(west, p.LongitudeDegrees), Math.Min(south, p.LatitudeDegrees), Math.Max(east, p.LongitudeDegrees), Math.Max(north, p.LatitudeDegrees));
            return new(first, end, west, south, east, north);
        }

        public bool IsBeside(MapBox box, double turn) =>
            West + turn > box.East || East + turn < box.West || South > box.North || North < box.South;
    }
}
