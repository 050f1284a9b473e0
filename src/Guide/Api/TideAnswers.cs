using System.Text.Json.Serialization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>Tide stations near a position.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="LatitudeDegrees">Where was asked.</param>
/// <param name="LongitudeDegrees">Where was asked.</param>
/// <param name="Stations">Nearest first, however far away.</param>
internal sealed record StationsAnswer([property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, string NotForNavigation,
    double LatitudeDegrees, double LongitudeDegrees, IReadOnlyList<NearStationAnswer> Stations)
{
    public static StationsAnswer Of(Position at, IEnumerable<NearStation> near, string? notice) => new(notice, Words.NotForNavigation,
        at.LatitudeDegrees, at.LongitudeDegrees, [.. near.Select(n => new NearStationAnswer(StationAnswer.Of(n.Station), Math.Round(n.Metres), n.IsTooFar, n.Warnings))]);
}

/// <summary>A station and how far it lies.</summary>
/// <param name="Station">Which.</param>
/// <param name="DistanceMetres">Along the ellipsoid.</param>
/// <param name="IsTooFar">Over 500 km: another sea.</param>
/// <param name="Warnings">What to think of before a place is judged by it.</param>
internal sealed record NearStationAnswer(StationAnswer Station, double DistanceMetres, bool IsTooFar, IReadOnlyList<string> Warnings);

/// <summary>A tide station.</summary>
/// <param name="Station">Its name in addresses.</param>
/// <param name="Id">Its name at its source.</param>
/// <param name="Name">What people call it.</param>
/// <param name="LatitudeDegrees">North positive.</param>
/// <param name="LongitudeDegrees">East positive.</param>
/// <param name="Country">ISO 3166-1; null where not recorded.</param>
/// <param name="Kind">What its tide is computed from.</param>
/// <param name="IsOfClub">Added by the club, not from the catalogue.</param>
/// <param name="Datum">What its heights are counted from.</param>
/// <param name="LowestMetres">Lowest astronomical tide by its source, above that datum.</param>
/// <param name="HighestMetres">Highest astronomical tide by its source.</param>
/// <param name="Licence">Under which its figures may be passed on.</param>
/// <param name="LicenceLink">Where the licence stands.</param>
/// <param name="Attribution">To be shown with its figures.</param>
/// <param name="Disclaimer">What its source warns of.</param>
internal sealed record StationAnswer(string Station, string Id, string Name, double LatitudeDegrees, double LongitudeDegrees, string? Country, StationKind Kind,
    bool IsOfClub, string Datum, double? LowestMetres, double? HighestMetres, string Licence, string? LicenceLink, string Attribution, string? Disclaimer)
{
    public static StationAnswer Of(StationLine s) => new(s.Slug, s.Id, s.Name, s.LatitudeDegrees, s.LongitudeDegrees, s.CountryCode, s.Kind, s.IsOfClub,
        TideLevels.Words(s.ChartDatum), s.LowestMetres, s.HighestMetres, s.Licence, s.LicenceLink, s.Attribution, s.Disclaimer);
}

/// <summary>What stands above figures of tide: where they come from and how they were computed.</summary>
/// <param name="Station">The station.</param>
/// <param name="Datum">What heights are counted from.</param>
/// <param name="Method">How they were computed, in words.</param>
/// <param name="NodalModel">Schureman or IHO; null for a table.</param>
/// <param name="Disclaimers">To be shown with the figures.</param>
internal sealed record TideOrigin(StationAnswer Station, string Datum, string Method, NodalModel? NodalModel, IReadOnlyList<string> Disclaimers)
{
    public static TideOrigin Of(PlaceTide tide) => new(StationAnswer.Of(tide.Station.ToLine()), tide.DatumWords, tide.Source.Method, tide.Source.Model,
        [TideWords.Disclaimer, TideWords.Turns, .. tide.Station.Disclaimer is { } said ? [said] : Array.Empty<string>()]);
}

/// <summary>Heights at even steps, the first at the beginning.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Origin">Station, datum, method, licence.</param>
/// <param name="From">The beginning, UTC.</param>
/// <param name="To">The end; the last height stands at or before it.</param>
/// <param name="StepMinutes">From one height to the next.</param>
/// <param name="Heights">Times in UTC and metres above the datum.</param>
internal sealed record TideHeightsAnswer([property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, string NotForNavigation,
    TideOrigin Origin, DateTimeOffset From, DateTimeOffset To, double StepMinutes, IReadOnlyList<HeightAnswer> Heights)
{
    public static TideHeightsAnswer Of(PlaceTide tide, TideCurve curve, TideQuestion asked, string? notice)
    {
        var metres = new double[(int)Math.Floor((asked.To - asked.From) / asked.Step) + 1];
        curve.Metres(asked.From, asked.Step, metres);
        return new(notice, Words.NotForNavigation, TideOrigin.Of(tide), asked.From.At(DateTimeZone.Utc), asked.To.At(DateTimeZone.Utc), asked.Step.TotalMinutes,
            [.. metres.Select((height, i) => new HeightAnswer((asked.From + asked.Step * i).At(DateTimeZone.Utc), Math.Round(height, 3)))]);
    }
}

/// <summary>One height.</summary>
/// <param name="Time">When, UTC.</param>
/// <param name="Metres">Above the datum.</param>
internal sealed record HeightAnswer(DateTimeOffset Time, double Metres);

/// <summary>High and low waters in order.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Origin">Station, datum, method, licence.</param>
/// <param name="From">The beginning, UTC.</param>
/// <param name="To">The end.</param>
/// <param name="Waters">Times in UTC and metres above the datum.</param>
internal sealed record TideExtremesAnswer([property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, string NotForNavigation,
    TideOrigin Origin, DateTimeOffset From, DateTimeOffset To, IReadOnlyList<WaterAnswer> Waters)
{
    public static TideExtremesAnswer Of(PlaceTide tide, TideCurve curve, TideQuestion asked, string? notice) => new(notice, Words.NotForNavigation,
        TideOrigin.Of(tide), asked.From.At(DateTimeZone.Utc), asked.To.At(DateTimeZone.Utc),
        [.. curve.Extremes.Select(water => new WaterAnswer(water.Time.At(DateTimeZone.Utc), Math.Round(water.Metres, 3), water.IsHigh))]);
}

/// <summary>A high or a low water.</summary>
/// <param name="Time">When, UTC.</param>
/// <param name="Metres">Above the datum.</param>
/// <param name="IsHigh">High water; else low water.</param>
internal sealed record WaterAnswer(DateTimeOffset Time, double Metres, bool IsHigh);
