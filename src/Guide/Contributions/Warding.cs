using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Photos;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>Verbs on hazard notes and closures. A report shows at once where it is severe; a closure is seen everywhere from its saving on.</summary>
public sealed class Warding(IDbContextFactory<GuideDb> database, NearMissTally tally, IClock clock)
{
    /// <summary>Reports by one member in a day; more is for the phone.</summary>
    public const int MostReportsADay = 30;

    /// <param name="make">Makes the note for the day it is at the place.</param>
    /// <param name="photo">Of the hazard; null: none.</param>
    public async Task<ReviewOutcome> ReportAsync(SignedIn member, string location, Guid formId, Func<Location, LocalDate, HazardNote> make, DevelopedPhoto? photo, CancellationToken cancel) =>
        await InAsync(member, Role.Member, location, async (db, place, now) =>
        {
            RequireNumber(formId);
            if (await db.HazardNotes.SingleOrDefaultAsync(n => n.FormId == formId, cancel) is { } sent)
                return SentBefore(sent.Stands, "ended or rejected", place);
            var since = now - Duration.FromDays(1);
            Require.That(await db.HazardNotes.CountAsync(n => n.ReportedBy == member.MemberId && n.ReportedAt > since, cancel) < MostReportsADay,
                $"{MostReportsADay} reports came from you since yesterday. Ring a warden about the rest.");
            var note = make(place, now.InZone(place.Zone).Date).By(formId, member.MemberId, now);
            if (photo is not null)
            {
                await Album.RequireRoomAsync(db, member.MemberId, 1, cancel);
                note.With(Photo.OfHazard(photo, member.MemberId, now));
            }
            place.Report(note);
            return ReviewOutcome.Done(place.Address());
        }, cancel);

    public async Task<ReviewOutcome> ConfirmAsync(SignedIn warden, int noteId, CancellationToken cancel) =>
        await OnNoteAsync(warden, noteId, Act.HazardConfirmed, (note, today) => note.Confirm(today), null, cancel);

    public async Task<ReviewOutcome> RejectAsync(SignedIn warden, int noteId, string? reason, CancellationToken cancel) =>
        await OnNoteAsync(warden, noteId, Act.HazardRejected, (note, _) => note.Reject(), reason, cancel, needsReason: true);

    public async Task<ReviewOutcome> EndAsync(SignedIn warden, int noteId, string? reason, CancellationToken cancel) =>
        await OnNoteAsync(warden, noteId, Act.HazardEnded, (note, today) => note.End(today), reason, cancel, needsReason: true);

    /// <summary>Puts a note's words right; its state stays.</summary>
    public async Task<ReviewOutcome> RewordAsync(SignedIn warden, int noteId, IReadOnlyDictionary<string, string> typed, CancellationToken cancel)
    {
        try
        {
            var answers = new Answers(typed);
            var (kind, severity, from, until) = (answers.Choice<HazardKind>("kind"), answers.Whole("severity"), answers.Date("from"), answers.Date("until"));
            return await OnNoteAsync(warden, noteId, Act.HazardReworded,
                (note, _) => note.Reword(kind ?? note.Kind, severity ?? note.Severity, typed.GetValueOrDefault("text", ""), from ?? note.From, until), null, cancel);
        }
        catch (AnswerException fault)
        {
            return new([], [fault.Fault]);
        }
    }

    /// <param name="make">Makes the closure for the day it is at the place.</param>
    public async Task<ReviewOutcome> CloseAsync(SignedIn warden, string location, Guid formId, Func<Location, LocalDate, Closure> make, CancellationToken cancel) =>
        await InAsync(warden, Role.Warden, location, async (db, place, now) =>
        {
            RequireNumber(formId);
            if (await db.Closures.SingleOrDefaultAsync(c => c.FormId == formId, cancel) is { } sent)
                return SentBefore(sent.CountsAsInForce, "lifted", place);
            var closure = place.Close(make(place, now.InZone(place.Zone).Date).Made(formId, warden.MemberId, now));
            db.Add(new AuditEntry(Act.Closed, now, warden.MemberId, null, $"{place.Name}: {closure.Reason}"));
            return ReviewOutcome.Done(place.Address());
        }, cancel);

