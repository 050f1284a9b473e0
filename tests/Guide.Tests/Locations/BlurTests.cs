using System.Globalization;
using CsCheck;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Demo;
using Foreshore.Guide.Members;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class BlurTests
{
    private static readonly Gen<Position> Anywhere = Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180], (latitude, longitude) => new Position(latitude, longitude));
    private static readonly Gen<Position> OffThePoles = Gen.Select(Gen.Double[-85, 85], Gen.Double[-180, 180], (latitude, longitude) => new Position(latitude, longitude));

    [Fact]
    public void The_cell_is_fixed_and_its_centre_lies_in_itself() => Anywhere.Sample(p => Blur.Cell(Blur.Cell(p)) == Blur.Cell(p));

    /// <summary>A cell of 1 km has no point farther than half its diagonal, 708 m, from its centre; held by the geodesic.</summary>
    [Fact]
    public void No_place_is_farther_from_its_cells_centre_than_half_the_diagonal() =>
        OffThePoles.Sample(p => Geodesic.Between(p, Blur.Cell(p)).Metres < 720);

    [Theory]
    [InlineData(90, 0)]
    [InlineData(-90, 179.9999)]
    [InlineData(0, -180)]
    [InlineData(0, 179.99999)]
    public void Poles_and_the_date_line_have_cells_too(double latitude, double longitude) =>
        Assert.InRange(Geodesic.Between(new Position(latitude, longitude), Blur.Cell(new Position(latitude, longitude))).Metres, 0, 1100);

    [Fact]
    public void What_a_stranger_gets_of_a_sensitive_place_holds_no_true_coordinate_anywhere()
    {
        var exact = Sensitive();
        var secrets = Numbers(exact, "latitude", "longitude", "line", "facing", "skyline").ToHashSet();
        Assert.True(secrets.Count > 10, "The demo's sensitive place should have coordinates to leak.");

        var blurred = Blur.For(exact, Reader.Visitor);
        Assert.True(blurred.IsBlurred);
        Assert.DoesNotContain(Numbers(blurred), secrets.Contains);
        Assert.DoesNotContain(ObjectGraph.Leaves(blurred, []).OfType<string>(),
            text => secrets.Any(s => text.Contains(s.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)));
        Assert.Equal(Blur.Cell(exact.Position), blurred.Position);
    }

    [Fact]
    public void Routes_parking_emergency_vantage_points_and_all_below_are_withheld()
    {
        var blurred = Blur.For(Sensitive(), Reader.Visitor);
        Assert.Empty(blurred.Routes);
        Assert.Empty(blurred.Parking);
        Assert.Empty(blurred.OvernightRules);
        Assert.Empty(blurred.PermissionLetters);
        Assert.Empty(blurred.VantagePoints);
        Assert.Empty(blurred.Grants);
        Assert.Null(blurred.Emergency);
        Assert.Null(blurred.ForeshoreOwner);
        Assert.Null(blurred.ProposedBy);
        Assert.Equal("", blurred.Background);
        Assert.NotEmpty(blurred.HazardNotes);
        Assert.All(blurred.HazardNotes, n => Assert.True(n.Position is null && n.Place is null));
        Assert.NotEmpty(blurred.Closures);
    }

    [Fact]
    public void Wardens_the_proposer_and_members_granted_by_name_see_it_exactly()
    {
        var place = Sensitive();
        Assert.False(place.MayBeSeenExactlyBy(Reader.Visitor));
        Assert.False(place.MayBeSeenExactlyBy(new Reader(Role.Member, Guid.NewGuid())));
        Assert.False(place.MayBeSeenExactlyBy(new Reader(Role.Visitor, ReachDemo.Proposer)));
        Assert.True(place.MayBeSeenExactlyBy(new Reader(Role.Member, ReachDemo.Proposer)));
        Assert.True(place.MayBeSeenExactlyBy(new Reader(Role.Member, ReachDemo.Granted)));
        Assert.True(place.MayBeSeenExactlyBy(new Reader(Role.Warden)));
        Assert.True(place.MayBeSeenExactlyBy(new Reader(Role.Admin)));
        Assert.Same(place, Blur.For(place, new Reader(Role.Warden)));
    }

    private static Location Sensitive() => DemoGuide.Locations(new LocalDate(2026, 11, 25)).Single(l => l.Visibility == Visibility.Sensitive);

    /// <summary>The graph's numbers, those of members so named where names are given; round ones such as 1.6 say nothing about where a place is.</summary>
    private static IEnumerable<double> Numbers(object root, params string[] named) => ObjectGraph.Named(root, "", [])
        .Where(leaf => leaf.Value is double && (named.Length == 0 || named.Any(n => leaf.Path.Contains(n, StringComparison.OrdinalIgnoreCase))))
        .Select(leaf => (double)leaf.Value).Where(v => v != Math.Round(v, 1));
}
