using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

public class AlignmentsTests
{
    private const double Radian = Math.PI / 180;
    private static readonly Observer Shore = new(Coast.Eastport, 10, Skyline.AssumedSea);
    private static readonly Instant From = Instant.FromUtc(2026, 9, 1, 0, 0), To = Instant.FromUtc(2026, 11, 30, 0, 0);

    public static TheoryData<SkyBody, double, double, double, double> Subjects => new()
    {
        { SkyBody.Sun, 95, 0, 1, 0.5 }, { SkyBody.Sun, 180, 20, 30, 1 }, { SkyBody.Moon, 95, -0.2, 0.8, 0.5 }, { SkyBody.Moon, 240, 2, 9, 2 }, { SkyBody.Moon, 180, 20, 20, 3 },
    };

    // The plain forms asked every twenty seconds know of no other passage, and of the same nearest distance.
    [Theory]
    [MemberData(nameof(Subjects))]
    public void Passages_are_those_of_a_plain_scan(SkyBody body, double bearing, double foot, double top, double tolerance)
    {
        var subject = new Upright(Bearing.FromDegrees(bearing), foot, top);
        var found = Alignments.Between(body, Shore, subject, tolerance, From, To, Coast.Year2026);
        var step = Duration.FromSeconds(20);
        var scanned = new List<(Instant Time, double Off)>();
        var along = Along(subject);
        var (nearest, at) = (double.PositiveInfinity, From);
        for (var time = From; time < To; time += step)
        {
            var place = body == SkyBody.Sun ? Coast.Year2026.Sun.At(time, Coast.Eastport) : Coast.Year2026.Moon.At(time, Coast.Eastport);
            var seen = Refraction.Apparent(place.AltitudeDegrees);
            var off = Math.Abs(Math.IEEERemainder(place.AzimuthDegrees - bearing, 360)) > 30 ? 99 : Off(place.AzimuthDegrees, seen, subject, along);
            if (off < tolerance && off < nearest && seen + 16.0 / 60 > -Shore.DipDegrees) (nearest, at) = (off, time);
            if (off >= tolerance && nearest < 99)
            {
                scanned.Add((at, nearest));
                nearest = double.PositiveInfinity;
            }
        }

        Assert.NotEmpty(scanned);
        foreach (var (time, off) in scanned)
            Assert.True(found.Any(one => (one.Time - time).TotalMinutes is > -6 and < 6 && Math.Abs(one.OffDegrees - off) < 0.05), $"{time} {off}");
        Assert.InRange(found.Count, scanned.Count, scanned.Count + 1);
        Assert.All(found, one => Assert.True(one.OffDegrees <= tolerance));
    }

    [Fact]
    public void The_sun_behind_a_tower_stands_on_the_geodesics_bearing()
    {
        var tower = new Position(44.9, -66.9);
        var line = Geodesic.Between(Coast.Eastport, tower);
        var found = Alignments.Between(SkyBody.Sun, Shore, new Upright(line.Initial, 0, 20), 0.2, From, To, Coast.Year2026);
        Assert.NotEmpty(found);
        foreach (var one in found.Where(one => one.SeenDegrees > 0.5 && one.SeenDegrees < 19.5))
            Assert.Equal(line.Initial.Degrees, SunPosition.At(one.Time, Coast.Eastport).AzimuthDegrees, 0.01);
    }

    [Fact]
    public void Full_moons_at_dusk_come_up_within_the_minutes_opposite_the_sun()
    {
        var found = FullMoons.Between(new LocalDate(2026, 1, 10), new LocalDate(2026, 12, 20), Shore, Coast.NewYork, Coast.Year2026);
        Assert.InRange(found.Count(one => one.IsRising), 6, 24);
        Assert.Contains(found, one => !one.IsRising);
        foreach (var one in found)
        {
            Assert.True(MoonPhases.At(one.Moon).IlluminatedFraction >= 0.95);
            Assert.InRange((one.Moon - one.Sun).TotalMinutes, -30, 30);
            var sun = Coast.Year2026.Sun.At(one.Moon, Coast.Eastport).AzimuthDegrees;
            Assert.True(Bearing.FromDegrees(sun).AngleTo(Bearing.FromDegrees(one.AzimuthDegrees)) > 130);
        }
    }

    // The days' own moonrises, sunsets, moonsets and sunrises laid side by side.
    [Fact]
    public void Full_moons_are_those_of_the_days_events_side_by_side()
    {
        var found = FullMoons.Between(new LocalDate(2026, 1, 10), new LocalDate(2026, 12, 20), Shore, Coast.NewYork, Coast.Year2026);
        var expected = new List<(Instant Moon, bool IsRising)>();
        for (var date = new LocalDate(2026, 1, 10); date <= new LocalDate(2026, 12, 20); date = date.PlusDays(1))
        {
            var (moon, sun) = (MoonDays.On(date, Shore, Coast.NewYork, Coast.Year2026.Moon), SunDays.On(date, Shore, Coast.NewYork, Coast.Year2026.Sun));
            if (IsNear(moon.Set, sun.Rise)) expected.Add((moon.Set!.Value, false));
            if (IsNear(moon.Rise, sun.Set)) expected.Add((moon.Rise!.Value, true));
        }

        Assert.Equal(expected.Select(one => one.IsRising), found.Select(one => one.IsRising));
        Assert.All(expected.Zip(found), pair => Assert.InRange((pair.First.Moon - pair.Second.Moon).TotalSeconds, -0.1, 0.1));

        static bool IsNear(Instant? moon, Instant? sun) =>
            moon is { } up && sun is { } twilight && Math.Abs((up - twilight).TotalMinutes) <= 30 && MoonPhases.At(up).IlluminatedFraction >= 0.95;
    }

    [Fact]
    public void The_suns_altitude_stands_beside_each_passage_and_makes_a_moon_one_by_day()
    {
        var found = Alignments.Between(SkyBody.Moon, Shore, new Upright(Bearing.FromDegrees(180), 0, 60), 2, From, To, Coast.Year2026);
        Assert.All(found, one => Assert.Equal(Coast.Year2026.Sun.At(one.Time, Coast.Eastport).AltitudeDegrees, one.SunDegrees, 0.001));
        Assert.Equal(found.Where(one => one.SunDegrees > 6), found.Where(one => one.IsDaytimeMoon));
        Assert.Contains(found, one => one.IsDaytimeMoon);
        Assert.Contains(found, one => !one.IsDaytimeMoon);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10.5)]
    [InlineData(double.NaN)]
    public void A_tolerance_out_of_range_is_refused(double tolerance) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Alignments.Between(SkyBody.Sun, Shore, new Upright(Bearing.FromDegrees(0), 0, 1), tolerance, From, To, Coast.Year2026));

    /// <summary>The upright line in steps of a thousandth of its length, as sines and cosines: they do not change while the sky turns.</summary>
    private static (double Sin, double Cos)[] Along(Upright subject) =>
        [.. Enumerable.Range(0, 1001).Select(i => Math.SinCos((subject.FootDegrees + (subject.TopDegrees - subject.FootDegrees) * i / 1000) * Radian))];

    private static double Off(double azimuth, double seen, Upright subject, (double Sin, double Cos)[] along)
    {
        var turn = Math.Cos((azimuth - subject.Bearing.Degrees) * Radian);
        var (sin, cos) = Math.SinCos(seen * Radian);
        var nearest = -1.0;
        foreach (var point in along) nearest = Math.Max(nearest, point.Sin * sin + point.Cos * cos * turn);
        return Math.Acos(Math.Min(nearest, 1)) / Radian;
    }
}
