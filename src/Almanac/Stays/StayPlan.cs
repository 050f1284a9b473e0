using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>A place on the way that one passes only while the tide is below a height, both ways; a path's cut-off is one too.</summary>
/// <param name="Name">What it is called, for reasons in words.</param>
/// <param name="ClosesAtMetres">Passable while the tide is below this, metres above the curve's datum, before any allowance.</param>
/// <param name="MinutesBeyond">Measured walk from the stance to beyond it; null: the whole walk to beyond reach of the water counts.</param>
/// <param name="TakesWaves">Whether waves can reach it, so that the wave allowance is due.</param>
public sealed record TideGate(string Name, double ClosesAtMetres, double? MinutesBeyond, bool TakesWaves);

/// <summary>What on the way opens and shuts by the clock every day: a road's gate, a ferry, a car park that is locked.</summary>
/// <param name="Opens">From then on one gets through. One that shuts at or before it shuts on the next day.</param>
/// <param name="Closes">Last moment to pass.</param>
/// <param name="RideMinutes">Drive, ferry or bus between it and the walk.</param>
/// <param name="WalkInMinutes">On foot from there to the stance, by daylight.</param>
/// <param name="WalkOutMinutes">On foot back, by daylight.</param>
/// <param name="Name">What it is and when it is open, for reasons in words.</param>
public sealed record ClockGate(LocalTime Opens, LocalTime Closes, double RideMinutes, double WalkInMinutes, double WalkOutMinutes, string Name);

/// <summary>
/// All that decides when somebody can be at a stance by one way: what the water leaves, the clock, the daylight and the walk.
/// What is not recorded is null, and never counts in favour.
/// </summary>
/// <param name="Position">Where the stance is.</param>
/// <param name="Zone">The clock of the place.</param>
public sealed record StayPlan(Position Position, DateTimeZone Zone)
{
    /// <summary>Watching from the watch place before going down, minutes: what the Victorian Fisheries Authority and NSW DPI advise; others say 20.</summary>
    public const double WatchMinutes = 30;

    /// <summary>Setting up, minutes: common practice, no source.</summary>
    public const double SetUpMinutes = 15;

    /// <summary>In hand before water closes a way, minutes: common practice, no source.</summary>
    public const double ReserveMinutes = 15;

    /// <summary>A walk that water cuts off is reckoned at least so many times as long as measured: common practice, no source.</summary>
    public const double LeastCutOffFactor = 1.5;

    /// <summary>Waves come to the stance, or nobody has said that they do not: it has to be watched first.</summary>
    public bool IsWaveExposed { get; init; }

    /// <summary>Water, still or in waves, can come to the stance: then it has a limit, and one must know whether the way back is cut off.</summary>
    public bool IsReachedByWater { get; init; }

    /// <summary>A cut-off stands among the tide gates, or somebody recorded that the way back is never cut off.</summary>
    public bool CutOffIsRecorded { get; init; }

    /// <summary>Usable while the tide is below this, metres above the curve's datum, before any allowance; null: no limit, or none recorded.</summary>
    public double? LedgeLimitMetres { get; init; }

    /// <summary>Everything on the way that the tide closes.</summary>
    public IReadOnlyList<TideGate> TideGates { get; init; } = [];

    /// <summary>Everything on the way that the clock closes.</summary>
    public IReadOnlyList<ClockGate> ClockGates { get; init; } = [];

    /// <summary>From the car to the stance by daylight, minutes; null: nobody has timed it.</summary>
    public double? WalkInMinutes { get; init; }

    /// <summary>Back, by daylight, minutes; null: nobody has timed it.</summary>
    public double? WalkOutMinutes { get; init; }

    /// <summary>From the stance to beyond the last place that water can reach, minutes; null: the whole walk out.</summary>
    public double? BeyondReachMinutes { get; init; }

    /// <summary>A member has walked the way in the dark. If not, nobody walks in before civil dawn nor out after civil dusk.</summary>
    public bool KnownInTheDark { get; init; } = true;

    /// <summary>Walk from the watch place to the stance, minutes; null: there is no watch place, and no watching.</summary>
    public double? WatchPlaceMinutes { get; init; }

