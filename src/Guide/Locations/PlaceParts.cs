using System.Linq.Expressions;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>
/// The many small parts of places in one command whose rows add up. Joined in the usual way they would multiply each other: six
/// parking areas, ten rules and three letters make 180 rows of one place. Here each row is of one kind, and all other kinds
/// are null in it. The context's own fix-up hangs them onto the places.
/// </summary>
internal static class PlaceParts
{
    private const int Parking = 0, Overnight = 1, Letter = 2, Rating = 3, Note = 4, Closed = 5, StancePhoto = 6;

    private static readonly int[] OfStay = [Parking, Overnight, Letter], OfHazards = [Rating, Note, Closed], OfPhotos = [StancePhoto];

    /// <summary>
    /// Closures that count, or will: not lifted, and not past their last day. All places keep all they ever had, and pages would
    /// grow with the years.
    /// </summary>
    private static Expression<Func<Closure, bool>> Counts(LocalDate? since) =>
        closure => closure.State != ClosureState.Lifted && (since == null || closure.YearlyFrom != null || closure.Until == null || closure.Until >= since);

    /// <summary>Notes that show, or will: severe ones until ended or rejected, others once confirmed and until their last day.</summary>
    private static Expression<Func<HazardNote, bool>> Shows(LocalDate? since) => note =>
        (note.State == HazardState.Confirmed && (note.Severity == HazardNote.Severe || since == null || note.Until == null || note.Until >= since))
        || (note.State == HazardState.Reported && note.Severity == HazardNote.Severe);

    public static async Task LoadPartsAsync(this GuideDb db, int[] ids, Parts parts, LocalDate? since, CancellationToken cancel)
    {
        var (withHazards, withPhotos) = (parts.HasFlag(Parts.Hazards), parts.HasFlag(Parts.Photos));
        int[] kinds = [.. parts.HasFlag(Parts.Stay) ? OfStay : [], .. withHazards ? OfHazards : [], .. withPhotos ? OfPhotos : []];
        if (kinds.Length == 0)
            return;

        var photos = db.Photos.Where(photo => withPhotos);
        var rows =
            from place in db.Locations.Where(l => ids.Contains(l.Id))
            from kind in db.Database.SqlQuery<int>($"SELECT unnest({kinds}) AS \"Value\"")
            from area in db.Set<ParkingArea>().Where(each => each.LocationId == place.Id && kind == Parking).DefaultIfEmpty()
            from rule in db.Set<OvernightRule>().Where(each => each.LocationId == place.Id && kind == Overnight).DefaultIfEmpty()
            from letter in db.Set<PermissionLetter>().Where(each => each.LocationId == place.Id && kind == Letter).DefaultIfEmpty()
            from rating in db.Set<HazardRating>().Where(each => each.LocationId == place.Id && kind == Rating).DefaultIfEmpty()
            from note in db.HazardNotes.Where(Shows(since)).Where(each => each.LocationId == place.Id && kind == Note).DefaultIfEmpty()
            from closure in db.Closures.Where(Counts(since)).Where(each => each.LocationId == place.Id && kind == Closed).DefaultIfEmpty()
            from ofNote in photos.Where(each => each.HazardNoteId == note.Id).DefaultIfEmpty()
            from ofStance in photos.Where(each => kind == StancePhoto && db.Set<VantagePoint>().Any(v => v.LocationId == place.Id && v.Id == each.VantagePointId)).DefaultIfEmpty()
            orderby kind, area.Id, rule.Id, letter.Id, rating.Id, note.Id, closure.Id, ofStance.KeptAt, ofStance.Id
            select new { area, rule, letter, rating, note, closure, ofNote, ofStance };
        await rows.LoadAsync(cancel);
    }
}
