using Foreshore.Almanac.Tides;

namespace Foreshore.Guide.Tides;

/// <summary>The codes by which stations name their levels, as the trade's words and as the almanac's datums.</summary>
public static class TideLevels
{
    public const string MeanSeaLevel = "MSL";

    private static readonly Dictionary<string, (string Words, Datum? Datum)> Known = new()
    {
        ["HAT"] = ("highest astronomical tide", Datum.HighestAstronomicalTide),
        ["MHHW"] = ("mean higher high water", Datum.MeanHigherHighWater),
        ["MHWS"] = ("mean high water springs", Datum.MeanHighWaterSprings),
        ["MHW"] = ("mean high water", Datum.MeanHighWater),
        ["MHWN"] = ("mean high water neaps", Datum.MeanHighWaterNeaps),
        ["MSL"] = ("mean sea level", Datum.MeanSeaLevel),
        ["MTL"] = ("mean tide level", Datum.MeanTideLevel),
        ["DTL"] = ("diurnal tide level", Datum.DiurnalTideLevel),
        ["MLWN"] = ("mean low water neaps", Datum.MeanLowWaterNeaps),
        ["MLW"] = ("mean low water", Datum.MeanLowWater),
        ["MLWS"] = ("mean low water springs", Datum.MeanLowWaterSprings),
        ["MLLW"] = ("mean lower low water", Datum.MeanLowerLowWater),
        ["LLWLT"] = ("lower low water, large tide", Datum.LowerLowWaterLargeTide),
        ["NLLW"] = ("nearly lowest low water", Datum.NearlyLowestLowWater),
        ["LAT"] = ("lowest astronomical tide", Datum.LowestAstronomicalTide),
        ["TLT"] = ("theoretical lowest tide", null),
        ["CD"] = ("the chart datum of its hydrographic office", null),
        ["STND"] = ("the zero of its gauge", Datum.GaugeZero),
        ["NAVD88"] = ("NAVD 88, of the land survey", Datum.LandSurvey),
        ["NN2000"] = ("NN2000, of the land survey", Datum.LandSurvey),
        ["GUVD04"] = ("GUVD04, of the land survey", Datum.LandSurvey),
        ["NMVD03"] = ("NMVD03, of the land survey", Datum.LandSurvey),
        ["VIVD09"] = ("VIVD09, of the land survey", Datum.LandSurvey),
        ["PRVD02"] = ("PRVD02, of the land survey", Datum.LandSurvey),
    };

    public static IReadOnlyCollection<string> Codes => Known.Keys;

    public static bool IsKnown(string code) => Known.ContainsKey(code);

    /// <summary>For example "mean lower low water (MLLW)".</summary>
    public static string Words(string code) => Known.TryGetValue(code, out var level) ? $"{level.Words} ({code})" : code;

    /// <summary>The station's levels as the almanac compares them; those that have no place there are left out.</summary>
    public static Datums Datums(this TideStation station)
    {
        var metres = new Dictionary<Datum, double> { [Datum.ChartDatum] = 0 };
        foreach (var (code, level) in station.LevelCodes.Zip(station.LevelsMetres))
        {
            if (Known.TryGetValue(code, out var known) && known.Datum is { } datum)
                metres[datum] = level;
        }
        return new Datums(metres, Known.TryGetValue(station.ChartDatum, out var own) ? own.Datum ?? Datum.ChartDatum : null);
    }
}
