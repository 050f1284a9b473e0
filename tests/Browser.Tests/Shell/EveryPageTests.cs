using Deque.AxeCore.Playwright;
using Foreshore.Guide.Browser;
using Foreshore.Guide.Members;
using Xunit;

namespace Foreshore.Guide.Shell;

/// <summary>What must hold on every kind of page, in every theme, with the demo guide in it.</summary>
public sealed class EveryPageTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private static readonly Device Narrow = new(320, 700, true);

    /// <summary>Seen by an admin, to whom all of them are open.</summary>
    public static TheoryData<string> Pages =>
    [
        "/", "/?q=ledge", "/coast/halfmoon-light", "/coast/gannet-stairs", "/coast/halfmoon-light/tide", "/coast/gannet-stairs/tide?stance=lower-stair", "/coast/halfmoon-light/bog-boardwalk",
        "/coast/halfmoon-light/bog-boardwalk/frost-on-the-bog", "/admin/tides?place=gannet-stairs&q=portland", "/admin/tides/new",
        "/admin/elevation", "/coast/gannet-stairs/lower-stair/skyline", "/coast/gannet-stairs/lower-stair/two-stacks", "/coast/tern-bank/pavilion-bank/band-from-hill-to-sea", "/?tide=falling",
        "/weekend?open=gannet-stairs/lower-stair/two-stacks/sun-day&session=sun-day",
        "/weekend", "/weekend?from=nonsense", "/yours", "/about", "/nothing-here",
        "/sign-in", "/sign-out", "/invitation/made-up", "/account", "/account/second-step", "/account/erase", "/new-start/made-up", "/admin/members", "/admin/log",
        "/contribute", "/contribute/stance/6f9619ff-8b86-d011-b42d-00cf4fc964ff", "/contribute/change/stance/1", "/contribute/hazard?place=long-slip", "/contribute/near-miss?place=long-slip",
        "/history/stance/1", "/queue", "/queue/close?place=long-slip", "/queue/closure/1", "/queue/hazard/1",
    ];

    /// <summary>axe-core finds only a part of what can be wrong; what it finds must be nothing.</summary>
    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Axe_finds_nothing_on_it(string address)
    {
        // Lamp's contrast is computed from its tokens, and the specimen is looked at in all three.
        foreach (var (theme, device) in new[] { ("paper", Device.Desktop), ("slate", Device.Phone) })
        {
            await using var visit = await site.VisitAsync(device, theme: theme, role: Role.Admin);
            await visit.Page.GotoAsync(address);
            var found = await visit.Page.RunAxe();
            Assert.Empty(found.Violations.Select(v => $"{theme} {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Select(n => n.Html).Take(4))}"));
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Lamp_is_red_alone_on_it(string address)
    {
        await using var visit = await site.VisitAsync(Device.Phone, theme: "lamp", role: Role.Admin);
        await visit.Page.GotoAsync(address);
        Assert.Equal((0, 0), await Pixels.BrightestGreenAndBlueAsync(visit.Page));
    }

    /// <summary>WCAG 2.2, 1.4.10: no scrolling sideways at 320 px; wide tables scroll in a box of their own.</summary>
    [Theory]
    [MemberData(nameof(Pages))]
    public async Task It_fits_320_pixels_without_script_and_asks_nobody_else(string address)
    {
        await using var visit = await site.VisitAsync(Narrow, javaScript: false, role: Role.Admin);
        await visit.Page.GotoAsync(address);
        Assert.Equal("", await visit.Page.PastTheEdgeAsync());
        await visit.Page.SpreadLettersAsync();
        Assert.Equal("", await visit.Page.PastTheEdgeAsync());
        Assert.Equal(1, await visit.Page.Locator("h1").CountAsync());
        Assert.Empty(visit.Elsewhere);
    }

    [Fact]
    public async Task A_theme_is_chosen_without_script_and_one_comes_back_to_the_same_page()
    {
        await using var visit = await site.VisitAsync(Device.Phone, javaScript: false);
        await visit.Page.GotoAsync("/coast/halfmoon-light");
        await visit.Page.ClickAsync("button[value=lamp]");

        Assert.EndsWith("/coast/halfmoon-light", visit.Page.Url, StringComparison.Ordinal);
        Assert.Equal("lamp", await visit.Page.GetAttributeAsync("html", "data-theme"));
        Assert.Equal(Theme.LampNotice, await visit.Page.InnerTextAsync(".lamp-notice"));
    }
}
