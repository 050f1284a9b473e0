namespace Foreshore.Guide.Shell.Ink;

/// <summary>Keeps short labels along a line from touching each other.</summary>
public static class LabelRows
{
    /// <summary>
    /// For each label, in the order given, the row it stands in, so that two labels of one row are at least
    /// <paramref name="apart"/> apart; row 0 lies nearest to the line and is filled first. Labels are taken from left to right.
    /// </summary>
    public static IReadOnlyList<int> Stack(IReadOnlyList<double> places, double apart)
    {
        var rows = new int[places.Count];
        var ends = new List<double>();
        foreach (var i in Enumerable.Range(0, places.Count).OrderBy(i => places[i]))
        {
            var row = ends.FindIndex(end => places[i] - end >= apart);
            if (row < 0) (row, _) = (ends.Count, Add(ends));
            (rows[i], ends[row]) = (row, places[i]);
        }
        return rows;

        static double Add(List<double> to)
        {
            to.Add(double.NegativeInfinity);
            return 0;
        }
    }

    /// <summary>
    /// For each label, in the order given, a place as near to its own as a spacing of at least <paramref name="apart"/> and the
    /// two ends allow (pool-adjacent-violators: Ayer and others, "An empirical distribution function for sampling with
    /// incomplete information", 1955). When they cannot all fit they are spaced evenly.
    /// </summary>
    public static IReadOnlyList<double> Spread(IReadOnlyList<double> places, double apart, double from, double to)
    {
        var count = places.Count;
        var spread = new double[count];
        if (count == 0) return spread;
        if (count > 1) apart = Math.Min(apart, (to - from) / (count - 1));
        var order = Enumerable.Range(0, count).OrderBy(i => places[i]).ToArray();

        // With the spacing taken off, "at least apart" becomes "never falling", and the nearest such sequence is one of means.
        var pools = new List<(double Sum, int Size)>();
        for (var k = 0; k < count; k++)
        {
            pools.Add((places[order[k]] - k * apart, 1));
            while (pools.Count > 1 && pools[^2].Sum / pools[^2].Size > pools[^1].Sum / pools[^1].Size)
            {
                pools[^2] = (pools[^2].Sum + pools[^1].Sum, pools[^2].Size + pools[^1].Size);
                pools.RemoveAt(pools.Count - 1);
            }
        }

        var next = 0;
        foreach (var (sum, size) in pools)
            for (var j = 0; j < size; j++, next++)
                spread[order[next]] = Math.Clamp(sum / size, from, Math.Max(from, to - (count - 1) * apart)) + next * apart;
        return spread;
    }
}
