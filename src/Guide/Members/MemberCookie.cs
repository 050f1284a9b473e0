using System.Diagnostics.CodeAnalysis;
using Foreshore.Guide.Hosting;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.StaticAssets;

namespace Foreshore.Guide.Members;

/// <summary>The cookie of somebody signed in, and what is asked of it at each request.</summary>
internal sealed class MemberCookie : CookieAuthenticationEvents
{
    public const string Name = "foreshore-member";

    public static void Describe(CookieAuthenticationOptions options, SiteAddress address)
    {
        options.Cookie = address.Cookie(Name, SameSiteMode.Lax);
        // A browser goes by this and not by the moment beside it, which is reckoned by the site's clock.
        options.Cookie.MaxAge = MemberSession.Longest.ToTimeSpan();
        options.ExpireTimeSpan = MemberSession.Longest.ToTimeSpan();
        options.SlidingExpiration = false;
        options.EventsType = typeof(MemberCookie);
    }

    public override async Task ValidatePrincipal(CookieValidatePrincipalContext context)
    {
        var http = context.HttpContext;
        // Files are everybody's, and the page about a fault must not fail for the same reason again.
        var isFree = http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null || http.Features.Get<IExceptionHandlerFeature>() is not null;
        if (isFree || !TrySession(context, out var id))
        {
            context.RejectPrincipal();
            return;
        }

        if (await http.RequestServices.GetRequiredService<Sessions>().FindAsync(id, http.RequestAborted) is { } signedIn)
            http.Features.Set(signedIn);
        else
            context.RejectPrincipal();
    }

    /// <summary>Programs are told; people are led to the page where they can sign in, and back.</summary>
    public override Task RedirectToLogin(RedirectContext<CookieAuthenticationOptions> context)
    {
        var request = context.Request;
        if (request.Path.StartsWithSegments("/api") || request.Path.StartsWithSegments("/openapi"))
            context.Response.StatusCode = StatusCodes.Status401Unauthorized;
        else
            context.Response.Redirect(HttpMethods.IsGet(request.Method) ? SignInAddress.For(request.Path + request.QueryString) : SignInAddress.Page);
        return Task.CompletedTask;
    }

    public override Task RedirectToAccessDenied(RedirectContext<CookieAuthenticationOptions> context)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }

    private static bool TrySession(CookieValidatePrincipalContext context, [NotNullWhen(true)] out Guid id) =>
        Guid.TryParse(context.Principal?.FindFirst(Sessions.SessionClaim)?.Value, out id);
}

public static class SignInAddress
{
    public const string Page = "/sign-in";

    public static string For(string back) => $"{Page}?back={Uri.EscapeDataString(back)}";
}
