using Foreshore.Guide.Shell;
using Microsoft.AspNetCore.Antiforgery;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// The framework's form tokens, which fail without a word to anybody where the site is https and a request did not come so: behind a proxy
/// that is not named, every page with a form. Here it is said what to set.
/// </summary>
internal sealed class OnlyByHttps(IAntiforgery inner, SiteAddress address) : IAntiforgery
{
    public static void Describe(IServiceCollection services)
    {
        services.AddAntiforgery();
        var framework = services.Last(service => service.ServiceType == typeof(IAntiforgery));
        services.AddSingleton<IAntiforgery>(provider => new OnlyByHttps(
            (IAntiforgery)ActivatorUtilities.CreateInstance(provider, framework.ImplementationType!), provider.GetRequiredService<SiteAddress>()));
    }

    public AntiforgeryTokenSet GetAndStoreTokens(HttpContext httpContext) => Checked(httpContext).GetAndStoreTokens(httpContext);

    public AntiforgeryTokenSet GetTokens(HttpContext httpContext) => Checked(httpContext).GetTokens(httpContext);

    public Task<bool> IsRequestValidAsync(HttpContext httpContext) => Checked(httpContext).IsRequestValidAsync(httpContext);

    public void SetCookieTokenAndHeader(HttpContext httpContext) => Checked(httpContext).SetCookieTokenAndHeader(httpContext);

    public Task ValidateRequestAsync(HttpContext httpContext) => Checked(httpContext).ValidateRequestAsync(httpContext);

    private IAntiforgery Checked(HttpContext http)
    {
        if (!address.IsHttps || http.Request.IsHttps)
            return inner;

        var client = http.Connection.RemoteIpAddress;
        new PageFault("This page works by https alone",
            $"The guide is at {address.Given}, and this request came by http from {client}, so the form on this page could not be sent back.",
            $"Open {address.Given} instead. If that is what you did, tell whoever keeps the site: the proxy in front has to be named in the setting Proxy:Networks, like Proxy:Networks={client}/{(client?.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 ? 128 : 32)}, and to send X-Forwarded-Proto.")
            .Leave(http);
        throw new MisdirectedException();
    }
}
