using Microsoft.Playwright;
using Xunit;

[assembly: AssemblyFixture(typeof(Foreshore.Guide.Browser.Chromium))]

namespace Foreshore.Guide.Browser;

/// <summary>One browser for the run: the machine's own Chromium, so that nothing is downloaded by the tests.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private IPlaywright? playwright;

    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("FORESHORE_CHROMIUM") is { Length: > 0 } named ? named : "/usr/bin/chromium",
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
            await Browser.DisposeAsync();
        playwright?.Dispose();
    }
}
