using System.Globalization;
using System.Security.Cryptography;
using Foreshore.Guide.Hosting;
using Microsoft.AspNetCore.DataProtection;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>A device somebody has signed in on: whose, and a number that is nobody's name.</summary>
public sealed record KnownDevice(Guid MemberId, Guid Device);

/// <summary>
/// A browser that signed in to an account keeps a cookie under seal that says so. It opens nothing; wrong tries from elsewhere do not hold
/// this browser up (OWASP, Slow Down Online Guessing Attacks with Device Cookies).
/// </summary>
public sealed class KnownDevices(IDataProtectionProvider protection, IClock clock, SiteAddress address)
{
    public const string CookieName = "foreshore-known";
    private static readonly Duration Lasts = Duration.FromDays(365);
    private readonly IDataProtector seals = protection.CreateProtector("Foreshore.KnownDevices");
    private readonly CookieBuilder cookie = Cookie(address);

    public void Keep(HttpContext http, Guid memberId) => http.Response.Cookies.Append(cookie.Name!,
        seals.Protect(string.Create(CultureInfo.InvariantCulture, $"{memberId}|{Guid.NewGuid()}|{clock.GetCurrentInstant().ToUnixTimeTicks()}")), cookie.Build(http));

    public KnownDevice? Read(HttpContext http)
    {
        try
        {
            if (http.Request.Cookies[cookie.Name!] is not { Length: > 0 } kept || seals.Unprotect(kept).Split('|') is not [var member, var device, var at])
                return null;

            var age = clock.GetCurrentInstant() - Instant.FromUnixTimeTicks(long.Parse(at, CultureInfo.InvariantCulture));
            return age < Lasts && age > -Lasts ? new(Guid.Parse(member), Guid.Parse(device)) : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private static CookieBuilder Cookie(SiteAddress address)
    {
        var cookie = address.Cookie(CookieName, SameSiteMode.Strict);
        cookie.MaxAge = Lasts.ToTimeSpan();
        return cookie;
    }
}
