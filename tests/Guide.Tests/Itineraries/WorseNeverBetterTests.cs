using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Outlooks;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Itineraries;

/// <summary>
/// What is worse never betters a verdict and never puts a turn back off, way by way, over invented stances; the seed of one that
/// fails is the number told. Rules are the project's own.
/// </summary>
public class WorseNeverBetterTests
{
    private const int Cases = 200;

    [Fact]
    public void A_longer_walk() => Holds(shore =>
    {
        // Nothing to walk to beyond reach of a cut-off counts as not recorded: more than nothing would be less.
        var beyond = shore.Stance.MinutesToBeyondReach is > 0 and { } minutes ? minutes + 3 : shore.Stance.MinutesToBeyondReach;
        shore.Stance.Walk(shore.Stance.WalkInMinutes + 7, shore.Stance.WalkOutMinutes + 7, shore.Stance.WalkedInTheDark, beyond);
        shore.Stance.LedToBy([.. shore.Stance.Ways.Select(way => (way.Route, way.EndMinutes + 7, way.WalkInMinutes + 7, way.WalkOutMinutes + 7))]);
    });

    [Fact]
    public void An_earlier_lock() => Holds(shore =>
    {
        foreach (var lot in shore.Place.Parking.Where(lot => lot.Hours is null)) lot.OpenBy(HoursNotation.Read("07:00-16:30"));
    });

    [Fact]
    public void A_higher_tide() => Holds(shore => shore.Raise(0.4));

    [Fact]
    public void Worse_ground() => Holds(shore =>
    {
        foreach (var leg in Paths(shore)) leg.Over(LegGround.Boulders);
    });

    [Fact]
    public void A_way_not_known_in_the_dark() => Holds(shore =>
    {
        foreach (var leg in Paths(shore)) leg.ByNight(LightAtNight.NotKnownInTheDark);
    });

    [Fact]
    public void An_unknown_is_never_judged_and_tells_no_turn_back() => Each(seed =>
    {
        var shore = RandomShore.Of(seed);
        foreach (var leg in Paths(shore)) leg.CutOffUnknown();
        foreach (var (key, found) in Cells(shore))
            Assert.True(found.Verdict is not (Verdict.Suits or Verdict.Borderline) && found.TurnBack is null, $"seed {seed}, {key}: {found}");
    });

    [Fact]
    public void Removing_the_first_way_changes_nothing_of_the_second() => Each(seed =>
    {
        var (whole, less) = (RandomShore.Of(seed), RandomShore.Of(seed));
        if (whole.Stance.Ways.Count < 2) return;
        less.Stance.LedToBy([.. less.Stance.Ways.Skip(1).Select(way => (way.Route, way.EndMinutes, way.WalkInMinutes, way.WalkOutMinutes))]);
        var before = Cells(whole);
        foreach (var (key, found) in Cells(less))
        {
            // A board that has no light to tell, or whose car park floods while another stays dry, does not judge all ways.
            if (before.TryGetValue(key, out var told))
                Assert.True(told == found, $"seed {seed}, {key}: {told} with the first way, {found} without");
        }
    });

    /// <summary>The same places on every run: what is made from a number needs no shrinking.</summary>
    private static void Each(Action<int> holds) => Parallel.For(0, Cases, holds);

    private static IEnumerable<Leg> Paths(RandomShore shore) => shore.Place.Routes.SelectMany(route => route.Legs).Where(leg => leg.Kind == LegKind.Walk);

    private static void Holds(Action<RandomShore> worsen) => Each(seed =>
    {
        var (better, worse) = (RandomShore.Of(seed), RandomShore.Of(seed));
        worsen(worse);
        var (before, after) = (Cells(better), Cells(worse));
        foreach (var (key, found) in after)
        {
            if (before.TryGetValue(key, out var told))
                Assert.True(found.Verdict >= told.Verdict, $"seed {seed}, {key}: {told.Verdict}, and worse {found.Verdict}");
        }

        var (minutes, fewer) = (Minutes(better), Minutes(worse));
        foreach (var (way, held) in fewer)
        {
            var more = minutes[way].Where(stay => !held.Contains(stay)).ToList();
            foreach (var stay in held)
                Assert.True(minutes[way].Any(one => one.From <= stay.From + 1 && one.Until >= stay.Until), $"seed {seed}, {way}: {stay} lies in no stay of the better one: {string.Join(", ", more)}");
        }
    });

    /// <summary>Verdict, window and turn back of every way and session of a weekend; of those that nothing stops.</summary>
    private static Dictionary<string, (Verdict Verdict, LightRun? Window, Instant? TurnBack)> Cells(RandomShore shore)
    {
        var sky = SkyEphemeris.Covering(At(shore, -7), At(shore, 10));
        var row = WeekendBoard.Of([shore.Place], shore.Date, At(shore, -2), BoardFilter.Everything, null, sky, waterOf: _ => shore.Water).Rows[0];
        return row.Cells.Where(cell => cell.By is not null).SelectMany(cell => cell.Others.Append(new Alternate(cell.By!.Way, cell.Judgement!, cell.Plan)).Select(way => (cell.Session.Key, way)))
            .ToDictionary(one => $"{one.Key} by {one.way.Way.Name}", one => (one.way.Judgement.Verdict, one.way.Judgement.Window, one.way.Plan?.TurnBack));
    }

    /// <summary>Stays of every way, minutes from the first of the days.</summary>
    private static Dictionary<string, List<(double From, double Until)>> Minutes(RandomShore shore)
    {
        var (from, to) = (At(shore, 0), At(shore, 4));
        var ways = new StanceWays(shore.Stance, shore.Place, shore.Water, from, to, Foreshore.Almanac.Sun.SunEphemeris.Covering(At(shore, -7), At(shore, 10)));
        return ways.All.ToDictionary(way => way.Name, way => ways.Stays(way).Select(stay => (Minute(stay.From, -1e9), Minute(stay.TurnBack, 1e9))).ToList());

        double Minute(Instant? time, double open) => time is { } at ? (at - from).TotalMinutes : open;
    }

    private static Instant At(RandomShore shore, int daysOn) => shore.Date.PlusDays(daysOn).AtMidnight().InUtc().ToInstant();
}
