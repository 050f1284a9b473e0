using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Links that give an account back to its owner: made by an admin, used once. Whatever is wrong with one, the answer is the same nothing.</summary>
public sealed class NewStarts(IDbContextFactory<GuideDb> database, IClock clock, Passwords passwords)
{
    public static string PathOf(string token) => $"/new-start/{token}";

    /// <summary>The latest link alone works.</summary>
    public async Task<string> MakeAsync(SignedIn admin, Guid memberId, CancellationToken cancel)
    {
        Roster.RequireFresh(admin);
        await using var db = await database.CreateDbContextAsync(cancel);
        Require.That(await db.Members.AnyAsync(m => m.Id == memberId && m.RemovedAt == null, cancel), "A new start is for somebody who belongs to the club. Take them back first.");
        await db.NewStarts.Where(s => s.MemberId == memberId && s.UsedAt == null).ExecuteDeleteAsync(cancel);
        var (start, token) = NewStart.Make(memberId, admin.MemberId, clock.GetCurrentInstant());
        db.Add(start);
        db.Add(new AuditEntry(Act.NewStartMade, start.MadeAt, admin.MemberId, memberId));
        await db.SaveChangesAsync(cancel);
        return token;
    }

    /// <summary>Whose account the link opens, while it can be used.</summary>
    public async Task<Member?> FindAsync(string token, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await OpenAsync(db, token, cancel) is { } open ? open.Member : null;
    }

    /// <summary>A new password in place of all that opened the account before. False where the link cannot be used any more.</summary>
    public async Task<bool> UseAsync(string token, string password, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await OpenAsync(db, token, cancel) is not var (start, member))
            return false;

        var now = clock.GetCurrentInstant();
        start.Use(now);
        member.StartAnew(passwords.Hash(member, password));
        db.RemoveRange(db.MemberSessions.Where(s => s.MemberId == member.Id));
        db.Add(new AuditEntry(Act.NewStartUsed, now, member.Id, start.MadeBy));
        try
        {
            await db.SaveChangesAsync(cancel);
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            // Two sent the same link at once; one password came of it.
            return false;
        }
    }

    private async Task<(NewStart Start, Member Member)?> OpenAsync(GuideDb db, string token, CancellationToken cancel)
    {
        var hash = LinkSecret.HashOf(token);
        var found = await db.NewStarts.SingleOrDefaultAsync(s => s.TokenHash == hash, cancel);
        if (found?.IsOpenAt(clock.GetCurrentInstant()) != true)
            return null;

        var member = await db.Members.Include(m => m.Passkeys).Include(m => m.RecoveryCodes).AsSplitQuery().SingleAsync(m => m.Id == found.MemberId, cancel);
        return member.IsRemoved ? null : (found, member);
    }
}
