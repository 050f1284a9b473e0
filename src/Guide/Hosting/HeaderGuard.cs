namespace Foreshore.Guide.Hosting;

/// <summary>
/// Headers that pages go by are looked at once, here: a Host that is no name of a site is refused in words, for every link of a page is made
/// from it; a Referer that is no web address tells nothing and is put away.
/// </summary>
internal static class HeaderGuard
{
    private const string NoHost =
        "The Host header of this request is empty or is no name of a site, so it could not be answered. " +
        "Ask again by the address people use, like http://localhost:5080; a proxy in front has to pass the Host header on.\n";

    public static IApplicationBuilder UseHeaderGuard(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        var request = context.Request;
        if (!IsSite(request.Scheme, request.Host.Value))
        {
            context.Response.StatusCode = StatusCodes.Status400BadRequest;
            context.Response.ContentType = "text/plain; charset=utf-8";
            return context.Response.WriteAsync(NoHost, context.RequestAborted);
        }

        if (request.Headers.Referer.Count > 0 && !IsWebAddress(request.Headers.Referer))
            request.Headers.Remove("Referer");
        return next(context);
    });

    private static bool IsSite(string scheme, string? host) =>
        host is { Length: > 0 }
        && Uri.TryCreate($"{scheme}://{host}/", UriKind.Absolute, out var site)
        && site is { PathAndQuery: "/", UserInfo: "", Host.Length: > 0 };

    private static bool IsWebAddress(string? text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var address) && (address.Scheme == Uri.UriSchemeHttp || address.Scheme == Uri.UriSchemeHttps);
}
