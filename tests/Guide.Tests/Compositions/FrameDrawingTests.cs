using CsCheck;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

public sealed class FrameDrawingTests
{
    private static readonly SubjectSeen Tower = new(Bearing.FromDegrees(103), 620, -0.2, 3.6, 3.8);

    private static FrameDrawing Drawn(Frame frame, SubjectSeen? subject = null) =>
        FrameDrawing.Of(Scenes.Ledge, frame, subject, Scenes.Day(Scenes.Today), Scenes.Day(Scenes.Best), Scenes.Sun);

    /// <summary>atan(18/24) = 36.8699°: the triangle of 3, 4 and 5.</summary>
    [Fact]
    public void The_edge_of_the_angle_of_view_falls_on_the_edge_of_the_picture()
    {
        var picture = new FramePicture(Scenes.WideToSea);
        Assert.Equal((360, 240), (Math.Round(picture.Width, 9), Math.Round(picture.Height, 9)));
        var (x, y) = picture.At(112 + 36.869897645844, 0)!.Value;
        Assert.Equal((360, 120), (Math.Round(x, 6), Math.Round(y, 6)));
    }

    [Fact]
    public void Directions_are_the_way_back_of_the_projection() =>
        Gen.Select(Gen.Double[8, 400], Gen.Double[-40, 60], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool).Sample((focal, tilt, right, down, upright) =>
        {
            var picture = new FramePicture(Scenes.Looking(350, focal, tilt, upright ? Orientation.Portrait : Orientation.Landscape));
            var (turn, altitude) = picture.DirectionAt(right * picture.Width, down * picture.Height);
            var back = picture.At(350 + turn, altitude)!.Value;
            return Math.Abs(back.X - right * picture.Width) < 1e-6 && Math.Abs(back.Y - down * picture.Height) < 1e-6;
        });

    [Fact]
    public void Times_are_those_at_which_the_sun_as_seen_stands_on_the_line()
    {
        var drawing = Drawn(Scenes.WideToSea);
        Assert.NotEmpty(drawing.Times);
        foreach (var time in drawing.Times.Select(t => t.Time))
        {
            var sun = Scenes.Sun.At(time.Time, Scenes.Ledge.Position);
            var at = drawing.Picture.At(sun.AzimuthDegrees, Refraction.Apparent(sun.AltitudeDegrees))!.Value;
            var off = time.Line switch
            {
                FrameLine.LeftEdge => at.X,
                FrameLine.LeftThird => at.X - 120,
                FrameLine.RightThird => at.X - 240,
                FrameLine.RightEdge => at.X - 360,
                FrameLine.TopEdge => at.Y,
                FrameLine.UpperThird => at.Y - 80,
                FrameLine.LowerThird => at.Y - 160,
                _ => at.Y - 240,
            };
            // A tenth of a second of the sun's way: 15° an hour is 0.0004° in that time, and 360 units are 74°.
            Assert.InRange(off, -0.005, 0.005);
        }
    }

    [Fact]
    public void The_sun_comes_into_the_picture_over_the_skyline_where_it_rises()
    {
        var today = Drawn(Scenes.WideToSea).Tracks[0];
        var rise = Scenes.Sun.At(Scenes.Day(Scenes.Today).Rise!.Value, Scenes.Ledge.Position);
        var (x, y) = today.Runs[0][0];
        var expected = new FramePicture(Scenes.WideToSea).At(rise.AzimuthDegrees, Refraction.Apparent(rise.AltitudeDegrees))!.Value;
        Assert.Equal((Math.Round(expected.X, 6), Math.Round(expected.Y, 6)), (Math.Round(x, 6), Math.Round(y, 6)));
    }

    [Fact]
    public void Margin_times_never_touch()
    {
        foreach (var facing in Enumerable.Range(0, 24).Select(i => i * 15.0))
            foreach (var margin in Drawn(Scenes.Looking(facing, 16, 8)).Times.GroupBy(t => t.Side))
            {
                var upright = margin.Key is MarginSide.Left or MarginSide.Right;
                var places = margin.Select(t => upright ? t.Y : t.X).Order().ToList();
                Assert.All(places.Zip(places.Skip(1)), pair => Assert.True(pair.Second - pair.First >= (upright ? 15 : 34) - 1e-9));
            }
    }

    [Fact]
    public void The_subject_is_as_high_as_its_angle()
    {
        var block = Drawn(Scenes.Looking(103, 50), Tower).Block;
        var picture = new FramePicture(Scenes.Looking(103, 50));
        // On the axis a rectilinear lens of 50 mm puts an altitude a at 50 tan a: 360 units are 36 mm.
        Assert.Equal(10 * 50 * (Math.Tan(3.6 * Math.PI / 180) + Math.Tan(0.2 * Math.PI / 180)), block[0].Y - block[1].Y, 1);
        Assert.InRange((block[0].X + block[3].X) / 2, picture.Width / 2 - 0.01, picture.Width / 2 + 0.01);
    }

    [Fact]
    public void Land_that_hides_the_sun_breaks_its_way_and_a_way_elsewhere_is_said()
    {
        var away = Drawn(Scenes.Looking(0, 50));
        Assert.All(away.Tracks, track => Assert.Empty(track.Runs));
        Assert.Contains("does not enter the frame", new FrameWords(away, Scenes.Zone, null).KeyOf(away.Tracks[0]));
    }

    [Fact]
    public void The_midnight_sun_crosses_a_northward_picture_without_a_gap()
    {
        var svalbard = Scenes.At(78.2, 15.6);
        var zone = DateTimeZoneProviders.Tzdb["Arctic/Longyearbyen"];
        var day = SunDays.On(new LocalDate(2027, 6, 21), svalbard, zone, Scenes.Sun);
        var track = FrameDrawing.Of(svalbard, Scenes.Looking(0, 35, 10), null, day, null, Scenes.Sun).Tracks[0];
        // Midnight, where one solar day ends and the next begins, is in the middle of this picture.
        Assert.Equal(2, track.Runs.Count);
        Assert.All(track.Runs, run => Assert.True(Math.Min(Math.Abs(run[0].X - 180), Math.Abs(run[^1].X - 180)) < 1));
    }

    [Fact]
    public void A_sea_that_is_not_in_the_picture_is_not_drawn()
    {
        Assert.NotEmpty(Drawn(Scenes.WideToSea).Water);
        Assert.Empty(Drawn(Scenes.Looking(45, 85)).Water);
    }
}
