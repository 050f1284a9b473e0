using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>What each sentence of "Browse the guide" does, and what one must then see.</summary>
internal static partial class Browse
{
    public const string Name = "Browse the guide";

    public static readonly IReadOnlyDictionary<string, Func<IPage, Task>> Steps = new Dictionary<string, Func<IPage, Task>>
    {
        ["Open the address that `./run` prints: 14 places in coast order, from Herring Slip to Anvil Ledges, the coast drawn beside them."] = async page =>
        {
            await page.GotoAsync("/");
            var places = page.Locator(".coast h2");
            await Expect(places).ToHaveCountAsync(14);
            await Expect(places.First).ToHaveTextAsync("Herring Slip");
            await Expect(places.Last).ToHaveTextAsync("Anvil Ledges");
            var drawn = await page.Locator(".coast-strip > svg").First.BoundingBoxAsync();
            Assert.True(drawn is { Width: > 20, Height: > 40 }, $"the coast is drawn {drawn?.Width} by {drawn?.Height}");
        },
        ["Type \"banded\" under \"Search the coast\" and press \"Search\": one place stays, Halfmoon Light."] = async page =>
        {
            await page.GetByLabel("Search the coast").FillAsync("banded");
            await page.GetByRole(AriaRole.Button, new() { Name = "Search", Exact = true }).ClickAsync();
            await Expect(page.Locator(".coast h2")).ToHaveTextAsync(["Halfmoon Light"]);
        },
        ["Follow \"Halfmoon Light\" and read its hazards, the usual cautions and, under \"Getting there\", the way the club recommends."] = async page =>
        {
            await page.GetByRole(AriaRole.Heading, new() { Name = "Halfmoon Light" }).GetByRole(AriaRole.Link).ClickAsync();
            await Expect(Heading(page, 1, "Halfmoon Light")).ToBeVisibleAsync();
            await Expect(Heading(page, 2, "Hazards")).ToBeVisibleAsync();
            await Expect(page.Locator("main")).ToContainTextAsync("falling: serious", new() { IgnoreCase = true });
            await Expect(page.GetByText("Never turn your back on the sea")).ToBeVisibleAsync();
            await Expect(Heading(page, 2, "Getting there")).ToBeVisibleAsync();
            await Expect(page.Locator("#ways").GetByText("the way the club recommends")).ToBeVisibleAsync();
        },
        ["Read under \"In an emergency\" whom to ring and which position to read out."] = async page =>
        {
            await Expect(Heading(page, 2, "In an emergency")).ToBeVisibleAsync();
            var block = page.Locator("#emergency");
            await Expect(block).ToContainTextAsync("911");
            await Expect(block).ToContainTextAsync(new Regex(@"44° \d\d\.\d\d′ N"));
            await Expect(block).ToContainTextAsync(new Regex(@"066° \d\d\.\d\d′ W"));
        },
        ["Follow \"Winter sun on the horizon\" under \"Vantage points and pictures\"."] = async page =>
        {
            await Expect(Heading(page, 2, "Vantage points and pictures")).ToBeVisibleAsync();
            await page.Locator("#stances").GetByRole(AriaRole.Link, new() { Name = "Winter sun on the horizon" }).ClickAsync();
            await Expect(Heading(page, 1, "Winter sun on the horizon")).ToBeVisibleAsync();
            // In brief before the picture, whole at the end.
            await Expect(page.Locator(".cautions-brief")).ToContainTextAsync("Never turn your back on the sea");
            await Expect(page.Locator(".cautions li").Filter(new() { HasText = "Never turn your back on the sea" })).ToBeVisibleAsync();
        },
        ["Look under \"What you see from there\" where the sun crosses the frame, and under \"Next good dates\" when to be there."] = async page =>
        {
            await Expect(Heading(page, 2, "What you see from there")).ToBeVisibleAsync();
            await Expect(page.Locator("#seen .ink-frame-view > svg")).ToBeVisibleAsync();
            await Expect(page.Locator("#seen .ink-frame-view path.ink-sun").First).ToBeAttachedAsync();
            await Expect(Heading(page, 3, "Next good dates")).ToBeVisibleAsync();
            // The clock stands at 07:00 on 25 November there; this dawn's window is not over yet.
            await Expect(page.Locator("#dates li").First).ToHaveTextAsync(new Regex(@"^\s*Wed 25 Nov 2026 dawn\s+\d\d:\d\d–\d\d:\d\d EST\s+\d+ min"));
        },
        ["Read under \"Best months and hours\" that it is best in November, December and January."] = async page =>
        {
            await Expect(Heading(page, 2, "Best months and hours")).ToBeVisibleAsync();
            var words = await page.Locator("#season .lead").InnerTextAsync();
            Assert.Equal(["December", "January", "November"], Months().Matches(words).Select(month => month.Value).Order());
            await Expect(page.Locator("#season figure > svg").First).ToBeVisibleAsync();
        },
        ["Unfold \"The season, as a table\" for the minutes a day in each of the twelve months: in June there are none."] = async page =>
        {
            await page.GetByText("The season, as a table").ClickAsync();
            var rows = page.Locator("#season details[open] tbody tr");
            await Expect(rows).ToHaveCountAsync(12);
            await Expect(rows.First).ToBeVisibleAsync();
            await Expect(rows.Filter(new() { HasText = "June" }).Locator("td").First).ToHaveTextAsync("0 min");
            await Expect(rows.Filter(new() { HasText = "December" }).Locator("td").First).Not.ToHaveTextAsync("0 min");
        },
    };

    private static ILocator Heading(IPage page, int level, string words) =>
        page.GetByRole(AriaRole.Heading, new() { Name = words, Exact = true, Level = level });

    [GeneratedRegex("January|February|March|April|May|June|July|August|September|October|November|December")]
    private static partial Regex Months();
}
