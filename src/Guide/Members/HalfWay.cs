using System.Globalization;
using System.Security.Cryptography;
using Foreshore.Guide.Hosting;
using Microsoft.AspNetCore.DataProtection;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Between the password and the code: who it was, for five minutes, under seal in a cookie of its own. It opens nothing else.</summary>
public sealed class HalfWay(IDataProtectionProvider protection, IClock clock, SiteAddress address)
{
    private static readonly Duration Patience = Duration.FromMinutes(5);
    private readonly IDataProtector seals = protection.CreateProtector("Foreshore.HalfWay");
    private readonly CookieBuilder cookie = address.Cookie("foreshore-half-way", SameSiteMode.Strict);

    public void Keep(HttpContext http, Guid memberId) => http.Response.Cookies.Append(cookie.Name!,
        seals.Protect(string.Create(CultureInfo.InvariantCulture, $"{memberId}|{clock.GetCurrentInstant().ToUnixTimeTicks()}")), cookie.Build(http));

    public Guid? Read(HttpContext http)
    {
        try
        {
            if (http.Request.Cookies[cookie.Name!] is not { Length: > 0 } kept || seals.Unprotect(kept).Split('|') is not [var id, var at])
                return null;

            var since = clock.GetCurrentInstant() - Instant.FromUnixTimeTicks(long.Parse(at, CultureInfo.InvariantCulture));
            return since < Patience && since > -Patience ? Guid.Parse(id) : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    public void Forget(HttpContext http) => http.Response.Cookies.Delete(cookie.Name!, cookie.Build(http));
}
