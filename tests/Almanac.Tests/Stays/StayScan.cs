using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// The rules as they are defined, minute by minute: which minutes each crossing, the ledge, the gates and the light leave, and
/// from those whether somebody could be there. Nothing of roots, stretches and presences.
/// </summary>
internal sealed class StayScan
{
    private const int Margin = 2 * 1440;
    private readonly StayPlan plan;
    private readonly bool[] usable;

    internal StayScan(StayPlan plan, TideCurve tide, SunEphemeris sun, Instant from, Instant to)
        : this(plan, new Sight(tide, sun.SeenFrom(plan.Position), from, to))
    {
    }

    private StayScan(StayPlan plan, Sight sight)
        : this(plan, sight, sight.Lit)
    {
    }

    private StayScan(StayPlan plan, Sight sight, bool[] lit)
    {
        this.plan = plan;
        var (begin, metres) = (sight.Begin, sight.Metres);
        var count = metres.Length;
        Minutes = count - 2 * Margin;
        usable = new bool[count];
        List<(double Arrive, double SetUp, double Leave)> there = [(double.NegativeInfinity, double.NegativeInfinity, double.PositiveInfinity)];
        foreach (var gate in plan.TideGates)
        {
            var closes = gate.ClosesAtMetres - plan.Allowance.TideMetres - (gate.TakesWaves ? plan.Allowance.WaveMetres ?? 0 : 0);
            there = Join(there, Runs(i => metres[i] < closes, count).Select(run =>
            {
                var leave = Leave(lit, run.Last - 15, (gate.Beyond ?? plan.BeyondReach ?? plan.WalkOut!.Value).Minutes, 1.5);
                return (Arrive(lit, run.First, plan.WalkIn!.Value.Minutes), double.NegativeInfinity, leave - plan.Party.PackingMinutes);
            }));
        }

        if (plan.LedgeLimitMetres is { } limit)
            there = Join(there, Runs(i => metres[i] < limit - plan.Allowance.TideMetres, count).Select(run => (double.NegativeInfinity, (double)run.First,
                Leave(lit, run.Last - 15, (plan.BeyondReach ?? plan.WalkOut!.Value).Minutes, 1) - plan.Party.PackingMinutes)));
        foreach (var gate in plan.ClockGates)
            there = Join(there, Runs(i => IsOpen(gate, begin + Duration.FromMinutes(i)), count).Select(run => (
                Arrive(lit, run.First + gate.RideMinutes, gate.WalkIn.Minutes), double.NegativeInfinity,
                Leave(lit, run.Last - gate.RideMinutes, gate.WalkOut.Minutes, 1) - plan.Party.PackingMinutes)));
        var days = Runs(i => lit[i], count);
        if (!plan.KnownInTheDark)
            there = Join(there, days.Select(day => (day.First + plan.WalkIn!.Value.Minutes * plan.Party.Factor(false), double.NegativeInfinity,
                day.Last - plan.WalkOut!.Value.Minutes * plan.Party.Factor(false) - plan.Party.PackingMinutes)));

        foreach (var (arrive, setUp, leave) in there)
        {
            if (!plan.IsWaveExposed) Use(Math.Max(arrive, setUp) + 15, leave);
            else if (plan.WatchPlace is { Minutes: var toStance })
                for (var day = 0; day < days.Count; day++)
                {
                    var watched = Math.Max(arrive, days[day].First) + 30;
                    var down = Math.Max(Arrive(lit, watched, toStance), setUp);
                    if (watched > days[day].Last || down > days[day].Last) continue;
                    var held = Math.Min(Held(sight, days[day], toStance), day + 1 < days.Count ? days[day + 1].First : double.PositiveInfinity);
                    var night = Enumerable.Range(days[day].Last, count - days[day].Last).FirstOrDefault(i => !sight.Twilight[i], count);
                    // Turn back itself is rounded down; the minutes of the dusk end with it or with the dusk.
                    Use(down + 5, Math.Min(Math.Min(leave, held), night));
                }
        }
    }

    internal int Minutes { get; }

    /// <summary>
    /// The scan, and two more with the light a minute longer and shorter at either end of each day: where they differ, dusk falls
    /// within the minute in which somebody arrives, and minutes can't tell.
    /// </summary>
    internal static StayScan[] Of(StayPlan plan, Sight sight) =>
        [new(plan, sight), new(plan, sight, Neighbours(sight.Lit, (a, b, c) => a || b || c)), new(plan, sight, Neighbours(sight.Lit, (a, b, c) => a && b && c))];

    private static bool[] Neighbours(bool[] lit, Func<bool, bool, bool, bool> of) =>
        [.. lit.Select((one, i) => of(i > 0 ? lit[i - 1] : one, one, i + 1 < lit.Length ? lit[i + 1] : one))];

