using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>Makes season tables.</summary>
public static class SeasonTables
{
    private const double LeastBestShare = 0.2;
    private const int MostBestHours = 3;
    // Runs that begin before the first month or end after the last are taken whole; none needs more than this to count.
    private const double Beyond = 1.0 / 24;

    /// <summary>
    /// Twelve whole local months from one. A day counts for a clock hour when a run of a wanted light, its own and long
    /// enough, has five minutes or its greater part in that hour.
    /// </summary>
    /// <param name="scene">From where, which picture, which lights.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="first">The first month.</param>
    /// <param name="hours">The hours somebody goes out: months rank by the minutes within them.</param>
    /// <param name="ephemeris">Covers the twelve months.</param>
    /// <param name="usable">
    /// What tide and access leave of the months, where a limit, a wish or a way asks for them: the second layer. Null: none.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The months leave the ephemeris.</exception>
    public static SeasonTable For(Scene scene, DateTimeZone zone, YearMonth first, HoursOut hours, SkyEphemeris ephemeris, UsableTime? usable = null)
    {
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(ephemeris);
        var grid = new SeasonGrid(first, zone);
        ephemeris.Sun.DaysOf(JulianDay.FromDays(grid.From));
        ephemeris.Sun.DaysOf(JulianDay.FromDays(grid.To));

        var layers = new List<SeasonLayer>();
        var known = new List<(LightRow Row, IReadOnlyList<Stretch> Stretches)>();
        var used = new List<(LightRow Row, IReadOnlyList<Stretch> Stretches)>();
        var unknown = new List<WantedLight>();
        var anyMarked = new bool[grid.HourCells];
        foreach (var (row, stretches) in LightRuns.Holding(scene, grid.From - Beyond, grid.To + Beyond, ephemeris))
        {
            if (!row.IsComputed)
            {
                if (stretches.Exists(stretch => stretch.End > grid.From && stretch.Start < grid.To)) unknown.Add(row.Light);
                continue;
            }

            var marked = new bool[grid.HourCells];
            grid.Mark(stretches, marked);
            for (var cell = 0; cell < marked.Length; cell++)
                anyMarked[cell] |= marked[cell];
            var months = Months(grid, marked, stretches, row.IsOfTheNight, hours);
            layers.Add(new SeasonLayer(row.Light, months, BestHours(months)));
            known.Add((row, stretches));
            if (usable is not null) used.Add((row, usable.Cut(row, stretches)));
        }

        var together = known.Count == 1 ? layers[0].Months : Months(grid, anyMarked, known, hours);
        return new SeasonTable(together, BestHours(together), layers, unknown, LightRuns.CautionsOf(scene))
        {
            Use = usable is null ? null : Use(grid, used, hours),
        };
    }

    /// <summary>The second layer: the same counting over what is left of each light's own runs.</summary>
    private static SeasonUse Use(SeasonGrid grid, List<(LightRow Row, IReadOnlyList<Stretch> Stretches)> used, HoursOut hours)
    {
        var marked = new bool[grid.HourCells];
        foreach (var (_, stretches) in used)
            grid.Mark(stretches, marked);
        var months = Months(grid, marked, used, hours);
        return new SeasonUse(months, BestHours(months));
    }

    private static SeasonMonth[] Months(SeasonGrid grid, bool[] marked, IReadOnlyList<Stretch> stretches, bool ofTheNight, HoursOut hours) =>
        Months(grid, marked, grid.MeanMinutes(stretches, hours.For(ofTheNight)), grid.MeanMinutes(stretches, HoursOut.Unrestricted));

    /// <summary>Several lights together. Those of the night and the others never hold in the same minute, for the sun stands below −12 degrees or above.</summary>
    private static SeasonMonth[] Months(SeasonGrid grid, bool[] marked, List<(LightRow Row, IReadOnlyList<Stretch> Stretches)> lights, HoursOut hours)
    {
        double[] Minutes(bool ofTheNight, HoursOut within) =>
            grid.MeanMinutes(Stretch.Union(lights.Where(light => light.Row.IsOfTheNight == ofTheNight).Select(light => light.Stretches)), within);
        return Months(grid, marked,
            [.. Minutes(true, hours.For(true)).Zip(Minutes(false, hours), (night, other) => night + other)],
            grid.MeanMinutes(Stretch.Union(lights.Select(light => light.Stretches)), HoursOut.Unrestricted));
    }

    private static SeasonMonth[] Months(SeasonGrid grid, bool[] marked, double[] within, double[] unrestricted)
    {
        var shares = grid.Shares(marked);
        var (ranks, unrestrictedRanks) = (Ranks(within), Ranks(unrestricted));
        return
        [
            .. grid.Months.Select((month, i) =>
                new SeasonMonth(month, shares[i], within[i], unrestricted[i], ranks[i], unrestrictedRanks[i])),
        ];
    }

    /// <summary>1 for the most minutes; of equals the earlier month first; none for nought.</summary>
    private static int?[] Ranks(double[] minutes)
    {
        var ranks = new int?[minutes.Length];
        var rank = 0;
        foreach (var month in Enumerable.Range(0, minutes.Length).Where(month => minutes[month] > 0).OrderByDescending(month => minutes[month]))
            ranks[month] = ++rank;
        return ranks;
    }

    /// <summary>Clock hours by the greatest share they reach in any month; of equals the hour of the better month, then the earlier.</summary>
    private static SeasonHour[] BestHours(IReadOnlyList<SeasonMonth> months)
    {
        var byRank = months.OrderBy(month => month.Rank ?? int.MaxValue).ThenBy(month => month.UnrestrictedRank ?? int.MaxValue).ToList();
        return
        [
            .. byRank
                .SelectMany((month, rank) => month.ShareByHour.Select((share, hour) => (Cell: new SeasonHour(month.Month, hour, share), rank)))
                .Where(one => one.Cell.Share >= LeastBestShare)
                .GroupBy(one => one.Cell.Hour)
                .Select(hour => hour.MaxBy(one => (one.Cell.Share, -one.rank)))
                .OrderByDescending(one => one.Cell.Share).ThenBy(one => one.rank).ThenBy(one => one.Cell.Hour)
                .Select(one => one.Cell)
                .Take(MostBestHours),
        ];
    }
}
