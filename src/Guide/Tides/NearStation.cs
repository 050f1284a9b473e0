using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Tides;

/// <summary>A station as search results give it: without what its tide is computed from.</summary>
public sealed record StationLine(
    string Id, string Slug, string Name, double LatitudeDegrees, double LongitudeDegrees, string? CountryCode, string? SubdivisionCode,
    StationKind Kind, bool IsOfClub, string ChartDatum, double? LowestMetres, double? HighestMetres, int? Quality, string? Disclaimer,
    string Licence, string? LicenceLink, string Attribution)
{
    public Position Position => new(LatitudeDegrees, LongitudeDegrees);

    /// <summary>From lowest to highest astronomical tide, metres.</summary>
    public double? GreatestRangeMetres => HighestMetres - LowestMetres;
}

/// <summary>A station and how far it lies from where the tide is asked for.</summary>
public sealed record NearStation(StationLine Station, double Metres)
{
    /// <summary>Beyond this a headland may lie between, and the tide behind it can be another: almanac practice, no source.</summary>
    public const double HeadlandMetres = 25_000;

    /// <summary>Beyond this it is another sea.</summary>
    public const double MostMetres = 500_000;

    /// <summary>Under this range weather outweighs the tide, as in nearly closed seas and far up rivers: mine.</summary>
    internal const double LittleRangeMetres = 0.3;

    /// <summary>Words by which names tell of a gauge away from the open coast. The catalogue has no field for it.</summary>
    private static readonly string[] InlandWords =
        ["river", "creek", "lake", "lock", "dam", "bridge", "canal", "upstream", "entrance", "riviere", "fiume", "rio", "elbe", "weser", "ems"];

    public static NearStation Of(StationLine station, Position from) => new(station, Geodesic.Between(from, station.Position).Metres);

    public bool IsTooFar => Metres > MostMetres;

    /// <summary>What to think of before a place is judged by it; empty when nothing speaks against it.</summary>
    public IReadOnlyList<string> Warnings => [.. WarningsInOrder()];

    private IEnumerable<string> WarningsInOrder()
    {
        if (IsTooFar)
            yield return $"It lies {PlaceWords.Distance(Metres)} away: that is another sea. Choose a nearer one, or add the club's own.";
        else if (Metres > HeadlandMetres)
            yield return $"It lies {PlaceWords.Distance(Metres)} away: across a headland or up an estuary the tide can be another.";
        if (MayLieInland(Station.Name))
            yield return InlandName;
        if (Station.GreatestRangeMetres is < LittleRangeMetres)
            yield return "Its whole range is under 0.3 m: wind and air pressure move the water more than the tide does.";
        if (Station.Disclaimer is { } warning)
            yield return $"Its source says: {warning}";
    }

    internal const string InlandName = "Its name tells of a river, lock or entrance: it may lie away from the open coast.";

    internal static bool MayLieInland(string name) =>
        SearchWords.Fold(name).Split(' ').Any(word => InlandWords.Contains(word, StringComparer.Ordinal));
}
