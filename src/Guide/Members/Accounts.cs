using Foreshore.Guide.Locations;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>A member's own account. What guards it is changed only soon after signing in, and then every other session ends.</summary>
public sealed class Accounts(IDbContextFactory<GuideDb> database, IClock clock, Passwords passwords, SignInLimits limits, AuthenticatorSeal seal)
{
    public const string WrongPassword = "This is not the password you sign in with now. Type it again.";

    public async Task<Member> OfAsync(SignedIn signedIn, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await MemberAsync(db, signedIn, cancel);
    }

    public async Task RenameAsync(SignedIn signedIn, string? name, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        (await MemberAsync(db, signedIn, cancel)).CallThemselves(name ?? "");
        await db.SaveChangesAsync(cancel);
    }

    public async Task ChangePasswordAsync(SignedIn signedIn, string? current, string? wanted, string? clubName, CancellationToken cancel)
    {
        var (account, session) = ($"password of {signedIn.MemberId}", $"session {signedIn.SessionId}");
        var tried = new SignInTry(account, Machine: session, Network: session);
        Require.That(await limits.CountAsync(tried, cancel) is null, "Too many wrong tries. Wait a quarter of an hour, then try again.");
        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await MemberAsync(db, signedIn, cancel);
        Require.That(passwords.Verify(member, current).Fits, WrongPassword);
        var fault = Passwords.Fault(wanted, member.Email, member.Name, clubName);
        Require.That(fault is null, fault ?? "");

        member.KeepPassword(passwords.Hash(member, wanted!));
        await SaveGuardAsync(db, signedIn, Act.PasswordChanged, cancel);
        await limits.ForgetAsync(tried, cancel);
    }

    /// <summary>False where the code does not show that the app holds the secret.</summary>
    public async Task<bool> SetUpAuthenticatorAsync(SignedIn signedIn, byte[] key, string? code, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await MemberAsync(db, signedIn, cancel);
        RequireMayGuard(signedIn, member);
        if (!member.SetUpAuthenticator(seal, key, code, clock.GetCurrentInstant()))
            return false;

        await AddFactorAsync(db, signedIn, "authenticator set up", cancel);
        await SaveGuardAsync(db, signedIn, Act.SecondStepSetUp, cancel);
        return true;
    }

    public async Task DropAuthenticatorAsync(SignedIn signedIn, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await MemberAsync(db, signedIn, cancel);
        RequireMayGuard(signedIn, member);
        Require.That(!member.NeedsTwoFactors || member.Passkeys.Count > 0, "Wardens and admins keep a second step. Add a passkey first, then take the authenticator away.");
        member.DropAuthenticator();
        await SaveGuardAsync(db, signedIn, Act.SecondStepDropped, cancel);
    }

    public async Task<IReadOnlyList<string>> MakeRecoveryCodesAsync(SignedIn signedIn, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await MemberAsync(db, signedIn, cancel);
        RequireMayGuard(signedIn, member);
        var shown = member.MakeRecoveryCodes();
        await SaveGuardAsync(db, signedIn, Act.RecoveryCodesMade, cancel);
        return shown;
    }

    public async Task AddPasskeyAsync(SignedIn signedIn, UserPasskeyInfo made, string? name, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await MemberAsync(db, signedIn, cancel);
        RequireMayGuard(signedIn, member);
        member.AddPasskey(MemberPasskey.Of(made, string.IsNullOrWhiteSpace(name) ? "Passkey" : name, clock.GetCurrentInstant()));
        await AddFactorAsync(db, signedIn, "passkey added", cancel);
        await SaveGuardAsync(db, signedIn, Act.PasskeyAdded, cancel);
    }

    public async Task RemovePasskeyAsync(SignedIn signedIn, Guid passkey, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var member = await MemberAsync(db, signedIn, cancel);
        RequireMayGuard(signedIn, member);
        Require.That(!member.NeedsTwoFactors || member.HasSecondStep || member.Passkeys.Count > 1, "Wardens and admins keep a second step. Set up an authenticator first, then take this passkey away.");
        if (member.RemovePasskey(passkey))
            await SaveGuardAsync(db, signedIn, Act.PasskeyRemoved, cancel);
    }

    public async Task<IReadOnlyList<MemberSession>> SessionsAsync(SignedIn signedIn, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.MemberSessions.AsNoTracking().Where(s => s.MemberId == signedIn.MemberId).OrderByDescending(s => s.SeenAt).ToListAsync(cancel);
    }

    /// <summary>One session of their own, or all but the one that asks.</summary>
    public async Task EndSessionsAsync(SignedIn signedIn, Guid? only, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.MemberSessions.Where(s => s.MemberId == signedIn.MemberId && s.Id != signedIn.SessionId && (only == null || s.Id == only)).ExecuteDeleteAsync(cancel);
        db.Add(new AuditEntry(Act.SessionEnded, clock.GetCurrentInstant(), signedIn.MemberId));
        await db.SaveChangesAsync(cancel);
    }

    private static void RequireMayGuard(SignedIn signedIn, Member member)
    {
        Require.That(signedIn.IsFresh, "You signed in a while ago. Sign in again, then change this.");
        Require.That(signedIn.Factors == 2 || !(member.HasSecondStep || (member.NeedsTwoFactors && member.Passkeys.Count > 0)),
            "Your account has a second step already. Sign out, sign in with it, then change this.");
    }

    private static async Task<Member> MemberAsync(GuideDb db, SignedIn signedIn, CancellationToken cancel) =>
        await db.Members.Include(m => m.Passkeys).Include(m => m.RecoveryCodes).AsSplitQuery().SingleAsync(m => m.Id == signedIn.MemberId, cancel);

    private static async Task AddFactorAsync(GuideDb db, SignedIn signedIn, string way, CancellationToken cancel) =>
        (await db.MemberSessions.SingleOrDefaultAsync(s => s.Id == signedIn.SessionId && s.Factors == 1, cancel))?.AddFactor(way);

    private async Task SaveGuardAsync(GuideDb db, SignedIn signedIn, Act act, CancellationToken cancel)
    {
        db.Add(new AuditEntry(act, clock.GetCurrentInstant(), signedIn.MemberId));
        await db.SaveChangesAsync(cancel);
        await db.MemberSessions.Where(s => s.MemberId == signedIn.MemberId && s.Id != signedIn.SessionId).ExecuteDeleteAsync(cancel);
    }
}
