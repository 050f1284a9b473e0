using System.Globalization;
using CsCheck;
using Foreshore.Guide.Shell.Maps;
using Xunit;

namespace Foreshore.Guide.Tests.Shell.Maps;

public class CoastlineTests
{
    private static readonly Gen<MapBox> AnyBox =
        Gen.Select(Gen.Double[-180, 180], Gen.Double[-89, 88], Gen.Double[0.01, 60], Gen.Double[0.01, 60])
            .Select((west, south, width, height) => new MapBox(west, south, west + width, Math.Min(90, south + height)));

    public static TheoryData<double, double, double, double, double, double> Published()
    {
        var rows = new TheoryData<double, double, double, double, double, double>();
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Published/coastline-clips.csv")).SkipWhile(l => l[0] is '#' or 'w'))
        {
            var v = line.Split(',').Select(f => double.Parse(f, CultureInfo.InvariantCulture)).ToArray();
            rows.Add(v[0], v[1], v[2], v[3], v[4], v[5]);
        }
        return rows;
    }

    [Theory, MemberData(nameof(Published))]
    public void Land_and_shore_in_a_box_are_what_a_second_clipper_finds(double west, double south, double east, double north, double area, double shore)
    {
        var coast = Coastline.ClippedTo(new MapBox(west, south, east, north), detailDegrees: 0);
        var land = coast.Land.Sum(p => PlaneArea(p.Outer) - p.Lakes.Sum(PlaneArea));
        Assert.Equal(area, land, 1e-6 * area + 1e-7);
        Assert.Equal(shore, coast.Shore.Sum(Length), 1e-6 * shore + 1e-7);
    }

    // Areas of main islands: UNEP Islands Directory (values from memory, rounded to the hundred). A 1:10 million coast
    // cuts capes and adds inlets: 1 % covers it.
    [Theory]
    [InlineData("Iceland", 63, -25, 67, -13, 101_800)]
    [InlineData("Tasmania", -43.8, 144.5, -40.6, 148.5, 64_500)]
    [InlineData("Madagascar", -26, 43, -11.5, 51, 587_700)]
    public void Great_islands_have_their_published_area(string island, double south, double west, double north, double east, double squareKilometres)
    {
        var largest = Coastline.ClippedTo(new MapBox(west, south, east, north), detailDegrees: 0).Land.Max(p => SquareKilometres(p.Outer));
        Assert.True(Math.Abs(largest / squareKilometres - 1) < 0.01, $"{island}: {largest:F0} km²");
    }

    [Fact]
    public void Everything_lies_within_the_box_and_rings_are_closed() =>
        AnyBox.Sample(box =>
        {
            var coast = Coastline.ClippedTo(box);
            var rings = coast.Land.SelectMany(p => p.Lakes.Prepend(p.Outer)).ToList();
            return rings.All(r => r.Count >= 4 && r[0] == r[^1])
                && coast.Shore.All(l => l.Count >= 2)
                && rings.Concat(coast.Shore).All(l => l.All(box.Contains));
        }, iter: 60);

    [Fact]
    public void No_shore_is_drawn_along_the_edges_of_the_box()
    {
        // The middle of Australia: land everywhere, shore nowhere.
        var coast = Coastline.ClippedTo(new MapBox(130, -26, 132, -24));
        Assert.Empty(coast.Shore);
        Assert.Equal(4, PlaneArea(Assert.Single(coast.Land).Outer), 1e-9);
    }

    [Fact]
    public void The_open_ocean_is_empty() => Assert.Empty(Coastline.ClippedTo(new MapBox(-40, 25, -38, 27)).Land);

    [Fact]
    public void The_south_pole_is_land_without_a_shore_along_the_map_edge()
    {
        var coast = Coastline.ClippedTo(new MapBox(-180, -90, 180, -60));
        Assert.Contains(coast.Land, p => PlaneArea(p.Outer) > 3000);
        Assert.DoesNotContain(coast.Shore, l => l.Any(p => p.LatitudeDegrees < -86));
    }

