using System.Net;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Members;

/// <summary>
/// Until somebody can sign in as an admin, pages that change the guide answer on the site's own machine alone. Put it on a page
/// (<c>@attribute [LocalMachineOnly]</c>) or an endpoint; whoever asks from elsewhere, or by way of a proxy, is told so.
/// </summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class LocalMachineOnlyAttribute : Attribute
{
    private static readonly string[] OwnNames = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>A proxy names itself or its client in one of these; X-Original is what the site itself leaves of them.</summary>
    private static readonly string[] Forwarding = ["Forwarded", "Via", "X-Forwarded", "X-Original", "X-Real-IP", "X-Client-IP", "X-Cluster-Client-IP", "True-Client-IP", "CF-Connecting-IP"];

    private static readonly PageFault Refusal = new("This page is open on the site's own machine alone",
        "It changes what the guide goes by, and nobody can sign in yet. The request came from elsewhere, through a proxy, or under another name than localhost.",
        "Open it in a browser on the machine that runs the site, at its own port, for example http://localhost:5080/admin/tides; from afar, through a tunnel that ends there.");

    /// <summary>The request was made on this machine, to this machine, with nobody in between.</summary>
    public static bool IsLocal(HttpContext http) =>
        http.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from)
        // A page elsewhere may give its own name this machine's address; the browser then still sends that name.
        && OwnNames.Contains(http.Request.Host.Host, StringComparer.OrdinalIgnoreCase)
        && !http.Request.Headers.Keys.Any(name => Forwarding.Any(known => name.StartsWith(known, StringComparison.OrdinalIgnoreCase)));

    internal static Task RefuseOthersAsync(HttpContext http, RequestDelegate next) =>
        http.GetEndpoint()?.Metadata.GetMetadata<LocalMachineOnlyAttribute>() is null || IsLocal(http)
            ? next(http)
            : Refusal.Answer(http, StatusCodes.Status403Forbidden).ExecuteAsync(http);
}

internal static class LocalMachine
{
    /// <summary>After routing, before anything of the page runs.</summary>
    public static void UseLocalMachineOnly(this WebApplication app) => app.Use((http, next) => LocalMachineOnlyAttribute.RefuseOthersAsync(http, next));
}
