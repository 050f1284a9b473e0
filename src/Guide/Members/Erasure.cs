using Foreshore.Guide.Locations;
using Foreshore.Guide.Photos;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>
/// Ends an account for good: the row with name and address goes, and all that hung on it. What they wrote for the guide stays under a
/// number that then names nobody, as the log of acts does.
/// </summary>
public sealed class Erasure(IDbContextFactory<GuideDb> database, IClock clock, SignInLimits limits)
{
    public async Task EraseAsync(SignedIn signedIn, bool isMeant, CancellationToken cancel)
    {
        Require.That(isMeant, "Tick the box to say that you mean it. Nothing can bring the account back.");
        Require.That(signedIn.IsFresh, "You signed in a while ago. Sign in again, then erase the account.");
        await using var db = await database.CreateDbContextAsync(cancel);
        await Roster.InLineAsync(db, async () =>
        {
            var member = await db.Members.SingleAsync(m => m.Id == signedIn.MemberId, cancel);
            await db.Set<LocationGrant>().Where(g => g.MemberId == member.Id).ExecuteDeleteAsync(cancel);
            await db.Invitations.Where(i => i.Email == member.Email).ExecuteUpdateAsync(i => i.SetProperty(one => one.Email, (string?)null), cancel);
            await Album.ForgetAsync(db, member.Id, cancel);
            db.Remove(member);
            db.Add(new AuditEntry(Act.MemberErased, clock.GetCurrentInstant(), member.Id));
            await db.SaveChangesAsync(cancel);
        }, cancel);
        await limits.ForgetAsync(signedIn.Email, cancel);
    }
}