    [Fact]
    public void A_box_across_the_date_line_holds_the_same_land_as_its_two_halves()
    {
        var across = Coastline.ClippedTo(new MapBox(175, 60, -170, 72), 0);
        var west = Coastline.ClippedTo(new MapBox(175, 60, 180, 72), 0);
        var east = Coastline.ClippedTo(new MapBox(-180, 60, -170, 72), 0);
        Assert.True(PlaneArea(across.Land) > 10);
        Assert.Equal(PlaneArea(west.Land) + PlaneArea(east.Land), PlaneArea(across.Land), 1e-9);
        Assert.All(across.Shore, l => Assert.All(l, p => Assert.InRange(p.LongitudeDegrees, 175, 190)));
    }

    [Fact]
    public void Less_detail_keeps_within_the_detail_asked_for()
    {
        var box = new MapBox(-69, 44, -66.5, 45.2);
        var (fine, plain) = (Coastline.ClippedTo(box, 0), Coastline.ClippedTo(box, 0.01));
        Assert.InRange(plain.Shore.Sum(l => l.Count), 10, fine.Shore.Sum(l => l.Count) / 2);
        var all = fine.Shore.SelectMany(l => l).ToList();
        // Away from the box's edges, where both are cut, each point kept is a point of the source.
        Assert.All(plain.Shore.SelectMany(l => l).Where(p => Inner(box, p)), p => Assert.Contains(p, all));
    }

    [Theory]
    [InlineData(double.NaN, 0, 1, 1)]
    [InlineData(0, double.NegativeInfinity, 1, 1)]
    [InlineData(0, 0, 1, 91)]
    [InlineData(-181, 0, 1, 1)]
    [InlineData(0, 5, 1, 5)]
    [InlineData(3, 0, 3, 1)]
    public void A_box_that_is_none_is_refused(double west, double south, double east, double north) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new MapBox(west, south, east, north));

    private static bool Inner(MapBox box, MapPoint p) =>
        p.LongitudeDegrees > box.West && p.LongitudeDegrees < box.East && p.LatitudeDegrees > box.South && p.LatitudeDegrees < box.North;

    private static double PlaneArea(IReadOnlyList<LandPiece> land) => land.Sum(p => PlaneArea(p.Outer));

    private static double PlaneArea(IReadOnlyList<MapPoint> ring) =>
        Math.Abs(ring.Zip(ring.Skip(1), (a, b) => a.LongitudeDegrees * b.LatitudeDegrees - b.LongitudeDegrees * a.LatitudeDegrees).Sum()) / 2;

    private static double Length(IReadOnlyList<MapPoint> line) =>
        line.Zip(line.Skip(1), (a, b) => Math.Sqrt(Math.Pow(a.LongitudeDegrees - b.LongitudeDegrees, 2) + Math.Pow(a.LatitudeDegrees - b.LatitudeDegrees, 2))).Sum();

    // Chamberlain and Duquette, "Some algorithms for polygons on a sphere" (JPL 07-03, 2007), on authalic latitudes.
    private static double SquareKilometres(IReadOnlyList<MapPoint> ring)
    {
        const double AuthalicRadiusKilometres = 6371.0072; // WGS 84
        return AuthalicRadiusKilometres * AuthalicRadiusKilometres * Math.Abs(ring.Zip(ring.Skip(1), (a, b) =>
            (b.LongitudeDegrees - a.LongitudeDegrees) * Math.PI / 180
            * (2 + SineOfAuthalic(a.LatitudeDegrees) + SineOfAuthalic(b.LatitudeDegrees))).Sum()) / 2;
    }

    // Snyder, "Map Projections: A Working Manual" (USGS PP 1395, 1987), equations 3-11 and 3-12.
    private static double SineOfAuthalic(double latitudeDegrees)
    {
        var e = Math.Sqrt(0.00669437999014);
        return Q(Math.Sin(latitudeDegrees * Math.PI / 180)) / Q(1);
        double Q(double sine) => (1 - e * e) * (sine / (1 - e * e * sine * sine) - Math.Log((1 - e * sine) / (1 + e * sine)) / (2 * e));
    }
}
