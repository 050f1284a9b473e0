using System.Globalization;
using Foreshore.Almanac.Earth;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Elevation;

/// <summary>A stored file without its heights.</summary>
public sealed record StoredElevation(int Id, string Name, Instant AddedAt, double NorthDegrees, double SouthDegrees, double WestDegrees, double EastDegrees,
    int Columns, int Rows, double LatitudeStepDegrees, double HighestMetres, int VoidCount, int Bytes)
{
    public string Extent => $"{Side(SouthDegrees, NorthDegrees, "north", "south")}, {Side(WestDegrees, EastDegrees, "east", "west")}";

    public string Fineness => string.Create(CultureInfo.InvariantCulture, $"{Columns:N0} × {Rows:N0}, {LatitudeStepDegrees * 3600:0.##}″ apart");

    public string Voids => VoidCount == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * VoidCount / ((double)Columns * Rows):0.##} %");

    /// <summary>For example "68° to 67° west", or "1° south to 2° north" over the zero.</summary>
    private static string Side(double first, double last, string positive, string negative) =>
        first >= 0 ? Words(first, last, "", positive) : last <= 0 ? Words(-first, -last, "", negative) : Words(-first, last, $" {negative}", positive);

    private static string Words(double first, double last, string between, string side) =>
        string.Create(CultureInfo.InvariantCulture, $"{first:0.##}°{between} to {last:0.##}° {side}");

    public string Size => string.Create(CultureInfo.InvariantCulture, $"{Bytes / 1048576.0:0.0} MB");
}

internal static class ElevationQueries
{
    public static Task<List<StoredElevation>> StoredElevationsAsync(this GuideDb db, CancellationToken cancel = default) =>
        db.ElevationFiles.OrderBy(f => f.Name)
            .Select(f => new StoredElevation(f.Id, f.Name, f.AddedAt, f.NorthDegrees, f.SouthDegrees, f.WestDegrees, f.EastDegrees, f.Columns, f.Rows,
                f.LatitudeStepDegrees, f.HighestMetres, f.VoidCount, f.Packed.Length))
            .ToListAsync(cancel);

    /// <summary>Stores a file, whole or not at all; one of the same name is replaced.</summary>
    public static async Task KeepAsync(this GuideDb db, ElevationFile file, CancellationToken cancel = default)
    {
        db.ElevationFiles.RemoveRange(await db.ElevationFiles.Where(f => f.Name == file.Name).ToListAsync(cancel));
        db.ElevationFiles.Add(file);
        // One transaction of its own: both or neither.
        await db.SaveChangesAsync(cancel);
    }

    /// <summary>Files within reach of a stance, at most <paramref name="most"/>, nearest first: each takes tens of megabytes while it is read.</summary>
    public static async Task<List<ElevationFile>> ElevationsAroundAsync(this GuideDb db, Position stance, double reachMetres, int most, CancellationToken cancel)
    {
        var up = reachMetres / 111_000;
        var across = up / Math.Max(0.05, Math.Cos(stance.LatitudeDegrees * Math.PI / 180));
        var (latitude, longitude) = (stance.LatitudeDegrees, stance.LongitudeDegrees);
        return await db.ElevationFiles.AsNoTracking()
            .Where(f => f.NorthDegrees > latitude - up && f.SouthDegrees < latitude + up
                && ((f.EastDegrees > longitude - across && f.WestDegrees < longitude + across)
                    || (f.EastDegrees - 360 > longitude - across && f.WestDegrees - 360 < longitude + across)
                    || (f.EastDegrees + 360 > longitude - across && f.WestDegrees + 360 < longitude + across)))
            .OrderBy(f => Math.Abs((f.NorthDegrees + f.SouthDegrees) / 2 - latitude) + Math.Abs((f.WestDegrees + f.EastDegrees) / 2 - longitude))
            .Take(most).ToListAsync(cancel);
    }

    public static Task<SkylineJob?> LatestSkylineJobAsync(this GuideDb db, int vantagePointId, CancellationToken cancel = default) =>
        db.SkylineJobs.AsNoTracking().Where(j => j.VantagePointId == vantagePointId).OrderByDescending(j => j.Id).FirstOrDefaultAsync(cancel);

    /// <summary>
    /// Adds a job and gives its id; null where one is open for the stance already. One statement, so that of two who ask in the
    /// same moment the second is answered like any second, and no fault stands in the log.
    /// </summary>
    public static async Task<int?> AddSkylineJobAsync(this GuideDb db, SkylineJob job, CancellationToken cancel = default) =>
        (await db.Database.SqlQuery<int>($"""
            INSERT INTO skyline_jobs (vantage_point_id, outside_is_sea, asked_at, state, percent_done)
            VALUES ({job.VantagePointId}, {job.OutsideIsSea}, {job.AskedAt}, {job.State.ToString()}, {job.PercentDone})
            ON CONFLICT (vantage_point_id) WHERE state IN ('Waiting', 'Running') DO NOTHING
            RETURNING id
            """).ToListAsync(cancel)) is [var id] ? id : null;
}
