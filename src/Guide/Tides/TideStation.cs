using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>What a station's tide is computed from: constituents, another station with offsets, or a table of high and low waters.</summary>
public enum StationKind { Harmonic, Subordinate, HighLowTable }

/// <summary>
/// A tide station: from the catalogue that comes with the site, or added by the club. Heights are counted from its own chart
/// datum; what that is, <see cref="ChartDatum"/> says.
/// </summary>
public sealed partial class TideStation
{
    private TideStation() { }

    /// <summary>As its source names it, for example noaa/8410140.</summary>
    public string Id { get; private set; } = "";

    /// <summary>The same fit for an address: noaa-8410140.</summary>
    public string Slug { get; private set; } = "";

    public string Name { get; private set; } = "";

    public double LatitudeDegrees { get; private set; }

    public double LongitudeDegrees { get; private set; }

    public Position Position => new(LatitudeDegrees, LongitudeDegrees);

    /// <summary>ISO 3166-1 alpha-2; <c>null</c> where not recorded.</summary>
    public string? CountryCode { get; private set; }

    /// <summary>ISO 3166-2.</summary>
    public string? SubdivisionCode { get; private set; }

    public StationKind Kind { get; private set; }

    /// <summary>Edition of the catalogue that holds it; <c>null</c> for the club's own.</summary>
    public int? CatalogueEdition { get; private set; }

    public bool IsOfClub => CatalogueEdition is null;

    /// <summary>For example "public domain" or "CC BY 4.0".</summary>
    public string Licence { get; private set; } = "";

    public string? LicenceLink { get; private set; }

    /// <summary>Printed wherever this station's tide stands.</summary>
    public string Attribution { get; private set; } = "";

    /// <summary>What its source warns of.</summary>
    public string? Disclaimer { get; private set; }

    /// <summary>The catalogue's own mark, 0 to 100: length and age of the record, source, levels.</summary>
    public int? Quality { get; private set; }

    /// <summary>Its levels were reckoned from constituents, not observed: less certain.</summary>
    public bool HasReckonedLevels { get; private set; }

    public int? FirstYear { get; private set; }

    public int? LastYear { get; private set; }

    /// <summary>Code of the level that its heights are counted from, for example MLLW; see <see cref="TideLevels"/>.</summary>
    public string ChartDatum { get; private set; } = "";

    public string[] LevelCodes { get; private set; } = [];

    /// <summary>The levels of <see cref="LevelCodes"/>, metres above chart datum.</summary>
    public double[] LevelsMetres { get; private set; } = [];

    /// <summary>Lowest astronomical tide by its source, metres above chart datum.</summary>
    public double? LowestMetres { get; private set; }

    /// <summary>Highest astronomical tide by its source, metres above chart datum.</summary>
    public double? HighestMetres { get; private set; }

    public string[] ConstituentNames { get; private set; } = [];

    public double[] AmplitudesMetres { get; private set; } = [];

    /// <summary>Phase lags on Greenwich and UTC.</summary>
    public double[] PhasesDegrees { get; private set; } = [];

    public NodalModel NodalModel { get; private set; }

    /// <summary>The station a subordinate one goes by.</summary>
    public string? ReferenceId { get; private set; }

    public int? HighWaterMinutes { get; private set; }

    public int? LowWaterMinutes { get; private set; }

    /// <summary>A ratio of the reference's height above chart datum, or metres to add, see <see cref="HeightsAreRatios"/>.</summary>
    public double? HighWaterHeight { get; private set; }

    public double? LowWaterHeight { get; private set; }

    public bool? HeightsAreRatios { get; private set; }

    /// <summary>Times of a table of high and low waters.</summary>
    public Instant[] TurnTimes { get; private set; } = [];

    /// <summary>Their heights, metres above chart datum.</summary>
    public double[] TurnMetres { get; private set; } = [];

    public string SearchText { get; private set; } = "";

    public uint Version { get; private set; }

    public static string SlugOf(string id) => id.ToLowerInvariant().Replace('/', '-');

    /// <summary>One of its levels, metres above chart datum; <c>null</c> where not recorded.</summary>
    public double? LevelMetres(string code) => code == ChartDatum ? 0
        : Array.IndexOf(LevelCodes, code) is >= 0 and var at ? LevelsMetres[at] : null;
}
