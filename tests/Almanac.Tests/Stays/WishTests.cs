using CsCheck;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Tides;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>The wished tide and ground are defined minute by minute; the roots are held to that.</summary>
public class WishTests
{
    private static readonly TideSource Source = new HarmonicTide(
    [
        new("M2", 2.1, 32), new("S2", 0.5, 70), new("N2", 0.5, 5), new("K1", 0.6, 120), new("O1", 0.4, 101), new("M4", 0.15, 240),
    ], 2.9, NodalModel.Schureman);

    // Over New Year, so that two years' thirds count.
    private static readonly Instant From = Instant.FromUtc(2026, 12, 25, 0, 0);
    private static readonly Instant To = From + Duration.FromDays(16);
    private static readonly TideCurve Tide = Source.Between(From, To);
    private static readonly Dictionary<int, TideYear> Years = new() { [2026] = TideYear.Of(Source, 2026), [2027] = TideYear.Of(Source, 2027) };

    private static readonly Gen<WantedTide> Wishes = Gen.Select(
        Gen.Double[0, 3].Nullable(), Gen.Double[3, 6].Nullable(), Gen.Bool.Nullable(), Gen.Select(Gen.Int[-300, 100], Gen.Int[10, 300]), Gen.Bool.Nullable(),
        Gen.Enum<RangeThird>().Nullable(), Gen.Double[1, 6].Nullable())
        .Select((lowest, highest, about, minutes, rising, third, range) => new WantedTide
        {
            LowestMetres = lowest,
            HighestMetres = highest,
            AboutHighWater = about,
            FromMinutes = about is null ? 0 : minutes.Item1,
            ToMinutes = about is null ? 0 : minutes.Item1 + minutes.Item2,
            Rising = rising,
            Third = third,
            LeastRangeMetres = range,
        });

    [Fact]
    public void The_wished_tide_holds_in_the_minutes_in_which_each_part_of_it_does() => Wishes.Sample(wish =>
    {
        var holds = wish.Over(Tide, year => Years[year]);
        EachMinute(holds, time => Holds(wish, time), $"{wish}");
    }, iter: 80);

    [Fact]
    public void Washed_ground_was_covered_within_three_hours_and_is_bare_and_dry_ground_was_not_for_six() =>
        Gen.Select(Gen.Bool, Gen.Double[0, 6]).Sample((washed, metres) =>
        {
            var wish = new WantedGround(washed, metres);
            bool Covered(double hoursBack, Instant time)
            {
                for (var minute = 0; minute <= hoursBack * 60; minute++)
                    if (time - Duration.FromMinutes(minute) is var then && then >= From && Tide.MetresAt(then) > metres) return true;
                return false;
            }

            EachMinute(wish.Over(Tide), time => washed
                ? Tide.MetresAt(time) <= metres && Covered(3, time)
                : time >= From + Duration.FromHours(6) && !Covered(6, time), $"{wish}");
        }, iter: 20);

    [Fact]
    public void Springs_and_neaps_need_the_thirds_of_their_year() =>
        Assert.Empty(new WantedTide { Third = RangeThird.Springs }.Over(Tide, _ => null));

    [Fact]
    public void About_low_water_reaches_from_before_it_to_after_it()
    {
        var noon = Instant.FromUtc(2026, 6, 10, 16, 0);
        var holds = new WantedTide { AboutHighWater = false, FromMinutes = -60, ToMinutes = 90 }.Over(Shore.Tide(noon), _ => null);

        var one = Assert.Single(holds, stretch => stretch.Start < JulianDay.DaysFromJ2000(noon) && stretch.End > JulianDay.DaysFromJ2000(noon));
        Assert.Equal(-1, Shore.Hours(one.AsInterval().Start, noon), 1e-4);
        Assert.Equal(1.5, Shore.Hours(one.AsInterval().End, noon), 1e-4);
    }

    private static bool Holds(WantedTide wish, Instant time)
    {
        var metres = Tide.MetresAt(time);
        var third = Years[time.InUtc().Year].Third(Tide.RangeAt(time));
        return !(metres < wish.LowestMetres) && !(metres > wish.HighestMetres)
            && (wish.AboutHighWater is not { } high || IsAbout(wish, high, time))
            && (wish.Rising is not { } rising || Tide.After(time) is not { } next || next.IsHigh == rising)
            && (wish.Third is null || third == wish.Third)
            && !(Tide.RangeAt(time) < wish.LeastRangeMetres);
    }

    private static bool IsAbout(WantedTide wish, bool high, Instant time) =>
        Tide.AllWaters.All.Any(turn => turn.IsHigh == high
            && time >= turn.Time + Duration.FromMinutes(wish.FromMinutes) && time <= turn.Time + Duration.FromMinutes(wish.ToMinutes));

    /// <summary>Within a minute of an edge the scan cannot tell.</summary>
    private static void EachMinute(List<Stretch> holds, Func<Instant, bool> expected, string wish)
    {
        const double near = 1.1 * Stretch.Minute;
        for (var minute = 5; minute < (To - From).TotalMinutes - 5; minute += 3)
        {
            var time = From + Duration.FromMinutes(minute);
            var days = JulianDay.DaysFromJ2000(time);
            if (holds.Exists(stretch => Math.Abs(stretch.Start - days) < near || Math.Abs(stretch.End - days) < near)) continue;
            var held = holds.Exists(stretch => stretch.Start <= days && days < stretch.End);
            if (held != expected(time) && expected(time - Duration.FromMinutes(1)) == expected(time + Duration.FromMinutes(1)))
                Assert.Fail($"{time}: {(held ? "holds" : "does not hold")}, {wish}");
        }
    }
}
