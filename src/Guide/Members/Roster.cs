using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>What the admins' page shows: who belongs, who is invited, what was done.</summary>
public sealed record RosterView(IReadOnlyList<Member> Members, IReadOnlyList<Invitation> Invitations, bool VisitorsMayRead);

/// <summary>One of them, with the latest lines of the log they stand in.</summary>
public sealed record MemberView(Member Member, IReadOnlyList<AuditLine> Lines);

/// <summary>A line of the log with the names of today; an erased account has none.</summary>
public sealed record AuditLine(Instant At, Act Act, string? By, string? About, string Words);

/// <summary>Verbs of admins on other people's accounts. Each asks for a fresh sign-in and leaves a line in the log.</summary>
public sealed class Roster(IDbContextFactory<GuideDb> database, IClock clock)
{
    /// <summary>Any number will do that nothing else in the database takes for its own.</summary>
    private const long AdminsLine = 0x666F726573686F72;

    private const string LastAdmin = "The club keeps one admin at least. Make somebody else an admin first.";
    private const int LatestLines = 20;

    public async Task<RosterView> ViewAsync(CancellationToken cancel)
    {
        var now = clock.GetCurrentInstant();
        await using var db = await database.CreateDbContextAsync(cancel);
        return new(
            await db.Members.AsNoTracking().Include(m => m.Passkeys).OrderBy(m => m.RemovedAt != null).ThenBy(m => m.Name).ToListAsync(cancel),
            await db.Invitations.AsNoTracking().Where(i => i.UsedAt == null && i.RevokedAt == null && i.ExpiresAt > now).OrderBy(i => i.ExpiresAt).ToListAsync(cancel),
            await db.ClubSettings.Select(s => (bool?)s.VisitorsMayRead).SingleOrDefaultAsync(cancel) ?? true);
    }

    public async Task<MemberView?> OneAsync(Guid memberId, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.Members.AsNoTracking().Include(m => m.Passkeys).SingleOrDefaultAsync(m => m.Id == memberId, cancel) is { } member
            ? new(member, await Lines(db, db.AuditEntries.Where(e => e.By == memberId || e.About == memberId), LatestLines).ToListAsync(cancel))
            : null;
    }

    public async Task<IReadOnlyList<AuditLine>> LogAsync(int most, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await Lines(db, db.AuditEntries, most).ToListAsync(cancel);
    }

    private static IQueryable<AuditLine> Lines(GuideDb db, IQueryable<AuditEntry> entries, int most) => entries.OrderByDescending(e => e.Id).Take(most)
        .Select(e => new AuditLine(e.At, e.Act, db.Members.Where(m => m.Id == e.By).Select(m => m.Name).FirstOrDefault(),
            db.Members.Where(m => m.Id == e.About).Select(m => m.Name).FirstOrDefault(), e.Words));

    public Task GiveRoleAsync(SignedIn admin, Guid memberId, Role role, CancellationToken cancel) => ChangeAsync(admin, memberId, (db, member, now) =>
    {
        var former = member.Role;
        member.GiveRole(role);
        db.Add(new AuditEntry(Act.RoleChanged, now, admin.MemberId, member.Id, $"{former} to {role}"));
    }, cancel);

    public Task LetBelongAsync(SignedIn admin, Guid memberId, bool belongs, CancellationToken cancel) =>
        belongs ? TakeBackAsync(admin, memberId, cancel) : RemoveAsync(admin, memberId, cancel);

    /// <summary>Out at their next request: their sessions go with it.</summary>
    private Task RemoveAsync(SignedIn admin, Guid memberId, CancellationToken cancel) => ChangeAsync(admin, memberId, (db, member, now) =>
    {
        member.Remove(now);
        db.RemoveRange(db.MemberSessions.Where(s => s.MemberId == memberId));
        db.Add(new AuditEntry(Act.MemberRemoved, now, admin.MemberId, member.Id));
    }, cancel);

    private Task TakeBackAsync(SignedIn admin, Guid memberId, CancellationToken cancel) => ChangeAsync(admin, memberId, (db, member, now) =>
    {
        member.TakeBack();
        db.Add(new AuditEntry(Act.MemberTakenBack, now, admin.MemberId, member.Id));
    }, cancel);

    public async Task RevokeAsync(SignedIn admin, Guid invitationId, CancellationToken cancel)
    {
        RequireFresh(admin);
        await using var db = await database.CreateDbContextAsync(cancel);
        var now = clock.GetCurrentInstant();
        (await db.Invitations.SingleOrDefaultAsync(i => i.Id == invitationId, cancel) ?? throw new NotAcceptedException("That invitation is not there any more. Load the page again.")).Revoke(now);
        db.Add(new AuditEntry(Act.InvitationRevoked, now, admin.MemberId));
        await db.SaveChangesAsync(cancel);
    }

    /// <summary>Signs out one member, or (null) everybody but the admin who asks: after a cookie was stolen, or a device lost.</summary>
    public async Task EndSessionsAsync(SignedIn admin, Guid? memberId, CancellationToken cancel)
    {
        RequireFresh(admin);
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.OnceAsync(async () =>
        {
            db.ChangeTracker.Clear();
            await db.MemberSessions.Where(s => s.Id != admin.SessionId && (memberId == null || s.MemberId == memberId)).ExecuteDeleteAsync(cancel);
            db.Add(new AuditEntry(Act.SessionEnded, clock.GetCurrentInstant(), admin.MemberId, memberId, memberId is null ? "everybody's" : "all of theirs"));
            await db.SaveChangesAsync(cancel);
        }, cancel);
    }

    public async Task LetVisitorsReadAsync(SignedIn admin, bool may, CancellationToken cancel)
    {
        RequireFresh(admin);
        await using var db = await database.CreateDbContextAsync(cancel);
        (await db.ClubSettings.SingleOrDefaultAsync(cancel) ?? throw new NotAcceptedException("The club has no settings yet. Load or enter a guide first.")).LetVisitorsRead(may);
        db.Add(new AuditEntry(Act.VisitorsSetting, clock.GetCurrentInstant(), admin.MemberId, words: may ? "visitors may read" : "members alone"));
        await db.SaveChangesAsync(cancel);
    }

    public static void RequireFresh(SignedIn admin) => Require.That(admin.IsFresh, "You signed in more than half an hour ago. Sign in again, then do this.");

    private async Task ChangeAsync(SignedIn admin, Guid memberId, Action<GuideDb, Member, Instant> change, CancellationToken cancel)
    {
        RequireFresh(admin);
        await using var db = await database.CreateDbContextAsync(cancel);
        await InLineAsync(db, async () =>
        {
            var member = await db.Members.SingleOrDefaultAsync(m => m.Id == memberId, cancel) ?? throw new NotAcceptedException("That member is not there any more. Load the page again.");
            change(db, member, clock.GetCurrentInstant());
            await db.SaveChangesAsync(cancel);
        }, cancel);
    }

    /// <summary>Whatever may take away an admin, one at a time: two who remove each other stand in line, so that one of them stays.</summary>
    internal static Task InLineAsync(GuideDb db, Func<Task> change, CancellationToken cancel) => db.OnceAsync(async () =>
    {
        db.ChangeTracker.Clear();
        await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({AdminsLine})", cancel);
        var hadAdmin = await HasAdminAsync(db, cancel);
        await change();
        Require.That(!hadAdmin || await HasAdminAsync(db, cancel), LastAdmin);
    }, cancel);

    private static Task<bool> HasAdminAsync(GuideDb db, CancellationToken cancel) => db.Members.AnyAsync(m => m.Role == Role.Admin && m.RemovedAt == null, cancel);
}
