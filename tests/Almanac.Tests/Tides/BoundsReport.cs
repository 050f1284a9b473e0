using System.Globalization;
using System.Text;
using Foreshore.Almanac.Checks;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// Lowest and highest astronomical tide of every station against those that the dataset gives: docs/tides.md. All of them take
/// minutes, so the page is written on demand (FORESHORE_WRITE_TIDES=1), and a fixed sample is held to what it says.
/// </summary>
public class BoundsReport
{
    private const int FirstYear = 2020;
    private const int Every = 389;
    private static readonly string Page = Path.Combine(Repository.Root, "docs", "tides.md");

    private readonly record struct Row(string Id, bool IsSubordinate, double Otherwise, double StoredLowest, double Lowest, double StoredHighest, double Highest)
    {
        internal double Largest => Math.Max(Math.Abs(Lowest - StoredLowest), Math.Abs(Highest - StoredHighest));

        public override string ToString() => string.Create(CultureInfo.InvariantCulture,
            $"| {Id} | {StoredLowest:F3} | {Lowest:F3} | {StoredHighest:F3} | {Highest:F3} | {Largest:F3} | {Otherwise:F3} |");
    }

    [Fact]
    public void Sample_is_what_the_page_says()
    {
        var ids = StationTides.BoundedIds;
        if (Environment.GetEnvironmentVariable("FORESHORE_WRITE_TIDES") == "1") File.WriteAllText(Page, Text([.. ids.AsParallel().AsOrdered().Select(Of)]));

        var page = File.ReadAllLines(Page);
        var sample = ids.Where((_, index) => index % Every == 0).ToList();
        Assert.True(sample.Count >= 12);
        Assert.All(sample, id => Assert.Contains(Of(id).ToString(), page));
    }

    private static Row Of(string id)
    {
        var tide = StationTides.Of(id, NodalModel.Iho, []);
        var (highest, lowest) = (double.NegativeInfinity, double.PositiveInfinity);
        for (var year = FirstYear; year < FirstYear + 19; year++)
        {
            var curve = tide.Between(Instant.FromUtc(year, 1, 1, 0, 0), Instant.FromUtc(year + 1, 1, 1, 0, 0));
            (highest, lowest) = (Math.Max(highest, curve.Highest.Metres), Math.Min(lowest, curve.Lowest.Metres));
        }

        var stored = StationTides.Bounds(id);
        var harmonic = tide as HarmonicTide ?? (HarmonicTide)((SubordinateTide)tide).Reference;
        var otherwise = harmonic.Constants.Where(one => StationTides.Apart.Contains(one.Constituent.Name)).Sum(one => one.AmplitudeMetres);
        return new Row(id, tide is SubordinateTide, otherwise, stored.Lowest, lowest, stored.Highest, highest);
    }

    private static string Text(Row[] rows)
    {
        var text = new StringBuilder();
        Line("# Lowest and highest astronomical tide");
        Line();
        Line("Every station of data/tides/stations.json.br for which the dataset gives a lowest and a highest astronomical tide, against the lowest and");
        Line(Invariant($"highest water of this project's own prediction with all constituents, node corrections after the IHO, {FirstYear} to {FirstYear + 18}. Metres above"));
        Line("chart datum. The dataset's come from another span of years and another program, npm package @neaps/tide-predictor, and from the publishing");
        Line("office where there is one. Written by `FORESHORE_WRITE_TIDES=1 ./test almanac`; a sample is held to it in every run.");
        Line();
        Line("| stations | number | rms, lowest | rms, highest | within 3 cm | within 10 cm | over 30 cm | worst |");
        Line("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var kind in rows.GroupBy(row => (Source: row.Id[..row.Id.IndexOf('/', StringComparison.Ordinal)], row.IsSubordinate)).OrderBy(kind => kind.Key))
            Summary($"{kind.Key.Source}, {(kind.Key.IsSubordinate ? "subordinate" : "own constants")}", [.. kind]);
        Summary("all", rows);
        Line();
        Line("*Waves apart*: amplitudes, together, of the waves that the two programs turn differently (M1, M3, 3N2, some of shallow water); at worst twice");
        Line("that explains a difference, of M1 three times: the dataset's own bounds read TICON's M1 as NOAA's (below).");
        Line();
        Line("The farthest, Longview, is a gauge on a river, 100 km from the sea: its waves of a year and half a year (SA 0.43 m, SSA 0.23 m), which a");
        Line("gauge there has from the river, seem to be left out of the dataset's bounds.");
        foreach (var line in M1Report.Lines()) Line(line);
        Table("## The twenty farthest apart", rows.OrderByDescending(row => row.Largest).Take(20));
        Table(Invariant($"## Every {Every}th station"), rows.Where((_, index) => index % Every == 0));
        return text.ToString();

        void Line(string line = "") => text.Append(line).Append('\n');

        void Summary(string name, Row[] some) => Line(Invariant(
            $"| {name} | {some.Length} | {Rms(some, row => row.Lowest - row.StoredLowest):F3} | {Rms(some, row => row.Highest - row.StoredHighest):F3} | {some.Count(row => row.Largest <= 0.03)} | {some.Count(row => row.Largest <= 0.1)} | {some.Count(row => row.Largest > 0.3)} | {some.Max(row => row.Largest):F3} |"));

        void Table(string title, IEnumerable<Row> some)
        {
            Line();
            Line(title);
            Line();
            Line("| station | lowest, dataset | here | highest, dataset | here | largest difference | waves apart |");
            Line("| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
            foreach (var row in some) Line(row.ToString());
        }
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    private static double Rms(Row[] rows, Func<Row, double> difference) => Math.Sqrt(rows.Average(row => difference(row) * difference(row)));
}
