namespace Foreshore.Almanac.Tides;

/// <summary>A level that heights are counted from.</summary>
public enum Datum
{
    /// <summary>The level that the station's tide tables and charts are counted from; which of the others it is, <see cref="Datums.ChartDatumIs"/> says.</summary>
    ChartDatum,

    /// <summary>Highest astronomical tide (HAT).</summary>
    HighestAstronomicalTide,

    /// <summary>Mean of the higher high water of each day (MHHW).</summary>
    MeanHigherHighWater,

    /// <summary>Mean high water springs (MHWS).</summary>
    MeanHighWaterSprings,

    /// <summary>Mean of all high waters (MHW).</summary>
    MeanHighWater,

    /// <summary>Mean high water neaps (MHWN).</summary>
    MeanHighWaterNeaps,

    /// <summary>Mean sea level (MSL).</summary>
    MeanSeaLevel,

    /// <summary>Midway between mean high and mean low water (MTL).</summary>
    MeanTideLevel,

    /// <summary>Midway between mean higher high and mean lower low water (DTL).</summary>
    DiurnalTideLevel,

    /// <summary>Mean low water neaps (MLWN).</summary>
    MeanLowWaterNeaps,

    /// <summary>Mean of all low waters (MLW).</summary>
    MeanLowWater,

    /// <summary>Mean low water springs (MLWS).</summary>
    MeanLowWaterSprings,

    /// <summary>Mean of the lower low water of each day (MLLW).</summary>
    MeanLowerLowWater,

    /// <summary>Lower low water, large tide (LLWLT): the Canadian chart datum.</summary>
    LowerLowWaterLargeTide,

    /// <summary>Nearly lowest low water (NLLW): the Japanese chart datum.</summary>
    NearlyLowestLowWater,

    /// <summary>Lowest astronomical tide (LAT).</summary>
    LowestAstronomicalTide,

    /// <summary>A datum of the land survey, such as NAP, ODN or NAVD 88.</summary>
    LandSurvey,

    /// <summary>The zero of the station's gauge (STND).</summary>
    GaugeZero,
}
