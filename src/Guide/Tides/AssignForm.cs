using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Tides;

/// <summary>Which station a place goes by, and the place's own corrections, as typed; flat, so that it binds from a plain post.</summary>
public sealed class AssignForm
{
    public string? Place { get; set; }

    /// <summary>Chosen from those near.</summary>
    public string? Station { get; set; }

    /// <summary>Or named by id; overrides the choice.</summary>
    public string? Other { get; set; }

    public string? HighMinutes { get; set; }

    public string? LowMinutes { get; set; }

    public string? HighRatio { get; set; }

    public string? LowRatio { get; set; }

    public string? MeanSeaLevel { get; set; }

    /// <summary>Whoever chooses has read what speaks against it.</summary>
    public bool AllTheSame { get; set; }

    public static AssignForm Of(Location place) => new()
    {
        Place = place.Slug,
        Station = place.TideStationId,
        HighMinutes = place.TideCorrections?.HighWaterMinutes.ToString(CultureInfo.InvariantCulture),
        LowMinutes = place.TideCorrections?.LowWaterMinutes.ToString(CultureInfo.InvariantCulture),
        HighRatio = place.TideCorrections?.HighWaterRatio.ToString(CultureInfo.InvariantCulture),
        LowRatio = place.TideCorrections?.LowWaterRatio.ToString(CultureInfo.InvariantCulture),
        MeanSeaLevel = place.MeanSeaLevelAboveChartDatumMetres?.ToString(CultureInfo.InvariantCulture),
    };

    /// <summary>What was looked at on the page before: chosen is only what was seen with its levels.</summary>
    public string? Looked { get; set; }

    /// <summary>Why, for the wardens and the history.</summary>
    public string? Reason { get; set; }

    /// <summary>Of all that decides about the tide; the reason is no part of it.</summary>
    public string Stamp => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(
        string.Join('\u001f', Place, string.IsNullOrWhiteSpace(Other) ? Station : Other, HighMinutes, LowMinutes, HighRatio, LowRatio, MeanSeaLevel, AllTheSame))));

    public bool WasLookedAt => Looked == Stamp;

    /// <summary>The tide that the place would go by; the faults say what to mend. Nothing is saved here.</summary>
    public async Task<(PlaceTide? Tide, double? MeanSeaLevelMetres, IReadOnlyList<FieldFault> Faults)> ReadAsync(GuideDb db, Location? place, CancellationToken cancel)
    {
        List<FieldFault> faults = [];
        var corrections = Corrections(faults);
        var level = FormNumbers.Read(MeanSeaLevel, double.NaN, -2, 12, "mean-sea-level", "Mean sea level", faults);
        var id = (string.IsNullOrWhiteSpace(Other) ? Station : Other)?.Trim() ?? "";
        if (place is null)
            return (null, null, [new("place", "There is no such place any more. Choose one from the list.")]);
        if (id.Length == 0 || (await db.StationBySlugAsync(TideStation.SlugOf(id), cancel)).Tide is not { } found || found.Station.Id != id)
            return (null, null, [.. faults, new("other", id.Length == 0 ? "Choose a station, or name one by its id, like noaa/8410140." : $"There is no station \"{StationTable.Short(id)}\". Search for it by name and take its id from the list.")]);

        var warnings = NearStation.Of(found.Station.ToLine(), place.Position).Warnings;
        if (warnings.Count > 0 && !AllTheSame)
            faults.Add(new("all-the-same", $"{found.Station.Name}: {string.Join(' ', warnings)} Choose another, or tick that you want this one anyway."));
        if (faults.Count > 0)
            return (null, null, faults);
        try
        {
            var tide = PlaceTide.Of(found.Station, found.Reference, corrections);
            return (tide, double.IsNaN(level) ? tide.MeanSeaLevelMetres : level, []);
        }
        catch (TideInputException refused)
        {
            return (null, null, [new("station", refused.Message)]);
        }
    }

    /// <summary>Null where no field was filled in.</summary>
    private TideCorrections? Corrections(List<FieldFault> faults)
    {
        var high = (int)Math.Round(FormNumbers.Read(HighMinutes, 0, -360, 360, "high-minutes", "The correction of high water", faults));
        var low = (int)Math.Round(FormNumbers.Read(LowMinutes, 0, -360, 360, "low-minutes", "The correction of low water", faults));
        var highRatio = FormNumbers.Read(HighRatio, 1, 0.1, 10, "high-ratio", "The ratio of high-water heights", faults);
        var lowRatio = FormNumbers.Read(LowRatio, 1, 0.1, 10, "low-ratio", "The ratio of low-water heights", faults);
        return (high, low, highRatio, lowRatio) is (0, 0, 1, 1) ? null : new(high, low, highRatio, lowRatio);
    }
}
