using CsCheck;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class LightPropertyTests
{
    private static readonly Gen<Skyline> Skylines = Gen.OneOf(
        Gen.Const(Skyline.AssumedSea),
        Gen.Select(Gen.Int[0, 359], Gen.Double[-3, 30], Gen.Enum<SkylineKind>()).Array[1, 14]
            .Select(corners => new Skyline(corners.DistinctBy(corner => corner.Item1).Select(corner => new SkylinePoint(corner.Item1, corner.Item2, corner.Item3)))));

    private static readonly Gen<Frame> Frames =
        Gen.Select(Gen.Double[0, 359.9], Gen.Double[-40, 40], Gen.Double[10, 400], Gen.Enum<Orientation>())
            .Select((facing, tilt, focal, orientation) => new Frame(Bearing.FromDegrees(facing), tilt, new Lens(focal, Sensor.FullFrame, orientation)));

    private static readonly Gen<Scene> Scenes =
        Gen.Select(Gen.Double[-89, 89], Gen.Double[-180, 180], Gen.Double[0, 300], Skylines, Frames)
            .Select((latitude, longitude, eye, skyline, frame) =>
                new Scene(new Observer(new Position(latitude, longitude), eye, skyline), frame, Enum.GetValues<WantedLight>()));

    private static readonly Gen<Instant> Starts = Gen.Int[0, 340].Select(day => Instant.FromUtc(2026, 1, 1, 0, 0) + Duration.FromDays(day));

    [Fact]
    public void Runs_are_long_enough_apart_and_hold_inside_and_not_beside() =>
        Gen.Select(Scenes, Starts).Sample((scene, from) =>
        {
            var to = from + Duration.FromDays(1);
            var answer = LightRuns.Between(scene, from, to, Coast.Year2026);
            var scan = new MinuteScan(scene, Coast.Year2026);
            foreach (var group in answer.Runs.Concat(answer.Possible).GroupBy(run => run.Light))
            {
                var runs = group.ToList();
                for (var i = 0; i < runs.Count; i++)
                {
                    Assert.True(runs[i].Start >= from && runs[i].End <= to && runs[i].Length >= Duration.FromMinutes(LightTable.Of(group.Key).LeastMinutes), $"{runs[i]}");
                    if (i > 0) Assert.True(runs[i].Start > runs[i - 1].End, $"{runs[i - 1]} and {runs[i]}");
                    var near = Duration.FromSeconds(1);
                    Assert.True(scan.HoldsAt(group.Key, runs[i].Start + near) && scan.HoldsAt(group.Key, runs[i].End - near), $"inside {runs[i]}");
                    if (runs[i].Start > from) Assert.False(scan.HoldsAt(group.Key, runs[i].Start - near), $"before {runs[i]}");
                    if (runs[i].End < to) Assert.False(scan.HoldsAt(group.Key, runs[i].End + near), $"after {runs[i]}");
                }
            }
        }, iter: 300);

    [Fact]
    public void Union_covers_every_run_and_nothing_else() =>
        Gen.Select(Scenes, Starts).Sample((scene, from) =>
        {
            var answer = LightRuns.Between(scene, from, from + Duration.FromDays(2), Coast.Year2026);
            Assert.All(answer.Runs, run => Assert.Contains(answer.Union, window => window.Start <= run.Start && window.End >= run.End));
            Assert.All(answer.Union, window => Assert.Contains(answer.Runs, run => run.Start == window.Start));
            Assert.All(answer.Union, window => Assert.Contains(answer.Runs, run => run.End == window.End));
            Assert.All(answer.Union.Zip(answer.Union.Skip(1)), pair => Assert.True(pair.First.End < pair.Second.Start));
        }, iter: 200);

    [Fact]
    public void Four_planes_are_the_frame() =>
        Gen.Select(Frames, Gen.Double[0, 359.99], Gen.Double[-89, 89]).Sample((frame, azimuth, altitude) =>
        {
            var margin = new PictureEdges(frame).Margin(Direction.Of(azimuth, altitude));
            // On the edge itself the last digit decides.
            return Math.Abs(margin) < 1e-12 || margin > 0 == frame.Contains(azimuth, altitude);
        });

    [Fact]
    public void Margins_promise_no_more_than_they_keep() =>
        Gen.Select(Scenes, Gen.Double[0, 359.99], Gen.Double[-20, 60], Gen.Double[0, 2 * Math.PI]).Sample((scene, azimuth, altitude, way) =>
        {
            var edge = new SkylineEdge(scene.Observer);
            var sun = Direction.Of(azimuth, altitude);
            foreach (var row in LightTable.Rows)
            {
                if (row.WithinLandSkylineDegrees is not null && !edge.HasLand) continue;
                var margin = new LightMargin(row, scene, edge);
                if (margin.IsAltitudeAlone) continue;
                var value = margin.At(sun, 0.266);
                // On an edge itself the last digit decides.
                if (Math.Abs(value) <= 1e-12) continue;
                // Anywhere nearer than the margin the answer is the same. The air shortens arcs, so it promises nothing less.
                foreach (var part in new[] { 0.3, 0.7, 0.98 })
                    if (margin.At(Moved(sun, way, part * Math.Min(Math.Abs(value), 0.5)), 0.266) >= 0 != value >= 0) Assert.Fail($"{row.Light} {value}");
            }
        }, iter: 10_000);

    private static Direction Moved(Direction from, double way, double arc)
    {
        // Two directions across the first one; the arc is walked along their mixture.
        var length = Math.Sqrt(from.East * from.East + from.North * from.North);
        var across = (East: from.North / length, North: -from.East / length);
        var (sinWay, cosWay) = Math.SinCos(way);
        var (sinArc, cosArc) = Math.SinCos(arc);
        return new Direction(
            from.East * cosArc + sinArc * (cosWay * across.East - sinWay * from.Up * from.East / length),
            from.North * cosArc + sinArc * (cosWay * across.North - sinWay * from.Up * from.North / length),
            from.Up * cosArc + sinArc * sinWay * length);
    }
}
