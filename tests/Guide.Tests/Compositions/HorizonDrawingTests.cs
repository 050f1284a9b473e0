using CsCheck;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Xunit;

namespace Foreshore.Guide.Compositions;

public sealed class HorizonDrawingTests
{
    private static HorizonDrawing Drawn(Observer observer, double facing, (Bearing, Bearing)? exposed = null) =>
        HorizonDrawing.Of(observer, Scenes.Looking(facing, 24), exposed, new(2026, 10), Scenes.Zone, Scenes.Sun);

    [Fact]
    public void Ticks_stand_at_the_suns_bearing_when_its_limb_meets_the_places_own_skyline()
    {
        var drawing = Drawn(Scenes.Ledge, 112);
        foreach (var tick in drawing.Ticks)
        {
            var day = SunDays.On(tick.Edge.Date, Scenes.Ledge, Scenes.Zone, Scenes.Sun);
            var time = (tick.Edge.Rises ? day.Rise : day.Set)!.Value;
            var bearing = Scenes.Sun.At(time, Scenes.Ledge.Position).AzimuthDegrees;
            Assert.Equal(bearing - (112 - 90), tick.Right, 6);
        }
        Assert.Equal(12, drawing.Ticks.Count);
        Assert.All(drawing.Ticks, tick => Assert.True(tick.Edge.Rises));
    }

    /// <summary>On the equator over the sea the sun comes up at 90° less its declination, which at the solstices is the
    /// obliquity, 23.44° (IAU 2006); refraction and disc move it by less than 0.1°, for it comes up steeply.</summary>
    [Theory]
    [InlineData(6, 90 - 23.44)]
    [InlineData(12, 90 + 23.44)]
    public void On_the_equator_the_solstice_sun_comes_up_at_the_obliquity_from_east(int month, double expected)
    {
        var edge = Drawn(Scenes.At(0), 90).Edges.Single(e => e.Rises && e.Date.Month == month);
        Assert.InRange(edge.Bearing!.Value.Degrees, expected - 0.15, expected + 0.15);
    }

    [Fact]
    public void Letters_never_touch_at_any_latitude_or_facing() =>
        Gen.Select(Gen.Double[-89, 89], Gen.Double[0, 359]).Sample((latitude, facing) =>
        {
            var drawing = Drawn(Scenes.At(latitude), facing);
            return drawing.Ticks.GroupBy(tick => tick.IsFirstHalf).All(row =>
            {
                var places = row.Select(tick => tick.LetterRight).Order().ToList();
                return places.Zip(places.Skip(1)).All(pair => pair.Second - pair.First >= HorizonDrawing.LetterApart - 1e-9)
                    && places.All(at => at is >= 0 and <= 180);
            });
        }, iter: 300);

    [Fact]
    public void Leaders_of_one_row_never_cross()
    {
        foreach (var facing in Enumerable.Range(0, 36).Select(i => i * 10.0))
            foreach (var row in Drawn(Scenes.Ledge, facing).Ticks.GroupBy(tick => tick.IsFirstHalf))
            {
                var byTick = row.OrderBy(tick => tick.Right).Select(tick => tick.LetterRight).ToList();
                Assert.Equal(byTick.Order(), byTick);
            }
    }

    [Fact]
    public void Every_month_is_in_the_table_and_those_outside_the_strip_are_said_there()
    {
        var drawing = Drawn(Scenes.Ledge, 112);
        Assert.Equal(24, drawing.Edges.Count);
        Assert.DoesNotContain(drawing.Ticks, tick => !tick.Edge.Rises);
        Assert.EndsWith("outside the strip", HorizonWords.Of(drawing.Edges.First(e => !e.Rises), drawing));
    }

    [Fact]
    public void Months_of_polar_day_and_night_have_no_tick_and_say_so()
    {
        var drawing = Drawn(Scenes.At(78.2, 15.6), 0);
        var june = drawing.Edges.Single(e => e.Rises && e.Date.Month == 6);
        Assert.Null(june.Bearing);
        Assert.Equal("does not come up", HorizonWords.Of(june, drawing));
        Assert.DoesNotContain(drawing.Ticks, tick => tick.Edge.Date.Month is 6 or 12);
    }

    [Theory]
    [InlineData(88, 168, 66, 146)] // inside the strip
    [InlineData(350, 60, 0, 38)] // begins left of it
    [InlineData(180, 300, 158, 180)] // ends right of it
    public void The_exposed_sector_is_cut_to_the_strip(double from, double to, double left, double right)
    {
        var piece = Assert.Single(Drawn(Scenes.Ledge, 112, (Bearing.FromDegrees(from), Bearing.FromDegrees(to))).Exposed);
        Assert.Equal((left, right), (piece.From, piece.To));
    }

    [Fact]
    public void A_sector_round_the_back_comes_in_at_both_ends() =>
        Assert.Equal([(128, 180), (0, 28)], Drawn(Scenes.Ledge, 112, (Bearing.FromDegrees(150), Bearing.FromDegrees(50))).Exposed);

    [Fact]
    public void A_sector_behind_the_back_is_not_drawn() =>
        Assert.Empty(Drawn(Scenes.Ledge, 112, (Bearing.FromDegrees(230), Bearing.FromDegrees(350))).Exposed);

    /// <summary>2 atan(18/24) = 73.74°: the triangle of 3, 4 and 5.</summary>
    [Fact]
    public void The_lens_bracket_is_as_wide_as_the_lens_sees()
    {
        var drawing = Drawn(Scenes.Ledge, 112);
        Assert.Equal(73.7398, drawing.Lens.To - drawing.Lens.From, 4);
        Assert.Equal("24 mm on 36 × 24 · 74°", drawing.LensWords);
    }

    [Fact]
    public void Skyline_runs_meet_and_cover_the_strip() => Gen.Double[0, 359.9].Sample(from =>
    {
        var runs = SkylineRun.Across(Scenes.Ledge, Bearing.FromDegrees(from), 180);
        return runs[0].Corners[0].Right == 0 && Math.Abs(runs[^1].Corners[^1].Right - 180) < 1e-9
            && runs.Zip(runs.Skip(1)).All(pair => Math.Abs(pair.First.Corners[^1].Right - pair.Second.Corners[0].Right) < 1e-9);
    });

    [Fact]
    public void Skyline_runs_stand_at_the_skylines_altitude() => Gen.Select(Gen.Double[0, 359.9], Gen.Double[0.1, 0.9]).Sample((from, along) =>
    {
        foreach (var run in SkylineRun.Across(Scenes.Ledge, Bearing.FromDegrees(from), 180))
            foreach (var (a, b) in run.Corners.Zip(run.Corners.Skip(1)))
            {
                if (b.Right - a.Right < 1e-6) continue; // a step
                var at = Bearing.FromDegrees(from + a.Right + (b.Right - a.Right) * along);
                var expected = Scenes.Ledge.Skyline.AltitudeDegreesAt(at, Scenes.Ledge.DipDegrees);
                if (Math.Abs(a.Altitude + (b.Altitude - a.Altitude) * along - expected) > 1e-6) return false;
            }
        return true;
    });
}
