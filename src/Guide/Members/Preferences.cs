using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using NodaTime.Text;

namespace Foreshore.Guide.Members;

/// <summary>
/// What a reader chose on this device: a home point rounded to 0.01 degrees and the hours they go out.
/// It lives in one cookie of this site and nowhere else: never in an address, a log or the database.
/// </summary>
public sealed record Preferences(Position? Home, HoursOut? Hours)
{
    public const string CookieName = "foreshore-yours";
    private const string AtNight = "night";
    public static readonly Preferences None = new(null, null);
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    /// <summary>A home point as it may be kept: to 0.01 degrees, about a kilometre.</summary>
    public static Position Rounded(Position home) =>
        new(Math.Round(home.LatitudeDegrees, 2), Math.Round(home.LongitudeDegrees, 2));

    public static Preferences From(HttpRequest request) => Parse(request.Cookies[CookieName]);

    /// <summary>Reads the cookie; whatever it can't read counts as not chosen.</summary>
    public static Preferences Parse(string? cookie)
    {
        if (string.IsNullOrEmpty(cookie) || cookie.Length > 100)
            return None;

        var parts = cookie.Split('_');
        return parts.Length == 2 ? new(HomeFrom(parts[0]), HoursFrom(parts[1])) : None;
    }

    public string ToCookie() => $"{HomeText}_{HoursText}";

    public void KeepOn(HttpContext context) => context.Response.Cookies.Append(CookieName, ToCookie(), Options(context));

    public static void ForgetOn(HttpContext context) => context.Response.Cookies.Delete(CookieName, Options(context));

    private static CookieOptions Options(HttpContext context) => new()
    {
        HttpOnly = true,
        Secure = context.Request.IsHttps,
        SameSite = SameSiteMode.Lax,
        MaxAge = TimeSpan.FromDays(400),
        IsEssential = true,
        Path = "/",
    };

    private string HomeText => Home is { } home
        ? string.Create(CultureInfo.InvariantCulture, $"{home.LatitudeDegrees:F2}~{home.LongitudeDegrees:F2}")
        : "";

    private string HoursText => Hours is { } hours
        ? $"{Clock.Format(hours.EarliestAlarm)}~{Clock.Format(hours.LatestHome)}{(hours.HoldAtNight ? $"~{AtNight}" : "")}"
        : "";

    private static Position? HomeFrom(string text)
    {
        var parts = text.Split('~');
        return parts.Length == 2
            && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var latitude)
            && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var longitude)
            && Math.Abs(latitude) <= 90 && Math.Abs(longitude) <= 180
                ? Rounded(new Position(latitude, longitude))
                : null;
    }

    private static HoursOut? HoursFrom(string text)
    {
        var parts = text.Split('~');
        return parts.Length is 2 or 3
            && Clock.Parse(parts[0]).TryGetValue(default, out var alarm)
            && Clock.Parse(parts[1]).TryGetValue(default, out var home)
                ? new HoursOut(alarm, home) { HoldAtNight = parts.Length == 3 && parts[2] == AtNight }
                : null;
    }
}
