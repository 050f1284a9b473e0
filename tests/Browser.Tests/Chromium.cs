using Microsoft.Playwright;
using Xunit;

[assembly: AssemblyFixture(typeof(Foreshore.Guide.Browser.Chromium))]

namespace Foreshore.Guide.Browser;

/// <summary>The machine's own Chromium, started once for all tests; the variable CHROMIUM names another one.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private IPlaywright playwright = null!;

    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        playwright.Dispose();
    }
}
