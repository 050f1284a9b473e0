using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>A place on the way that one passes only while the tide is below a height, both ways; a path's cut-off is one too.</summary>
/// <param name="Name">What it is called, for reasons in words.</param>
/// <param name="ClosesAtMetres">Passable while the tide is below this, metres above the curve's datum, before any allowance.</param>
/// <param name="Beyond">Measured walk from the stance to beyond it; null: the whole walk to beyond reach of the water counts.</param>
/// <param name="TakesWaves">Whether waves can reach it, so that the wave allowance is due.</param>
public sealed record TideGate(string Name, double ClosesAtMetres, Walk? Beyond, bool TakesWaves);

/// <summary>What on the way opens and shuts by the clock or the calendar: a road's gate, a ferry, a car park that is locked or floods, a closure.</summary>
/// <param name="Open">
/// When one gets through, apart and in order: in after each one's start, out before its end. An end that is open is never shut.
/// For a ferry from the first landing of a day to the last check-in back.
/// </param>
/// <param name="RideMinutes">Drive, ferry or bus between it and the walk.</param>
/// <param name="WalkIn">On foot from there to the stance.</param>
/// <param name="WalkOut">On foot back.</param>
/// <param name="Name">What it is and when it is open, for reasons in words.</param>
public sealed record ClockGate(IReadOnlyList<Interval> Open, double RideMinutes, Walk WalkIn, Walk WalkOut, string Name);

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

    /// <summary>Setting up where one has watched first, minutes: the camera is made ready while watching. Common practice, no source.</summary>
    public const double WatchedSetUpMinutes = 5;

    /// <summary>In hand before water closes a way, minutes: common practice, no source.</summary>
    public const double ReserveMinutes = 15;

    /// <summary>A walk that water cuts off is reckoned at least so many times as long as measured: common practice, no source.</summary>
    public const double LeastCutOffFactor = 1.5;

    /// <summary>What the way is called, for words; may be empty.</summary>
    public string Name { get; init; } = "";

    /// <summary>Waves come to the stance, or nobody has said that they do not: it has to be watched first.</summary>
    public bool IsWaveExposed { get; init; }

    /// <summary>Water, still or in waves, can come to the stance: then it has a limit, and one must know whether the way back is cut off.</summary>
    public bool IsReachedByWater { get; init; }

    /// <summary>A cut-off stands among the tide gates, or somebody recorded that the way back is never cut off.</summary>
    public bool CutOffIsRecorded { get; init; }

    /// <summary>Usable while the tide is below this, metres above the curve's datum, before any allowance; null: no limit, or none recorded.</summary>
    public double? LedgeLimitMetres { get; init; }

    /// <summary>Lower end of the ground's height, metres above the curve's datum: the limit is never taken above it. Null: not measured.</summary>
    public double? GroundMetres { get; init; }

    /// <summary>Everything on the way that the tide closes.</summary>
    public IReadOnlyList<TideGate> TideGates { get; init; } = [];

    /// <summary>Everything on the way that the clock or the calendar closes.</summary>
    public IReadOnlyList<ClockGate> ClockGates { get; init; } = [];

    /// <summary>From the car to the stance; null: nobody has timed it.</summary>
    public Walk? WalkIn { get; init; }

    /// <summary>Back; null: nobody has timed it.</summary>
    public Walk? WalkOut { get; init; }

    /// <summary>From the stance to beyond the last place that water can reach; null: the whole walk out.</summary>
    public Walk? BeyondReach { get; init; }

    /// <summary>A member has walked the way in the dark. If not, nobody walks in before civil dawn nor out after civil dusk.</summary>
    public bool KnownInTheDark { get; init; } = true;

    /// <summary>Walk from the watch place to the stance; null: there is no watch place, and no watching.</summary>
    public Walk? WatchPlace { get; init; }

    /// <summary>A warden wrote that ledge and white water are seen from the watch place with the sun at −9 degrees: watching counts from then, not from −6.</summary>
    public bool WatchesFromMinusNine { get; init; }

    /// <summary>Walk from the dark stance, where one may work until it is light enough to watch, to the stance; null: there is none.</summary>
    public Walk? DarkStance { get; init; }

    /// <summary>Who goes.</summary>
    public Party Party { get; init; } = Party.One;

    /// <summary>What is taken off every tide limit.</summary>
    public Allowance Allowance { get; init; } = Allowance.Usual;

    /// <summary>Whether nothing can be said without the tide.</summary>
    public bool NeedsTide => LedgeLimitMetres is not null || TideGates.Count > 0;

    /// <summary>Whether the ground's lower end stands below the recorded limit, and so rules instead of it.</summary>
    public bool GroundRules => LedgeLimitMetres > GroundMetres;

    /// <summary>Whether waves can come to a crossing while nothing is known of the sea: then turn back is told <em>at the latest</em>.</summary>
    public bool LeavesWavesOut => Allowance.WaveMetres is null && TideGates.Any(gate => gate.TakesWaves);

    /// <summary>Whether something binds at a time, so that the walks decide.</summary>
    private bool NeedsWalks => TideGates.Count > 0 || ClockGates.Count > 0 || !KnownInTheDark;

    /// <summary>Walk that takes one off the ledge before the tide does; null: nobody has timed it.</summary>
    internal Walk? OffTheLedge => BeyondReach ?? WalkOut;

    /// <summary>What is missing for a judgement, the tide and the sea taken as known or not. Stays without a walk cannot be computed at all.</summary>
    /// <param name="tideIsKnown">There is a curve for the time.</param>
    /// <param name="seaIsLeftOut">Waves are left out on purpose, and that is said: a crossing without them is no gap.</param>
    public IReadOnlyList<StayUnknown> Unknown(bool tideIsKnown, bool seaIsLeftOut)
    {
        List<StayUnknown> unknown = [];
        if (NeedsTide && !tideIsKnown) unknown.Add(StayUnknown.Tide);
        if (IsReachedByWater && LedgeLimitMetres is null) unknown.Add(StayUnknown.LedgeLimit);
        if (IsReachedByWater && !CutOffIsRecorded) unknown.Add(StayUnknown.CutOff);
        if (NeedsWalks && WalkIn is null) unknown.Add(StayUnknown.WalkIn);
        if (LacksWalkOut) unknown.Add(StayUnknown.WalkOut);
        if (!seaIsLeftOut && LeavesWavesOut) unknown.Add(StayUnknown.WavesAtCrossing);
        return unknown;
    }

    /// <summary>
    /// Measured walk from the stance to beyond a crossing; where it is not recorded the whole walk to beyond reach, or the walk
    /// out, which holds it. Nothing to walk to beyond reach and a crossing on the way contradict each other: then the walk out too.
    /// </summary>
    public Walk? Beyond(TideGate gate) => gate.Beyond ?? (BeyondReach?.Minutes > 0 ? BeyondReach : WalkOut);

    internal bool LacksWalk => (NeedsWalks && WalkIn is null) || LacksWalkOut;

    private bool LacksWalkOut => TideGates.Any(gate => Beyond(gate) is null) || (LedgeLimitMetres is not null && OffTheLedge is null)
        || ((ClockGates.Count > 0 || !KnownInTheDark) && WalkOut is null);

    /// <summary>The same way to the dark stance: not the ledge, nothing to watch for, and the walk between them on top of every other.</summary>
    internal StayPlan ToDarkStance(Walk between) => this with
    {
        IsReachedByWater = false,
        IsWaveExposed = false,
        LedgeLimitMetres = null,
        WalkIn = WalkIn + between,
        WalkOut = WalkOut + between,
        BeyondReach = BeyondReach + between,
        TideGates = [.. TideGates.Select(gate => gate with { Beyond = gate.Beyond + between })],
        ClockGates = [.. ClockGates.Select(gate => gate with { WalkIn = gate.WalkIn + between, WalkOut = gate.WalkOut + between })],
    };

    /// <summary>The height at which a crossing is taken to close: its own less the allowance.</summary>
    public double ClosesAt(TideGate gate) =>
        gate.ClosesAtMetres - Allowance.TideMetres - (gate.TakesWaves ? Allowance.WaveMetres ?? 0 : 0);

    /// <summary>The height at which the ledge is taken to be lost: its limit, or the ground's lower end where that is lower, less the allowance.</summary>
    public double? LedgeLostAt => (GroundRules ? GroundMetres : LedgeLimitMetres) - Allowance.TideMetres;
}
