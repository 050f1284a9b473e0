using Foreshore.Guide.Locations;
using Foreshore.Guide.Photos;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>
/// Ends an account for good: the row with name and address goes, and all that hung on it. What they wrote for the guide stays under a
/// number that then names nobody, as the log of acts does.
/// </summary>
public sealed class Erasure(IDbContextFactory<GuideDb> database, IClock clock, ErasureNotes notes)
{
    public async Task EraseAsync(SignedIn signedIn, bool isMeant, CancellationToken cancel)
    {
        Require.That(isMeant, "Tick the box to say that you mean it. Nothing can bring the account back.");
        Require.That(signedIn.IsFresh, "You signed in a while ago. Sign in again, then erase the account.");
        await using var db = await database.CreateDbContextAsync(cancel);
        var now = clock.GetCurrentInstant();
        await Roster.InLineAsync(db, async () =>
        {
            var member = await db.Members.SingleAsync(m => m.Id == signedIn.MemberId, cancel);
            await TakeAwayAsync(db, member, now, cancel);
            await db.SaveChangesAsync(cancel);
        }, cancel);
        notes.Add(signedIn.MemberId, now);
    }

    /// <summary>After a restore: those whom a backup still knew are erased again, as of the day it happened. How many there were.</summary>
    public static async Task<int> EraseNotedAsync(GuideDb db, IReadOnlyList<(Guid Member, Instant At)> noted, CancellationToken cancel)
    {
        var erased = 0;
        foreach (var (id, at) in noted.DistinctBy(note => note.Member))
        {
            if (await db.Members.SingleOrDefaultAsync(m => m.Id == id, cancel) is not { } member)
                continue;
            await TakeAwayAsync(db, member, at, cancel);
            await db.SaveChangesAsync(cancel);
            erased++;
        }
        return erased;
    }

    /// <summary>Those whom the log of acts tells to have erased their account.</summary>
    public static async Task<IReadOnlyList<(Guid Member, Instant At)>> KnownAsync(GuideDb db, CancellationToken cancel) =>
    [
        .. (await db.AuditEntries.Where(entry => entry.Act == Act.MemberErased && entry.By != null).OrderBy(entry => entry.Id).Select(entry => new { entry.By, entry.At }).ToListAsync(cancel))
            .Select(entry => (entry.By!.Value, entry.At)),
    ];

    private static async Task TakeAwayAsync(GuideDb db, Member member, Instant at, CancellationToken cancel)
    {
        await db.Set<LocationGrant>().Where(g => g.MemberId == member.Id).ExecuteDeleteAsync(cancel);
        await db.Invitations.Where(i => i.Email == member.Email).ExecuteUpdateAsync(i => i.SetProperty(one => one.Email, (string?)null), cancel);
        var tries = SignInFailure.HashOf($"account {member.Email}");
        await db.Set<SignInFailure>().Where(f => f.Subject == tries).ExecuteDeleteAsync(cancel);
        await Album.ForgetAsync(db, member.Id, cancel);
        db.Remove(member);
        db.Add(new AuditEntry(Act.MemberErased, at, member.Id));
    }
}
