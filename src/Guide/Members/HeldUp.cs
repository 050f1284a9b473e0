using System.Buffers.Binary;
using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Tries to sign in as somebody that failed, as their owner is told of them.</summary>
public sealed record RefusedTries(int Count, Instant Latest);

/// <summary>
/// Somebody tries for an account more often than is let through: its owner is told, once a day, by mail where there is a server and on the
/// account's page in any case.
/// </summary>
public sealed class HeldUp(IDbContextFactory<GuideDb> database, IClock clock, Letters letters)
{
    /// <summary>How far back the account's page looks.</summary>
    public static readonly Duration Shown = Duration.FromDays(30);
    private static readonly Duration Quiet = Duration.FromDays(1);

    public async Task TellAsync(Expression<Func<Member, bool>> whose, CancellationToken cancel)
    {
        var now = clock.GetCurrentInstant();
        var since = now - Quiet;
        await using var db = await database.CreateDbContextAsync(cancel);
        var told = await db.OnceAsync(async () =>
        {
            db.ChangeTracker.Clear();
            if (await db.Members.Where(m => m.RemovedAt == null).SingleOrDefaultAsync(whose, cancel) is not { } member)
                return null;
            // Tries that come at once tell once.
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({BinaryPrimitives.ReadInt64BigEndian(SignInFailure.HashOf($"told {member.Id}"))})", cancel);
            if (await db.AuditEntries.AnyAsync(e => e.About == member.Id && e.Act == Act.SignInHeldUp && e.At > since && e.At <= now, cancel))
                return null;
            db.Add(new AuditEntry(Act.SignInHeldUp, now, by: null, member.Id));
            await db.SaveChangesAsync(cancel);
            return member;
        }, member => member is not null, cancel);
        // The answer does not wait for the mail: how long it takes would tell that somebody has this address.
        if (told is not null)
            _ = Task.Run(() => letters.HeldUpAsync(told.Email, CancellationToken.None), CancellationToken.None);
    }

    /// <summary>For the account's page; null where there were none.</summary>
    public async Task<RefusedTries?> OfAsync(Guid memberId, CancellationToken cancel)
    {
        var since = clock.GetCurrentInstant() - Shown;
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.AuditEntries.Where(e => e.About == memberId && e.Act == Act.SignInRefused && e.At > since)
            .GroupBy(e => e.About).Select(group => new RefusedTries(group.Count(), group.Max(e => e.At))).SingleOrDefaultAsync(cancel);
    }
}
