namespace Foreshore.Almanac.Earth;

/// <summary>Brings what thousands of rays found down to corners: D. H. Douglas and T. K. Peucker, Cartographica 10 (1973) 112, with the distance taken in altitude.</summary>
internal static class SkylineCorners
{
    private const double WidestTolerance = 2;

    internal static (IReadOnlyList<SkylinePoint> Points, double ToleranceDegrees) Of(RayEdge[] rays, double tolerance, int most)
    {
        ReadOnlySpan<RayEdge> edge = rays;
        for (var narrow = 1; ; narrow *= 2, tolerance *= 1.5)
        {
            var points = Corners(edge, tolerance);
            if (points.Count <= most || tolerance > WidestTolerance) return (points, tolerance);
            edge = WithoutSlivers(rays, narrow);
        }
    }

    // A gap of sea a few rays wide becomes land at its altitude; a slip of land or sea between unknown pieces becomes unknown.
    private static RayEdge[] WithoutSlivers(RayEdge[] rays, int narrow)
    {
        var kept = (RayEdge[])rays.Clone();
        foreach (var (start, length) in Runs(rays))
        {
            if (length > narrow) continue;
            var before = rays[(start + rays.Length - 1) % rays.Length].Kind;
            var after = rays[(start + length) % rays.Length].Kind;
            for (var i = start; i < start + length; i++)
            {
                ref var ray = ref kept[i % rays.Length];
                if (before == SkylineKind.Unknown || after == SkylineKind.Unknown) ray = new RayEdge(SkylineKind.Unknown, 0);
                else if (ray.Kind == SkylineKind.Sea) ray = ray with { Kind = SkylineKind.Land };
            }
        }

        return kept;
    }

    private static List<SkylinePoint> Corners(ReadOnlySpan<RayEdge> rays, double tolerance)
    {
        var points = new List<SkylinePoint>();
        var count = rays.Length;
        foreach (var (start, length) in Runs(rays))
        {
            var kind = rays[start].Kind;
            var line = new List<(double Azimuth, double Altitude)>();
            var isWhole = length == count;
            // Where kinds meet, the corner stands half way between the two rays.
            var first = isWhole ? start : start - 0.5;
            var previous = rays[(start + count - 1) % count];
            if (kind != SkylineKind.Land)
            {
                points.Add(Point(first, count, isWhole || previous.Kind != SkylineKind.Land ? 0 : previous.AltitudeDegrees, kind));
                continue;
            }

            line.Add((first, rays[start].AltitudeDegrees));
            for (var i = isWhole ? 1 : 0; i < length; i++) line.Add((start + i, rays[(start + i) % count].AltitudeDegrees));
            line.Add((isWhole ? start + count : start + length - 0.5, rays[isWhole ? start : (start + length - 1) % count].AltitudeDegrees));
            foreach (var (azimuth, altitude) in Simplified(line, tolerance)) points.Add(Point(azimuth, count, altitude, kind));
        }

        // Two corners that rounding brings onto one azimuth: the later one begins the piece.
        return [.. points.GroupBy(point => point.AzimuthDegrees).Select(group => group.Last())];
    }

    private static SkylinePoint Point(double ray, int count, double altitude, SkylineKind kind)
    {
        var azimuth = Math.Round((ray / count * 360 + 360) % 360, 2);
        return new SkylinePoint(azimuth >= 360 ? 0 : azimuth, Math.Round(altitude, 2) + 0.0, kind);
    }

    // Maximal runs of a kind round the circle; all of one kind begins at its highest ray, which stays a corner.
    private static List<(int Start, int Length)> Runs(ReadOnlySpan<RayEdge> rays)
    {
        var count = rays.Length;
        var starts = new List<int>();
        for (var i = 0; i < count; i++)
            if (rays[i].Kind != rays[(i + count - 1) % count].Kind) starts.Add(i);
        if (starts.Count == 0)
        {
            var highest = 0;
            for (var i = 1; i < count; i++)
                if (rays[i].AltitudeDegrees > rays[highest].AltitudeDegrees) highest = i;
            return [(rays[0].Kind == SkylineKind.Land ? highest : 0, count)];
        }

        return [.. starts.Select((start, i) => (start, i + 1 < starts.Count ? starts[i + 1] - start : starts[0] + count - start))];
    }

    // All but the last point, which the next piece begins with.
    private static List<(double, double)> Simplified(List<(double Azimuth, double Altitude)> line, double tolerance)
    {
        var keep = new bool[line.Count];
        keep[0] = true;
        var open = new Stack<(int From, int To)>();
        open.Push((0, line.Count - 1));
        while (open.TryPop(out var piece))
        {
            var (from, to) = (line[piece.From], line[piece.To]);
            var (farthest, distance) = (-1, tolerance);
            for (var i = piece.From + 1; i < piece.To; i++)
            {
                var straight = from.Altitude + (to.Altitude - from.Altitude) * (line[i].Azimuth - from.Azimuth) / (to.Azimuth - from.Azimuth);
                var off = Math.Abs(line[i].Altitude - straight);
                if (off > distance) (farthest, distance) = (i, off);
            }

            if (farthest < 0) continue;
            keep[farthest] = true;
            open.Push((piece.From, farthest));
            open.Push((farthest, piece.To));
        }

        return [.. line.Where((_, i) => keep[i])];
    }
}