    /// <summary>Tide and light of each minute of a span and two days either side: the same for all plans of a place.</summary>
    internal sealed class Sight
    {
        internal Sight(TideCurve tide, SunPath sun, Instant from, Instant to)
        {
            Begin = from - Duration.FromMinutes(Margin);
            var minutes = Enumerable.Range(0, (int)(to - from).TotalMinutes + 2 * Margin).Select(i => Begin + Duration.FromMinutes(i)).ToList();
            Metres = [.. minutes.Select(tide.MetresAt)];
            var sunAt = minutes.Select(minute => sun.At(minute).AltitudeDegrees).ToList();
            (Lit, Twilight, High) = ([.. sunAt.Select(sunIs => sunIs >= -6)], [.. sunAt.Select(sunIs => sunIs >= -12)], [.. sunAt.Select(sunIs => sunIs >= 10)]);
        }

        internal Instant Begin { get; }

        internal double[] Metres { get; }

        internal bool[] Lit { get; }

        internal bool[] Twilight { get; }

        internal bool[] High { get; }
    }

    /// <summary>Three hours into the dark, or until the tide stands a metre over the lowest since the first watch of the evening.</summary>
    private static double Held(Sight sight, (int First, int Last) day, double toStance)
    {
        var evening = Enumerable.Range(day.First, day.Last - day.First).LastOrDefault(i => sight.High[i], day.First);
        var lowest = Enumerable.Range(0, sight.Metres.Length).Where(i => i >= Math.Max(day.First, evening > day.First ? evening - 35 - toStance : day.First) && i <= day.Last).Min(i => sight.Metres[i]);
        var minute = day.Last;
        while (minute < day.Last + 180 && minute < sight.Metres.Length && sight.Metres[minute] <= lowest + 1) minute++;
        return minute;
    }

    internal bool IsUsable(int minute) => usable[minute + Margin];

    /// <summary>Whether the usable minutes about a minute are so few.</summary>
    internal bool IsShort(int minute, int most)
    {
        if (!IsUsable(minute)) return false;
        var (first, last) = (minute + Margin, minute + Margin);
        while (first > 0 && usable[first - 1]) first--;
        while (last + 1 < usable.Length && usable[last + 1]) last++;
        return last - first < most;
    }

    private void Use(double from, double to)
    {
        for (var i = (int)Math.Max(0, Math.Ceiling(from)); i < usable.Length && i < to; i++) usable[i] = true;
    }

    /// <summary>How long a walk takes that sets out in a minute: the pace of the dark where any minute of it, by day's pace, is dark.</summary>
    private double From(bool[] lit, double start, double minutes, double least)
    {
        var day = minutes * Math.Max(least, plan.Party.Factor(false));
        for (var i = (int)Math.Ceiling(start); i <= start + day; i++)
            if (i < 0 || i >= lit.Length || !lit[i]) return minutes * Math.Max(least, plan.Party.Factor(true));
        return day;
    }

    /// <summary>The earliest arrival of all who set out at an opening or later.</summary>
    private double Arrive(bool[] lit, double opening, double minutes)
    {
        var earliest = double.PositiveInfinity;
        for (var start = opening; start < earliest && start < opening + 200; start++)
            earliest = Math.Min(earliest, start + From(lit, start, minutes, 1));
        return earliest;
    }

    /// <summary>The first minute in which whoever sets out comes too late.</summary>
    private double Leave(bool[] lit, double closing, double minutes, double least)
    {
        var start = closing - 3 * minutes - 2;
        while (start + From(lit, start, minutes, least) <= closing) start++;
        return start;
    }

    private static bool IsOpen(ClockGate gate, Instant time) => gate.Open.Any(open => open.Contains(time));

    private static List<(int First, int Last)> Runs(Func<int, bool> holds, int count)
    {
        var runs = new List<(int First, int Last)>();
        for (var i = 0; i < count; i++)
        {
            if (!holds(i)) continue;
            if (runs.Count > 0 && runs[^1].Last == i - 1) runs[^1] = (runs[^1].First, i);
            else runs.Add((i, i));
        }

        return runs;
    }

    private static List<(double, double, double)> Join(List<(double Arrive, double SetUp, double Leave)> one, IEnumerable<(double Arrive, double SetUp, double Leave)> other)
    {
        var all = other.ToList();
        return
        [
            .. one.SelectMany(a => all.Select(b => (Math.Max(a.Arrive, b.Arrive), Math.Max(a.SetUp, b.SetUp), Math.Min(a.Leave, b.Leave))))
                .Where(joint => Math.Max(joint.Item1, joint.Item2) < joint.Item3),
        ];
    }
}