    /// <summary>Closes the place until a warden has looked. The member's name goes nowhere; two a day each are taken.</summary>
    public Task<ReviewOutcome> NearMissAsync(SignedIn member, string location, Guid formId, Func<Location, LocalDate, Closure> make, CancellationToken cancel) =>
        NearMissAsync(member, location, formId, new NearMissTold(make, null), cancel);

    /// <summary>Closes the place, or leaves a note where nobody came to harm and no way was cut.</summary>
    public async Task<ReviewOutcome> NearMissAsync(SignedIn member, string location, Guid formId, NearMissTold told, CancellationToken cancel)
    {
        var isCounted = false;
        var outcome = await InAsync(member, Role.Member, location, async (db, place, now) =>
        {
            RequireNumber(formId);
            if (await db.Closures.SingleOrDefaultAsync(c => c.FormId == formId, cancel) is { } closed)
                return SentBefore(closed.CountsAsInForce, "lifted", place);
            if (await db.HazardNotes.SingleOrDefaultAsync(n => n.FormId == formId, cancel) is { } noted)
                return SentBefore(noted.Stands, "ended or rejected", place);
            var today = now.InZone(place.Zone).Date;
            // Its number is drawn, so it is told to be new; by its number alone it would be taken for one that is there.
            if (told.Closure is { } close)
                db.Add(place.Close(close(place, today)));
            else
                db.Add(place.Report(told.Note!(place, today)));
            Require.That(isCounted || tally.TryCount(member.MemberId), "Two near misses a day can be told here. Ring a warden, or the coastguard if anybody is in danger.");
            isCounted = true;
            return ReviewOutcome.Done(place.Address());
        }, cancel);
        if (isCounted && !outcome.IsDone)
            tally.TakeBack(member.MemberId);
        return outcome;
    }

    public async Task<ReviewOutcome> ConfirmClosureAsync(SignedIn warden, int closureId, CancellationToken cancel) =>
        await OnClosureAsync(warden, closureId, Act.ClosureConfirmed, (_, closure, _) =>
        {
            if (closure.State == ClosureState.LiftAsked) closure.KeepClosed();
            else closure.Confirm();
            return Task.FromResult<ReviewOutcome?>(null);
        }, null, cancel);

    /// <summary>
    /// Lifts a closure. With two wardens it takes two: the first asks, another lifts. The only warden there is may, with a reason, and it is logged so.
    /// </summary>
    public async Task<ReviewOutcome> LiftAsync(SignedIn warden, int closureId, string? reason, CancellationToken cancel) =>
        await OnClosureAsync(warden, closureId, Act.ClosureLifted, async (db, closure, now) =>
        {
            if (closure.State == ClosureState.LiftAsked && closure.LiftAskedBy != warden.MemberId)
            {
                closure.Lift(warden.MemberId, now);
                return null;
            }
            if (closure.State != ClosureState.LiftAsked && await Reviewing.WardensAsync(db, cancel) >= 2)
            {
                closure.AskToLift(warden.MemberId, Reason(reason));
                db.Add(new AuditEntry(Act.LiftAsked, now, warden.MemberId, null, closure.Reason));
                await db.SaveChangesAsync(cancel);
                return ReviewOutcome.Refused("You asked to lift it. Another warden has to do it; until then it stays closed.", "asked");
            }
            if (await Reviewing.RefusalAsync(db, reason, cancel) is { } refusal)
                return refusal;
            closure.Lift(warden.MemberId, now, isSingleHanded: true);
            return null;
        }, reason, cancel);

    private static void RequireNumber(Guid formId) => Require.That(formId != Guid.Empty, SheetPost.NoNumber);

    /// <summary>The same form again is done already, unless what it reported is over: that is said, for it may be so again.</summary>
    private static ReviewOutcome SentBefore(bool stands, string over, Location place) => stands ? ReviewOutcome.Done(place.Address())
        : ReviewOutcome.Refused($"You sent exactly this before, and it was {over} since. If it is so again, load the page again and send it anew.");

