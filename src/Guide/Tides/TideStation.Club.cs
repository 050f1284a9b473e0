using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Tides;

/// <summary>Stations that the club adds.</summary>
public sealed partial class TideStation
{
    /// <summary>What the ids of the club's own begin with; the catalogue has no such source.</summary>
    public const string ClubSource = "club/";

    /// <summary>From constituents; mean sea level is what heights are counted down from.</summary>
    public static TideStation OfConstituents(string id, string name, Position position, string chartDatum, double meanSeaLevelMetres, NodalModel model, IReadOnlyList<HarmonicConstant> constants)
    {
        var station = OfClub(id, name, position, chartDatum, StationKind.Harmonic);
        station.NodalModel = model;
        (station.LevelCodes, station.LevelsMetres) = ([TideLevels.MeanSeaLevel], [Require.Between(meanSeaLevelMetres, -2, 12, "Mean sea level above chart datum", "m")]);
        station.ConstituentNames = [.. constants.Select(one => one.Constituent.Name)];
        station.AmplitudesMetres = [.. constants.Select(one => one.AmplitudeMetres)];
        station.PhasesDegrees = [.. constants.Select(one => one.PhaseDegrees)];
        return station;
    }

    /// <summary>From a table of high and low waters; mean sea level may be unknown.</summary>
    public static TideStation OfTable(string id, string name, Position position, string chartDatum, double? meanSeaLevelMetres, IReadOnlyList<TideExtreme> waters)
    {
        var station = OfClub(id, name, position, chartDatum, StationKind.HighLowTable);
        if (Require.BetweenOrNull(meanSeaLevelMetres, -2, 12, "Mean sea level above chart datum", "m") is { } level)
            (station.LevelCodes, station.LevelsMetres) = ([TideLevels.MeanSeaLevel], [level]);
        station.TurnTimes = [.. waters.Select(water => water.Time)];
        station.TurnMetres = [.. waters.Select(water => water.Metres)];
        return station;
    }

    /// <summary>Whose figures they are and under which terms they stand here.</summary>
    public TideStation Credit(string attribution, string licence, string? licenceLink)
    {
        Attribution = Require.Text(attribution, 600, "Whom the figures come from");
        Licence = Require.Text(licence, 60, "The licence");
        LicenceLink = Require.LinkOrNull(licenceLink, "The link to the licence");
        return this;
    }

    private static TideStation OfClub(string id, string name, Position position, string chartDatum, StationKind kind)
    {
        Require.That(TideLevels.IsKnown(chartDatum), $"\"{chartDatum}\" is none of the levels that are known here. Choose one from the list.");
        var slug = Locations.Slug.Of(id);
        return new()
        {
            Id = ClubSource + slug,
            Slug = SlugOf(ClubSource + slug),
            Name = Require.Text(name, 120, "The station's name"),
            LatitudeDegrees = position.LatitudeDegrees,
            LongitudeDegrees = position.LongitudeDegrees,
            ChartDatum = chartDatum,
            Kind = kind,
            SearchText = SearchWords.Fold($"{name} {ClubSource}{slug}"),
        };
    }
}
