using CsCheck;

namespace Foreshore.Almanac.Earth;

public class GeodesicTests
{
    private static readonly Gen<Position> Anywhere =
        Gen.Select(Gen.OneOf(Gen.Double[-90, 90], Some.Of(-90.0, 0, 90)), Gen.OneOf(Gen.Double[-180, 179.999], Some.Of(-180.0, 0, 179.9)), (latitude, longitude) => new Position(latitude, longitude));

    [Fact]
    public void Going_along_the_line_between_two_positions_arrives() =>
        Gen.Select(Anywhere, Anywhere).Sample((a, b) =>
        {
            var line = Geodesic.Between(a, b);
            var end = Geodesic.Along(a, line.Initial, line.Metres);
            return Geodesic.Between(b, end.Position).Metres < 1e-6;
        });

    [Fact]
    public void Distances_are_the_same_both_ways_and_at_most_half_round_the_Earth() =>
        Gen.Select(Anywhere, Anywhere).Sample((a, b) =>
        {
            var (there, back) = (Geodesic.Between(a, b).Metres, Geodesic.Between(b, a).Metres);
            return Math.Abs(there - back) < 1e-6 && there is >= 0 and <= 20003931.4587;
        });

    [Fact]
    public void Going_out_and_back_returns() =>
        Gen.Select(Anywhere, Gen.Double[0, 360], Gen.Double[0, 60e6]).Sample((from, degrees, metres) =>
        {
            var end = Geodesic.Along(from, Bearing.FromDegrees(degrees), metres);
            var home = Geodesic.Along(end.Position, end.Final.Plus(180), metres);
            return Geodesic.Between(from, home.Position).Metres < 1e-5;
        });

    [Fact]
    public void A_place_is_no_distance_from_itself() =>
        Anywhere.Sample(place => Geodesic.Between(place, place).Metres == 0);

    [Fact]
    public void Date_line_is_no_barrier()
    {
        var across = Geodesic.Between(new Position(-17, 179.9), new Position(-17, -179.9));

        // The parallel's arc, N cos φ Δλ = 6,379,962 m × 0.956305 × 0.003491, is a metre or so longer at most.
        Assert.Equal(21297.2, across.Metres, 1.0);
        Assert.Equal(90.03, across.Initial.Degrees, 0.01);
    }
}
