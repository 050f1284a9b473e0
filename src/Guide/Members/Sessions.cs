using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Begins and ends sessions. The cookie holds a session's number under seal; whether it still opens anything is asked of its row.</summary>
public sealed class Sessions(IDbContextFactory<GuideDb> database, IClock clock)
{
    public const string Scheme = "member";
    public const string SessionClaim = "session";

    /// <summary>A new session each time, in place of the one this browser had.</summary>
    public async Task BeginAsync(HttpContext http, Member member, int factors, string way)
    {
        var now = clock.GetCurrentInstant();
        var session = new MemberSession(member.Id, factors, way, DeviceWords.Of(http.Request.Headers.UserAgent), now);
        await using var db = await database.CreateDbContextAsync(http.RequestAborted);
        var former = http.SignedIn()?.SessionId;
        var (idleSince, begunBefore) = (now - MemberSession.Idle, now - MemberSession.Longest);
        await db.MemberSessions.Where(s => s.Id == former || (s.MemberId == member.Id && (s.SeenAt <= idleSince || s.BeganAt <= begunBefore))).ExecuteDeleteAsync(http.RequestAborted);
        db.Add(session);
        db.Add(new AuditEntry(Act.SignedIn, now, member.Id, words: way));
        await db.SaveChangesAsync(http.RequestAborted);
        await http.SignInAsync(Scheme, new ClaimsPrincipal(new ClaimsIdentity(
            [new Claim(SessionClaim, session.Id.ToString()), new Claim(ClaimTypes.NameIdentifier, session.Id.ToString())], Scheme)));
    }

    public async Task EndAsync(HttpContext http)
    {
        if (http.SignedIn() is { } signedIn)
        {
            await using var db = await database.CreateDbContextAsync(http.RequestAborted);
            await db.MemberSessions.Where(s => s.Id == signedIn.SessionId).ExecuteDeleteAsync(http.RequestAborted);
            db.Add(new AuditEntry(Act.SignedOut, clock.GetCurrentInstant(), signedIn.MemberId));
            await db.SaveChangesAsync(http.RequestAborted);
        }

        await ForgetAsync(http);
    }

    /// <summary>Takes cookie and kept pages from this browser; the row is gone already, or is none of its business.</summary>
    public static async Task ForgetAsync(HttpContext http)
    {
        await http.SignOutAsync(Scheme);
        http.Response.Headers["Clear-Site-Data"] = "\"cache\"";
    }

    /// <summary>Who stands behind a session now; null where it was ended, ran out, or its member was removed.</summary>
    public async Task<SignedIn?> FindAsync(Guid id, CancellationToken cancel)
    {
        var now = clock.GetCurrentInstant();
        await using var db = await database.CreateDbContextAsync(cancel);
        var found = await db.MemberSessions.Where(s => s.Id == id)
            .Join(db.Members, s => s.MemberId, m => m.Id, (session, m) => new { session, m.Name, m.Email, m.Role, m.RemovedAt })
            .SingleOrDefaultAsync(cancel);
        if (found is null || found.RemovedAt is not null || !found.session.HoldsAt(now))
            return null;

        var session = found.session;
        if (session.SeeAt(now))
            await db.MemberSessions.Where(s => s.Id == id).ExecuteUpdateAsync(s => s.SetProperty(one => one.SeenAt, now), cancel);
        return new(session.Id, session.MemberId, found.Name, found.Email, found.Role, session.Factors, session.IsFreshAt(now), session.BeganAt);
    }
}
