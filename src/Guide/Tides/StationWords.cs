using System.Globalization;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Tides;

/// <summary>What is told of a station and of a place's corrections to it.</summary>
public static class StationWords
{
    /// <summary>For example "high water 11 min later, 0.86 of the height; low water 14 min later, 0.85 of the height".</summary>
    public static string Of(TideCorrections corrections) =>
        $"high water {Minutes(corrections.HighWaterMinutes)}{Ratio(corrections.HighWaterRatio)}; low water {Minutes(corrections.LowWaterMinutes)}{Ratio(corrections.LowWaterRatio)}";

    /// <summary>Levels, highest first, in words and metres to a hundredth.</summary>
    public static IEnumerable<(string Words, string Metres)> Levels(TideStation station) => station.LevelCodes.Zip(station.LevelsMetres)
        .OrderByDescending(level => level.Second)
        .Select(level => (TideLevels.Words(level.First), level.Second.ToString("0.00", CultureInfo.InvariantCulture).Replace('-', '−')));

    public static string Sentence(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>For example "ME, US"; empty where the station's land is not recorded.</summary>
    public static string Land(this StationLine station) => station.SubdivisionCode ?? station.CountryCode ?? "";

    /// <summary>For example "44.905, −66.983".</summary>
    public static string Where(this StationLine station) => string.Create(CultureInfo.InvariantCulture,
        $"{station.LatitudeDegrees:0.000}, {station.LongitudeDegrees:0.000}").Replace('-', '−');

    internal static StationLine ToLine(this TideStation s) => new(
        s.Id, s.Slug, s.Name, s.LatitudeDegrees, s.LongitudeDegrees, s.CountryCode, s.SubdivisionCode, s.Kind, s.IsOfClub,
        s.ChartDatum, s.LowestMetres, s.HighestMetres, s.Quality, s.Disclaimer, s.Licence, s.LicenceLink, s.Attribution);

    private static string Minutes(int minutes) => minutes switch
    {
        0 => "at the same time",
        > 0 => $"{minutes} min later",
        _ => $"{-minutes} min earlier",
    };

    private static string Ratio(double ratio) => ratio == 1 ? ", the same height" : string.Create(CultureInfo.InvariantCulture, $", {ratio:0.##} of the height");
}
