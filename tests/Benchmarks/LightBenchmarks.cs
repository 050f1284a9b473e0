using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Benchmarks;

/// <summary>
/// Season tables, beside the least that any method must do, measured in the same run: the column Ratio. The floor is one
/// arc cosine, sine and cosine for each time the sun passes the two bounds of golden light in a year, times the number of
/// tables. Targets, warm, on two cores: one table 3 ms, tables of 1,000 compositions 2 s.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
[GroupBenchmarksBy(BenchmarkLogicalGroupRule.ByCategory)]
[CategoriesColumn]
public class LightBenchmarks
{
    private const int Compositions = 1000;
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly YearMonth First = new(2026, 1);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly ParallelOptions TwoCores = new() { MaxDegreeOfParallelism = 2 };

    // Land, sea and an unrecorded piece, as a club's warden would note them down.
    private static readonly Skyline Bay = new(
    [
        new SkylinePoint(0, 2, SkylineKind.Land), new SkylinePoint(40, 5, SkylineKind.Land), new SkylinePoint(60, 1, SkylineKind.Sea),
        new SkylinePoint(95, 0.5, SkylineKind.Land), new SkylinePoint(100, 4, SkylineKind.Land), new SkylinePoint(104, 9, SkylineKind.Land),
        new SkylinePoint(106, 3, SkylineKind.Land), new SkylinePoint(120, 0, SkylineKind.Sea), new SkylinePoint(200, 1, SkylineKind.Unknown),
        new SkylinePoint(230, 4, SkylineKind.Land), new SkylinePoint(300, 12, SkylineKind.Land), new SkylinePoint(330, 3, SkylineKind.Land),
    ]);

    private static readonly WantedLight[] Sunny =
    [
        WantedLight.SunInFrame, WantedLight.SunburstOverSkyline, WantedLight.BackLight, WantedLight.SideLight, WantedLight.FrontLight,
        WantedLight.GoldenLight, WantedLight.TwilightGlow, WantedLight.AntiTwilightArch, WantedLight.BlueLight, WantedLight.AnyDaylight,
    ];

    private readonly SkyEphemeris ephemeris = SkyEphemeris.Covering(Start - Duration.FromDays(3), Start + Duration.FromDays(370));

    [Params("golden light over the sea", "golden light over a bay", "sun in frame over a bay", "golden, glow and blue over a bay")]
    public string Wish { get; set; } = "";

    private Scene One => Wish switch
    {
        "golden light over the sea" => SceneOf(0, Skyline.AssumedSea, WantedLight.GoldenLight),
        "golden light over a bay" => SceneOf(0, Bay, WantedLight.GoldenLight),
        "sun in frame over a bay" => SceneOf(0, Bay, WantedLight.SunInFrame),
        _ => SceneOf(0, Bay, WantedLight.GoldenLight, WantedLight.TwilightGlow, WantedLight.BlueLight),
    };

    [BenchmarkCategory("a season table"), Benchmark(Baseline = true, Description = "floor: one arc cosine, sine and cosine a passage")]
    public double PassagesOnly() => Passages(0);

    [BenchmarkCategory("a season table"), Benchmark]
    public SeasonTable SeasonTable() => SeasonTables.For(One, Zone, First, HoursOut.Unrestricted, ephemeris);

    [BenchmarkCategory("a season table"), Benchmark(Description = "next good dates")]
    public IReadOnlyList<GoodDate> NextGoodDates() => GoodDates.Next(One, Zone, Start, ephemeris);

    private static Scene SceneOf(int i, Skyline skyline, params WantedLight[] wanted) => new(
        new Observer(new Position(44.4 + 0.0005 * i, -67.0 - 0.001 * i), 8 + i % 30, skyline),
        new Frame(Bearing.FromDegrees(100 + 37 * i), 0, new Lens(16 + i % 90, Sensor.FullFrame, Orientation.Landscape)),
        wanted);

    private static double Passages(int seed)
    {
        var sum = 0.0;
        for (var i = 0; i < 1460; i++)
        {
            var (sin, cos) = Math.SinCos((i + seed) * 0.0043);
            sum += Math.Acos((-0.0145 - 0.28 * sin) / (0.71 + 0.2 * cos));
        }

        return sum;
    }

    /// <summary>1,000 compositions on two cores: half over the sea, half over a bay, one to three of the ten lights each.</summary>
    [ShortRunJob]
    [MemoryDiagnoser]
    public class Club
    {
        private readonly LightBenchmarks shared = new();
        private readonly Scene[] scenes =
        [
            .. Enumerable.Range(0, Compositions).Select(i =>
                SceneOf(i, i % 2 == 0 ? Skyline.AssumedSea : Bay, [.. Enumerable.Range(0, 1 + i % 3).Select(j => Sunny[(i + 3 * j) % Sunny.Length])])),
        ];

        [Benchmark(Baseline = true, Description = "floor: one arc cosine, sine and cosine a passage")]
        public double PassagesOnly()
        {
            var sums = new double[Compositions];
            Parallel.For(0, Compositions, TwoCores, i => sums[i] = Passages(i));
            return sums.Sum();
        }

        [Benchmark(Description = "season tables of 1,000 compositions")]
        public int SeasonTables()
        {
            var tables = new SeasonTable[Compositions];
            Parallel.For(0, Compositions, TwoCores, i =>
                tables[i] = Almanac.Light.SeasonTables.For(scenes[i], Zone, First, HoursOut.Unrestricted, shared.ephemeris));
            return tables.Length;
        }
    }
}
