using Foreshore.Almanac.Earth;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

public sealed class SunPathDrawingTests
{
    private static SunPathDrawing Drawn(double latitude, double facing = 112, DateTimeZone? zone = null) =>
        SunPathDrawing.Of(Scenes.At(latitude), Scenes.Looking(facing, 24), Scenes.Today, zone ?? DateTimeZone.Utc, Scenes.Sun);

    [Theory]
    [InlineData(45, 180)]
    [InlineData(78, 180)]
    [InlineData(0, 180)]
    [InlineData(-34, 0)]
    public void The_chart_is_centred_where_the_years_noons_stand(double latitude, double middle)
    {
        var drawing = Drawn(latitude);
        Assert.Equal(middle, drawing.Left.Plus(drawing.Span / 2).Degrees, 6);
        Assert.InRange(drawing.Span, 60, 360);
    }

    /// <summary>At noon the altitude is 90° − |latitude − declination|; at the June solstice the declination is 23.44° (IAU 2006).</summary>
    [Theory]
    [InlineData(45, 68.44)]
    [InlineData(-34, 32.56)]
    public void The_solstice_line_is_as_high_as_the_declination_says(double latitude, double expected)
    {
        var june = Drawn(latitude).Paths.Single(p => p.Kind == PathDay.JuneSolstice);
        // As seen, and read every eight minutes: refraction there is below 0.03°.
        Assert.InRange(june.Runs.SelectMany(r => r).Max(p => p.Altitude), expected - 0.05, expected + 0.08);
    }

    [Fact]
    public void In_polar_day_the_line_runs_from_end_to_end_and_in_polar_night_there_is_none()
    {
        var drawing = Drawn(78.2);
        Assert.Equal(360, drawing.Span);
        var june = drawing.Paths.Single(p => p.Kind == PathDay.JuneSolstice).Runs.SelectMany(r => r).ToList();
        Assert.True(june.Min(p => p.Right) < 3 && june.Max(p => p.Right) > 357);
        Assert.Empty(drawing.Paths.Single(p => p.Kind == PathDay.DecemberSolstice).Runs);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(12)]
    [InlineData(-34)]
    [InlineData(78)]
    public void No_line_leaps_across_the_chart(double latitude) =>
        Assert.All(Drawn(latitude, 5).Paths.SelectMany(p => p.Runs).Concat(Drawn(latitude, 5).Frame),
            run => Assert.All(run.Zip(run.Skip(1)), pair => Assert.True(Math.Abs(pair.Second.Right - pair.First.Right) <= 180)));

    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    [InlineData(78)]
    public void Hours_of_the_clock_scale_keep_apart_and_stand_at_the_suns_bearing(double latitude)
    {
        var drawing = Drawn(latitude);
        var places = drawing.Clock.Select(h => h.Right).Order().ToList();
        Assert.All(places.Zip(places.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 0.06 * drawing.Span));
        foreach (var (hour, right) in drawing.Clock)
        {
            var time = Scenes.Today.At(new LocalTime(hour, 0)).InUtc().ToInstant();
            var sun = Scenes.Sun.At(time, Scenes.At(latitude).Position);
            Assert.InRange(Math.Abs(drawing.Left.Plus(right).SignedTo(Bearing.FromDegrees(sun.AzimuthDegrees))), 0, 0.6);
        }
    }

    [Fact]
    public void A_frame_that_looks_away_from_the_sun_is_still_on_the_chart() =>
        Assert.All(Drawn(45, 0).Frame.SelectMany(piece => piece), corner => Assert.InRange(corner.Right, -1e-9, 360 + 1e-9));
}
