namespace Foreshore.Guide.Shell;

/// <summary>
/// Remembers the chosen theme in a cookie. It carries no form token: the most a forged post could do is change colours, and
/// posts from other sites are refused before they get here.
/// </summary>
public static class ThemeEndpoint
{
    public const string Address = "/theme";

    public static void MapThemes(this IEndpointRouteBuilder routes)
    {
        routes.MapPost(Address, (Delegate)Choose).DisableAntiforgery().AllowAnonymous();
        routes.MapGet(Address, () => Results.Redirect("/about#look")).AllowAnonymous();
    }

    private static async Task<IResult> Choose(HttpContext context)
    {
        if (!context.Request.HasFormContentType)
            return Refuse(context);

        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var chosen = form["theme"].ToString();
        if (chosen == Theme.AsDevice)
            context.Response.Cookies.Delete(Theme.CookieName, Options(context));
        else if (Theme.Named(chosen) is { } theme)
            context.Response.Cookies.Append(Theme.CookieName, theme.Name, Options(context));
        else
            return Refuse(context);

        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = LocalAddress.OrHome(form["back"]);
        return Results.Empty;
    }

    private static IResult Refuse(HttpContext context) => new PageFault(
        "There is no such theme",
        "The form asked for a theme that this guide does not have, so nothing was changed.",
        "Choose Paper, Slate or Lamp at the head of any page.").Answer(context, StatusCodes.Status400BadRequest);

    private static CookieOptions Options(HttpContext context) => new()
    {
        HttpOnly = true,
        Secure = context.Request.IsHttps,
        SameSite = SameSiteMode.Lax,
        MaxAge = TimeSpan.FromDays(400),
        IsEssential = true,
        Path = "/",
    };
}
