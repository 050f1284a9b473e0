using Foreshore.Guide.Support;
using Microsoft.Playwright;

namespace Foreshore.Guide.Browser;

/// <summary>How a person looks at the site.</summary>
public sealed record Device(int Width, int Height, bool HasTouch)
{
    public static readonly Device Phone = new(390, 844, true);
    public static readonly Device Desktop = new(1280, 900, false);
}

/// <summary>Class fixture: the site with the demo guide on a real port of this machine.</summary>
public sealed class BrowserSite(TestCluster cluster, Chromium chromium) : GuideHost(cluster, withDemo: true, onRealPort: true)
{
    public Uri Address => ClientOptions.BaseAddress;

    /// <summary>A new browser with nothing remembered, signed in where a role is given. Anything asked of another host is refused and told.</summary>
    public async Task<Visit> VisitAsync(Device device, bool javaScript = true, string? theme = null, Members.Role role = Members.Role.Visitor)
    {
        var context = await chromium.Browser.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = Address.ToString(),
            ViewportSize = new ViewportSize { Width = device.Width, Height = device.Height },
            HasTouch = device.HasTouch,
            JavaScriptEnabled = javaScript,
            Locale = "en-GB",
            ReducedMotion = ReducedMotion.Reduce,
        });
        if (theme is not null)
            await context.AddCookiesAsync([new Cookie { Name = "foreshore-theme", Value = theme, Url = Address.ToString() }]);
        if (role > Members.Role.Visitor)
        {
            var (_, name, value) = await this.SignInAsync(role);
            await context.AddCookiesAsync([new Cookie { Name = name, Value = value, Url = Address.ToString() }]);
        }

        return await Visit.BeginAsync(context, Address);
    }
}
