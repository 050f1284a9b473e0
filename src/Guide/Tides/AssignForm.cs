using System.Globalization;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Tides;

/// <summary>Which station a place goes by, and the place's own corrections, as typed; flat, so that it binds from a plain post.</summary>
public sealed class AssignForm
{
    public string? Place { get; set; }

    /// <summary>Chosen from those near.</summary>
    public string? Station { get; set; }

    /// <summary>Or named by id; goes before the choice.</summary>
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

    /// <summary>Lets the place go by the station and saves it; the faults say what to mend, and then nothing was saved.</summary>
    public async Task<IReadOnlyList<FieldFault>> AssignAsync(IDbContextFactory<GuideDb> database, CancellationToken cancel)
    {
        List<FieldFault> faults = [];
        var corrections = Corrections(faults);
        var level = FormNumbers.Read(MeanSeaLevel, double.NaN, -2, 12, "mean-sea-level", "Mean sea level", faults);
        var id = (string.IsNullOrWhiteSpace(Other) ? Station : Other)?.Trim() ?? "";
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.Locations.SingleOrDefaultAsync(one => one.Slug == Place, cancel) is not { } place)
            return [new("place", "There is no such place any more. Choose one from the list.")];
        var slug = TideStation.SlugOf(id);
        if (id.Length == 0 || (await db.StationBySlugAsync(slug, cancel)).Tide is not { } tide)
            return [.. faults, new("other", id.Length == 0 ? "Choose a station, or name one by its id, like noaa/8410140." : $"There is no station \"{StationTable.Short(id)}\". Search for it by name and take its id from the list.")];

        var warnings = NearStation.Of(tide.Station.ToLine(), place.Position).Warnings;
        if (warnings.Count > 0 && !AllTheSame)
            faults.Add(new("all-the-same", $"{tide.Station.Name}: {string.Join(' ', warnings)} Choose another, or say that it is meant all the same."));
        if (faults.Count > 0)
            return faults;

        try
        {
            var ownLevel = PlaceTide.Of(tide.Station, tide.Reference, corrections).MeanSeaLevelMetres;
            place.JudgeTideBy(tide.Station.Id, double.IsNaN(level) ? ownLevel : level, corrections);
            await db.SaveChangesAsync(cancel);
            return [];
        }
        catch (NotAcceptedException refused)
        {
            return [new("station", refused.Message)];
        }
        catch (DbUpdateConcurrencyException)
        {
            return [new("place", "Somebody else changed this place meanwhile. Load the page again and look at what it goes by now.")];
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
