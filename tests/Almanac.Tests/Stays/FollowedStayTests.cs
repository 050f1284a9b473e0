using CsCheck;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// Somebody who follows a stay to its last minute, walked through it second by second of tide and sun with the numbers of the
/// rules written out here: nothing of openings, joins and presences. What is asked: was every crossing open and every gate,
/// was the sun up where it must be, and was there a quarter of an hour in hand.
/// </summary>
public class FollowedStayTests
{
    private static readonly TideSource Source = new HarmonicTide(
    [
        new("M2", 2.1, 32), new("S2", 0.4, 70), new("N2", 0.5, 5), new("K1", 0.6, 120), new("O1", 0.4, 101), new("M4", 0.15, 240),
    ], 2.9, NodalModel.Schureman);

    // Over both changes of the clock, and long enough for short days and for springs and neaps.
    private static readonly (Instant From, Instant To)[] Spans =
    [
        (Instant.FromUtc(2026, 3, 5, 0, 0), Instant.FromUtc(2026, 3, 12, 0, 0)), (Instant.FromUtc(2026, 10, 29, 0, 0), Instant.FromUtc(2026, 11, 5, 0, 0)),
        (Instant.FromUtc(2026, 6, 18, 0, 0), Instant.FromUtc(2026, 6, 25, 0, 0)),
    ];

    private static readonly TideCurve[] Tides = [.. Spans.Select(span => Source.Between(span.From - Duration.FromDays(3), span.To + Duration.FromDays(3)))];
    private static readonly SunPath Sky = Coast.Year2026.Sun.SeenFrom(Shore.Place);
    private static readonly Duration Second = Duration.FromSeconds(1);

    private static readonly Gen<Party> Parties = Gen.Select(Gen.Int[1, 6], Gen.Double[1, 1.8], Gen.Bool, Gen.Bool, Gen.Bool)
        .Select((count, pace, wet, soft, heavy) => new Party { Count = count, Pace = pace, WetRock = wet, SoftGround = soft, HeavyKit = heavy });

    private static readonly Gen<StayPlan> Plans = Gen.Select(
        Gen.Double[2, 5].Nullable(), Gen.Select(Gen.Double[2, 5], Gen.Double[1, 40].Nullable(), Gen.Bool).List[0, 3], Gen.Double[0, 60], Gen.Double[0, 60],
        Gen.Bool, Gen.Double[0, 10].Nullable(), Gen.Int[0, 23].Nullable(), Parties)
        .Select((ledge, gates, walkIn, walkOut, known, watch, gate, party) => Shore.Plan with
        {
            LedgeLimitMetres = ledge,
            TideGates = [.. gates.Select(one => new TideGate("crossing", one.Item1, one.Item2, one.Item3))],
            ClockGates = gate is { } opens ? [Shore.Gate(new LocalTime(opens, 0), new LocalTime((opens + 13) % 24, 30), 5, 10, 15, "gate")] : [],
            WalkIn = walkIn,
            WalkOut = walkOut,
            KnownInTheDark = known,
            IsWaveExposed = watch is not null,
            WatchPlace = watch,
            Party = party,
            Allowance = new Allowance(0.5, 0.4),
        });

    [Fact]
    public void Nobody_who_follows_a_stay_is_cut_off_locked_in_or_in_the_dark_where_that_is_ruled_out()
    {
        var followed = 0;
        Gen.Select(Plans, Gen.Int[0, Spans.Length - 1]).Sample((plan, which) =>
        {
            foreach (var stay in StayTimes.Between(plan, Tides[which], Spans[which].From, Spans[which].To, Coast.Year2026.Sun))
            {
                Interlocked.Increment(ref followed);
                if (stay.From is { } from && stay.Arrival is { } arrival) GoIn(plan, Tides[which], from, arrival);
                if (stay.TurnBack is not { } turnBack) continue;
                // Whoever leaves earlier is out in time too, by whatever light.
                foreach (var earlier in new[] { 0, 7, 31, 64 })
                    if (turnBack - Duration.FromMinutes(earlier) is var leave && (stay.From is not { } first || leave >= first)) GoOut(plan, Tides[which], leave);
                if (plan.IsWaveExposed) Assert.True(HasLight(stay.Watch!.Value.Start, stay.Watch.Value.End), $"watched {stay.Watch} in the dark");
            }
        }, iter: 300);
        Assert.True(followed > 1000, $"{followed} stays");
    }