    private static string Reason(string? reason) => Require.Text(reason, 400, "The reason");

    private async Task<ReviewOutcome> OnNoteAsync(SignedIn warden, int noteId, Act act, Action<HazardNote, LocalDate> change, string? words, CancellationToken cancel, bool needsReason = false) =>
        await TryAsync(warden, Role.Warden, async (db, now) =>
        {
            if (needsReason)
                Reason(words);
            if (await db.HazardNotes.SingleOrDefaultAsync(n => n.Id == noteId, cancel) is not { } note)
                return ReviewOutcome.Refused("That note is not there any more. Load the page again.");
            var place = await db.Locations.SingleAsync(l => l.Id == note.LocationId, cancel);
            change(note, now.InZone(place.Zone).Date);
            note.Decided(warden.MemberId, now, words);
            if (note.State == HazardState.Rejected)
                db.RemoveRange(await db.Photos.Where(p => p.HazardNoteId == noteId).ToListAsync(cancel));
            db.Add(new AuditEntry(act, now, warden.MemberId, note.ReportedBy, $"{place.Name}: {note.Kind.Words()}"));
            return ReviewOutcome.Done(place.Address());
        }, cancel);

    private async Task<ReviewOutcome> OnClosureAsync(SignedIn warden, int closureId, Act act, Func<GuideDb, Closure, Instant, Task<ReviewOutcome?>> change, string? words, CancellationToken cancel) =>
        await TryAsync(warden, Role.Warden, async (db, now) =>
        {
            if (await db.Closures.SingleOrDefaultAsync(c => c.Id == closureId, cancel) is not { } closure)
                return ReviewOutcome.Refused("That closure is not there any more. Load the page again.");
            if (await change(db, closure, now) is { } refusal)
                return refusal;
            var place = await db.Locations.SingleAsync(l => l.Id == closure.LocationId, cancel);
            var alone = closure.IsLiftedSingleHanded ? ", single-handed" : "";
            db.Add(new AuditEntry(act, now, warden.MemberId, null, $"{place.Name}: {closure.Reason}{alone}{(string.IsNullOrWhiteSpace(words) ? "" : $" ({words})")}"));
            return ReviewOutcome.Done(place.Address());
        }, cancel);

    private async Task<ReviewOutcome> InAsync(SignedIn who, Role least, string location, Func<GuideDb, Location, Instant, Task<ReviewOutcome>> act, CancellationToken cancel) =>
        await TryAsync(who, least, async (db, now) =>
        {
            var place = await db.Locations.VisibleTo(who.Reader).Where(l => l.Slug == location)
                .Include(l => l.Grants).Include(l => l.VantagePoints).Include(l => l.Parking).Include(l => l.Routes).ThenInclude(r => r.Legs)
                .AsSplitQuery().SingleOrDefaultAsync(cancel);
            return place is null ? ReviewOutcome.Refused("That place is not in the guide.", "place") : await act(db, place, now);
        }, cancel);

    private async Task<ReviewOutcome> TryAsync(SignedIn who, Role least, Func<GuideDb, Instant, Task<ReviewOutcome>> act, CancellationToken cancel)
    {
        Require.That(who.Reader.Role >= least, least == Role.Warden ? "Only wardens do this." : "Sign in first.");
        const int Attempts = 3;
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await database.InTurnAsync(who.MemberId, async db =>
                {
                    var outcome = await act(db, clock.GetCurrentInstant());
                    if (outcome.IsDone)
                        await db.SaveChangesAsync(cancel);
                    return (outcome, true);
                }, cancel);
            }
            catch (NotAcceptedException refused)
            {
                return ReviewOutcome.Refused(refused.Message);
            }
            catch (DbUpdateException) when (attempt < Attempts)
            {
                // Two wardens at once: asked again, the verb sees what the other did and says so.
            }
            catch (DbUpdateException)
            {
                return ReviewOutcome.Refused("Somebody else changed this at the same moment; nothing was done twice. Load the page again to see it as it is now.");
            }
        }
    }
}
