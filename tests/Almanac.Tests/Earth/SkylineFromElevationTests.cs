using CsCheck;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Earth;

public class SkylineFromElevationTests
{
    private static readonly Position Stance = new(44.5, -67.5);
    private static readonly ElevationGrid FlatSea = MadeGround.Grid(44, -68, 1, (_, _) => 0);
    private static ElevationGrid? walled;

    [Fact]
    public void Flat_sea_gives_the_dip_all_round()
    {
        var found = SkylineFromElevation.Of(new(Stance, 8) { OutsideIsSea = true }, [FlatSea]);

        Assert.All(found.Skyline.Points, point => Assert.Equal(SkylineKind.Sea, point.Kind));
        Assert.Equal(-new Observer(Stance, 8, found.Skyline).DipDegrees, found.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(77), Dip.Degrees(8)));
        Assert.Equal(0, found.GroundMetres);
        Assert.Equal(0, found.UnknownShare);
    }

    [Theory]
    [InlineData(1200, 60, 8000, 500)]
    [InlineData(1200, 250, 15000, 900)]
    [InlineData(2, 130, 4000, 120)]
    public void A_cone_stands_where_geometry_puts_it(double eye, double azimuth, double metres, double height)
    {
        // Its top on a sample, so that the grid knows it.
        var rough = Geodesic.Along(Stance, Bearing.FromDegrees(azimuth), metres).Position;
        var top = new Position(Math.Round(rough.LatitudeDegrees * 1200) / 1200, Math.Round(rough.LongitudeDegrees * 1200) / 1200);
        var line = Geodesic.Between(Stance, top);
        const double foot = 3000;
        var found = SkylineFromElevation.Of(new(Stance, eye) { OutsideIsSea = true }, [MadeGround.Grid(44, -68, 1, MadeGround.Cone(top, height, foot))]);

        // Seen from a sphere widened by refraction: triangle at the centre.
        var radius = MadeGround.Radius / 0.87;
        var gamma = line.Metres / radius;
        var expected = Math.Atan2((radius + height) * Math.Cos(gamma) - radius - eye, (radius + height) * Math.Sin(gamma)) * (180 / Math.PI);
        var dip = Math.Acos(radius / (radius + eye)) * (180 / Math.PI);
        if (expected > -dip)
        {
            Assert.Equal(expected, found.Skyline.AltitudeDegreesAt(line.Initial, dip), 0.06);
            Assert.Equal(SkylineKind.Land, found.Skyline.KindAt(line.Initial));
        }

        // A cone from outside it is a triangle as wide as the arc sine of foot over distance, at most; beyond, and beyond the
        // sample next to its foot, sea.
        var width = Math.Asin((foot + 130) / line.Metres) * (180 / Math.PI);
        Assert.Equal(SkylineKind.Sea, found.Skyline.KindAt(line.Initial.Plus(width + 0.2)));
        Assert.Equal(SkylineKind.Sea, found.Skyline.KindAt(line.Initial.Plus(-width - 0.2)));
    }

    [Theory]
    [InlineData(0.13)]
    [InlineData(0)]
    [InlineData(0.2)]
    public void A_wall_shows_at_its_height_over_its_distance_less_curvature(double refraction)
    {
        // 100 m of ground north of a parallel 20 km away.
        var wall = Geodesic.Along(Stance, Bearing.FromDegrees(0), 20000).Position.LatitudeDegrees;
        var step = Math.Ceiling(wall * 1200) / 1200;
        walled ??= MadeGround.Grid(44, -68, 1, (latitude, _) => latitude >= step - 1e-9 ? 100 : 0);
        var found = SkylineFromElevation.Of(new(Stance, 5) { OutsideIsSea = true, RefractionCoefficient = refraction }, [walled]);

        var distance = Geodesic.Between(Stance, new Position(step, Stance.LongitudeDegrees)).Metres;
        var alongMeridian = 6368000.0;
        var fall = distance * distance * (1 - refraction) / (2 * alongMeridian);
        Assert.Equal(Math.Atan((100 - 5 - fall) / distance) * (180 / Math.PI), found.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(0), 0.06), 0.01);
    }

    [Fact]
    public void Curvature_and_refraction_hide_what_the_surveyors_rule_says()
    {
        // 0.0675 m a square kilometre: P. R. Wolf and C. D. Ghilani, Elementary Surveying, equation 4.3; from memory, three digits.
        const double level = 10;
        var radius = MadeGround.Radius / 0.87;
        var altitude = SkylineFromElevation.AltitudeDegrees(level, 10_000, level, radius);

        Assert.Equal(-0.0675 * 100 / 10_000, Math.Tan(altitude * Math.PI / 180), 0.0675 * 100 / 10_000 * 0.015);
    }

    [Fact]
    public void Voids_and_ground_outside_stay_unknown_where_they_could_show()
    {
        // A hill of 50 m to the west, a hole in the east beyond 2 km.
        var hill = Geodesic.Along(Stance, Bearing.FromDegrees(270), 3000).Position;
        var cone = MadeGround.Cone(hill, 50, 1500);
        var hole = Stance.LongitudeDegrees + 0.03;
        var grid = MadeGround.Grid(44, -68, 1, (latitude, longitude) => longitude > hole && longitude < hole + 0.1 && Math.Abs(latitude - 44.5) < 0.05 ? double.NaN : cone(latitude, longitude));

        var withSea = SkylineFromElevation.Of(new(Stance, 5) { OutsideIsSea = true }, [grid]);
        Assert.Equal(SkylineKind.Land, withSea.Skyline.KindAt(Bearing.FromDegrees(270)));
        Assert.Equal(SkylineKind.Unknown, withSea.Skyline.KindAt(Bearing.FromDegrees(90)));
        Assert.Equal(SkylineKind.Sea, withSea.Skyline.KindAt(Bearing.FromDegrees(180)));
        Assert.InRange(withSea.UnknownShare, 0.2, 0.4);

        // 50 m of ground beyond the grid's edge, 39 km off, lies behind the sea: it could not show. Nearer edges could.
        var near = SkylineFromElevation.Of(new(new Position(44.5, -67.05), 5), [grid]);
        Assert.Equal(SkylineKind.Unknown, near.Skyline.KindAt(Bearing.FromDegrees(90)));
    }

    [Fact]
    public void Low_ground_that_goes_on_to_the_reach_is_no_sea()
    {
        var found = SkylineFromElevation.Of(new(Stance, 400) { ReachMetres = 30_000 }, [MadeGround.Grid(44, -68, 1, (_, _) => 3)]);

        Assert.Equal(SkylineKind.Unknown, found.Skyline.KindAt(Bearing.FromDegrees(200)));
    }

    [Fact]
    public void A_finer_grid_counts_where_grids_overlap()
    {
        var coarse = MadeGround.Grid(44, -68, 1, (_, _) => 300, 30);
        Assert.Equal(0, SkylineFromElevation.GroundMetres(Stance, [coarse, FlatSea]));
    }

    [Fact]
    public void Corners_keep_to_the_rays_within_the_tolerance_and_their_number() =>
        Gen.Select(Gen.Int[1, 1000], Gen.Double[0.01, 0.3]).Sample((seed, tolerance) =>
        {
            var random = new Random(seed);
            var rays = new RayEdge[720];
            double altitude = 3;
            for (var i = 0; i < rays.Length; i++)
            {
                altitude = Math.Clamp(altitude + random.NextDouble() - 0.5, 0.1, 20);
                rays[i] = i / 120 % 3 == 1 ? new RayEdge(SkylineKind.Sea, -0.1) : new RayEdge(SkylineKind.Land, altitude);
            }

            var (points, _) = SkylineCorners.Of(rays, tolerance, 720);
            var skyline = new Skyline(points);
            for (var i = 0; i < rays.Length; i++)
            {
                var bearing = Bearing.FromDegrees(i * 0.5);
                if (skyline.KindAt(bearing) != rays[i].Kind) return false;
                if (Math.Abs(skyline.AltitudeDegreesAt(bearing, 0.1) - rays[i].AltitudeDegrees) > tolerance + 0.0051 + 0.0001) return false;
            }

            var (few, wider) = SkylineCorners.Of(rays, tolerance, 40);
            return few.Count <= 40 && wider >= tolerance;
        }, iter: 200);

    [Fact]
    public void A_higher_eye_never_raises_the_edge() =>
        Gen.Select(Gen.Double[1, 300], Gen.Double[0, 100], Gen.Double[0, 600], Gen.Double[100, 90_000]).Sample((eye, more, height, metres) =>
            SkylineFromElevation.AltitudeDegrees(height, metres, eye + more, 7.3e6) <= SkylineFromElevation.AltitudeDegrees(height, metres, eye, 7.3e6) + 1e-12);

    [Fact]
    public void Progress_is_told_and_cancelling_ends_it()
    {
        var told = new Told();
        SkylineFromElevation.Of(new(Stance, 5) { OutsideIsSea = true, Rays = 360 }, [FlatSea], told);
        Assert.Equal(0, told.Shares[0]);
        Assert.Equal(1, told.Shares[^1]);
        Assert.Equal(told.Shares.Order(), told.Shares);

        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() => SkylineFromElevation.Of(new(Stance, 5), [FlatSea], null, cancelled.Token));
    }

    [Fact]
    public void Questions_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SkylineFromElevation.Of(new(new Position(86, 0), 5), [FlatSea]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SkylineFromElevation.Of(new(Stance, double.NaN), [FlatSea]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SkylineFromElevation.Of(new(Stance, 5) { RefractionCoefficient = 1 }, [FlatSea]));
        Assert.Throws<ArgumentException>(() => SkylineFromElevation.Of(new(Stance, 5), []));
    }

    [Fact]
    public void Sunrise_waits_behind_a_computed_wall_until_the_limb_clears_it()
    {
        // 400 m of ground 6 km east of the stance.
        var wall = Math.Ceiling(Geodesic.Along(Stance, Bearing.FromDegrees(90), 6000).Position.LongitudeDegrees * 1200) / 1200;
        var grid = MadeGround.Grid(44, -68, 1, (_, longitude) => longitude >= wall - 1e-9 ? 400 : 0);
        var skyline = SkylineFromElevation.Of(new(Stance, 5) { OutsideIsSea = true }, [grid]).Skyline;
        var zone = DateTimeZoneProviders.Tzdb["America/New_York"];
        var date = new LocalDate(2026, 3, 20);
        var ephemeris = SunEphemeris.Covering(Instant.FromUtc(2026, 3, 18, 0, 0), Instant.FromUtc(2026, 3, 23, 0, 0));

        var open = SunDays.On(date, new Observer(Stance, 5, Skyline.AssumedSea), zone, ephemeris).Rise!.Value;
        var behind = SunDays.On(date, new Observer(Stance, 5, skyline), zone, ephemeris).Rise!.Value;

        Assert.True(behind > open + Duration.FromMinutes(15));
        // By geometry alone: the wall in the sun's direction is as far as 6 km over the sine of its azimuth.
        var sun = SunPosition.At(behind, Stance);
        var distance = Geodesic.Between(Stance, new Position(Stance.LatitudeDegrees, wall)).Metres / Math.Sin(sun.AzimuthDegrees * Math.PI / 180);
        var edge = Math.Atan((400 - 5 - distance * distance * 0.87 / (2 * MadeGround.Radius)) / distance) * (180 / Math.PI);
        Assert.Equal(edge, Refraction.Apparent(sun.AltitudeDegrees + 0.2675), 0.05);
    }

    private sealed class Told : IProgress<double>
    {
        internal List<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }
}
