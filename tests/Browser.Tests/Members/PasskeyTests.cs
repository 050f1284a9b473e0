using System.Text.Json;
using Foreshore.Guide.Browser;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>A passkey from making it to signing in with it, by the browser's own virtual authenticator.</summary>
public sealed class PasskeyTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const string Password = "four grey seals asleep";

    [Fact]
    public async Task A_warden_adds_a_passkey_as_second_step_and_signs_in_with_it_alone()
    {
        await using var visit = await site.VisitAsync(Device.Phone);
        var page = visit.Page;
        await AddAuthenticatorAsync(page);
        var token = await site.Services.GetRequiredService<Invitations>().PrintAsync(Role.Warden);
        await page.GotoAsync(Named(Invitations.PathOf(token)));
        await page.FillAsync("#email", "wren@example.org");
        await page.FillAsync("#name", "Wren");
        await page.FillAsync("#password", Password);
        await page.ClickAsync("main form button");
        await page.ClickAsync("main a.button");
        await page.FillAsync("#email", "wren@example.org");
        await page.FillAsync("#password", Password);
        await page.ClickAsync("main form:has(#password) button");
        Assert.EndsWith(Admission.SecondStepPage, page.Url, StringComparison.Ordinal);

        await page.FillAsync("#passkey-name", "blue stick");
        await page.ClickAsync("#passkey-button");
        await page.WaitForSelectorAsync("h1:has-text('Recovery codes')");
        Assert.Equal(Member.RecoveryCodesGiven, await page.Locator("li code").CountAsync());
        await page.GotoAsync(Named("/account"));
        Assert.Equal("blue stick", await page.InnerTextAsync("#second-step th[scope=row]"));

        await page.GotoAsync(Named("/sign-out"));
        await page.ClickAsync("main form button");
        await page.GotoAsync(Named("/sign-in?back=%2Fweekend"));
        await page.ClickAsync("#passkey-button");
        await page.WaitForURLAsync("**/weekend");
        Assert.Contains("Wren", await page.InnerTextAsync(".masthead nav"), StringComparison.Ordinal);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task Without_script_or_by_number_the_page_says_why_there_is_no_passkey()
    {
        await using var plain = await site.VisitAsync(Device.Phone, javaScript: false);
        await plain.Page.GotoAsync(Named("/sign-in"));
        Assert.True(await plain.Page.IsDisabledAsync("#passkey-button"));
        Assert.Contains("needs JavaScript", await plain.Page.InnerTextAsync("form.passkey"), StringComparison.Ordinal);

        await using var number = await site.VisitAsync(Device.Phone);
        await number.Page.GotoAsync(new UriBuilder(site.Address) { Host = "127.0.0.1", Path = "/sign-in" }.Uri.ToString());
        Assert.True(await number.Page.IsDisabledAsync("#passkey-button"));
        Assert.Contains("open the site as localhost", await number.Page.InnerTextAsync("form.passkey"), StringComparison.Ordinal);
    }

    /// <summary>By name: a number is no place a passkey can belong to.</summary>
    private string Named(string path) => new Uri(new UriBuilder(site.Address) { Host = "localhost" }.Uri, path).ToString();

    private static async Task AddAuthenticatorAsync(IPage page)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("WebAuthn.enable");
        await session.SendAsync("WebAuthn.addVirtualAuthenticator", new Dictionary<string, object>
        {
            ["options"] = JsonSerializer.SerializeToElement(new
            {
                protocol = "ctap2",
                transport = "internal",
                hasResidentKey = true,
                hasUserVerification = true,
                isUserVerified = true,
                automaticPresenceSimulation = true,
            }),
        });
    }
}
