using Foreshore.Guide.Browser;
using Foreshore.Guide.Support;
using Microsoft.Playwright;
using Xunit;

namespace Foreshore.Guide.Pages;

/// <summary>A visitor's way through the guide without script: find a place, read what could hurt, see when its light works.</summary>
public sealed class BrowseTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    public static TheoryData<string> Devices => ["phone", "desktop"];

    [Theory]
    [MemberData(nameof(Devices))]
    public async Task A_visitor_browses_from_the_coast_to_the_months_and_hours_of_a_picture(string device)
    {
        site.Clock.Reset(GuideHost.UsualNow);
        await using var visit = await site.VisitAsync(device == "phone" ? Device.Phone : Device.Desktop, javaScript: false);
        var page = visit.Page;

        await page.GotoAsync("/");
        await page.GetByLabel("Search the coast").FillAsync("halfmoon");
        await page.GetByRole(AriaRole.Button, new() { Name = "Search" }).ClickAsync();
        Assert.Equal(1, await page.Locator(".coast > li").CountAsync());

        await page.GetByRole(AriaRole.Link, new() { Name = "Halfmoon Light", Exact = true }).First.ClickAsync();
        Assert.EndsWith("/coast/halfmoon-light", page.Url, StringComparison.Ordinal);
        Assert.True(await TopAsync(page, "#hazards") < await TopAsync(page, "#stances"));
        Assert.Contains("in trouble", await page.InnerTextAsync(".cautions"), StringComparison.OrdinalIgnoreCase);

        await page.GetByRole(AriaRole.Link, new() { Name = "High edge" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Winter sun on the horizon" }).ClickAsync();
        Assert.Contains("Best in", await page.InnerTextAsync("#season"), StringComparison.Ordinal);
        Assert.True(await page.Locator("#dates li").CountAsync() > 0);

        await page.GetByText("The season, as a table").ClickAsync();
        Assert.Equal(12, await page.Locator(".ink-season details tbody tr:visible").CountAsync());
        await page.GoBackAsync();
        Assert.EndsWith("/high-edge", page.Url, StringComparison.Ordinal);
        Assert.Empty(visit.Complaints);
        Assert.Empty(visit.Elsewhere);
    }

    [Fact]
    public async Task The_filters_work_with_the_keyboard_alone_and_stand_in_the_address()
    {
        site.Clock.Reset(GuideHost.UsualNow);
        await using var visit = await site.VisitAsync(Device.Desktop, javaScript: false);
        var page = visit.Page;
        await page.GotoAsync("/");
        var whole = await page.Locator(".coast > li").CountAsync();

        await page.Locator(".coast-filter summary").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.TypeAsync("anyone");
        await page.Keyboard.PressAsync("Tab");
        await page.Locator(".coast-filter details button").FocusAsync();
        await page.Keyboard.PressAsync("Enter");

        await page.WaitForURLAsync("**/?*footing=anyone*");
        Assert.InRange(await page.Locator(".coast > li").CountAsync(), 1, whole - 1);
        Assert.Equal("anyone", await page.Locator("#footing").InputValueAsync());
    }

    [Fact]
    public async Task On_paper_the_charts_tables_and_cautions_stay_and_the_buttons_go()
    {
        site.Clock.Reset(GuideHost.UsualNow);
        await using var visit = await site.VisitAsync(Device.Desktop, javaScript: false);
        var page = visit.Page;
        await page.GotoAsync("/coast/halfmoon-light/high-edge/light-and-first-sun");
        await page.EmulateMediaAsync(new() { Media = Media.Print });

        Assert.Equal("rgb(255, 255, 255)", await page.EvaluateAsync<string>("() => getComputedStyle(document.documentElement).backgroundColor"));
        Assert.True(await page.Locator(".demo-line").IsVisibleAsync());
        Assert.True(await page.Locator(".cautions").IsVisibleAsync());
        Assert.True(await page.Locator(".light-days").IsVisibleAsync());
        Assert.True(await page.Locator(".ink-season svg").First.IsVisibleAsync());
        Assert.Equal(0, await page.Locator("button:visible").CountAsync());
    }

    private static async Task<double> TopAsync(IPage page, string selector) => (await page.Locator(selector).BoundingBoxAsync())!.Y;
}
