using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Tides;

/// <summary>
/// What a tide was made from. Two tides with the same stamp are the same tide, and a row that has changed has another version:
/// whatever is kept under a stamp cannot be out of date.
/// </summary>
public readonly record struct TideStamp(string StationId, uint Version, uint ReferenceVersion, TideCorrections? Corrections);

/// <summary>The tide at a place: a station's, with the place's own corrections where it has some.</summary>
/// <param name="Station">The station it goes by.</param>
/// <param name="Reference">The one that the station itself goes by; null where it goes by none.</param>
/// <param name="Corrections">The place's own corrections; null for the station's tide as it is.</param>
/// <param name="Source">Heights above the station's chart datum.</param>
public sealed record PlaceTide(TideStation Station, TideStation? Reference, TideCorrections? Corrections, TideSource Source)
{
    public TideStamp Stamp => new(Station.Id, Station.Version, Reference?.Version ?? 0, Corrections);

    /// <summary>
    /// Mean sea level above chart datum at the station, metres; null where it is not recorded. A place's own figure, where it
    /// has one, goes before this; corrected heights have another level, so then it is unknown.
    /// </summary>
    public double? MeanSeaLevelMetres => Corrections is null or { HighWaterRatio: 1, LowWaterRatio: 1 } ? Station.LevelMetres(TideLevels.MeanSeaLevel) : null;

    /// <summary>For example "chart datum, here mean lower low water (MLLW)".</summary>
    public string DatumWords => $"chart datum, here {TideLevels.Words(Station.ChartDatum)}";

    /// <exception cref="TideInputException">The station holds what no tide can be computed from.</exception>
    internal static PlaceTide Of(TideStation station, TideStation? reference, TideCorrections? corrections)
    {
        var own = station.ToSource(reference);
        // Corrections are from water to water; between them the station's own shape is kept.
        return new(station, reference, corrections, corrections is null ? own
            : new SubordinateTide(own, new TideOffsets(corrections.HighWaterMinutes, corrections.LowWaterMinutes,
                corrections.HighWaterRatio, corrections.LowWaterRatio, HeightOffset.Ratio), BetweenWaters.ReferenceCurve));
    }
}
