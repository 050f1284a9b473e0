using BenchmarkDotNet.Attributes;
using Foreshore.Almanac.Earth;

namespace Foreshore.Benchmarks;

/// <summary>
/// A skyline from one square degree at an arc second, beside the least that any method must do, measured in the same run:
/// one bilinear height for each pace of each ray, along straight lines in degrees. Target, warm: 2 s.
/// </summary>
[ShortRunJob]
[MemoryDiagnoser]
public class SkylineBenchmarks
{
    private static readonly Position Stance = new(44.5, -67.5);
    private readonly ElevationGrid[] grids = [Hills()];

    [Benchmark(Baseline = true, Description = "floor: a height a pace, no geodesic, no curvature")]
    public double HeightsOnly()
    {
        var sum = 0.0;
        var grid = grids[0];
        for (var ray = 0; ray < 7200; ray++)
        {
            var (sin, cos) = Math.SinCos(ray * Math.PI / 3600);
            for (double metres = 22; metres < 100_000; metres += Math.Max(11, metres * Math.PI / 3600))
            {
                var (latitude, longitude) = (44.5 + metres * cos / 111_000, -67.5 + metres * sin / 79_000);
                if (grid.MetresAt(new Position(latitude, longitude)) is { } height) sum += height;
            }
        }

        return sum;
    }

    [Benchmark(Description = "a skyline from one tile at one arc second")]
    public ComputedSkyline Skyline() => SkylineFromElevation.Of(new SkylineQuestion(Stance, 12) { OutsideIsSea = true }, grids);

    // Sea to the south, hills that grow northward: most rays go all the way.
    private static ElevationGrid Hills()
    {
        const int side = 3601;
        var samples = new short[side * side];
        for (var row = 0; row < side; row++)
            for (var column = 0; column < side; column++)
                samples[row * side + column] = row > 1810 ? (short)0
                    : (short)(5 + (1810 - row) * 0.12 + 30 * Math.Sin(row / 23.0) * Math.Cos(column / 31.0) + 20 * Math.Sin((row + column) / 7.0));
        return new ElevationGrid(45, -68, 1.0 / 3600, 1.0 / 3600, side, side, samples);
    }
}
