using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Access;

public sealed class WayInTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);
    private static readonly FactCheck Sign = new("Sign", Today.PlusDays(-10));

    [Theory]
    [InlineData(LegalStatus.RightOfWay, true)]
    [InlineData(LegalStatus.OpenAccess, true)]
    [InlineData(LegalStatus.Permissive, true)]
    [InlineData(LegalStatus.Customary, true)]
    [InlineData(LegalStatus.Private, false)]
    [InlineData(LegalStatus.Closed, false)]
    [InlineData(LegalStatus.Unknown, false)]
    public void A_private_closed_or_unknown_leg_is_never_part_of_the_default_way(LegalStatus status, bool recommended)
    {
        var place = Place();
        place.AddRoute("Only way").Then(Walk(LegalStatus.RightOfWay)).Then(Walk(status));
        Assert.Equal(recommended, place.HasRecommendedWayIn(Today));
    }

    [Fact]
    public void The_longer_lawful_way_is_the_default_although_the_gated_one_stands_first()
    {
        var place = Place();
        place.AddRoute("Through the gate").Then(Walk(LegalStatus.Private));
        var round = place.AddRoute("Round by the shore").Then(Walk(LegalStatus.RightOfWay));
        Assert.Same(round, place.DefaultRoute(Today));
    }

    [Fact]
    public void A_place_without_a_recorded_way_or_with_a_route_without_legs_has_none_to_recommend()
    {
        var place = Place();
        Assert.False(place.HasRecommendedWayIn(Today));
        place.AddRoute("Someday");
        Assert.False(place.HasRecommendedWayIn(Today));
    }

    [Fact]
    public void A_closed_leg_stops_an_outing_only_where_no_other_route_is_open()
    {
        var place = Place();
        Leg bridge = Walk(LegalStatus.OpenAccess), shore = Walk(LegalStatus.OpenAccess);
        place.AddRoute("Bridge").Then(bridge);
        var other = place.AddRoute("Shore").Then(shore);
        place.Close(Closure.Between(Today.PlusDays(-3), null, "Bridge out", "Refuge").Of(bridge));

        Assert.Same(other, place.DefaultRoute(Today));
        Assert.Empty(place.ClosuresThatStop(Today));

        var second = place.Close(Closure.Between(Today, Today, "Path under water", "Refuge").Of(shore));
        Assert.False(place.HasRecommendedWayIn(Today));
        Assert.Contains(second, place.ClosuresThatStop(Today));
        Assert.True(place.HasRecommendedWayIn(Today.PlusDays(1)));
    }

    [Fact]
    public void A_closure_of_the_place_stops_every_outing_there()
    {
        var place = Place();
        place.AddRoute("Way").Then(Walk(LegalStatus.OpenAccess));
        var closure = place.Close(Closure.Between(Today, null, "Fire", "Refuge"));
        Assert.Equal([closure], place.ClosuresThatStop(Today));
        Assert.Empty(place.ClosuresThatStop(Today.PlusDays(-1)));
    }

    [Fact]
    public void Allowed_overnight_needs_somebody_who_allows_it() =>
        Assert.Contains("Allowed by whom?", Assert.Throws<NotAcceptedException>(
            () => new OvernightRule(Sleeper.Tent, OvernightStanding.Allowed, Sign)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_letter_holds_between_its_dates()
    {
        var letter = new PermissionLetter("Owner", "Club evenings", Today, Today.PlusDays(30));
        Assert.False(letter.HoldsOn(Today.PlusDays(-1)));
        Assert.True(letter.HoldsOn(Today.PlusDays(30)));
        Assert.False(letter.HoldsOn(Today.PlusDays(31)));
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(365, false)]
    [InlineData(366, true)]
    public void Facts_of_access_need_checking_after_twelve_months(int daysAgo, bool needs) =>
        Assert.Equal(needs, new FactCheck("Sign", Today.PlusDays(-daysAgo)).NeedsChecking(Today));

    private static Location Place() => new("place", "Place", new Position(44.6, -67.2), "America/New_York", "US", "US-ME", 1);

    private static Leg Walk(LegalStatus status) => Leg.Walk("Path", 1, 20, 10, "Earth", status, Sign);
}
