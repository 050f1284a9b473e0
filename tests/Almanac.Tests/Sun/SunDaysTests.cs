using CsCheck;
using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Sun;

public class SunDaysTests
{
    private static readonly SunEphemeris Years = SunEphemeris.Covering(Instant.FromUtc(2025, 12, 1, 0, 0), Instant.FromUtc(2027, 2, 1, 0, 0));
    private static readonly LocalDate NewYear = new(2026, 1, 1);

    [Fact]
    public void Events_of_a_day_follow_each_other() =>
        Gen.Select(Gen.Double[-89, 89], Gen.Double[-180, 179.9], Gen.Int[0, 364], Gen.Double[0, 300]).Sample((latitude, longitude, number, height) =>
        {
            var day = On(new Position(latitude, longitude), NewYear.PlusDays(number), height: height);
            Instant?[] order =
            [
                day.MidnightBefore - Duration.FromHours(1), day.AstronomicalDawn, day.NauticalDawn, day.CivilDawn, day.Rise, day.StandardRise,
                day.StandardSet, day.Set, day.CivilDusk, day.NauticalDusk, day.AstronomicalDusk, day.MidnightAfter + Duration.FromHours(1),
            ];
            var happened = order.OfType<Instant>().ToList();
            return happened.Zip(happened.Skip(1)).All(pair => pair.First <= pair.Second + Duration.FromSeconds(20))
                && day.MidnightBefore < day.Noon && day.Noon < day.MidnightAfter;
        }, iter: 500);

    [Fact]
    public void Between_the_polar_circles_rise_comes_before_transit_before_set() =>
        Gen.Select(Gen.Double[-65, 65], Gen.Double[-180, 179.9], Gen.Int[0, 364]).Sample((latitude, longitude, number) =>
        {
            var day = On(new Position(latitude, longitude), NewYear.PlusDays(number));
            return day.Rise < day.Noon && day.Noon < day.Set && day.StandardRise < day.Noon && day.Noon < day.StandardSet;
        }, iter: 500);

    [Theory]
    [InlineData(6, 21, true)]
    [InlineData(12, 21, false)]
    public void Polar_day_and_polar_night_have_no_rise(int month, int date, bool isUp)
    {
        var day = On(new Position(78, 15), new LocalDate(2026, month, date));

        Assert.Null(day.Rise);
        Assert.Null(day.Set);
        Assert.Null(day.StandardRise);
        Assert.Equal(isUp, day.MidnightAltitudeDegrees > 0);
        Assert.Equal(isUp, day.NoonAltitudeDegrees > 0);
        Assert.Equal(isUp, day.AstronomicalDawn is null);
    }

    [Theory]
    [InlineData("Pacific/Chatham", -43.95, -176.55)]
    [InlineData("Pacific/Kiritimati", 1.87, -157.4)]
    [InlineData("Pacific/Apia", -13.8, -171.8)]
    [InlineData("Pacific/Pago_Pago", -14.3, -170.7)]
    [InlineData("Asia/Kathmandu", 27.7, 85.3)]
    [InlineData("Asia/Urumqi", 43.8, 87.6)]
    [InlineData("America/New_York", 44.9, -67)]
    [InlineData("Arctic/Longyearbyen", 78.2, 15.6)]
    [InlineData("Pacific/Fiji", -17, -180)]
    public void Noon_falls_on_the_date_every_day_of_the_year(string zoneName, double latitude, double longitude)
    {
        var zone = DateTimeZoneProviders.Tzdb[zoneName];
        var observer = new Observer(new Position(latitude, longitude), null, Skyline.AssumedSea);
        Instant? last = null;
        for (var number = 0; number < 365; number++)
        {
            var date = NewYear.PlusDays(number);
            var day = SunDays.On(date, observer, zone, Years);
            Assert.Equal(date, day.Noon.InZone(zone).Date);
            if (last is { } before) Assert.Equal(24 * 3600, (day.Noon - before).TotalSeconds, 31.0);
            last = day.Noon;
        }
    }

