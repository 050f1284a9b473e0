using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Benchmarks;

/// <summary>
/// A year of tide at 37 constituents, beside the least that any method must do, measured in the same run: the column Ratio.
/// Targets, warm: one-minute heights 4 ms, high and low waters 1.5 ms, each with the curve made anew.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
[GroupBenchmarksBy(BenchmarkLogicalGroupRule.ByCategory)]
[CategoriesColumn]
public class TideBenchmarks
{
    private const int Minutes = 365 * 1440;
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly Instant End = Start + Duration.FromDays(365);
    private static readonly string[] Names =
        ["M2", "S2", "N2", "K1", "M4", "O1", "M6", "MK3", "S4", "MN4", "NU2", "S6", "MU2", "2N2", "OO1", "LAM2", "S1", "M1", "J1", "MM", "SSA", "SA", "MSF", "MF", "RHO", "Q1", "T2", "R2", "2Q1", "P1", "2SM2", "M3", "L2", "2MK3", "K2", "M8", "MS4"];
    private readonly double[] heights = new double[Minutes];
    private HarmonicTide tide = null!;

    [GlobalSetup]
    public void Make() =>
        tide = new HarmonicTide([.. Names.Select((name, i) => new HarmonicConstant(Constituents.Of(name), 1.2 / (1 + i), 47 * i % 360))], 2, NodalModel.Schureman);

    [BenchmarkCategory("year of minutes"), Benchmark(Baseline = true, Description = "floor: a cubic a minute")]
    public double CubicsOnly()
    {
        for (var i = 0; i < heights.Length; i++)
        {
            var u = i % 15 / 15.0;
            heights[i] = 1 + u * (0.3 + u * (0.2 + u * 0.1));
        }

        return heights[^1];
    }

    [BenchmarkCategory("year of minutes"), Benchmark]
    public void HeightsEachMinute() => tide.Between(Start, End).Metres(Start, Duration.FromMinutes(1), heights);

    [BenchmarkCategory("year of waters"), Benchmark(Baseline = true, Description = "floor: sine and cosine of each constituent a water")]
    public double SinesOnly()
    {
        var sum = 0.0;
        for (var i = 0; i < 1411 * Names.Length; i++)
        {
            var (sin, cos) = Math.SinCos(0.37 * i);
            sum += sin + 0.5 * cos;
        }

        return sum;
    }

    [BenchmarkCategory("year of waters"), Benchmark]
    public int HighsAndLows() => tide.Between(Start, End).Extremes.Count;
}
