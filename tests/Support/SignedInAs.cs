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
    public static async Task<(string Name, string Value)> SignInAsync(this GuideHost guide, Role role, string name = "Ina Ruiz")
    {
        var now = guide.Clock.GetCurrentInstant();
        var member = new Member($"{Guid.NewGuid():N}@example.org", name, role, now);
        var session = new MemberSession(member.Id, factors: 2, "password and code", "a test", now);
        await using var db = guide.Open();
        db.AddRange(member, session);
        await db.SaveChangesAsync();

        var cookies = guide.Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(Sessions.Scheme);
        var who = new ClaimsPrincipal(new ClaimsIdentity([new Claim(Sessions.SessionClaim, session.Id.ToString())], Sessions.Scheme));
        return (cookies.Cookie.Name!, cookies.TicketDataFormat.Protect(new AuthenticationTicket(who, Sessions.Scheme)));
    }

    /// <summary>All that this client asks from now on.</summary>
    public static async Task SignInAsync(this GuideHost guide, HttpClient client, Role role)
    {
        var (name, value) = await guide.SignInAsync(role);
        client.DefaultRequestHeaders.Remove("Cookie");
        client.DefaultRequestHeaders.Add("Cookie", $"{name}={value}");
    }
}
