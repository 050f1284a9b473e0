using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>What each sentence of "Contribute a vantage point" does, and what one must then see.</summary>
internal static class Contribute
{
    public const string Name = "Contribute a vantage point";

    public static readonly IReadOnlyDictionary<string, Func<IPage, Task>> Steps = new Dictionary<string, Func<IPage, Task>>
    {
        ["Follow \"Contribute\" at the top of any page and press \"Mark the spot\": the form opens with the position this device gave."] = async page =>
        {
            await page.Context.SetGeolocationAsync(new Geolocation { Latitude = 44.7716f, Longitude = -67.0649f, Accuracy = 7 });
            await page.Context.GrantPermissionsAsync(["geolocation"]);
            await page.GotoAsync("/about");
            await page.GetByRole(AriaRole.Navigation, new() { Name = "Parts of the guide" }).GetByRole(AriaRole.Link, new() { Name = "Contribute" }).ClickAsync();
            await Expect(page.Locator("main")).ToContainTextAsync("Eyes on the water. Mark the spot, then step back beyond reach of the sea before you fill in anything.");
            await page.GetByRole(AriaRole.Button, new() { Name = "Mark the spot" }).ClickAsync();
            await Expect(page.GetByLabel("Position", new() { Exact = true })).ToHaveValueAsync("44.771600, -67.064900");
        },
        ["Choose \"ledge\" under \"Kind of ground\" and \"steady\" under \"Footing is found by\"; on a phone press \"Next\" after this and after each question below."] = async page =>
        {
            await page.GetByLabel("Kind of ground").SelectOptionAsync(new SelectOptionValue { Label = "ledge" });
            await page.GetByLabel("Footing is found by").SelectOptionAsync(new SelectOptionValue { Label = "steady" });
            await NextAsync(page);
        },
        ["Type 118 as \"Facing, degrees true\": horizon and frame turn with it."] = async page =>
        {
            await page.GetByLabel("Facing, degrees true").FillAsync("118");
            await Expect(page.Locator("#live-ruler title")).ToHaveTextAsync("The horizon from 28° to 208°, looking 118°");
            await Expect(page.Locator("#live-frame svg").First).ToBeVisibleAsync();
            await NextAsync(page);
        },
        ["Leave the lens as it is, choose \"golden light\" under \"Any of these suits\", and see its months and hours appear."] = async page =>
        {
            await Expect(page.Locator("#picture-focal-length")).ToHaveValueAsync("24");
            await NextAsync(page);
            await page.GetByLabel("golden light").CheckAsync();
            await Expect(page.Locator("#live-season")).ToContainTextAsync("Season table as of 118°");
            await Expect(page.Locator("#live-season .ink-season")).ToBeVisibleAsync();
            await NextAsync(page);
        },
        ["Type \"Iron ring\" as \"Name\" and \"Beside the ring in the granite, the rails on the left\" as \"In a line or two\"."] = async page =>
        {
            await page.Locator("#name").FillAsync("Iron ring");
            await page.Locator("#summary").FillAsync("Beside the ring in the granite, the rails on the left");
            await NextAsync(page);
        },
        ["Choose \"The Long Slip\" under \"Place\": it is the first of the list, for it is the nearest."] = async page =>
        {
            Assert.StartsWith("The Long Slip", await page.Locator("#place option").Nth(1).InnerTextAsync(), StringComparison.Ordinal);
            await page.Locator("#place").SelectOptionAsync("long-slip");
            await NextAsync(page);
        },
        ["Choose \"slipping\" under \"Hazard\" and type 2 as \"Severity\"."] = async page =>
        {
            await page.Locator("#hazard-1-kind").SelectOptionAsync(new SelectOptionValue { Label = "slipping" });
            await page.Locator("#hazard-1-severity").FillAsync("2");
            await NextAsync(page);
        },
        ["Go to the last question and press \"Send\": the page says that a warden reads it."] = async page =>
        {
            await NextAsync(page);
            await page.GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).ClickAsync();
            await Expect(page.Locator(".done")).ToContainTextAsync("Sent: New vantage point: Iron ring. A warden reads it");
        },
    };

    /// <summary>A phone shows one question at a time; a desktop has no such button to press.</summary>
    private static async Task NextAsync(IPage page)
    {
        var next = page.Locator(".step:not([hidden]) .step-bar").GetByRole(AriaRole.Button, new() { Name = "Next" });
        if (await next.CountAsync() == 1 && await next.IsVisibleAsync())
            await next.ClickAsync();
    }
}
