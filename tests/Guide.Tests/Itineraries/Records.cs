using NodaTime;

namespace Foreshore.Guide.Itineraries;

/// <summary>From one minute to another, counted from the first minute of a <see cref="Series"/>; parts of minutes count.</summary>
internal readonly record struct Span(double From, double To);

/// <summary>A part of a walk as it was timed by daylight, the factor of its ground, and whether one is carried over it.</summary>
internal readonly record struct Piece(double Minutes, double Ground = 1, bool IsRide = false);

internal enum Opens { Always, Clock, Sun, Permit, Request, Closed }

/// <summary>Hours of some days of the year and of the week.</summary>
/// <param name="Begins">First day of the season, month × 100 + day.</param>
/// <param name="Ends">Last day; before the first, the season goes over New Year.</param>
/// <param name="Weekdays">Monday is bit 0.</param>
/// <param name="From">Minutes after midnight, or after the sunrise or sunset named.</param>
internal sealed record Rule(int Begins, int Ends, int Weekdays, Opens Kind, double From, double Until, bool FromRise, bool UntilRise, bool OrPermit);

/// <summary>Sailings of some days, minutes after midnight; null: on request.</summary>
internal sealed record SailRule(int Begins, int Ends, int Weekdays, double[]? Minutes);

/// <param name="Rules">None: nothing is known.</param>
internal sealed record Sails(IReadOnlyList<SailRule> Rules, IReadOnlyList<LocalDateTime> Agreed);

/// <summary>Closed between two dates, or every year between two days.</summary>
internal sealed record Shut(LocalDate? From, LocalDate? Until, int? YearlyFrom, int? YearlyUntil);

internal sealed record Permit(LocalDate From, LocalDate? Until);

internal enum Means { Drive, Ferry, Walk, Other }

internal sealed record FlatLeg(string Name, Means Means, double? Minutes, double Ground, bool IsRecommended)
{
    public bool KnownInTheDark { get; init; }

    /// <summary>Nobody has said whether the tide cuts it off.</summary>
    public bool CutUnknown { get; init; }

    /// <summary>Passable below so much; not a number where the figure needs checking; null: never cut off.</summary>
    public double? CutMetres { get; init; }

    /// <summary>Measured walk from the stance to beyond the crossing.</summary>
    public double? CutMinutes { get; init; }

    public IReadOnlyList<Rule>? Hours { get; init; }

    public bool HoursMissing { get; init; }

    public Sails? Out { get; init; }

    public Sails? Back { get; init; }

    public double CheckIn { get; init; }

    public IReadOnlyList<Shut> Shut { get; init; } = [];

    public IReadOnlyList<Permit> Permits { get; init; } = [];
}

internal sealed record FlatLot(string Name, IReadOnlyList<Rule>? Hours, double? FloodMetres, IReadOnlyList<Shut> Shut);

/// <summary>A route with one of its car parks.</summary>
internal sealed record FlatWay(string Route, IReadOnlyList<FlatLeg> Legs, FlatLot? Lot)
{
    public double? LotWalk { get; init; }

    /// <summary>The walk from the car park for which the whole was measured.</summary>
    public double? FirstLotWalk { get; init; }

    /// <summary>The stance names it as its own.</summary>
    public bool IsOwn { get; init; }

    /// <summary>The club's first way: the stance's own walk was timed along it.</summary>
    public bool IsFirst { get; init; }

    public double? End { get; init; }

    public double? WholeIn { get; init; }

    public double? WholeOut { get; init; }

    public string Name => Lot is null ? Route : $"{Route} from {Lot.Name}";

    public bool IsRecommended => Legs.Count > 0 && Legs.All(leg => leg.IsRecommended);
}

internal sealed record FlatStance(string Name, bool IsWaveExposed, bool IsDry)
{
    public double? WalkIn { get; init; }

    public double? WalkOut { get; init; }

    public double? Beyond { get; init; }

    public bool WalkedInTheDark { get; init; }

    public double? CutMetres { get; init; }

    public bool NeverCut { get; init; }

    public double? LimitMetres { get; init; }

    public double? GroundLowerMetres { get; init; }

    public double? WatchMinutes { get; init; }

    public bool SeesFromMinusNine { get; init; }

    public IReadOnlyList<Shut> Shut { get; init; } = [];

    public IReadOnlyList<Rule>? PlaceHours { get; init; }

    public bool PlaceHoursMissing { get; init; }

    public IReadOnlyList<Permit> Permits { get; init; } = [];

    public IReadOnlyList<FlatWay> Ways { get; init; } = [];
}

/// <summary>Who goes.</summary>
internal sealed record Group(int Count = 1, double Pace = 1, bool WetRock = false, bool SoftGround = false, bool HeavyKit = false)
{
    public double Packing => Count >= 4 ? 10 : 5;
}
