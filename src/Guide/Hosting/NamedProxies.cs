using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// Believes X-Forwarded-For and X-Forwarded-Proto from the proxies named in <c>Proxy:Networks</c> alone (like "127.0.0.1/32,
/// 172.16.0.0/12"). With none named the headers mean nothing: anybody could send them.
/// </summary>
internal static class NamedProxies
{
    public static void UseNamedProxies(this WebApplication app)
    {
        var networks = (app.Configuration["Proxy:Networks"] ?? "")
            .Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(Network)
            .ToList();
        if (networks.Count == 0)
            return;

        var options = new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto };
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        networks.ForEach(options.KnownIPNetworks.Add);
        app.UseForwardedHeaders(options);
    }

    private static IPNetwork Network(string text) => IPNetwork.TryParse(text, out var network)
        ? network
        : throw new SettingException("Proxy:Networks", $"\"{text}\" is no network", "Write address and length, like 127.0.0.1/32, several parted by commas.");
}
