using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Photos;

internal static class PhotoQueries
{
    /// <summary>
    /// Whether this reader may look at the photo, and whether everybody who reads the guide may; null where they may not, or there is none.
    /// A sensitive place's photos are for those who see it exactly: a picture tells where it was taken.
    /// </summary>
    public static async Task<bool?> PhotoIsOpenAsync(this GuideDb db, Guid id, Reader reader, Instant now, CancellationToken cancel)
    {
        var found = await (
            from photo in db.Photos.AsNoTracking()
            where photo.Id == id
            from stance in db.VantagePoints.Where(v => v.Id == photo.VantagePointId).DefaultIfEmpty()
            from note in db.HazardNotes.Where(n => n.Id == photo.HazardNoteId).DefaultIfEmpty()
            select new { Photo = photo, Note = note, LocationId = stance != null ? stance.LocationId : note != null ? note.LocationId : (int?)null }).SingleOrDefaultAsync(cancel);
        if (found is null)
            return null;

        var place = found.LocationId is null ? null
            : await db.Locations.AsNoTracking().Include(l => l.Grants).VisibleTo(reader).SingleOrDefaultAsync(l => l.Id == found.LocationId, cancel);
        var isShown = place is not null && (found.Photo.State == PhotoState.Shown || found.Note?.ShowsOn(now.InZone(place.Zone).Date) == true);
        if (isShown && place!.MayBeSeenExactlyBy(reader))
            return place.Visibility == Visibility.Public;
        var isOwn = reader is { IsMember: true, MemberId: { } member } && found.Photo.MemberId == member;
        return isOwn || (reader.IsWarden && found.Photo.State != PhotoState.Kept) ? false : null;
    }

    public static Task<byte[]> PhotoBytesAsync(this GuideDb db, Guid id, bool isSmall, CancellationToken cancel) =>
        db.Set<PhotoFile>().Where(f => f.PhotoId == id).Select(f => isSmall ? f.Small : f.Full).SingleAsync(cancel);

    /// <summary>The names of those who took them, for members; visitors read none.</summary>
    public static async Task<IReadOnlyDictionary<Guid, string>> NamesOfAsync(this GuideDb db, IEnumerable<Photo> photos, Reader reader, CancellationToken cancel)
    {
        var ids = photos.Select(photo => photo.MemberId).OfType<Guid>().Distinct().ToList();
        return reader.IsMember && ids.Count > 0
            ? await db.Members.Where(m => ids.Contains(m.Id)).ToDictionaryAsync(m => m.Id, m => m.Name, cancel)
            : new Dictionary<Guid, string>();
    }
}
