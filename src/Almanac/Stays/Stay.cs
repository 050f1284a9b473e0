using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>What bounds a stay.</summary>
public enum StayCause
{
    /// <summary>Nothing does.</summary>
    None,

    /// <summary>The tide at a crossing or a cut-off of the path.</summary>
    TideGate,

    /// <summary>The tide at the ledge.</summary>
    Ledge,

    /// <summary>A gate, a sailing, a car park that is locked.</summary>
    ClockGate,

    /// <summary>A way that nobody has walked in the dark.</summary>
    Dark,

    /// <summary>Waves: what has been watched holds for some hours of the dark, less on a rising tide.</summary>
    Watch,

    /// <summary>The tide is not known beyond.</summary>
    EndOfTide,
}

/// <summary>One bound of a stay.</summary>
/// <param name="Cause">What bounds it.</param>
/// <param name="Days">When the bound itself lies, days from J2000: the gate shuts, the tide passes the level, civil twilight ends.</param>
/// <param name="Index">Which of the plan's crossings or gates; −1 where there is only one of the kind.</param>
internal readonly record struct StayBound(StayCause Cause, double Days, int Index = -1);

/// <summary>
/// One stay that a way allows: from the first minute that counts to turn back. Between them the limits hold, the stance has
/// been watched where waves come, and the kit stands.
/// </summary>
public sealed class Stay
{
    private static readonly Duration ADay = Duration.FromHours(24);

    private readonly StayPlan plan;
    private readonly StayBound opening, closing, nextClosing;
    private readonly Stretch usable;
    private readonly double arrival, turnBack, nextTurnBack;

    internal Stay(StayPlan plan, Stretch usable, in Presence there, double turnBack, double nextTurnBack)
    {
        (this.plan, this.usable, this.turnBack, this.nextTurnBack) = (plan, usable, turnBack, nextTurnBack);
        (arrival, opening, closing, nextClosing) = (there.Arrival, there.Opening, there.Closing, there.NextClosing);
    }

    /// <summary>The plan it is a stay of.</summary>
    public StayPlan Plan => plan;

    /// <summary>First minute on the stance that counts; null: nothing bounds it within the span asked for.</summary>
    public Instant? From => At(usable.Start);

    /// <summary>When to leave the stance, rounded down to five minutes; null: nothing bounds it within the span asked for.</summary>
    public Instant? TurnBack => At(turnBack);

    /// <summary>
    /// Turn back for somebody who came for a window: what binds more than a day after its end binds nobody who came for it.
    /// </summary>
    /// <param name="windowEnd">End of the window.</param>
    public Instant? TurnBackFrom(Instant windowEnd) => TurnBack is { } time && time <= windowEnd + ADay ? time : null;

    /// <summary>Last minute that counts for somebody who comes for this session; null: nothing bounds it. Turn back, or sooner where waves come and the night begins.</summary>
    public Instant? Until => At(usable.End);

    /// <summary>
    /// After <see cref="Until"/>, to turn back: usable only for somebody who watched before dusk and has not left since. Never in
    /// a verdict, a season table or a date. Null where there is none.
    /// </summary>
    public Interval? IfWatched => OnlyIfWatched?.AsInterval();

    /// <summary>The earliest that one can have walked in; null: nothing bounds it.</summary>
    public Instant? Arrival => At(arrival);

    /// <summary>When the watching must be done at the earliest; null where none is due.</summary>
    public Interval? Watch => Watching?.AsInterval();

    /// <summary>Why it begins no earlier.</summary>
    public StayCause Opening => opening.Cause;

    /// <summary>When what holds it up opens: the tide passes the level, the gate is unlocked, civil twilight begins.</summary>
    public Instant? OpensAt => At(opening.Days);

    /// <summary>The crossing or gate that opens it; null for other causes.</summary>
    public string? OpensBy => Name(opening);

    /// <summary>Why it ends.</summary>
    public StayCause Closing => closing.Cause;

    /// <summary>When what ends it closes.</summary>
    public Instant? ClosesAt => At(closing.Days);

    /// <summary>The crossing or gate that closes it; null for other causes.</summary>
    public string? ClosesBy => Name(closing);

    /// <summary>What would end it next, were it not for the first; none where nothing would.</summary>
    public StayCause NextClosing => nextClosing.Cause;

    /// <summary>When that closes.</summary>
    public Instant? NextClosesAt => At(nextClosing.Days);

    /// <summary>The crossing or gate that it is; null for other causes.</summary>
    public string? NextClosesBy => Name(nextClosing);

    /// <summary>When one would turn back for it, rounded down to five minutes.</summary>
    public Instant? NextTurnBack => At(nextTurnBack);

    internal Stretch Usable => usable;

    /// <summary>Turn back, days; infinite where nothing bounds it.</summary>
    internal double Leave => turnBack;

    internal Stretch? Watching { get; init; }

    internal Stretch? OnlyIfWatched { get; init; }

    private string? Name(StayBound bound) => bound.Cause switch
    {
        StayCause.TideGate => plan.TideGates[bound.Index].Name,
        StayCause.ClockGate => plan.ClockGates[bound.Index].Name,
        _ => null,
    };

    private static Instant? At(double days) => double.IsFinite(days) ? Spans.At(days) : null;
}
