using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Moon;

/// <summary>Rise and set by crossings against a scan that knows nothing of turning points, from the equator to the pole.</summary>
public class MoonCrossingTests
{
    private static readonly Instant First = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly MoonEphemeris Moon = MoonEphemeris.Covering(First - Duration.FromDays(3), First + Duration.FromDays(400));
    private static readonly Skyline Hills = new([
        new SkylinePoint(20, 3, SkylineKind.Land), new SkylinePoint(75, 6.5, SkylineKind.Land), new SkylinePoint(100, 0, SkylineKind.Sea),
        new SkylinePoint(200, 1, SkylineKind.Land), new SkylinePoint(260, 9, SkylineKind.Land), new SkylinePoint(300, 0, SkylineKind.Unknown)]);

    // Grazing passages within one step of the scan are what it may miss; they are counted.
    [Theory]
    [InlineData(0, false)]
    [InlineData(44.7, false)]
    [InlineData(44.7, true)]
    [InlineData(-36, true)]
    [InlineData(61, false)]
    [InlineData(68.5, false)]
    [InlineData(80, false)]
    [InlineData(89.2, false)]
    [InlineData(-90, false)]
    public void A_year_is_what_a_scan_of_every_two_minutes_sees(double latitude, bool overHills)
    {
        var observer = new Observer(new Position(latitude, -67.1), 12, overHills ? Hills : Skyline.AssumedSea);
        var path = Moon.SeenFrom(observer.Position);
        var (events, missed) = (0, 0);
        for (var i = 0; i < 366; i++)
        {
            var (from, to) = (First + Duration.FromDays(i), First + Duration.FromDays(i + 1));
            var span = MoonDays.Between(from, to, observer, Moon);
            var (rise, set) = Scan(from, to);
            Assert.Equal(IsUp(from), span.IsUpAtStart);
            if (rise is null != span.Rise is null || set is null != span.Set is null)
            {
                missed++;
                continue;
            }

            if (rise is { } up) Assert.InRange((span.Rise!.Value - up).TotalSeconds, -0.01, 120.01);
            if (set is { } down) Assert.InRange((span.Set!.Value - down).TotalSeconds, -0.01, 120.01);
            events += (rise is null ? 0 : 1) + (set is null ? 0 : 1);
        }

        Assert.InRange(missed, 0, 2);
        Assert.InRange(events, Math.Abs(latitude) > 70 ? 20 : 350, 750);

        (Instant? Rise, Instant? Set) Scan(Instant from, Instant to)
        {
            var (rise, set) = ((Instant?)null, (Instant?)null);
            for (var time = from; time < to; time += Duration.FromMinutes(2))
            {
                var (before, after) = (IsUp(time), IsUp(time + Duration.FromMinutes(2)));
                if (!before && after) rise ??= time;
                if (before && !after) set = time;
            }

            return (rise, set);
        }

        bool IsUp(Instant time)
        {
            var at = path.At(Moon.DaysOf(time), out var radii);
            return Refraction.Apparent(at.AltitudeDegrees + MoonPath.SemidiameterDegrees(radii))
                > observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(at.AzimuthDegrees), observer.DipDegrees);
        }
    }
}
