using Foreshore.Almanac.Sun;
using Foreshore.Guide.Compositions;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Outlooks;

public sealed class LightDrawingTests
{
    private static readonly Interval Dawn = new(Instant.FromUtc(2027, 2, 14, 9, 30), Instant.FromUtc(2027, 2, 14, 13, 30));

    [Fact]
    public void Bands_change_where_the_twilights_end()
    {
        var drawing = LightDrawing.Of(Dawn, Scenes.Ledge, [], Scenes.Zone, Scenes.Sun);
        var day = Scenes.Day(Scenes.Best);
        Assert.Equal([LightInk.Night, LightInk.Astronomical, LightInk.Nautical, LightInk.Civil, LightInk.LowSun, LightInk.Day], drawing.Bands.Select(b => b.Ink));
        Instant[] ends = [day.AstronomicalDawn!.Value, day.NauticalDawn!.Value, day.CivilDawn!.Value, day.StandardRise!.Value];
        foreach (var (band, end) in drawing.Bands.Zip(ends))
            Assert.InRange(((Dawn.Start + Dawn.Duration * band.To) - end).TotalSeconds, -1, 1);
        Assert.Equal(1, drawing.Bands[^1].To);
        Assert.All(drawing.Bands.Zip(drawing.Bands.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
    }

    [Fact]
    public void Rays_lie_in_the_low_sun_at_its_altitude_and_rise_before_noon()
    {
        var drawing = LightDrawing.Of(Dawn, Scenes.Ledge, [], Scenes.Zone, Scenes.Sun);
        Assert.NotEmpty(drawing.Rays);
        Assert.All(drawing.Rays, ray =>
        {
            Assert.InRange(ray.AltitudeDegrees, SunDisc.StandardAltitudeDegrees, LightDrawing.LowSunEndsDegrees);
            Assert.Equal(Scenes.Sun.At(Dawn.Start + Dawn.Duration * ray.At, Scenes.Ledge.Position).AltitudeDegrees, ray.AltitudeDegrees, 6);
            Assert.True(ray.Rising);
        });
    }

    [Fact]
    public void Sunrise_is_ticked_once_at_the_places_own_rise()
    {
        var tick = Assert.Single(LightDrawing.Of(Dawn, Scenes.Ledge, [], Scenes.Zone, Scenes.Sun).Ticks);
        Assert.Equal((true, Scenes.Day(Scenes.Best).Rise!.Value), (tick.Rises, tick.Time));
    }

    [Fact]
    public void Windows_are_cut_to_the_strip_but_keep_their_times()
    {
        var early = new Interval(Dawn.Start - Duration.FromHours(2), Dawn.Start + Duration.FromHours(1));
        var gone = new Interval(Dawn.End, Dawn.End + Duration.FromHours(1));
        var window = Assert.Single(LightDrawing.Of(Dawn, Scenes.Ledge, [early, gone], Scenes.Zone, Scenes.Sun).Windows);
        Assert.Equal((0, 0.25, early), (window.From, window.To, window.Window));
    }

    [Fact]
    public void A_night_over_the_clock_change_bears_whole_hours_of_the_places_clock()
    {
        var night = new Interval(Instant.FromUtc(2026, 10, 31, 22, 0), Instant.FromUtc(2026, 11, 1, 12, 0));
        var clock = LightDrawing.Of(night, Scenes.Ledge, [], Scenes.Zone, Scenes.Sun).Clock;
        Assert.All(clock, figure => Assert.Equal((0, 0), (figure.Clock.Hour % 3, figure.Clock.Minute)));
        Assert.Equal(clock.Select(f => f.At).Order(), clock.Select(f => f.At));
    }

    [Theory]
    [InlineData(6, 21, LightInk.Day, LightInk.LowSun)]
    [InlineData(12, 21, LightInk.Astronomical, LightInk.Night)]
    public void In_the_far_north_the_strip_needs_no_event(int month, int day, LightInk noon, LightInk other)
    {
        var midnight = Instant.FromUtc(2027, month, day, 0, 0);
        var drawing = LightDrawing.Of(new(midnight, midnight + Duration.FromHours(24)), Scenes.At(80, 0), [], DateTimeZone.Utc, Scenes.Sun);
        Assert.Empty(drawing.Ticks);
        Assert.Equal(noon, drawing.Bands.Single(b => b.From < 0.5 && b.To > 0.5).Ink);
        Assert.All(drawing.Bands, band => Assert.Contains(band.Ink, new[] { noon, other }));
    }

    [Fact]
    public void A_strip_of_no_time_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LightDrawing.Of(new(Dawn.Start, Dawn.Start), Scenes.Ledge, [], Scenes.Zone, Scenes.Sun));
}
