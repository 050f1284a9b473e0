using System.Collections.Concurrent;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Access;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Itineraries;

/// <summary>The same over 2,000 invented stances and four days of each, made from seeds that a failure names.</summary>
public class RandomItineraryTests
{
    private const int Stances = 2000, Days = 4;

    [Theory]
    [InlineData(false)]
    public void No_way_of_an_invented_place_lets_one_stay_where_the_rules_forbid_it(bool gatesBeforeBoats)
    {
        var skies = new ConcurrentDictionary<(double, LocalDate), (SunEphemeris Sun, double[] Altitudes)>();
        var found = new ConcurrentBag<string>();
        var held = 0;
        Parallel.For(0, Stances, seed =>
        {
            var shore = RandomShore.Of(seed, gatesBeforeBoats);
            var first = shore.Date.PlusDays(-1).AtMidnight().InUtc().ToInstant();
            var count = (Days + 2) * 1440;
            var last = first + Duration.FromMinutes(count);
            var (sun, altitudes) = skies.GetOrAdd((shore.Position.LatitudeDegrees, shore.Date), _ =>
            {
                var ephemeris = SunEphemeris.Covering(first - Duration.FromDays(4), last + Duration.FromDays(4));
                var sky = ephemeris.SeenFrom(shore.Position);
                return (ephemeris, [.. Enumerable.Range(0, count).Select(minute => sky.At(first + Duration.FromMinutes(minute)).Horizontal.AltitudeDegrees)]);
            });
            var series = new Series(first, count, shore.Water.Curve!.MetresAt, time => altitudes[(int)Math.Round((time - first).TotalMinutes)], shore.Place.Zone);
            var pace = new Pace(series, shore.Group);
            var flat = Reading.Of(shore.Stance, shore.Place);
            var ways = new StanceWays(shore.Stance, shore.Place, shore.Water, first, last, sun);
            foreach (var (way, site) in flat.Ways.Where(way => way.IsRecommended).Zip(ways.All))
            {
                var gates = OwnGates.Of(flat, way, pace);
                var name = $"seed {seed}, {way.Name}";
                if (gates.NotJudged.Count > 0)
                {
                    if (site.NotKnown.Count == 0) found.Add($"{name}: not judged, the site judges it: {string.Join(", ", gates.NotJudged)}");
                    continue;
                }

                if (!site.TellsTurnBack)
                {
                    found.Add($"{name}: the site does not judge it: {string.Join(", ", site.NotKnown)}");
                    continue;
                }

                Interlocked.Increment(ref held);
                var party = new Party { Count = shore.Group.Count, Pace = shore.Group.Pace, WetRock = shore.Group.WetRock, SoftGround = shore.Group.SoftGround, HeavyKit = shore.Group.HeavyKit };
                var stays = StayTimes.Between(site.Plan with { Party = party }, shore.Water.Curve, first, last, sun);
                foreach (var fault in Held.Against(name, flat, way, gates, pace, stays, 1440, count - 1440).Take(1)) found.Add(fault);
            }
        });

        Assert.True(found.IsEmpty, $"{found.Count} of {held}\n" + string.Join('\n', found.Order().Take(40)));
        Assert.InRange(held, 2500, 8000);
    }
}
