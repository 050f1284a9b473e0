using System.Numerics;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Benchmarks;

/// <summary>
/// Sun, per place-instant or per year of one place, beside the least that any method must do, measured in the same run:
/// the column Ratio. Targets, warm, on two cores: directions 1 ns, azimuths and altitudes 20 ns, a year of rise, set,
/// civil dawn and dusk 0.5 ms.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
[GroupBenchmarksBy(BenchmarkLogicalGroupRule.ByCategory)]
[CategoriesColumn]
public class SunBenchmarks
{
    private const int Minutes = 4096;
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly Position Place = new(44.7, -67.1);
    private static readonly Duration Minute = Duration.FromMinutes(1);
    private readonly SunEphemeris ephemeris = SunEphemeris.Covering(Start, Start + Duration.FromDays(366));
    private readonly double[] x = new double[Minutes], y = new double[Minutes], z = new double[Minutes];
    private readonly double[] east = new double[Minutes], north = new double[Minutes], up = new double[Minutes];
    private readonly float[] azimuths = new float[Minutes], altitudes = new float[Minutes];

    [GlobalSetup]
    public void Fill() => ephemeris.Directions(Place, Start, Minute, x, y, z);

    [BenchmarkCategory("directions"), Benchmark(Baseline = true, OperationsPerInvoke = Minutes, Description = "floor: turn stored vectors")]
    public void TurnOnly()
    {
        Vector<double> sin = new(0.7), cos = new(0.714), sinTurn = new(0.92), cosTurn = new(0.39);
        for (var i = 0; i < Minutes; i += Vector<double>.Count)
        {
            Vector<double> a = new(x, i), b = new(y, i), c = new(z, i);
            var meridian = a * cosTurn - b * sinTurn;
            (a * sinTurn + b * cosTurn).CopyTo(east, i);
            (cos * c - sin * meridian).CopyTo(north, i);
            (sin * c + cos * meridian).CopyTo(up, i);
        }
    }

    [BenchmarkCategory("directions"), Benchmark(OperationsPerInvoke = Minutes)]
    public void Directions() => ephemeris.Directions(Place, Start, Minute, east, north, up);

    [BenchmarkCategory("angles"), Benchmark(Baseline = true, OperationsPerInvoke = Minutes, Description = "floor: two arc functions of stored vectors")]
    public void ArcFunctionsOnly()
    {
        for (var i = 0; i < Minutes; i++)
        {
            azimuths[i] = MathF.Atan2((float)x[i], (float)y[i]);
            altitudes[i] = MathF.Asin((float)z[i]);
        }
    }

    [BenchmarkCategory("angles"), Benchmark(OperationsPerInvoke = Minutes)]
    public void AzimuthsAltitudes() => ephemeris.AzimuthsAltitudes(Place, Start, Minute, azimuths, altitudes);

    [BenchmarkCategory("year of events"), Benchmark(Baseline = true, Description = "floor: one arc cosine, sine and cosine an event")]
    public double ClosedFormOnly()
    {
        var sum = 0.0;
        for (var i = 0; i < 1460; i++)
        {
            var (sin, cos) = Math.SinCos(i * 0.0043);
            sum += Math.Acos((-0.0145 - 0.28 * sin) / (0.71 + 0.2 * cos));
        }

        return sum;
    }

    [BenchmarkCategory("year of events"), Benchmark]
    public int RiseSetCivilDawnDusk()
    {
        var year = new Interval(Start, Start + Duration.FromDays(365));
        return SunCrossings.OfAltitude(SunDisc.StandardAltitudeDegrees, Place, year, ephemeris).Count
            + SunCrossings.OfAltitude(-6, Place, year, ephemeris).Count;
    }

    [BenchmarkCategory("year of ephemeris"), Benchmark(Baseline = true, Description = "floor: the cosines of the series alone")]
    public double SeriesOnly()
    {
        var sum = 0.0;
        for (var day = 0; day < 377; day++)
            for (var term = 0; term < 192 + 126; term++)
                sum += Math.Cos(day + 0.1 * term);
        return sum;
    }

    [BenchmarkCategory("year of ephemeris"), Benchmark]
    public SunEphemeris Covering() => SunEphemeris.Covering(Start, Start + Duration.FromDays(366));
}
