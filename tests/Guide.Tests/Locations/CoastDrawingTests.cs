using Foreshore.Almanac.Earth;
using Foreshore.Guide.Shell.Maps;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class CoastDrawingTests
{
    private static readonly CoastPlace[] Places =
    [
        new(new(44.905, -66.985)), new(new(44.815, -66.951)), new(new(44.775, -67.005)), new(new(44.657, -67.205)),
        new(new(44.650, -67.192), IsOverWater: true, Crossing: "ferry 9 min"), new(new(44.629, -67.388), IsBlurred: true), new(new(44.480, -67.595)),
    ];

    [Fact]
    public void Rows_join_from_top_to_bottom_without_a_seam()
    {
        var rows = CoastDrawing.Of(Places);
        foreach (var (upper, lower) in rows.Zip(rows.Skip(1)))
        {
            Assert.Equal((upper.Shore[^1].X, 100), (lower.Shore[0].X, upper.Shore[^1].Y));
            Assert.Equal(0, lower.Shore[0].Y);
            for (var echo = 1; echo <= 3; echo++) Assert.Equal(upper.Echo(echo).Last().X, lower.Echo(echo).First().X, 9);
        }
    }

    [Fact]
    public void The_shore_runs_down_the_row_through_its_place_and_within_the_strip() => Assert.All(CoastDrawing.Of(Places), row =>
    {
        Assert.Equal(row.X, row.Shore.Single(p => p.Y == 50).X, 9);
        Assert.Equal(row.Shore.Select(p => p.Y).Order(), row.Shore.Select(p => p.Y));
        Assert.All(row.Shore, p => Assert.InRange(p.X, 0, CoastDrawing.Width));
        Assert.All(row.Islets.SelectMany(i => i), p => Assert.InRange(p.Y, 0, 100));
    });

    [Fact]
    public void Distances_and_ways_are_the_geodesics()
    {
        var rows = CoastDrawing.Of(Places);
        var expected = Geodesic.Between(Places[0].Position, Places[1].Position);
        Assert.Equal((expected.Metres, expected.Initial), (rows[0].Next!.Metres, rows[0].Next!.Way));
        Assert.Equal("10.4 km SSE", CoastWords.Of(rows[0].Next!));
        Assert.Equal("ferry 9 min", rows[3].Next!.Crossing);
        Assert.Null(rows[^1].Next);
    }

    /// <summary>A straight ocean coast, the sea to the west of it: on the left for one who goes north.</summary>
    [Fact]
    public void The_sea_lies_on_the_left_of_one_who_has_it_there()
    {
        var inland = new Position(44.1, -1.26);
        var coast = new CoastPlane(Coastline.ClippedTo(MapBox.Around(44.2, -1.26, 60_000), 0.0005));
        var shore = new CoastStretch(coast, inland, Bearing.FromDegrees(0), 20_000).ShoreLeftMetres(0.5);
        Assert.InRange(shore, 500, 9000);
        // South-going, the same shore is on the right hand: the land ends nowhere near on the left.
        Assert.Equal(0, new CoastStretch(coast, new(44.3, -1.26), Bearing.FromDegrees(180), 20_000).ShoreLeftMetres(0.5));
    }

    [Fact]
    public void A_place_out_to_the_left_of_the_straight_way_bends_the_strip_to_the_sea()
    {
        // South-west along a straight line but for the middle place, 0.1° to the south-east: left of the way, out to sea.
        var rows = CoastDrawing.Of([new(new(45, -30)), new(new(44.7, -30.2)), new(new(44.6, -30.6))]);
        Assert.True(rows[1].X > rows[0].X);
    }

    [Fact]
    public void One_place_or_none_is_no_trouble()
    {
        Assert.Empty(CoastDrawing.Of([]));
        Assert.Null(Assert.Single(CoastDrawing.Of([Places[0]])).Next);
    }

    [Fact]
    public void A_coast_across_the_180th_meridian_is_drawn()
    {
        var rows = CoastDrawing.Of([new(new(-16.8, 179.95)), new(new(-16.85, -179.95))]);
        Assert.InRange(rows[0].Next!.Metres, 10_000, 13_000);
        Assert.Equal("ESE", rows[0].Next!.Point);
    }

    [Theory]
    [InlineData(430, "450 m")]
    [InlineData(960, "1.0 km")]
    [InlineData(12_340, "12.3 km")]
    public void Distances_are_round(double metres, string words) => Assert.Equal(words, CoastWords.Distance(metres));
}
