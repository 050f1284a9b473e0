using CsCheck;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>What must hold of every stay, over a mixed tide of six constituents with a range of 1 to 6 m.</summary>
public class StayPropertyTests
{
    private static readonly TideSource Source = new HarmonicTide(
    [
        new("M2", 2.1, 32), new("S2", 0.4, 70), new("N2", 0.5, 5), new("K1", 0.6, 120), new("O1", 0.4, 101), new("M4", 0.15, 240),
    ], 2.9, NodalModel.Schureman);

    private static readonly Instant From = Instant.FromUtc(2026, 3, 1, 0, 0);
    private static readonly Instant To = Instant.FromUtc(2026, 3, 9, 0, 0);
    private static readonly TideCurve Tide = Source.Between(From - Duration.FromDays(3), To + Duration.FromDays(3));
    private static readonly SunEphemeris Sun = Coast.Year2026.Sun;
    private static readonly StayScan.Sight Sight = new(Tide, Sun.SeenFrom(Shore.Place), From, To);

    private static readonly Gen<StayPlan> Plans = Gen.Select(
        Gen.Double[2, 5].Nullable(), Gen.Select(Gen.Double[2, 5], Gen.Double[1, 40].Nullable(), Gen.Bool).List[0, 3], Gen.Double[0, 60], Gen.Double[0, 60],
        Gen.Bool, Gen.Bool, Gen.Double[0, 10].Nullable(), Gen.Int[4, 22].Nullable())
        .Select((ledge, gates, walkIn, walkOut, known, exposed, watch, gate) => Shore.Plan with
        {
            LedgeLimitMetres = ledge,
            TideGates = [.. gates.Select(one => new TideGate("crossing", one.Item1, one.Item2, one.Item3))],
            ClockGates = gate is { } opens ? [Shore.Gate(new LocalTime(opens, 0), new LocalTime((opens + 13) % 24, 30), 5, 10, 15, "gate")] : [],
            WalkIn = walkIn,
            WalkOut = walkOut,
            KnownInTheDark = known,
            IsWaveExposed = exposed,
            WatchPlace = watch,
        });

    [Fact]
    public void No_minute_is_used_that_the_rules_forbid_minute_by_minute() => Plans.Sample(plan =>
    {
        var scans = StayScan.Of(plan, Sight);
        var scan = scans[0];
        var stays = StayTimes.Between(plan, Tide, From, To, Sun);
        for (var minute = 0; minute < scan.Minutes; minute++)
        {
            var time = From + Duration.FromMinutes(minute);
            var used = stays.Any(stay => (stay.From ?? Instant.MinValue) <= time && time < (stay.Until ?? Instant.MaxValue));
            // Within a minute of an edge the scan cannot tell; turn back is rounded down by up to five.
            var near = stays.Any(stay => Near(stay.From, time, 2) || (stay.Until is { } end && time >= end - Duration.FromMinutes(2) && time <= end + Duration.FromMinutes(7)));
            // A stay of a few minutes may be gone once it is rounded.
            if (!near && used != scan.IsUsable(minute) && !scan.IsShort(minute, 9) && scans.All(one => one.IsUsable(minute) != used)) Assert.Fail($"{time}: {(used ? "used" : "left out")}, {plan}");
        }
    }, iter: 60);

    [Fact]
    public void Turn_back_is_never_later_and_no_minute_is_gained_when_anything_grows() =>
        Gen.Select(Plans, Gen.Int[0, 7], Gen.Double[0, 1]).Sample((plan, what, more) =>
        {
            var harder = what switch
            {
                0 => plan with { Allowance = new Allowance(plan.Allowance.TideMetres + more, null) },
                1 => plan with { Allowance = plan.Allowance with { WaveMetres = more } },
                2 => plan with { WalkOut = plan.WalkOut + 40 * more, WalkIn = plan.WalkIn + 40 * more },
                3 => plan with { Party = new Party { Count = 4 } },
                4 => plan with { Party = new Party { WetRock = true, Pace = 1 + more } },
                5 => plan with { LedgeLimitMetres = plan.LedgeLimitMetres - more },
                6 => plan with { TideGates = [.. plan.TideGates.Select(gate => gate with { Beyond = gate.Beyond + 40 * more })] },
                _ => plan with { KnownInTheDark = false },
            };

            var (before, after) = (StayTimes.Between(plan, Tide, From, To, Sun), StayTimes.Between(harder, Tide, From, To, Sun));

            Assert.True(Minutes(after) <= Minutes(before) + 0.01, $"{Minutes(before)} → {Minutes(after)}: {plan}");
            foreach (var stay in after)
            {
                var same = before.Where(one => (one.From ?? Instant.MinValue) <= (stay.From ?? Instant.MaxValue) && (one.TurnBack ?? Instant.MaxValue) > (stay.From ?? Instant.MinValue)).ToList();
                Assert.NotEmpty(same);
                Assert.True((stay.TurnBack ?? Instant.MaxValue) <= same.Max(one => one.TurnBack ?? Instant.MaxValue), $"{stay.TurnBack}: {plan}");
            }
        }, iter: 150);

    [Fact]
    public void Turn_back_falls_on_five_minutes_and_before_what_closes() => Plans.Sample(plan =>
    {
        foreach (var stay in StayTimes.Between(plan, Tide, From, To, Sun).Where(stay => stay.TurnBack is not null))
        {
            Assert.Equal(0, stay.TurnBack!.Value.ToUnixTimeMilliseconds() % 300_000);
            Assert.True(stay.TurnBack <= stay.ClosesAt);
            Assert.True(stay.From < stay.TurnBack);
        }
    }, iter: 100);

    private static double Minutes(IReadOnlyList<Stay> stays) =>
        stays.Sum(stay => Math.Max(0, (Instant.Min(To, stay.TurnBack ?? To) - Instant.Max(From, stay.From ?? From)).TotalMinutes));

    private static bool Near(Instant? edge, Instant time, int minutes) => edge is { } at && Duration.Max(at - time, time - at) <= Duration.FromMinutes(minutes);
}
