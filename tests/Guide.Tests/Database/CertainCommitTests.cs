using System.Data.Common;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using NodaTime.Testing;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>A connection that breaks while a change is being committed: before it landed, and after it.</summary>
public class CertainCommitTests(GuideDatabase site) : IClassFixture<GuideDatabase>
{
    private static readonly NodaTime.Instant Now = GuideHost.UsualNow;

    [Theory]
    [InlineData(Break.BeforeItLanded)]
    [InlineData(Break.AfterItLanded)]
    public async Task What_is_added_is_there_once(Break moment)
    {
        var about = Guid.NewGuid();
        await using var db = Open(moment);
        var entry = new AuditEntry(Act.SignedOut, Now, by: null, about);
        db.Add(entry);
        await db.SaveChangesAsync();

        await using var fresh = site.Open();
        var kept = Assert.Single(await fresh.AuditEntries.Where(e => e.About == about).ToListAsync());
        Assert.Equal(kept.Id, entry.Id);
        Assert.Equal(EntityState.Unchanged, db.Entry(entry).State);
    }

    [Theory]
    [InlineData(Break.BeforeItLanded)]
    [InlineData(Break.AfterItLanded)]
    public async Task What_is_changed_is_no_conflict_with_itself(Break moment)
    {
        var member = new Member($"{Guid.NewGuid():N}@example.org", "Ina Ruiz", Role.Member, Now);
        await using (var before = site.Open())
        {
            before.Add(member);
            await before.SaveChangesAsync();
        }

        await using var db = Open(moment);
        var changed = await db.Members.Include(m => m.RecoveryCodes).SingleAsync(m => m.Id == member.Id);
        changed.CallThemselves("Ina of the Point");
        changed.MakeRecoveryCodes();
        await db.SaveChangesAsync();

        // The same context goes on: what it holds is what the database holds.
        changed.CallThemselves("Ina again");
        await db.SaveChangesAsync();
        await using var fresh = site.Open();
        var kept = await fresh.Members.Include(m => m.RecoveryCodes).SingleAsync(m => m.Id == member.Id);
        Assert.Equal(("Ina again", Member.RecoveryCodesGiven), (kept.Name, kept.RecoveryCodes.Count));
    }

    [Theory]
    [InlineData(Break.BeforeItLanded)]
    [InlineData(Break.AfterItLanded)]
    public async Task A_try_to_sign_in_counts_once(Break moment)
    {
        var limits = new SignInLimits(new Factory(() => Open(moment)), new FakeClock(Now));
        var account = $"{Guid.NewGuid():N}@example.org";
        Assert.Null(await limits.CountAsync(new SignInTry(account, "a machine", "a network"), CancellationToken.None));

        await using var fresh = site.Open();
        var subject = SignInFailure.HashOf($"account {account}");
        Assert.Equal(1, await fresh.Set<SignInFailure>().CountAsync(f => f.Subject == subject));
    }

    public enum Break { BeforeItLanded, AfterItLanded }

    private GuideDb Open(Break moment)
    {
        var options = new DbContextOptionsBuilder<GuideDb>();
        options.UseGuideDatabase(site.Database.AppConnection).AddInterceptors(new BreaksOnce(moment));
        return new GuideDb(options.Options);
    }

    private sealed class Factory(Func<GuideDb> open) : IDbContextFactory<GuideDb>
    {
        public GuideDb CreateDbContext() => open();
    }

    private sealed class BreaksOnce(Break moment) : DbTransactionInterceptor
    {
        private bool isDone;

        public override ValueTask<InterceptionResult> TransactionCommittingAsync(DbTransaction transaction, TransactionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
        {
            BreakIf(Break.BeforeItLanded);
            return new(result);
        }

        public override Task TransactionCommittedAsync(DbTransaction transaction, TransactionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            BreakIf(Break.AfterItLanded);
            return Task.CompletedTask;
        }

        private void BreakIf(Break now)
        {
            if (isDone || now != moment)
                return;
            isDone = true;
            throw new NpgsqlException("The connection broke.", new IOException());
        }
    }
}
