using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Compositions;

public enum TideTurn { LowWater, HighWater }

public enum TideFlow { Any, Rising, Falling }

/// <summary>Springs and neaps: range in the station's upper and lower third of the year.</summary>
public enum TideRange { Any, Springs, Neaps, AtLeast }

/// <summary>The tide wanted: a height band, or a span of time about low or high water; with range and direction.</summary>
public sealed record TideWish
{
    private TideWish() { }

    /// <summary>Band: lower edge, with datum and station; null: no lower edge.</summary>
    public TideHeight? Lowest { get; private init; }

    public TideHeight? Highest { get; private init; }

    /// <summary>Set for the second form; null for a height band.</summary>
    public TideTurn? Turn { get; private init; }

    /// <summary>Minutes from the turn at which the wish begins; negative is before it.</summary>
    public int? FromMinutes { get; private init; }

    public int? ToMinutes { get; private init; }

    public TideFlow Flow { get; private init; }

    public TideRange Range { get; private init; }

    public double? RangeAtLeastMetres { get; private init; }

    public bool IsBand => Turn is null;

    public static TideWish Band(TideHeight? lowest, TideHeight? highest)
    {
        Require.That(lowest is not null || highest is not null, "A height band needs a lower or an upper edge. Give at least one.");
        Require.That(lowest is null || highest is null || (lowest.StationId == highest.StationId && lowest.Datum == highest.Datum),
            "The two edges of the band name different stations or datums and cannot be compared. Judge both by the same one.");
        Require.That(lowest is null || highest is null || lowest.Metres < highest.Metres, "The lower edge of the band is not below the upper one. Swap them.");
        return new TideWish { Lowest = lowest, Highest = highest };
    }

    public static TideWish About(TideTurn turn, int fromMinutes, int toMinutes)
    {
        Require.Between(fromMinutes, -720, 720, "The start", "minutes from the turn");
        Require.Between(toMinutes, -720, 720, "The end", "minutes from the turn");
        Require.That(fromMinutes < toMinutes, "The span ends before it begins. Minutes before the turn are negative.");
        return new TideWish { Turn = turn, FromMinutes = fromMinutes, ToMinutes = toMinutes };
    }

    public TideWish While(TideFlow flow) => this with { Flow = flow };

    public TideWish At(TideRange range)
    {
        Require.That(range != TideRange.AtLeast, "A least range needs its metres.");
        return this with { Range = range };
    }

    public TideWish RangeAtLeast(double metres) =>
        this with { Range = TideRange.AtLeast, RangeAtLeastMetres = Require.Between(metres, 0.1, 20, "The least range", "m") };

    /// <summary>True when an edge was judged by another station than the place now has.</summary>
    public bool NeedsChecking(string? currentStationId) =>
        (Lowest?.NeedsChecking(currentStationId) ?? false) || (Highest?.NeedsChecking(currentStationId) ?? false);
}

/// <summary>Freshly washed: covered within 3 hours. Dry: not covered for 6.</summary>
public enum GroundState { Any, FreshlyWashed, Dry }

public sealed record GroundWish
{
    private GroundWish() { }

    public GroundWish(GroundState state, TideHeight? foreground)
    {
        (State, Foreground) = (state, foreground);
    }

    public GroundState State { get; private init; }

    /// <summary>The foreground's own height; without it the wish is not judged.</summary>
    public TideHeight? Foreground { get; private init; }

    public bool CanBeJudged => State == GroundState.Any || Foreground is not null;
}

/// <summary>The sea wanted. Each bound may be missing.</summary>
public sealed record SeaWish
{
    private SeaWish() { }

    /// <summary>Mirror: significant height below 0.2 m and wind below 3 m/s.</summary>
    public static readonly SeaWish Reflections = new() { Words = "reflections", HighestWaveMetres = 0.2, HighestWindMetresPerSecond = 3 };

    public string Words { get; private init; } = "";

    public double? LowestWaveMetres { get; private init; }

    public double? HighestWaveMetres { get; private init; }

    public double? ShortestPeriodSeconds { get; private init; }

    public double? LongestPeriodSeconds { get; private init; }

    /// <summary>Waves from directions clockwise from this, true…</summary>
    public double? FromDegrees { get; private init; }

    /// <summary>…to this.</summary>
    public double? ToDegrees { get; private init; }

    public double? HighestWindMetresPerSecond { get; private init; }

    public static SeaWish Band(string words, double? lowestWaveMetres, double? highestWaveMetres)
    {
        Require.That(lowestWaveMetres is not null || highestWaveMetres is not null, "A sea wish needs a least or a greatest wave height. Give at least one.");
        Require.That(lowestWaveMetres is null || highestWaveMetres is null || lowestWaveMetres < highestWaveMetres,
            "The least wave height is not below the greatest. Swap them.");
        return new SeaWish
        {
            Words = Require.Text(words, 60, "The wish in words"),
            LowestWaveMetres = Require.BetweenOrNull(lowestWaveMetres, 0, 15, "The least wave height", "m"),
            HighestWaveMetres = Require.BetweenOrNull(highestWaveMetres, 0, 15, "The greatest wave height", "m"),
        };
    }

    public SeaWish Period(double? shortestSeconds, double? longestSeconds) => this with
    {
        ShortestPeriodSeconds = Require.BetweenOrNull(shortestSeconds, 1, 30, "The shortest period", "s"),
        LongestPeriodSeconds = Require.BetweenOrNull(longestSeconds, 1, 30, "The longest period", "s"),
    };

    public SeaWish ComingFrom(double fromDegrees, double toDegrees) => this with
    {
        FromDegrees = Require.Degrees(fromDegrees, "The start of the wave direction"),
        ToDegrees = Require.Degrees(toDegrees, "The end of the wave direction"),
    };

    public SeaWish InWindBelow(double metresPerSecond) =>
        this with { HighestWindMetresPerSecond = Require.Between(metresPerSecond, 0.5, 40, "The greatest wind", "m/s") };
}