    /// <summary>Walk from the dark stance, where one may work until it is light enough to watch, to the stance, minutes; null: there is none.</summary>
    public double? DarkStanceMinutes { get; init; }

    /// <summary>Who goes.</summary>
    public Party Party { get; init; } = Party.One;

    /// <summary>What is taken off every tide limit.</summary>
    public Allowance Allowance { get; init; } = Allowance.Usual;

    /// <summary>Whether nothing can be said without the tide.</summary>
    public bool NeedsTide => LedgeLimitMetres is not null || TideGates.Count > 0;

    /// <summary>Whether something binds at a time, so that the walks decide.</summary>
    private bool NeedsWalks => TideGates.Count > 0 || ClockGates.Count > 0 || !KnownInTheDark;

    /// <summary>What is missing for a judgement, the tide and the sea taken as known or not. Stays without a walk cannot be computed at all.</summary>
    /// <param name="tideIsKnown">There is a curve for the time.</param>
    /// <param name="seaIsLeftOut">Waves are left out on purpose, and that is said: a crossing without them is no gap.</param>
    public IReadOnlyList<StayUnknown> Unknown(bool tideIsKnown, bool seaIsLeftOut)
    {
        List<StayUnknown> unknown = [];
        if (NeedsTide && !tideIsKnown) unknown.Add(StayUnknown.Tide);
        if (IsReachedByWater && LedgeLimitMetres is null) unknown.Add(StayUnknown.LedgeLimit);
        if (IsReachedByWater && !CutOffIsRecorded) unknown.Add(StayUnknown.CutOff);
        if (NeedsWalks && WalkInMinutes is null) unknown.Add(StayUnknown.WalkIn);
        if (LacksWalkOut) unknown.Add(StayUnknown.WalkOut);
        if (!seaIsLeftOut && Allowance.WaveMetres is null && TideGates.Any(gate => gate.TakesWaves)) unknown.Add(StayUnknown.WavesAtCrossing);
        return unknown;
    }

    /// <summary>
    /// Measured walk from the stance to beyond a crossing; where it is not recorded the whole walk to beyond reach, or the walk
    /// out, which holds it. Nothing to walk to beyond reach and a crossing on the way contradict each other: then the walk out too.
    /// </summary>
    public double? MinutesBeyond(TideGate gate) => gate.MinutesBeyond ?? (BeyondReachMinutes > 0 ? BeyondReachMinutes : WalkOutMinutes);

    internal bool LacksWalk => (NeedsWalks && WalkInMinutes is null) || LacksWalkOut;

    private bool LacksWalkOut =>
        TideGates.Any(gate => MinutesBeyond(gate) is null) || ((ClockGates.Count > 0 || !KnownInTheDark) && WalkOutMinutes is null);

    /// <summary>The same way to the dark stance: not the ledge, nothing to watch for, and the walk between them on top of every other.</summary>
    internal StayPlan ToDarkStance(double minutes) => this with
    {
        IsReachedByWater = false,
        IsWaveExposed = false,
        LedgeLimitMetres = null,
        WalkInMinutes = WalkInMinutes + minutes,
        WalkOutMinutes = WalkOutMinutes + minutes,
        BeyondReachMinutes = BeyondReachMinutes + minutes,
        TideGates = [.. TideGates.Select(gate => gate with { MinutesBeyond = gate.MinutesBeyond + minutes })],
        ClockGates = [.. ClockGates.Select(gate => gate with { WalkInMinutes = gate.WalkInMinutes + minutes, WalkOutMinutes = gate.WalkOutMinutes + minutes })],
    };

    /// <summary>The height at which a crossing is taken to close: its own less the allowance.</summary>
    public double ClosesAt(TideGate gate) =>
        gate.ClosesAtMetres - Allowance.TideMetres - (gate.TakesWaves ? Allowance.WaveMetres ?? 0 : 0);

    /// <summary>The height at which the ledge is taken to be lost: its limit less the allowance.</summary>
    public double? LedgeLostAt => LedgeLimitMetres - Allowance.TideMetres;
}