    private static void GoOut(StayPlan plan, TideCurve tide, Instant leave)
    {
        var packed = leave + Duration.FromMinutes(plan.Party.Count >= 4 ? 10 : 5);
        if (plan.LedgeLimitMetres is { } ledge)
            Assert.True(IsBelow(tide, Arrival(packed, plan.WalkOut!.Value.Minutes, plan.Party, 1) + Duration.FromMinutes(15), ledge - 0.5), $"ledge: {leave}, {plan}");
        foreach (var gate in plan.TideGates)
        {
            var beyond = Arrival(packed, (gate.Beyond ?? plan.WalkOut!.Value).Minutes, plan.Party, 1.5);
            Assert.True(IsBelow(tide, beyond + Duration.FromMinutes(15), gate.ClosesAtMetres - (gate.TakesWaves ? 0.9 : 0.5)), $"crossing: {leave}, {plan}");
        }

        foreach (var gate in plan.ClockGates)
            Assert.True(IsOpen(gate, Arrival(packed, gate.WalkOut.Minutes, plan.Party, 1) + Duration.FromMinutes(gate.RideMinutes) - Second), $"gate: {leave}, {plan}");
        if (!plan.KnownInTheDark) Assert.True(HasLight(packed, Arrival(packed, plan.WalkOut!.Value.Minutes, plan.Party, 1) - Second), $"dark: {leave}, {plan}");
    }

    /// <summary>Backwards from the first minute: set up, down from the watch place, watched, walked in.</summary>
    private static void GoIn(StayPlan plan, TideCurve tide, Instant from, Instant arrival)
    {
        var setUp = from - Duration.FromMinutes(plan.IsWaveExposed ? 5 : 15);
        if (plan.LedgeLimitMetres is { } ledge) Assert.True(IsBelow(tide, setUp + Second, ledge - 0.5), $"ledge: {from}, {plan}");
        var there = setUp;
        if (plan.WatchPlace is { Minutes: var down })
        {
            there = Starts(setUp, down, plan.Party).First() - Duration.FromMinutes(30);
            Assert.True(HasLight(there + Second, there + Duration.FromMinutes(30)), $"watching: {from}, {plan}");
        }

        // Whoever need not be there before the dusk may have come by the last light, at the earliest arrival told.
        List<Instant> arrivals = [there, Instant.Min(there, arrival)];
        var starts = arrivals.SelectMany(by => Starts(by, plan.WalkIn!.Value.Minutes, plan.Party)).ToList();
        foreach (var gate in plan.TideGates)
            Assert.True(starts.Exists(start => IsBelow(tide, start + Second, gate.ClosesAtMetres - (gate.TakesWaves ? 0.9 : 0.5))), $"crossing: {from}, {plan}");
        foreach (var gate in plan.ClockGates)
            Assert.True(arrivals.SelectMany(by => Starts(by, gate.WalkIn.Minutes, plan.Party)).Any(start => IsOpen(gate, start - Duration.FromMinutes(gate.RideMinutes) + Second)), $"gate: {from}, {plan}");
        if (!plan.KnownInTheDark) Assert.True(starts.Exists(start => HasLight(start + Second, Arrival(start, plan.WalkIn!.Value.Minutes, plan.Party, 1) - Second)), $"dark: {from}, {plan}");
    }

    private static Instant Arrival(Instant start, double minutes, Party party, double least)
    {
        var day = Duration.FromMinutes(minutes * Math.Max(least, Factor(party, 1)));
        return start + (HasLight(start, start + day - Second) ? day : Duration.FromMinutes(minutes * Math.Max(least, Factor(party, 1.4))));
    }

    /// <summary>By the pace of the day and by that of the dark, the later first, each only if it does arrive by then.</summary>
    private static IEnumerable<Instant> Starts(Instant arrival, double minutes, Party party) =>
        new[] { 1, 1.4 }.Select(dark => arrival - Duration.FromMinutes(minutes * Factor(party, dark))).Where(start => Arrival(start + Second, minutes, party, 1) <= arrival + Second * 2);

    private static double Factor(Party party, double dark) =>
        party.Pace * Math.Min(3, dark * (party.WetRock ? 1.75 : 1) * (party.SoftGround ? 1.45 : 1) * (party.HeavyKit ? 1.15 : 1));

    private static bool IsBelow(TideCurve tide, Instant time, double metres) => tide.MetresAt(time) < metres + 0.001;

    /// <summary>Not below −6 in any minute, nor at the end.</summary>
    private static bool HasLight(Instant from, Instant to)
    {
        for (var time = from; time < to; time += Duration.FromMinutes(1))
            if (Sky.At(time).AltitudeDegrees < -6.0005) return false;
        return to < from || Sky.At(to).AltitudeDegrees >= -6.0005;
    }

    private static bool IsOpen(ClockGate gate, Instant time) => gate.Open.Any(open => open.Contains(time));
}
