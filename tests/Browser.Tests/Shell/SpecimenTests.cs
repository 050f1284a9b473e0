using Deque.AxeCore.Playwright;
using Foreshore.Guide.Browser;
using Microsoft.Playwright;
using Xunit;

namespace Foreshore.Guide.Shell;

/// <summary>The shared parts as a browser draws them. Set FORESHORE_SHOTS to a folder to keep the pictures and look at them.</summary>
public sealed class SpecimenTests(SpecimenSheet sheet) : IClassFixture<SpecimenSheet>
{
    /// <summary>320 px is where WCAG 2.2 criterion 1.4.10 asks for reflow; 390 and 1280 are a phone and a desk.</summary>
    public static TheoryData<string, int> ThemesAndWidths =>
        [.. from theme in new[] { "paper", "slate", "lamp" } from width in new[] { 320, 390, 1280 } select (theme, width)];

    [Theory]
    [MemberData(nameof(ThemesAndWidths))]
    public async Task Nothing_runs_over_the_edge(string theme, int width)
    {
        var page = await sheet.OpenAsync(theme, width);
        await KeepAsync(page, $"{theme}-{width}");

        Assert.Equal("", await page.PastTheEdgeAsync());
        await page.CloseAsync();
    }

    [Theory]
    [InlineData("paper")]
    [InlineData("slate")]
    [InlineData("lamp")]
    public async Task Axe_finds_nothing(string theme)
    {
        var page = await sheet.OpenAsync(theme, 390);
        var found = await page.RunAxe();
        Assert.Empty(found.Violations.Select(v => $"{v.Id}: {v.Help} {string.Join(" | ", v.Nodes.Select(n => n.Html))}"));
        await page.CloseAsync();
    }

    [Fact]
    public async Task Lamp_shows_no_green_and_no_blue_in_any_pixel()
    {
        var page = await sheet.OpenAsync("lamp", 800);
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(d => d.open = true)");
        await page.EvaluateAsync("() => getSelection().selectAllChildren(document.querySelector('h1'))");
        await page.FocusAsync("#lat");

        var (green, blue) = await Pixels.BrightestGreenAndBlueAsync(page);
        Assert.Equal((0, 0), (green, blue));
        await page.CloseAsync();
    }

    [Fact]
    public async Task On_a_phone_what_one_taps_is_44_pixels_high()
    {
        var page = await sheet.OpenAsync("paper", 390);
        var small = await page.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll('button, select, input:not([type=checkbox], [type=radio], [type=hidden]), .choice, summary, .masthead nav a, .crumbs a, .stand-alone')]
              .filter(e => e.getBoundingClientRect().height < 44).map(e => e.outerHTML.slice(0, 80))
            """);
        Assert.Empty(small);
        await page.CloseAsync();
    }

    [Fact]
    public async Task What_has_the_focus_shows_it()
    {
        var page = await sheet.OpenAsync("paper", 1280);
        await page.FocusAsync(".skip");
        var stops = 0;
        while (true)
        {
            await page.Keyboard.PressAsync("Tab");
            var ring = await page.EvaluateAsync<string>("() => { const e = document.activeElement, s = getComputedStyle(e); return e.localName + '#' + e.id + ' ' + s.outlineStyle + ' ' + parseFloat(s.outlineWidth); }");
            if (ring.StartsWith("body", StringComparison.Ordinal))
                break;

            Assert.EndsWith(" solid 3", ring, StringComparison.Ordinal);
            stops++;
        }

        Assert.InRange(stops, 15, 40);
        await page.CloseAsync();
    }

    [Fact]
    public async Task Without_a_choice_the_page_follows_the_device()
    {
        var dark = await sheet.OpenAsync(null, 390, ColorScheme.Dark);
        var light = await sheet.OpenAsync(null, 390);

        Assert.Equal("rgb(23, 31, 34)", await GroundAsync(dark));
        Assert.Equal("rgb(247, 245, 239)", await GroundAsync(light));
        await dark.CloseAsync();
        await light.CloseAsync();
    }

    [Fact]
    public async Task Print_is_black_on_white_whatever_the_theme_and_begins_with_the_demo_line()
    {
        var page = await sheet.OpenAsync("lamp", 794);
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await KeepAsync(page, "print");

        Assert.Equal("rgb(255, 255, 255)", await GroundAsync(page));
        Assert.Equal("rgb(0, 0, 0)", await page.EvaluateAsync<string>("() => getComputedStyle(document.body).color"));
        Assert.Equal("demo-line", await page.EvaluateAsync<string>("() => [...document.querySelectorAll('body *:not(svg, svg *, header)')].find(e => e.getClientRects().length).className"));
        Assert.False(await page.IsVisibleAsync(".masthead nav"));
        await page.CloseAsync();
    }

    private static Task<string> GroundAsync(IPage page) =>
        page.EvaluateAsync<string>("() => getComputedStyle(document.documentElement).backgroundColor");

    private static async Task KeepAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("FORESHORE_SHOTS") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { FullPage = true, Path = Path.Combine(folder, $"specimen-{name}.png") });
    }
}
