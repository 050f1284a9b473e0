namespace Foreshore.Guide.Hosting;

/// <summary>
/// The headers every answer carries. No inline script or style anywhere, so the policy needs neither nonce nor hash; no base
/// element either, so <c>base-uri</c> can be 'none'. Tile servers are the only others named.
/// </summary>
internal static class SecurityHeaders
{
    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app, MapTiles tiles)
    {
        var policy = ContentSecurityPolicy(tiles);
        return app.Use((context, next) =>
        {
            var headers = context.Response.Headers;
            headers.ContentSecurityPolicy = policy;
            headers.XContentTypeOptions = "nosniff";
            headers.XFrameOptions = "DENY";
            headers["Referrer-Policy"] = "strict-origin-when-cross-origin";
            headers["Permissions-Policy"] = PermissionsPolicy;
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-site";

            if (HttpMethods.IsTrace(context.Request.Method))
            {
                context.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
                return Task.CompletedTask;
            }

            if (IsUnsafeFromElsewhere(context.Request))
            {
                context.Response.StatusCode = StatusCodes.Status403Forbidden;
                return Task.CompletedTask;
            }

            return next(context);
        });
    }

    private const string PermissionsPolicy =
        "geolocation=(self), accelerometer=(self), camera=(), display-capture=(), gyroscope=(self), magnetometer=(self), microphone=(), payment=(), usb=()";

    private static string ContentSecurityPolicy(MapTiles tiles) => string.Join("; ",
        "default-src 'none'",
        "base-uri 'none'",
        "script-src 'self'",
        "style-src 'self'",
        $"img-src 'self' blob:{(tiles.Host is null ? "" : " " + tiles.Host)}",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "form-action 'self'",
        "frame-ancestors 'none'",
        "object-src 'none'");

    /// <summary>A form posted from another site; browsers say so themselves. Form tokens stand behind this.</summary>
    private static bool IsUnsafeFromElsewhere(HttpRequest request) =>
        !HttpMethods.IsGet(request.Method)
        && !HttpMethods.IsHead(request.Method)
        && !HttpMethods.IsOptions(request.Method)
        && request.Headers["Sec-Fetch-Site"] == "cross-site";
}
