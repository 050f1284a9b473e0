using System.Linq.Expressions;
using System.Net;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>What came of a try: somebody, or nobody; with a wait where there were too many tries.</summary>
public sealed record SignInAnswer(Member? Member, Duration? Wait = null)
{
    public static readonly SignInAnswer Refused = new(Member: null);
}

/// <summary>
/// Whether somebody is who they say. A known and an unknown address take the same path: the same counts, one verification of a hash,
/// one line in the log, the same answer.
/// </summary>
public sealed class SignIns(IDbContextFactory<GuideDb> database, IClock clock, Passwords passwords, SignInLimits limits, AuthenticatorSeal seal, HeldUp heldUp)
{
    public async Task<SignInAnswer> ByPasswordAsync(string? email, string? password, IPAddress? from, KnownDevice? device, CancellationToken cancel)
    {
        var account = Member.Folded(email) is { Length: <= Member.LongestEmail } folded ? folded : "";
        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await db.Members.Include(m => m.Passkeys).SingleOrDefaultAsync(m => m.Email == account, cancel);
        var tried = SignInTry.Of(from, account, device?.MemberId == member?.Id ? device?.Device : null);
        if (await WaitAsync(tried, m => m.Email == account, cancel) is { } wait)
            return new(null, wait);

        var (fits, newHash) = passwords.Verify(member, password);
        if (!fits || member is null || member.IsRemoved)
        {
            db.Add(new AuditEntry(Act.SignInRefused, clock.GetCurrentInstant(), by: null, member?.Id, "password"));
            await db.SaveChangesAsync(cancel);
            return SignInAnswer.Refused;
        }

        if (newHash is not null)
            member.KeepPassword(newHash);
        await db.SaveChangesAsync(cancel);
        await limits.ForgetAsync(tried, cancel);
        return new(member);
    }

    /// <summary>The second step: figures of the authenticator, or one of the codes on paper. Each is spent by it.</summary>
    public async Task<(SignInAnswer Answer, string Way)> ByCodeAsync(Guid memberId, string? code, IPAddress? from, KnownDevice? device, CancellationToken cancel)
    {
        var tried = SignInTry.Of(from, $"second step of {memberId}", device?.MemberId == memberId ? device.Device : null);
        if (await WaitAsync(tried, m => m.Id == memberId, cancel) is { } wait)
            return (new(null, wait), "");

        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await db.Members.Include(m => m.RecoveryCodes).SingleOrDefaultAsync(m => m.Id == memberId && m.RemovedAt == null, cancel);
        var now = clock.GetCurrentInstant();
        var way = member?.SpendCode(seal, code, now) == true ? "password and code" : member?.SpendRecoveryCode(code) == true ? "password and recovery code" : null;
        if (member is null || way is null)
        {
            db.Add(new AuditEntry(Act.SignInRefused, now, by: null, memberId, "second step"));
            await db.SaveChangesAsync(cancel);
            return (SignInAnswer.Refused, "");
        }

        if (way.EndsWith("recovery code", StringComparison.Ordinal))
            db.Add(new AuditEntry(Act.RecoveryCodeUsed, now, member.Id));
        try
        {
            await db.SaveChangesAsync(cancel);
        }
        catch (DbUpdateConcurrencyException)
        {
            // The same code was sent twice at once: the other one had it.
            return (SignInAnswer.Refused, "");
        }

        await limits.ForgetAsync(tried, cancel);
        return (new(member), way);
    }

    private async Task<Duration?> WaitAsync(SignInTry tried, Expression<Func<Member, bool>> whose, CancellationToken cancel)
    {
        var wait = await limits.CountAsync(tried, cancel);
        if (wait is { IsOfAccount: true })
            await heldUp.TellAsync(whose, cancel);
        return wait?.Time;
    }
}
