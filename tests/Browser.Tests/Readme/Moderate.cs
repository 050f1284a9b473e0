using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>What each sentence of "Moderate" does, and what one must then see.</summary>
internal static class Moderate
{
    public const string Name = "Moderate";

    public static readonly IReadOnlyDictionary<string, Func<IPage, Task>> Steps = new Dictionary<string, Func<IPage, Task>>
    {
        ["Follow \"Queue\" at the top of any page: near misses and closures first, then hazards, the worst first."] = async page =>
        {
            await page.GotoAsync("/about");
            await TopAsync(page, "Queue");
            var titles = await page.Locator(".queue th[scope=row]").AllInnerTextsAsync();
            Assert.All(titles.Take(2), title => Assert.True(title is "Near miss" or "Closure", title));
            Assert.Equal("Hazard: waves", titles[2]);
        },
        ["Follow \"New vantage point: Iron ring\": what is proposed, what the lens sees from there, and a map."] = async page =>
        {
            await page.GetByRole(AriaRole.Link, new() { Name = "New vantage point: Iron ring" }).First.ClickAsync();
            await Expect(page.Locator(".differences")).ToContainTextAsync("Beside the ring in the granite, the rails on the left");
            await Expect(page.Locator(".ink-frame-view svg").First).ToBeVisibleAsync();
            await Expect(page.Locator("coast-map")).ToContainTextAsync("Where Iron ring would stand");
        },
        ["Press \"Accept\": the composition is in the guide."] = async page =>
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Accept" }).ClickAsync();
            await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Iron ring");
            Assert.Contains("/coast/long-slip/iron-ring", page.Url, StringComparison.Ordinal);
        },
        ["Follow \"Queue\" again and \"Hazard: waves\", the severe one at Anvil Ledges, and press \"Confirm it\"."] = async page =>
        {
            await TopAsync(page, "Queue");
            await page.GetByRole(AriaRole.Link, new() { Name = "Hazard: waves" }).ClickAsync();
            await Expect(page.Locator("main")).ToContainTextAsync("Anvil Ledges");
            await page.GetByRole(AriaRole.Button, new() { Name = "Confirm it" }).ClickAsync();
            await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Hazard: waves" })).ToHaveCountAsync(0);
        },
        ["Follow \"Close a place or a part of it\", choose \"Farrow Harbour\" under \"Place\" and press \"Show its parts\"."] = async page =>
        {
            await page.GetByRole(AriaRole.Link, new() { Name = "Close a place or a part of it" }).ClickAsync();
            await page.GetByLabel("Place").SelectOptionAsync(new SelectOptionValue { Label = "Farrow Harbour" });
            await page.GetByRole(AriaRole.Button, new() { Name = "Show its parts" }).ClickAsync();
            await Expect(page.GetByLabel("What is closed")).ToContainTextAsync("Vantage point: Wharf corner");
        },
        ["Type \"Wharf shut for repair\" as \"Why\" and \"Harbour master\" as \"Closed by\", and press \"Close it now\": the place's page begins with it."] = async page =>
        {
            await page.GetByLabel("Why").FillAsync("Wharf shut for repair");
            await page.GetByLabel("Closed by").FillAsync("Harbour master");
            await page.GetByRole(AriaRole.Button, new() { Name = "Close it now" }).ClickAsync();
            await Expect(page.Locator(".stop-bar").First).ToContainTextAsync("Wharf shut for repair");
        },
        ["Follow \"Weekend\" at the top: every cell of Farrow Harbour reads *keep off*."] = async page =>
        {
            await TopAsync(page, "Weekend");
            var row = page.Locator(".board tbody tr").Filter(new() { HasText = "Fleet in fog" });
            foreach (var word in await row.Locator("td .verdict").AllTextContentsAsync())
                Assert.Equal("keep off", word.Trim());
            Assert.True(await row.Locator("td .verdict").CountAsync() > 0);
        },
        ["Follow \"Queue\", then \"Car park: Cape Road verge\" among the facts to check, and read what the guide says of it, field by field."] = async page =>
        {
            await TopAsync(page, "Queue");
            await page.GetByRole(AriaRole.Link, new() { Name = "Car park: Cape Road verge" }).ClickAsync();
            await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Put something right: Cape Road verge");
            await Expect(page.GetByLabel("Surface")).ToHaveValueAsync("Verge");
        },
    };

    private static Task TopAsync(IPage page, string name) =>
        page.GetByRole(AriaRole.Navigation, new() { Name = "Parts of the guide" }).GetByRole(AriaRole.Link, new() { Name = name }).ClickAsync();
}
