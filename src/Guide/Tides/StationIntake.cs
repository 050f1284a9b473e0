using Foreshore.Almanac.Tides;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;

namespace Foreshore.Guide.Tides;

/// <summary>What a posted station came to: stored, to be looked at, or to be mended.</summary>
/// <param name="Faults">What is to be mended; nothing was stored while there is one.</param>
/// <param name="Preview">How it would be, to be looked at.</param>
/// <param name="IsStored">It was stored.</param>
internal sealed record StationOutcome(IReadOnlyList<FieldFault> Faults, StationPreview? Preview = null, bool IsStored = false)
{
    public static readonly StationOutcome Nothing = new([]);
}

/// <summary>From posted forms to stored stations and to places that go by them.</summary>
internal static class StationIntake
{
    /// <summary>
    /// Looks at the posted station; stores it when that is asked for, nothing is to be mended, and it is what was looked at before.
    /// </summary>
    public static async Task<StationOutcome> TakeAsync(IDbContextFactory<GuideDb> database, HttpContext http, AddStationForm form, Instant now)
    {
        form.TakeRows(form.Rows);
        if (form.Then == AddStationForm.Change)
            return StationOutcome.Nothing;
        if (await ReadFileAsync(http, form) is { } unreadable)
            return new([unreadable]);
        var (station, faults) = form.Read();
        if (station is null)
            return new(faults);

        PlaceTide tide;
        try
        {
            tide = PlaceTide.Of(station, null, null);
        }
        catch (TideInputException refused)
        {
            return new([new("rows", refused.Message)]);
        }

        await using var db = await database.CreateDbContextAsync(http.RequestAborted);
        if (await db.TideStations.AnyAsync(other => other.Id == station.Id, http.RequestAborted))
            return new([Taken(station)]);
        if (form.Then == AddStationForm.Keep && form.WasLookedAt)
            return await KeepAsync(db, station, new AuditEntry(Act.StationAdded, now, http.SignedIn()?.MemberId, words: $"{station.Id} {station.Name}"), http.RequestAborted) is { } taken ? new([taken]) : new([], IsStored: true);
        return new([], await StationPreview.OfAsync(db, tide, DateTimeZoneProviders.Tzdb[form.Zone!.Trim()], now, http.RequestAborted));
    }

    /// <summary>Removes a station of the club's, unless a place goes by it; the words say what happened where it was not removed.</summary>
    public static async Task<string?> RemoveAsync(IDbContextFactory<GuideDb> database, SignedIn admin, string id, Instant now, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var places = await db.Locations.Where(place => place.TideStationId == id).OrderBy(place => place.Name).Select(place => place.Name).ToListAsync(cancel);
        if (places.Count > 0)
            return $"{id} was not removed: {string.Join(", ", places)} go by it. Give them another station first.";
        if (await db.TideStations.SingleOrDefaultAsync(station => station.Id == id && station.CatalogueEdition == null, cancel) is not { } own)
            return null;
        db.Remove(own);
        db.Add(new AuditEntry(Act.StationRemoved, now, admin.MemberId, words: $"{own.Id} {own.Name}"));
        await db.SaveChangesAsync(cancel);
        return null;
    }

    private static async Task<FieldFault?> ReadFileAsync(HttpContext http, AddStationForm form)
    {
        var posted = await http.Request.ReadFormAsync(http.RequestAborted);
        if (posted.Files.GetFile("file") is not { FileName.Length: > 0 } file)
            return null;
        if (file.Length > StationTable.MostBytes)
            return new("file", StationTable.Decode(new byte[StationTable.MostBytes + 1]).Fault!);
        var bytes = new byte[file.Length];
        await using (var stream = file.OpenReadStream())
            await stream.ReadExactlyAsync(bytes, http.RequestAborted);
        var (text, fault) = StationTable.Decode(bytes);
        form.TakeRows(text ?? form.Rows);
        return fault is null ? null : new("file", fault);
    }

    private static async Task<FieldFault?> KeepAsync(GuideDb db, TideStation station, AuditEntry entry, CancellationToken cancel)
    {
        db.Add(entry);
        db.TideStations.Add(station);
        try
        {
            await db.SaveChangesAsync(cancel);
            return null;
        }
        catch (DbUpdateException twice) when (twice.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            return Taken(station);
        }
    }

    private static FieldFault Taken(TideStation station) =>
        new("id", $"There is a station {station.Id} already. Take another short name, or remove that one first.");
}