    [Fact]
    public void A_date_that_a_zone_skipped_is_answered()
    {
        var ephemeris = SunEphemeris.Covering(Instant.FromUtc(2011, 12, 25, 0, 0), Instant.FromUtc(2012, 1, 5, 0, 0));
        var apia = new Observer(new Position(-13.8, -171.8), null, Skyline.AssumedSea);

        Assert.NotNull(SunDays.On(new LocalDate(2011, 12, 30), apia, DateTimeZoneProviders.Tzdb["Pacific/Apia"], ephemeris).Rise);
    }

    [Fact]
    public void From_a_cliff_the_sun_rises_earlier_by_the_dip()
    {
        var place = new Position(44.8, -66.95);
        var low = On(place, new LocalDate(2026, 9, 23), height: 0);
        var high = On(place, new LocalDate(2026, 9, 23), height: 100);

        // 17.6′ of dip and the air's 8′ more below level, at 10.6′ a minute on the equinox.
        Assert.Equal(2.0, (low.Rise!.Value - high.Rise!.Value).TotalMinutes, 0.5);
        Assert.Equal(2.0, (high.Set!.Value - low.Set!.Value).TotalMinutes, 0.5);
        Assert.Equal(low.StandardRise, high.StandardRise);
    }

    [Fact]
    public void Over_a_level_sea_rise_is_within_seconds_of_the_standard() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Int[0, 364]).Sample((latitude, number) =>
        {
            var day = On(new Position(latitude, 10), NewYear.PlusDays(number));
            return Math.Abs((day.Rise!.Value - day.StandardRise!.Value).TotalSeconds) < 8
                && Math.Abs((day.Set!.Value - day.StandardSet!.Value).TotalSeconds) < 8;
        }, iter: 200);

    [Fact]
    public void Behind_a_hill_the_limb_touches_the_skyline_at_rise_and_set()
    {
        var skyline = new Skyline([new(40, 3, SkylineKind.Land), new(140, 5, SkylineKind.Land), new(180, 0, SkylineKind.Sea), new(300, 2, SkylineKind.Unknown)]);
        var observer = new Observer(new Position(44.8, -66.95), 25, skyline);
        for (var number = 0; number < 365; number += 13)
        {
            var day = SunDays.On(NewYear.PlusDays(number), observer, DateTimeZoneProviders.Tzdb["America/New_York"], Years);
            Assert.True(day.StandardRise < day.Rise);
            foreach (var time in new[] { day.Rise!.Value, day.Set!.Value })
            {
                var sun = Years.At(time, observer.Position);
                var limb = SunDisc.UpperLimbDegrees(sun.AltitudeDegrees, Years.DistanceAuAt(time));
                var edge = skyline.AltitudeDegreesAt(Bearing.FromDegrees(sun.AzimuthDegrees), observer.DipDegrees);
                Assert.Equal(edge, limb, 0.0005);
            }
        }
    }

    [Fact]
    public void Sea_all_round_recorded_piece_by_piece_is_the_assumed_sea()
    {
        var recorded = new Skyline([new(0, 0, SkylineKind.Sea), new(90, 0, SkylineKind.Land), new(90.000001, 0, SkylineKind.Sea)]);
        var place = new Position(44.8, -66.95);
        var scanned = SunDays.On(new LocalDate(2026, 5, 5), new Observer(place, 30, recorded), DateTimeZone.Utc, Years);
        var solved = SunDays.On(new LocalDate(2026, 5, 5), new Observer(place, 30, Skyline.AssumedSea), DateTimeZone.Utc, Years);

        Assert.Equal(0, (scanned.Rise!.Value - solved.Rise!.Value).TotalSeconds, 0.01);
        Assert.Equal(0, (scanned.Set!.Value - solved.Set!.Value).TotalSeconds, 0.01);
    }

    [Fact]
    public void A_day_outside_the_ephemeris_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => On(new Position(44, -67), new LocalDate(2030, 1, 1)));

    private static SunDay On(Position position, LocalDate date, double? height = null) =>
        SunDays.On(date, new Observer(position, height, Skyline.AssumedSea), DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(position.LongitudeDegrees / 15))), Years);
}
