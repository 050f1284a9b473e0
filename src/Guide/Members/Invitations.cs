using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Links that make accounts: made, looked at, used. Whatever is wrong with one, the answer is the same nothing.</summary>
public sealed class Invitations(IDbContextFactory<GuideDb> database, IClock clock, Passwords passwords)
{
    public static readonly Duration Usual = Duration.FromDays(7);

    /// <summary>A printed link scrolls away and stays in a log: a day is enough to sit down and use it.</summary>
    public static readonly Duration Printed = Duration.FromDays(1);

    public static string PathOf(string token) => $"/invitation/{token}";

    /// <summary>The link for the first admin, a fresh one each time and the former ones withdrawn; null once there is an admin.</summary>
    public async Task<string?> ForFirstAdminAsync(CancellationToken cancel = default)
    {
        var now = clock.GetCurrentInstant();
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.Members.AnyAsync(m => m.Role == Role.Admin && m.RemovedAt == null, cancel))
            return null;

        await db.Invitations.Where(i => i.IsForFirstAdmin && i.UsedAt == null && i.RevokedAt == null).ExecuteUpdateAsync(i => i.SetProperty(one => one.RevokedAt, now), cancel);
        return await KeepAsync(db, Invitation.Make(Role.Admin, now, Printed, isForFirstAdmin: true), cancel);
    }

    /// <summary>By whoever may run the program itself.</summary>
    public async Task<string> PrintAsync(Role role, CancellationToken cancel = default)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await KeepAsync(db, Invitation.Make(role, clock.GetCurrentInstant(), Printed), cancel);
    }

    public async Task<string> InviteAsync(Guid by, Role role, string? email, CancellationToken cancel = default)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var address = string.IsNullOrWhiteSpace(email) ? null : Member.Folded(email);
        // Admins see the list of members: this tells them nothing new.
        Require.That(address is null || !await db.Members.AnyAsync(m => m.Email == address, cancel), "Somebody with this address is in the list below already. Change their role there, or take them back.");
        return await KeepAsync(db, Invitation.Make(role, clock.GetCurrentInstant(), Usual, by, address), cancel);
    }

    /// <summary>The invitation behind a token while it can be used; null for one that is used, withdrawn, out of date or made up.</summary>
    public async Task<Invitation?> FindAsync(string token, CancellationToken cancel = default)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await OpenAsync(db, token, cancel);
    }

    /// <summary>
    /// Makes the account. False where the link cannot be used. An address that has an account already uses the link up too and makes
    /// nothing, with the same answer: a link is no way to ask who belongs to the club.
    /// </summary>
    public async Task<bool> AcceptAsync(string token, string email, string name, string password, CancellationToken cancel = default)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await OpenAsync(db, token, cancel) is not { } invitation)
            return false;

        var now = clock.GetCurrentInstant();
        var member = new Member(invitation.Email ?? email, name, invitation.Role, now);
        member.KeepPassword(passwords.Hash(member, password));
        var isKnown = await db.Members.AnyAsync(m => m.Email == member.Email, cancel);
        invitation.Use(now);
        db.Add(new AuditEntry(Act.InvitationUsed, now, isKnown ? null : member.Id, invitation.MadeBy, invitation.Role.ToString()));
        if (!isKnown)
            db.Add(member);
        try
        {
            await db.SaveChangesAsync(cancel);
            return true;
        }
        catch (DbUpdateConcurrencyException)
        {
            // Two sent the same link at once; one account came of it.
            return false;
        }
    }

    private async Task<Invitation?> OpenAsync(GuideDb db, string token, CancellationToken cancel)
    {
        var hash = LinkSecret.HashOf(token);
        var found = await db.Invitations.SingleOrDefaultAsync(i => i.TokenHash == hash, cancel);
        var hasAdmin = await db.Members.AnyAsync(m => m.Role == Role.Admin && m.RemovedAt == null, cancel);
        return found?.IsOpenAt(clock.GetCurrentInstant()) == true && !(found.IsForFirstAdmin && hasAdmin) ? found : null;
    }

    private static async Task<string> KeepAsync(GuideDb db, (Invitation Invitation, string Token) made, CancellationToken cancel)
    {
        db.Add(made.Invitation);
        db.Add(new AuditEntry(Act.InvitationMade, made.Invitation.MadeAt, made.Invitation.MadeBy, words: made.Invitation.Role.ToString()));
        await db.SaveChangesAsync(cancel);
        return made.Token;
    }
}
