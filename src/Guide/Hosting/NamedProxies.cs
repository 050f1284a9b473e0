using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// Believes X-Forwarded-For and X-Forwarded-Proto from the proxies named in <c>Proxy:Networks</c> alone (like "127.0.0.1/32,
/// 172.16.0.0/12"). With none named the headers mean nothing: anybody could send them. A proxy that is not named is told to the log once:
/// behind it all visitors count as one, and the site takes https for http.
/// </summary>
internal static partial class NamedProxies
{
    public static void UseNamedProxies(this WebApplication app)
    {
        var networks = Of(app.Configuration);
        if (networks.Count > 0)
        {
            var options = new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto };
            options.KnownProxies.Clear();
            options.KnownIPNetworks.Clear();
            networks.ForEach(options.KnownIPNetworks.Add);
            app.UseForwardedHeaders(options);
        }

        var isTold = 0;
        app.Use((context, next) =>
        {
            // What was believed is taken out of the header; what is still there came from somebody who is not named.
            if (context.Request.Headers.ContainsKey("X-Forwarded-For") && context.Connection.RemoteIpAddress is { } address && Interlocked.Exchange(ref isTold, 1) == 0)
                NotNamed(app.Logger, address);
            return next(context);
        });
    }

    public static List<IPNetwork> Of(IConfiguration configuration) =>
    [
        .. (configuration["Proxy:Networks"] ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(Network),
    ];

    /// <summary>In words what will not work as it is set, for the start; null where nothing speaks against it.</summary>
    public static string? DoubtAbout(IConfiguration configuration) =>
        SiteAddress.From(configuration) is { IsHttps: true, Given: var given } && Of(configuration).Count == 0
        && configuration["https_ports"] is null && configuration["urls"]?.Contains("https://", StringComparison.OrdinalIgnoreCase) != true
            ? $"Site:Address says {given}, but the site itself listens by http and no proxy is named: pages with forms will refuse. " +
                "Name the proxy in front in Proxy:Networks, like Proxy:Networks=127.0.0.1/32, and let it send X-Forwarded-For and X-Forwarded-Proto."
            : null;

    private static IPNetwork Network(string text) => IPNetwork.TryParse(text, out var network)
        ? network
        : throw new SettingException("Proxy:Networks", $"\"{text}\" is no network", "Write address and length, like 127.0.0.1/32, several parted by commas.");

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Address} sends X-Forwarded-For and is not named in Proxy:Networks, so it is not believed and all who come through it count as one. If it is your proxy, name it; if it is not, nothing is wrong.")]
    private static partial void NotNamed(ILogger log, IPAddress address);
}
