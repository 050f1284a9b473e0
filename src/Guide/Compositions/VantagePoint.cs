using Foreshore.Almanac.Earth;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Photos;
using NodaTime;

namespace Foreshore.Guide.Compositions;

public enum VantageKind { OpenGround, Ledge, Ramp, Beach, CliffTop, UnderCliff, HarbourWall, Pier }

/// <summary>How far water comes to the stance. Unknown is the default and counts as wave-exposed.</summary>
public enum Reach { Unknown, None, StillWaterOnly, Waves }

/// <summary>Who finds a footing there.</summary>
public enum Footing { Anyone, Steady, SureFooted, Scramble }

public enum EdgeDistance { None, WithinFiveMetres, OnIt }

/// <summary>Where the tripod stands.</summary>
public sealed partial class VantagePoint
{
    public const double UsualEyeHeightMetres = 1.6;

    private readonly List<Composition> compositions = [];
    private readonly List<Photo> photos = [];
    private readonly List<StanceWay> ways = [];

    // Boards and drawings ask for it hundreds of times; parsing is for the first.
    private (string? Text, Skyline Skyline) read = (null, Skyline.AssumedSea);

    private VantagePoint() { }

    public VantagePoint(string slug, string name, VantageKind kind, Position position, Footing footing, string summary)
    {
        Slug = Locations.Slug.Of(slug);
        Name = Require.Text(name, 80, "The vantage point's name");
        Summary = Require.Text(summary, 400, "The summary");
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        (Kind, Footing) = (kind, footing);
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public Location? Location { get; private set; }

    public string Slug { get; private set; } = "";

    public string Name { get; private set; } = "";

    public string Summary { get; private set; } = "";

    public double LatitudeDegrees { get; private set; }

    public double LongitudeDegrees { get; private set; }

    public Position Position => new(LatitudeDegrees, LongitudeDegrees);

    public VantageKind Kind { get; private set; }

    public Reach Reach { get; private set; }

    /// <summary>Why a warden says that no waves come there.</summary>
    public string? ReachReason { get; private set; }

    /// <summary>Waves come there, or nobody has said that they do not.</summary>
    public bool IsWaveExposed => Reach is Reach.Waves or Reach.Unknown;

    public Footing Footing { get; private set; }

    /// <summary>Tripods that fit; null: not said.</summary>
    public int? Tripods { get; private set; }

    public double? WalkInMinutes { get; private set; }

    public double? WalkOutMinutes { get; private set; }

    /// <summary>Minutes from the stance to beyond the last place the water can reach.</summary>
    public double? MinutesToBeyondReach { get; private set; }

    /// <summary>A member has walked the way in the dark.</summary>
    public bool WalkedInTheDark { get; private set; }

    /// <summary>Ground height above chart datum as measured; null: unknown, and then dip and limits are unknown too.</summary>
    public GroundHeight? Ground { get; private set; }

    public double EyeHeightMetres { get; private set; } = UsualEyeHeightMetres;

    /// <summary>Tide height from which the path is cut off; null together with <see cref="IsNeverCutOff"/> false: not recorded.</summary>
    public TideHeight? PathCutOff { get; private set; }

    /// <summary>Somebody recorded that the way back is never cut off by the tide.</summary>
    public bool IsNeverCutOff { get; private set; }

    public TideHeight? HighestUsableTide { get; private set; }

    /// <summary>Highest usable sea with the sector it comes from; null: not recorded.</summary>
    public SeaLimit? Sea { get; private set; }

    /// <summary>Where one sees ledge and swell and the water cannot come; null: none recorded.</summary>
    public NearbyPlace? WatchPlace { get; private set; }

    /// <summary>Where to work until it is light enough to watch; null: none.</summary>
    public NearbyPlace? DarkStance { get; private set; }

    public EdgeDistance Edge { get; private set; }

    /// <summary>Gusts above this, m/s, stop the stance; null: none set (15 within 5 m of an edge).</summary>
    public double? GustLimitMetresPerSecond { get; private set; }

    /// <summary>Cliff above the stance; null: none.</summary>
    public CliffAbove? Cliff { get; private set; }

    /// <summary>Skyline as <c>azimuth altitude kind</c> triplets; use <see cref="Skyline"/>.</summary>
    public string? SkylineText { get; private set; }

    /// <summary>Where the skyline is from, in words; null where none is recorded or nobody said.</summary>
    public string? SkylineOrigin { get; private set; }

    public LocalDate? SkylineMadeOn { get; private set; }

    /// <summary>Drawn sketch, a file name under the site's sketches; null: none.</summary>
    public string? Sketch { get; private set; }

    public FactCheck Check { get; private set; } = null!;

    public uint Version { get; private set; }

    public IReadOnlyList<Composition> Compositions => compositions;

    /// <summary>Ways in that lead to this stance, the preferred one first; none: all of the place's do, in the place's order.</summary>
    public IReadOnlyList<StanceWay> Ways => ways;

    /// <summary>Those that came with accepted proposals, the oldest first; loaded for pages of one place alone.</summary>
    public IReadOnlyList<Photo> Photos => photos;

    /// <summary>The drawn skyline, or an assumed sea horizon (<see cref="Almanac.Earth.Skyline.IsAssumed"/>), which pages say.</summary>
    public Skyline Skyline
    {
        get
        {
            if (read.Text != SkylineText)
                read = (SkylineText, SkylineText is null ? Skyline.AssumedSea : SkylineNotation.Parse(SkylineText));
            return read.Skyline;
        }
    }

    /// <summary>
    /// Eye height above mean sea level: ground above chart datum, less mean sea level above chart datum, plus eye height.
    /// Null where either is unknown; there is then no dip.
    /// </summary>
    public double? EyeMetresAboveMeanSea(double? meanSeaLevelAboveChartDatumMetres) =>
        Ground is { } ground && meanSeaLevelAboveChartDatumMetres is { } meanSeaLevel ? ground.Metres - meanSeaLevel + EyeHeightMetres : null;

    public Composition Compose(Composition composition)
    {
        Require.That(!compositions.Any(c => c.Slug == composition.Slug),
            $"{Name} already has a composition with the address \"{composition.Slug}\". Choose another.");
        compositions.Add(composition);
        return composition;
    }
}
