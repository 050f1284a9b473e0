using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Demo;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class CoastFilterTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);
    private static readonly IReadOnlyList<Location> Coast = DemoGuide.Locations(Today);

    private static readonly IReadOnlyList<(string Name, string Value)> Each =
    [
        .. Enum.GetValues<Footing>().Select(footing => ("footing", PartOfAddress.Of(footing))),
        .. Enum.GetValues<WantedLight>().Select(light => ("light", PartOfAddress.Of(light))),
        ("parking", "yes"), ("overnight", "yes"), ("within", "30"),
    ];

    /// <summary>Every two wishes together, by a search of its own: footing and light are met by one and the same composition.</summary>
    [Fact]
    public void Two_wishes_are_met_by_one_composition()
    {
        var (pairs, wouldHaveMatched) = (0, 0);
        foreach (var one in Each)
            foreach (var other in Each.Where(each => each.Name != one.Name))
            {
                var kept = Kept(one, other);
                var apart = Kept(one).Intersect(Kept(other)).ToHashSet();
                var together = one.Name is "footing" or "light" && other.Name is "footing" or "light" ? Together(one, other) : apart;
                Assert.True(kept.SetEquals(together), $"{one} and {other}: {string.Join(", ", kept.Except(together))}");
                Assert.Subset(apart, kept);
                wouldHaveMatched += apart.Count - kept.Count;
                pairs++;
            }
        Assert.True(pairs > 100);
        Assert.True(wouldHaveMatched > 0, "the demo has no place where two compositions meet what one does not");
    }

    [Fact]
    public void A_sun_seen_from_the_edge_is_none_for_anyone() =>
        Assert.DoesNotContain("halfmoon-light", Kept(("footing", PartOfAddress.Of(Footing.Anyone)), ("light", PartOfAddress.Of(WantedLight.SunInFrame))));

    private static HashSet<string> Together(params (string Name, string Value)[] wishes)
    {
        PartOfAddress.TryRead<Footing>(wishes.Single(wish => wish.Name == "footing").Value, out var footing);
        PartOfAddress.TryRead<WantedLight>(wishes.Single(wish => wish.Name == "light").Value, out var light);
        var found = from place in Coast
                    from stance in place.VantagePoints
                    from picture in stance.Compositions
                    where stance.Footing <= footing && picture.Wanted.Contains(light)
                    select place.Slug;
        return [.. found];
    }

    private static HashSet<string> Kept(params (string Name, string Value)[] wishes)
    {
        var filter = CoastFilter.From(new QueryCollection(wishes.ToDictionary(wish => wish.Name, wish => new StringValues(wish.Value))));
        Assert.Null(filter.Fault);
        return [.. Coast.Where(place => filter.Keeps(place, Coast[0].Position, Today)).Select(place => place.Slug)];
    }
}
