using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>What each sentence of "Check the weekend" does, and what one must then see.</summary>
internal static partial class CheckTheWeekend
{
    public const string Name = "Check the weekend";

    private static readonly string[] Verdicts = ["suits", "borderline", "not judged", "does not suit", "keep off"];

    public static readonly IReadOnlyDictionary<string, Func<IPage, Task>> Steps = new Dictionary<string, Func<IPage, Task>>
    {
        ["Follow \"Weekend\" at the top of any page: one row for each composition, from Friday dusk to Sunday dusk."] = async page =>
        {
            await page.GotoAsync("/about");
            await page.GetByRole(AriaRole.Navigation, new() { Name = "Parts of the guide" }).GetByRole(AriaRole.Link, new() { Name = "Weekend" }).ClickAsync();
            // The clock stands at Wednesday, 25 November 2026.
            await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("This weekend, 27–29 November");
            await Expect(page.Locator(".board thead th")).ToHaveTextAsync(
                ["Composition", "Fri dusk", "Fri night", "Sat dawn", "Sat day", "Sat dusk", "Sat night", "Sun dawn", "Sun day", "Sun dusk"]);
            Assert.True(await RowsAsync(page) >= 30);
        },
        ["Read the word in each cell, and below the board what the five words mean: suits, borderline, not judged, does not suit, keep off."] = async page =>
        {
            var said = (await page.Locator(".board tbody tr:not(.board-place) td .verdict").AllInnerTextsAsync()).Select(Plain).Distinct();
            Assert.Empty(said.Except(Verdicts));
            var explained = page.Locator(".board-key dt");
            Assert.Equal(Verdicts, (await explained.AllInnerTextsAsync()).Select(Plain));
            await Expect(explained.First).ToBeVisibleAsync();
            await Expect(page.Locator(".board-key dd")).ToHaveCountAsync(Verdicts.Length);
        },
        ["Choose \"anyone\" under \"Footing, at most\" and press \"Show\": harder stances are left out, and the page says how many compositions that were."] = async page =>
        {
            var before = await RowsAsync(page);
            await page.GetByLabel("Footing, at most").SelectOptionAsync(new SelectOptionValue { Label = "anyone" });
            await ShowAsync(page);
            Assert.Equal(before, await RowsAsync(page) + await LeftOutAsync(page));
            Assert.True(await LeftOutAsync(page) > 0);
        },
        ["Follow \"Set a home point\", type 44.65, -67.20 as \"Home point\", and press \"Keep on this device\"."] = async page =>
        {
            await page.GetByRole(AriaRole.Link, new() { Name = "Set a home point" }).ClickAsync();
            await page.GetByLabel("Home point").FillAsync("44.65, -67.20");
            await page.GetByRole(AriaRole.Button, new() { Name = "Keep on this device" }).ClickAsync();
            await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("27–29 November");
            await Expect(page.GetByLabel("Footing, at most")).ToHaveValueAsync("anyone");
            Assert.DoesNotContain("44.65", page.Url, StringComparison.Ordinal);
        },
        ["Type 25 under \"Within km of home\" and press \"Show\": what lies farther is left out, and each place says how far it is."] = async page =>
        {
            var before = await RowsAsync(page);
            await page.GetByLabel("Within km of home").FillAsync("25");
            await ShowAsync(page);
            Assert.InRange(await RowsAsync(page), 1, before - 1);
            foreach (var place in await page.Locator(".board-place").AllInnerTextsAsync())
            {
                var far = KilometresFromHome().Match(place);
                Assert.True(far.Success, place);
                Assert.InRange(int.Parse(far.Groups[1].Value, CultureInfo.InvariantCulture), 0, 25);
            }
        },
        ["Follow a clock time on the board: light and tide of that session open as a strip, with every reason."] = async page =>
        {
            var time = page.Locator(".board td a.figures >> visible=true").First;
            var window = await time.InnerTextAsync();
            await time.ClickAsync();
            var strip = page.Locator(".board-strip");
            await Expect(strip).ToHaveCountAsync(1);
            await Expect(strip.Locator("figure.ink-light-strip > svg")).ToBeVisibleAsync();
            await Expect(strip.Locator("figure.ink-water-strip > svg")).ToBeVisibleAsync();
            await Expect(strip).ToContainTextAsync(window);
            await Expect(strip).ToContainTextAsync("sea: not known here yet – look, and read the official forecast");
        },
        ["Follow \"Put the strip away\"."] = async page =>
        {
            await page.GetByRole(AriaRole.Link, new() { Name = "Put the strip away" }).ClickAsync();
            await Expect(page.Locator(".board-strip")).ToHaveCountAsync(0);
            await Expect(page.GetByLabel("Within km of home")).ToHaveValueAsync("25");
        },
        ["On a phone, which shows one session at a time, follow the name of the next one; a wide screen shows all nine side by side."] = async page =>
        {
            var row = page.Locator(".board tbody tr:not(.board-place)").First;
            if (page.ViewportSize!.Width > Device.Phone.Width)
            {
                await Expect(page.Locator(".board-sessions")).ToBeHiddenAsync();
                await Expect(row.Locator("td >> visible=true")).ToHaveCountAsync(9);
                return;
            }

            var sessions = page.GetByRole(AriaRole.Navigation, new() { Name = "Sessions of the weekend" });
            await Expect(sessions.Locator("strong")).ToHaveTextAsync("Friday dusk, 27 November");
            await Expect(row.Locator("td >> visible=true")).ToHaveCountAsync(1);
            await sessions.GetByRole(AriaRole.Link, new() { Name = "Friday night" }).ClickAsync();
            await Expect(sessions.Locator("strong")).ToHaveTextAsync("Friday night, 27 November");
            await Expect(row.Locator("td >> visible=true")).ToHaveCountAsync(1);
            await Expect(row.Locator("td.s1")).ToBeVisibleAsync();
        },
    };

    private static Task<int> RowsAsync(IPage page) => page.Locator(".board tbody th[scope=row]").CountAsync();

    private static Task ShowAsync(IPage page) => page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true }).ClickAsync();

    private static async Task<int> LeftOutAsync(IPage page) =>
        int.Parse(LeftOut().Match(await page.InnerTextAsync("main")).Groups[1].Value, CultureInfo.InvariantCulture);

    /// <summary>Not judged stands in brackets.</summary>
    private static string Plain(string verdict) => verdict.Trim().Trim('[', ']');

    [GeneratedRegex(@"(\d+) compositions left out by footing or distance")]
    private static partial Regex LeftOut();

    [GeneratedRegex(@"(\d+) km from home")]
    private static partial Regex KilometresFromHome();
}
