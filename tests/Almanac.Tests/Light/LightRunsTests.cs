using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class LightRunsTests
{
    private static readonly WantedLight[] All = Enum.GetValues<WantedLight>();
    private static readonly Duration Minute = Duration.FromMinutes(1);
    private static readonly Duration Fine = Duration.FromSeconds(2);

    // Latitude, longitude, eye height in metres (1 km: an edge of the sea nearly a degree down), skyline.
    public static TheoryData<double, double, double, string> Places => new()
    {
        { 44.9, -66.99, 10, "sea" }, { 44.9, -66.99, 40, "bay" }, { 0, 0, 0, "bay" }, { 0.5, 179.9, 25, "sea" }, { 22, -160, 3, "bay" },
        { 78, 15.6, 12, "bay" }, { 66.6, 25, 1000, "sea" }, { 69, 17, 30, "bay" }, { -44, -176.5, 5, "bay" }, { -67, 140, 8, "bay" }, { 85, -30, 0, "sea" },
    };

    [Theory]
    [MemberData(nameof(Places))]
    public void Runs_equal_the_minute_by_minute_definition(double latitude, double longitude, double eyeMetres, string skyline)
    {
        var observer = new Observer(new Position(latitude, longitude), eyeMetres, skyline == "bay" ? Coast.Bay : Skyline.AssumedSea);
        var (runs, grazing) = (0, 0);
        foreach (var facing in new[] { 5.0, 100, 290 })
        {
            var scene = Coast.Scene(observer, facing, All);
            var scan = new MinuteScan(scene, Coast.Year2026);
            for (var month = 1; month <= 12; month++)
            {
                var from = Instant.FromUtc(2026, month, 4 + 2 * month, 0, 0);
                var to = from + Duration.FromDays(2);
                var answer = LightRuns.Between(scene, from, to, Coast.Year2026);
                var rows = scan.Rows(All, from, to, Minute);
                foreach (var light in All)
                {
                    var quick = answer.Runs.Concat(answer.Possible).Where(run => run.Light == light).ToList();
                    grazing += Compare(quick, rows[light], Duration.FromMinutes(LightTable.Of(light).LeastMinutes), scan, new Interval(from, to));
                    runs += quick.Count;
                }
            }
        }

        Assert.True(runs > 300, $"{runs} runs");
        Assert.True(grazing * 50 <= runs, $"{grazing} of {runs} grazing");
    }

    /// <summary>
    /// Same runs, ends within a minute. What differs is grazing: a gap, or a length above the least, of under a minute,
    /// which the scan steps over. It is counted, and then the same definition asked every two seconds must bear it out.
    /// </summary>
    private static int Compare(List<LightRun> quick, List<LightRun> rows, Duration least, MinuteScan scan, Interval span)
    {
        var alone = quick.Where(run => !rows.Exists(row => AreNear(row, run, Minute))).ToList();
        var missing = rows.Where(row => row.Length >= least && !quick.Exists(run => AreNear(row, run, Minute))).ToList();
        foreach (var odd in alone.Concat(missing))
        {
            var (from, to) = (Instant.Max(span.Start, odd.Start - Minute * 15), Instant.Min(span.End, odd.End + Minute * 15));
            var fine = scan.Rows([odd.Light], from, to, Fine)[odd.Light];
            if (quick.Contains(odd))
                Assert.True(fine.Exists(row => AreNear(row, odd, Fine * 2)), $"{odd} is not in the fine scan either: {string.Join("; ", fine)}");
            else
                foreach (var row in fine.Where(row => row.Length > least + Fine * 2 && row.Start > from && row.End < to))
                    Assert.True(quick.Exists(run => AreNear(row, run, Fine * 2)), $"{row} is in both scans, and missing: {string.Join("; ", quick)}");
        }

        return alone.Count + missing.Count;
    }

    private static bool AreNear(LightRun a, LightRun b, Duration most) => IsNear(a.Start, b.Start, most) && IsNear(a.End, b.End, most);

    private static bool IsNear(Instant a, Instant b, Duration most) => a - b <= most && b - a <= most;
}
