using Foreshore.Almanac.Sun;
using Foreshore.Guide.Access;
using Foreshore.Guide.Demo;
using Foreshore.Guide.Keeping;
using Foreshore.Guide.Support;
using Foreshore.Guide.Tides;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Itineraries;

/// <summary>
/// Stays and turn backs of every demo stance over 60 days, held against an itinerary written anew from domain.md section 5,
/// minute by minute. Sea, sky and wind are left out.
/// </summary>
public class DemoItineraryTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private const int Days = 60, Margin = 2;

    [Fact]
    public async Task No_way_of_the_demo_lets_one_stay_where_the_rules_forbid_it()
    {
        var today = GuideHost.UsualNow.InUtc().Date;
        var (from, to) = (today.AtMidnight().InUtc().ToInstant(), today.PlusDays(Days).AtMidnight().InUtc().ToInstant());
        var (first, last) = (from - Duration.FromDays(Margin), to + Duration.FromDays(Margin));
        var sun = SunEphemeris.Covering(first - Duration.FromDays(4), last + Duration.FromDays(4));
        var places = DemoGuide.Locations(today);
        await using var db = guide.Open();
        var tides = await db.TidesOfAsync(places, TestContext.Current.CancellationToken);
        var curves = new TideCurves(Shelf.Empty());
        List<string> found = [];
        var held = 0;
        foreach (var place in places)
        {
            var water = PlaceWater.Of(place, tides.Of(place), curves, first, last);
            var sky = sun.SeenFrom(place.Position);
            var series = new Series(first, (int)(last - first).TotalMinutes, water.Curve is { } curve ? curve.MetresAt : null, time => sky.At(time).Horizontal.AltitudeDegrees, place.Zone);
            var pace = new Pace(series, new Group());
            foreach (var stance in place.VantagePoints)
            {
                var flat = Reading.Of(stance, place);
                var ways = new StanceWays(stance, place, water, first, last, sun);
                Assert.Equal(flat.Ways.Where(way => way.IsRecommended).Select(way => (way.Route, way.Lot?.Name)), ways.All.Select(way => (way.Route.Name, way.Lot?.Name)));
                foreach (var (way, site) in flat.Ways.Where(way => way.IsRecommended).Zip(ways.All))
                {
                    var gates = OwnGates.Of(flat, way, pace);
                    var name = $"{stance.Name}, {way.Name}";
                    if (gates.NotJudged.Count > 0)
                    {
                        if (site.NotKnown.Count == 0) found.Add($"{name}: not judged, the site judges it: {string.Join(", ", gates.NotJudged)}");
                        continue;
                    }

                    if (!site.TellsTurnBack) found.Add($"{name}: the site does not judge it: {string.Join(", ", site.NotKnown)}");
                    held++;
                    found.AddRange(Held.Against(name, flat, way, gates, pace, ways.Stays(site), Margin * 1440, series.Count - Margin * 1440).Take(3));
                }
            }
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
        Assert.InRange(held, 20, 200);
    }
}
