using BenchmarkDotNet.Attributes;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Benchmarks;

/// <summary>
/// Passages of sun and moon behind a subject over five years, with the ephemeris made for it, as a page asks; target 200 ms
/// warm. The floor is that ephemeris with one direction of each body every twelve hours: fewer could not tell the days apart.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class AlignmentBenchmarks
{
    private static readonly Instant Start = Instant.FromUtc(2026, 1, 1, 0, 0), End = Instant.FromUtc(2031, 1, 1, 0, 0);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly Upright Tower = new(Bearing.FromDegrees(118), -0.2, 3.6);

    // Land on three sides, as a club's warden would note it down.
    private static readonly Observer Ledge = new(new Position(44.65, -67.2), 9, new Skyline(
    [
        new SkylinePoint(20, 3, SkylineKind.Land), new SkylinePoint(79, 1.2, SkylineKind.Land), new SkylinePoint(84, 0.2, SkylineKind.Sea),
        new SkylinePoint(172, 0.3, SkylineKind.Land), new SkylinePoint(240, 4, SkylineKind.Land), new SkylinePoint(330, 6, SkylineKind.Land),
    ]));

    [Benchmark(Baseline = true, Description = "floor: ephemeris, two directions of each body a day")]
    public double EphemerisAlone()
    {
        var (sky, sum) = (Sky(), 0.0);
        for (var time = Start; time < End; time += Duration.FromHours(12))
            sum += sky.Sun.At(time, Ledge.Position).AltitudeDegrees + sky.Moon.At(time, Ledge.Position).AltitudeDegrees;
        return sum;
    }

    [Benchmark(Description = "five years of passages, sun and moon")]
    public int Passages()
    {
        var sky = Sky();
        return Alignments.Between(SkyBody.Sun, Ledge, Tower, 0.5, Start, End, sky).Count + Alignments.Between(SkyBody.Moon, Ledge, Tower, 0.5, Start, End, sky).Count;
    }

    [Benchmark(Description = "five years of full moons at dusk and dawn")]
    public int FullMoonsAtTwilight() => FullMoons.Between(new(2026, 1, 4), new(2030, 12, 28), Ledge, Zone, Sky()).Count;

    private static SkyEphemeris Sky() => SkyEphemeris.Covering(Start, End);
}
