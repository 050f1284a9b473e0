using CsCheck;
using Foreshore.Almanac.Earth;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class SketchDrawingTests
{
    private static SketchPlace At(double latitude, double longitude) => new(SketchMarkKind.Vantage, "1", "A ledge", new(latitude, longitude), []);

    [Fact]
    public void Distances_on_the_sheet_are_those_on_the_ground()
    {
        var (a, b) = (At(44.652, -67.198), At(44.661, -67.205));
        var drawing = SketchDrawing.Of([a, b], []);
        var drawn = Math.Sqrt(Math.Pow(drawing.Marks[0].X - drawing.Marks[1].X, 2) + Math.Pow(drawing.Marks[0].Y - drawing.Marks[1].Y, 2));
        var metres = Geodesic.Between(a.Position, b.Position).Metres;
        // A flat map of a kilometre on a sphere: within half a percent of the ellipsoid.
        Assert.InRange(drawn / drawing.BarUnits * drawing.BarMetres, metres * 0.995, metres * 1.005);
        Assert.True(drawing.Marks[1].Y < drawing.Marks[0].Y && drawing.Marks[1].X < drawing.Marks[0].X); // north is up, west is left
    }

    [Fact]
    public void Signs_never_touch_and_never_leave_the_sheet() =>
        Gen.Select(Gen.Double[-0.004, 0.004], Gen.Double[-0.004, 0.004]).Array[1, 12].Sample(offsets =>
        {
            var marks = SketchDrawing.Of([.. offsets.Select(o => At(44.65 + o.Item1, -67.2 + o.Item2))], []).Marks;
            return marks.All(m => m.SignX is >= 0 and <= 360 && m.SignY is >= 0 and <= 270)
                && marks.Select((m, i) => marks.Take(i).All(n => Math.Sqrt(Math.Pow(m.SignX - n.SignX, 2) + Math.Pow(m.SignY - n.SignY, 2)) >= SketchDrawing.SignApart - 0.5)).All(apart => apart);
        }, iter: 100);

    [Fact]
    public void Two_marks_on_one_spot_get_two_signs()
    {
        var marks = SketchDrawing.Of([At(44.65, -67.2), At(44.65, -67.2)], []).Marks;
        Assert.True(Math.Abs(marks[0].SignX - marks[1].SignX) + Math.Abs(marks[0].SignY - marks[1].SignY) >= SketchDrawing.SignApart);
    }

    [Fact]
    public void A_wedge_opens_along_the_facing() =>
        // Due east from (100, 100): the arc's farthest point is 58 to the right, and none lies to the left.
        Assert.StartsWith("M100 100l", SketchWedge.Path((100, 100), new(Bearing.FromDegrees(90), 60)));

    [Fact]
    public void No_wedge_is_cut_off_by_the_edge_of_the_sheet() =>
        Gen.Select(Gen.Double[-0.02, 0.02], Gen.Double[-0.02, 0.02], Gen.Double[0, 359.9], Gen.Double[5, 120]).Array[1, 8].Sample(stances =>
        {
            var drawing = SketchDrawing.Of([.. stances.Select(s => At(44.65 + s.Item1, -67.2 + s.Item2) with { Facings = [new(Bearing.FromDegrees(s.Item3), s.Item4)] })], []);
            return drawing.Marks.Zip(drawing.Wedges).All(pair => SketchWedge.Arc(pair.Second.Facing)
                .All(corner => pair.First.X + corner.X is >= 0 and <= SketchDrawing.Width && pair.First.Y + corner.Y is >= 0 and <= SketchDrawing.Height));
        }, iter: 100);

    [Fact]
    public void The_bar_is_a_round_length_that_fits_a_third_of_the_sheet()
    {
        var drawing = SketchDrawing.Of([At(44.65, -67.2)], []);
        Assert.Equal(100, drawing.BarMetres);
        Assert.Equal(72, drawing.BarUnits, 6);
    }

    [Fact]
    public void A_small_sheet_fills_no_land_from_a_coast_too_coarse_for_it() => Assert.Empty(SketchDrawing.Of([At(44.652, -67.198)], []).Land);
}
