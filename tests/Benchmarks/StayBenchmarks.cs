using BenchmarkDotNet.Attributes;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Benchmarks;

/// <summary>
/// Season tables with both layers, light and what tide and access leave of it: 1,000 compositions that share 100 stations of
/// 37 constituents, on two cores, the stations' curves made in the run. Target, warm: 4 s. The floor is the least that any
/// method must do for the second layer: a cubic for each passage of the tide through two levels, and an arc cosine, sine and
/// cosine for each passage of the sun through −6 degrees, in a year.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class StayBenchmarks
{
    private const int Compositions = 1000;
    private const int StationCount = 100;
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly (Instant From, Instant To) Year = (Start - Duration.FromDays(3), Start + Duration.FromDays(370));
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly ParallelOptions TwoCores = new() { MaxDegreeOfParallelism = 2 };

    private static readonly string[] Names =
        ["M2", "S2", "N2", "K1", "M4", "O1", "M6", "MK3", "S4", "MN4", "NU2", "S6", "MU2", "2N2", "OO1", "LAM2", "S1", "M1", "J1", "MM", "SSA", "SA", "MSF", "MF", "RHO", "Q1", "T2", "R2", "2Q1", "P1", "2SM2", "M3", "L2", "2MK3", "K2", "M8", "MS4"];

    private static readonly WantedLight[] Sunny =
        [WantedLight.SunInFrame, WantedLight.BackLight, WantedLight.SideLight, WantedLight.GoldenLight, WantedLight.TwilightGlow, WantedLight.BlueLight, WantedLight.AnyDaylight];

    private readonly SkyEphemeris sky = SkyEphemeris.Covering(Year.From, Year.To);
    private readonly HarmonicTide[] stations = [.. Enumerable.Range(0, StationCount).Select(Station)];

    [Benchmark(Baseline = true, Description = "floor: a cubic or three arc functions a passage")]
    public double PassagesOnly()
    {
        var sums = new double[Compositions];
        Parallel.For(0, Compositions, TwoCores, i => sums[i] = Passages(i));
        return sums.Sum();
    }

    [Benchmark(Description = "joined season tables of 1,000 compositions at 100 stations")]
    public int JoinedTables()
    {
        var curves = new TideCurve[StationCount];
        Parallel.For(0, StationCount, TwoCores, i => curves[i] = stations[i].Between(Year.From, Year.To));
        var marks = new int[Compositions];
        Parallel.For(0, Compositions, TwoCores, i => marks[i] = Joined(i, curves[i % StationCount]).Use!.Months.Count);
        return marks.Sum();
    }

    private SeasonTable Joined(int i, TideCurve tide)
    {
        var position = new Position(44.4 + 0.0005 * i, -67.0 - 0.001 * i);
        var plan = new StayPlan(position, Zone)
        {
            IsReachedByWater = true,
            CutOffIsRecorded = true,
            IsWaveExposed = i % 2 == 0,
            LedgeLimitMetres = 2 + i % 7 * 0.3,
            TideGates = i % 3 == 0 ? [new TideGate("bar", 2.2 + i % 5 * 0.2, 12, TakesWaves: false)] : [],
            WalkIn = 20,
            WalkOut = 25,
            BeyondReach = 8,
            WatchPlace = 4,
        };
        var wish = i % 2 == 0 ? new WantedTide { LowestMetres = 0.5, HighestMetres = 2.5 } : new WantedTide { AboutHighWater = false, FromMinutes = -90, ToMinutes = 90 };
        var usable = UsableTime.Of(plan, wish, null, tide, _ => null, Year.From, Year.To, sky.Sun);
        var scene = new Scene(
            new Observer(position, 8 + i % 30, Skyline.AssumedSea),
            new Frame(Bearing.FromDegrees(100 + 37 * i), 0, new Lens(16 + i % 90, Sensor.FullFrame, Orientation.Landscape)),
            [.. Enumerable.Range(0, 1 + i % 3).Select(j => Sunny[(i + 2 * j) % Sunny.Length])]);
        return SeasonTables.For(scene, Zone, new YearMonth(2026, 1), HoursOut.Unrestricted, sky, usable);
    }

    private static HarmonicTide Station(int i) =>
        new([.. Names.Select((name, j) => new HarmonicConstant(Constituents.Of(name), (1.2 + i * 0.01) / (1 + j), (47 * j + 13 * i) % 360))], 2, NodalModel.Schureman);

    private static double Passages(int seed)
    {
        var sum = 0.0;
        for (var i = 0; i < 730; i++)
        {
            var (sin, cos) = Math.SinCos((i + seed) * 0.0043);
            sum += Math.Acos((-0.1 - 0.28 * sin) / (0.71 + 0.2 * cos));
        }

        for (var i = 0; i < 2 * 1411; i++)
        {
            var u = (i + seed) % 15 / 15.0;
            sum += 1 + u * (0.3 + u * (0.2 + u * 0.1));
        }

        return sum;
    }
}
