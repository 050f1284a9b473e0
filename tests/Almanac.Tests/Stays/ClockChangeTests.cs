using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// Gates on the nights on which the clock of New York is changed: 8 March 2026 at 02:00 (07:00 UTC) on to 03:00, and 1 November
/// 2026 at 02:00 (06:00 UTC) back to 01:00. It is dark: walks take 1.4 times as long.
/// </summary>
public class ClockChangeTests
{
    [Fact]
    public void A_gate_that_shuts_in_the_hour_that_the_clock_skips_shuts_when_the_clock_is_changed()
    {
        var stay = Shore.After(Plan(new LocalTime(13, 0), new LocalTime(2, 30)), null, Instant.FromUtc(2026, 3, 8, 3, 0));

        Assert.Equal(Instant.FromUtc(2026, 3, 8, 7, 0), stay.ClosesAt);
        // 07:00 − 5 of ride − 15 × 1.4 of walk − 5 of packing = 06:29, rounded down to five.
        Assert.Equal(Instant.FromUtc(2026, 3, 8, 6, 25), stay.TurnBack);
    }

    [Fact]
    public void A_gate_that_shuts_at_a_time_that_comes_twice_shuts_at_the_first()
    {
        var stay = Shore.After(Plan(new LocalTime(13, 0), new LocalTime(1, 30)), null, Instant.FromUtc(2026, 11, 1, 3, 0));

        // 01:30 of summer time is 05:30 UTC; less 31 min 04:59.
        Assert.Equal(Instant.FromUtc(2026, 11, 1, 5, 30), stay.ClosesAt);
        Assert.Equal(Instant.FromUtc(2026, 11, 1, 4, 55), stay.TurnBack);
    }

    [Fact]
    public void A_gate_that_opens_at_a_time_that_comes_twice_opens_at_the_second()
    {
        var stay = Shore.After(Plan(new LocalTime(1, 30), new LocalTime(5, 0)), null, Instant.FromUtc(2026, 11, 1, 5, 0));

        // 01:30 of winter time is 06:30 UTC; 5 of ride, 10 × 1.4 of walk and 15 of setting up after it.
        Assert.Equal(Instant.FromUtc(2026, 11, 1, 6, 30), stay.OpensAt);
        Assert.Equal(34, (stay.From!.Value - stay.OpensAt!.Value).TotalMinutes, 1e-3);
    }

    private static StayPlan Plan(LocalTime opens, LocalTime closes) => Shore.Plan with { ClockGates = [Shore.Gate(opens, closes, 5, 10, 15, "gate")] };
}
