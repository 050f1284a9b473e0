using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Sun;

public class SunEphemerisTests
{
    private static readonly Instant From = Instant.FromUtc(2026, 1, 1, 0, 0);
    private static readonly SunEphemeris Year = SunEphemeris.Covering(From, Instant.FromUtc(2027, 1, 1, 0, 0));

    [Theory]
    [InlineData(44.7, -67.1)]
    [InlineData(-75, 179.9)]
    [InlineData(89.9, -120)]
    [InlineData(0, 0)]
    public void Ephemeris_agrees_with_the_readable_form(double latitude, double longitude)
    {
        var position = new Position(latitude, longitude);
        var largest = 0.0;
        for (var i = 0; i < 3000; i++)
        {
            var instant = From + Duration.FromMinutes(175 * i);
            var quick = Year.SeenFrom(position).At(instant);
            var plain = SunPosition.At(instant, position);
            var direct = Direction.Of(plain.AzimuthDegrees, plain.AltitudeDegrees);
            largest = Math.Max(largest, Math.Sqrt(Math.Pow(quick.East - direct.East, 2) + Math.Pow(quick.North - direct.North, 2) + Math.Pow(quick.Up - direct.Up, 2)));
        }

        Assert.True(largest * 180 / Math.PI < 1e-6, $"{largest * 180 / Math.PI} degrees");
    }

    [Fact]
    public void Worked_example_of_the_report()
    {
        var sun = SunPosition.At(Instant.FromUtc(2003, 10, 17, 19, 30, 30), new Position(39.742476, -105.1786), 1830.14);
        Assert.Equal(194.340241, sun.AzimuthDegrees, 1e-4);
        Assert.Equal(39.872046, sun.AltitudeDegrees, 1e-4);
    }

    [Fact]
    public void A_day_of_October_2003()
    {
        var ephemeris = SunEphemeris.Covering(Instant.FromUtc(2003, 10, 10, 0, 0), Instant.FromUtc(2003, 10, 25, 0, 0));
        var day = SunDays.On(new LocalDate(2003, 10, 17), new Observer(new Position(39.742476, -105.1786), null, Skyline.AssumedSea), DateTimeZoneProviders.Tzdb["America/Denver"], ephemeris);
        Assert.Equal(Instant.FromUtc(2003, 10, 17, 13, 12, 44), day.StandardRise!.Value, TimeSpanOf(2));
        Assert.Equal(Instant.FromUtc(2003, 10, 18, 0, 18, 51), day.StandardSet!.Value, TimeSpanOf(2));
    }

    private static Func<Instant, Instant, bool> TimeSpanOf(int seconds) => (a, b) => Duration.FromSeconds(seconds) > (a > b ? a - b : b - a);
}
