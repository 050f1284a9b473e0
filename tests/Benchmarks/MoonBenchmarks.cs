using BenchmarkDotNet.Attributes;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using NodaTime;

namespace Foreshore.Benchmarks;

/// <summary>
/// Moon, per place-instant, with an ephemeris shared by all places, beside the least that any method must do. Target, warm,
/// on two cores: azimuth and altitude 25 ns.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class MoonBenchmarks
{
    private const int Minutes = 4096;
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly Position Place = new(44.7, -67.1);
    private static readonly Duration Minute = Duration.FromMinutes(1);
    private readonly MoonEphemeris ephemeris = MoonEphemeris.Covering(Start, Start + Duration.FromDays(366));
    private readonly double[] east = new double[Minutes], north = new double[Minutes], up = new double[Minutes];
    private readonly float[] azimuths = new float[Minutes], altitudes = new float[Minutes];

    [GlobalSetup]
    public void Fill() => ephemeris.Directions(Place, Start, Minute, east, north, up);

    [Benchmark(Baseline = true, OperationsPerInvoke = Minutes, Description = "floor: two arc functions of stored vectors")]
    public void ArcFunctionsOnly()
    {
        for (var i = 0; i < Minutes; i++)
        {
            azimuths[i] = MathF.Atan2((float)east[i], (float)north[i]);
            altitudes[i] = MathF.Asin((float)up[i]);
        }
    }

    [Benchmark(OperationsPerInvoke = Minutes)]
    public void AzimuthsAltitudes() => ephemeris.AzimuthsAltitudes(Place, Start, Minute, azimuths, altitudes);

    [Benchmark(Description = "making sun, moon and galaxy for 435 days")]
    public SkyEphemeris Covering() => SkyEphemeris.Covering(Start, Start + Duration.FromDays(435));
}
