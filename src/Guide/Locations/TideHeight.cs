namespace Foreshore.Guide.Locations;

/// <summary>The level a height is counted from.</summary>
public enum TideDatum { ChartDatum, MeanSeaLevel, LowestAstronomicalTide }

public static class StationIds
{
    /// <summary>Ids of tide stations are words joined by hyphens behind their source, like noaa/8410140; the longest known has 81 letters.</summary>
    public const int Longest = 100;
}

/// <summary>
/// A height judged by a tide station. It names its datum and that station; when the location is given another station the
/// figure reads "needs checking" until somebody judges it again.
/// </summary>
public sealed record TideHeight
{
    private TideHeight() { }

    public TideHeight(double metres, string stationId, bool isRepeated = false, TideDatum datum = TideDatum.ChartDatum)
    {
        Metres = Require.Between(metres, -5, 25, "The tide height", "m above its datum");
        StationId = Require.Text(stationId, StationIds.Longest, "The tide station the height was judged by");
        IsRepeated = isRepeated;
        Datum = datum;
    }

    public double Metres { get; private init; }

    public TideDatum Datum { get; private init; }

    public string StationId { get; private init; } = "";

    /// <summary>False reads "one member's figure, not yet repeated".</summary>
    public bool IsRepeated { get; private init; }

    public bool NeedsChecking(string? currentStationId) => StationId != currentStationId;
}

/// <summary>How high and low water at the place differ from the station's: minutes later (positive), heights as a ratio above chart datum.</summary>
public sealed record TideCorrections
{
    private TideCorrections() { }

    public TideCorrections(int highWaterMinutes, int lowWaterMinutes, double highWaterRatio = 1, double lowWaterRatio = 1)
    {
        HighWaterMinutes = Require.Between(highWaterMinutes, -360, 360, "The correction of high water", "minutes");
        LowWaterMinutes = Require.Between(lowWaterMinutes, -360, 360, "The correction of low water", "minutes");
        HighWaterRatio = Require.Between(highWaterRatio, 0.1, 10, "The ratio of high-water heights", "");
        LowWaterRatio = Require.Between(lowWaterRatio, 0.1, 10, "The ratio of low-water heights", "");
    }

    public int HighWaterMinutes { get; private init; }

    public int LowWaterMinutes { get; private init; }

    public double HighWaterRatio { get; private init; } = 1;

    public double LowWaterRatio { get; private init; } = 1;
}
