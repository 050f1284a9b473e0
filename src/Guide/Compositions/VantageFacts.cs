using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>How a ground height was got. A phone's or satellite altitude is no method: it can be metres out.</summary>
public enum HeightMethod { StillWaterMark, Levelling, Lidar, Chart }

/// <summary>Height of the ground above chart datum, with its uncertainty; judged by the lower end.</summary>
public sealed record GroundHeight
{
    private GroundHeight() { }

    public GroundHeight(double metres, double plusMinusMetres, HeightMethod method, string stationId, LocalDate measuredOn, string? how = null)
    {
        Metres = Require.Between(metres, -2, 1500, "The ground height above chart datum", "m");
        PlusMinusMetres = Require.Between(plusMinusMetres, 0.01, 50, "The uncertainty of the ground height", "m");
        StationId = Require.Text(stationId, StationIds.Longest, "The tide station the height was judged by");
        (Method, MeasuredOn) = (method, measuredOn);
        How = Require.TextOrNull(how, 300, "How it was measured");
    }

    /// <summary>Metres above chart datum of <see cref="StationId"/>.</summary>
    public double Metres { get; private init; }

    public double PlusMinusMetres { get; private init; }

    public TideDatum Datum { get; private init; } = TideDatum.ChartDatum;

    public HeightMethod Method { get; private init; }

    public string StationId { get; private init; } = "";

    public LocalDate MeasuredOn { get; private init; }

    /// <summary>For a still-water mark: the clock times at which calm water reached it, on which two tides.</summary>
    public string? How { get; private init; }

    /// <summary>What limits are judged by.</summary>
    public double LowerEndMetres => Metres - PlusMinusMetres;

    public bool NeedsChecking(string? currentStationId) => StationId != currentStationId;
}

/// <summary>The highest sea the ledge was seen to hold in, and where waves come from.</summary>
public sealed record SeaLimit
{
    private SeaLimit() { }

    public SeaLimit(double highestWaveMetres, double longestPeriodSeconds, double exposedFromDegrees, double exposedToDegrees, bool isRepeated = false)
    {
        HighestWaveMetres = Require.Between(highestWaveMetres, 0, 15, "The highest usable significant wave height", "m");
        LongestPeriodSeconds = Require.Between(longestPeriodSeconds, 1, 30, "The longest peak period at which that held", "s");
        ExposedFromDegrees = Require.Degrees(exposedFromDegrees, "The start of the exposed sector");
        ExposedToDegrees = Require.Degrees(exposedToDegrees, "The end of the exposed sector");
        IsRepeated = isRepeated;
    }

    /// <summary>Significant wave height.</summary>
    public double HighestWaveMetres { get; private init; }

    public double LongestPeriodSeconds { get; private init; }

    /// <summary>Waves come from directions clockwise from this, true…</summary>
    public double ExposedFromDegrees { get; private init; }

    /// <summary>…to this.</summary>
    public double ExposedToDegrees { get; private init; }

    /// <summary>False reads "one member's figure, not yet repeated".</summary>
    public bool IsRepeated { get; private init; }

    /// <summary>Why long waves from outside the sector need not count in full; only a warden writes it.</summary>
    public string? OutsideBecause { get; private init; }

    public SeaLimit ShelteredOutside(string because) => this with { OutsideBecause = Require.Text(because, 300, "Why waves outside the sector need not count") };

    public bool IsExposedTo(Bearing from)
    {
        var width = (ExposedToDegrees - ExposedFromDegrees + 360) % 360;
        return (from.Degrees - ExposedFromDegrees + 360) % 360 <= width;
    }
}

/// <summary>A second place near the stance, with the walk from it to the stance.</summary>
public sealed record NearbyPlace
{
    private NearbyPlace() { }

    public NearbyPlace(string text, Position position, double minutesToStance)
    {
        Text = Require.Text(text, 200, "The description");
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        MinutesToStance = Require.Between(minutesToStance, 0, 120, "The walk to the stance", "minutes");
    }

    public string Text { get; private init; } = "";

    public double LatitudeDegrees { get; private init; }

    public double LongitudeDegrees { get; private init; }

    public double MinutesToStance { get; private init; }

    /// <summary>Why ledge and white water are seen from here with the sun at −9 already; only a warden writes it. Null: from −6.</summary>
    public string? SeenFromMinusNineBecause { get; private init; }

    public NearbyPlace SeenFromMinusNine(string because) =>
        this with { SeenFromMinusNineBecause = Require.Text(because, 300, "Why ledge and white water are seen so early") };

    public Position Position => new(LatitudeDegrees, LongitudeDegrees);
}

/// <summary>A cliff above the stance. Nearer to its foot than its height is <em>keep off</em> unless a warden wrote why not.</summary>
public sealed record CliffAbove
{
    private CliffAbove() { }

    public CliffAbove(double heightMetres, double distanceMetres, string? acceptedBecause = null)
    {
        HeightMetres = Require.Between(heightMetres, 1, 1000, "The cliff's height", "m");
        DistanceMetres = Require.Between(distanceMetres, 0, 5000, "The distance from the cliff's foot", "m");
        AcceptedBecause = Require.TextOrNull(acceptedBecause, 300, "Why one may stand so near");
    }

    public double HeightMetres { get; private init; }

    public double DistanceMetres { get; private init; }

    public string? AcceptedBecause { get; private init; }

    public bool IsTooNear => DistanceMetres < HeightMetres && AcceptedBecause is null;
}
