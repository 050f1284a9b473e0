using Foreshore.Almanac.Tides;

namespace Foreshore.Guide.Tides;

/// <summary>The station as a tide that can be asked.</summary>
public sealed partial class TideStation
{
    /// <summary>Heights above chart datum.</summary>
    /// <param name="reference">The station it goes by, where it is a subordinate one.</param>
    internal TideSource ToSource(TideStation? reference) => Kind switch
    {
        StationKind.Harmonic => new HarmonicTide(
            [.. ConstituentNames.Select((name, i) => new HarmonicConstant(name, AmplitudesMetres[i], PhasesDegrees[i]))],
            LevelMetres(TideLevels.MeanSeaLevel) ?? throw new TideInputException($"{Name} does not record mean sea level above chart datum, so no height can be counted from chart datum."),
            NodalModel),
        StationKind.Subordinate => new SubordinateTide(
            (reference ?? throw new TideInputException($"{Name} goes by {ReferenceId}, which is not among the stations.")).ToSource(null),
            new TideOffsets(HighWaterMinutes!.Value, LowWaterMinutes!.Value, HighWaterHeight!.Value, LowWaterHeight!.Value,
                HeightsAreRatios!.Value ? HeightOffset.Ratio : HeightOffset.Fixed), BetweenWaters.HalfCosine),
        StationKind.HighLowTable => new TableTide([.. TurnTimes.Select((time, i) => new TideExtreme(time, TurnMetres[i],
            i == 0 ? TurnMetres[0] > TurnMetres[1] : TurnMetres[i] > TurnMetres[i - 1]))]),
        _ => throw new InvalidOperationException($"There is no kind of station {Kind}."),
    };
}
