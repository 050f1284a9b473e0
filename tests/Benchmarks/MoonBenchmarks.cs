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
    private readonly Observer sea = new(Place, 6, Skyline.AssumedSea);
    private readonly Observer land = new(Place, 6, new Skyline(Enumerable.Range(0, 12).Select(i => new SkylinePoint(i * 30, 1 + i % 5 * 1.5, SkylineKind.Land))));
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

    /// <summary>Target: a millisecond.</summary>
    [Benchmark(Description = "a year of rise, transit and set over the sea")]
    public Instant? YearOverSea() => Year(sea);

    [Benchmark(Description = "a year of rise, transit and set over a twelve-cornered skyline")]
    public Instant? YearOverSkyline() => Year(land);

    [Benchmark(Description = "making sun, moon and galaxy for 435 days")]
    public SkyEphemeris Covering() => SkyEphemeris.Covering(Start, Start + Duration.FromDays(435));

    private Instant? Year(Observer observer)
    {
        Instant? last = null;
        for (var date = new LocalDate(2026, 1, 2); date.Year == 2026; date = date.PlusDays(1))
            last = MoonDays.On(date, observer, DateTimeZone.Utc, ephemeris).Rise ?? last;
        return last;
    }
}
