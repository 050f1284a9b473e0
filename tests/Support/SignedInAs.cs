using Foreshore.Guide.Members;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using System.Security.Claims;

namespace Foreshore.Guide.Support;

/// <summary>
/// Somebody signed in on two factors, as a cookie, for tests about something else: member and session go straight into the database.
/// </summary>
public static class SignedInAs
{
    /// <param name="guide">The site.</param>
    /// <param name="role">What they are.</param>
    /// <param name="name">What the others call them.</param>
    /// <param name="factors">1: a password alone.</param>
    /// <param name="then">What became of them after they had signed in.</param>
    public static async Task<(Guid Id, string Name, string Value)> SignInAsync(this GuideHost guide, Role role, string name = "Ina Ruiz", int factors = 2, Action<Member>? then = null)
    {
        var now = guide.Clock.GetCurrentInstant();
        var member = new Member($"{Guid.NewGuid():N}@example.org", name, role, now);
        then?.Invoke(member);
        var session = new MemberSession(member.Id, factors, "password and code", "a test", now);
        await using var db = guide.Open();
        db.AddRange(member, session);
        await db.SaveChangesAsync();

        var cookies = guide.Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(Sessions.Scheme);
        var who = new ClaimsPrincipal(new ClaimsIdentity([new Claim(Sessions.SessionClaim, session.Id.ToString())], Sessions.Scheme));
        return (member.Id, cookies.Cookie.Name!, cookies.TicketDataFormat.Protect(new AuthenticationTicket(who, Sessions.Scheme)));
    }

    /// <summary>All that this client asks from now on; returns whose number it is.</summary>
    public static async Task<Guid> SignInAsync(this GuideHost guide, HttpClient client, Role role, int factors = 2, Action<Member>? then = null)
    {
        var (id, name, value) = await guide.SignInAsync(role, factors: factors, then: then);
        client.DefaultRequestHeaders.Remove("Cookie");
        client.DefaultRequestHeaders.Add("Cookie", $"{name}={value}");
        return id;
    }
}
