using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Foreshore.Guide.Shell.Maps;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Foreshore.Guide.Browser.Maps;

public sealed class CoastMapTests(Chromium chromium, MapHost host) : IClassFixture<MapHost>, IAsyncLifetime
{
    private readonly List<string> asked = [];
    private readonly List<string> complaints = [];
    private IBrowserContext context = null!;
    private IPage page = null!;

    public async ValueTask InitializeAsync()
    {
        context = await chromium.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 900 }, ReducedMotion = ReducedMotion.Reduce });
        page = await context.NewPageAsync();
        page.Request += (_, request) => asked.Add(new Uri(request.Url).PathAndQuery);
        page.PageError += (_, error) => complaints.Add(error);
        // A missing tile is logged by the browser itself; everything else on the console is a fault.
        page.Console += (_, line) => { if (line.Type is "error" or "warning" && !line.Location.Contains("/tiles/fail/", StringComparison.Ordinal)) complaints.Add(line.Text); };
    }

    public async ValueTask DisposeAsync() => await context.DisposeAsync();

    [Fact]
    public async Task Asks_for_nothing_before_it_is_opened()
    {
        await page.GotoAsync($"{host.Address}/map/paper/come");
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        Assert.DoesNotContain(asked, a => a.Contains("leaflet", StringComparison.Ordinal) || a.Contains("/tiles/", StringComparison.Ordinal) || a.Contains("coastline", StringComparison.Ordinal));
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Shows_tiles_with_their_attribution_and_no_drawn_coast()
    {
        await OpenAsync("paper/come");
        await Expect(page.Locator(".leaflet-tile-loaded").First).ToBeAttachedAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "© OpenStreetMap contributors" })).ToHaveAttributeAsync("href", "https://www.openstreetmap.org/copyright");
        Assert.DoesNotContain(asked, a => a.StartsWith("/coastline", StringComparison.Ordinal));
        Assert.Equal("origin", await page.Locator("img.leaflet-tile").First.GetAttributeAsync("referrerpolicy"));
        Assert.Empty(complaints);
    }

    [Theory]
    [InlineData("fail")]
    [InlineData("none")]
    public async Task Without_tiles_it_draws_the_coast_and_says_so(string tiles)
    {
        await OpenAsync($"paper/{tiles}");
        await Expect(page.Locator("path.coast-land")).ToBeAttachedAsync();
        await Expect(page.GetByText(Coastline.Note)).ToBeVisibleAsync();
        await Expect(page.Locator("img.leaflet-tile")).ToHaveCountAsync(0);
        var shore = await page.Locator("path.coast-shore").BoundingBoxAsync();
        Assert.True(shore is { Width: > 100, Height: > 100 });
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Keyboard_opens_a_mark_and_escape_gives_the_focus_back()
    {
        await OpenAsync("paper/none");
        var mark = page.GetByRole(AriaRole.Button, new() { Name = "Outer ledge", Exact = true });
        await mark.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".leaflet-popup a")).ToBeFocusedAsync();
        await Expect(page.Locator(".leaflet-popup a")).ToHaveAttributeAsync("href", "/coast/skerry-head/outer-ledge");
        await Expect(page.Locator("[data-item=stance-ledge]")).ToHaveAttributeAsync("aria-current", "true");
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator(".leaflet-popup")).ToHaveCountAsync(0);
        await Expect(mark).ToBeFocusedAsync();
    }

    [Fact]
    public async Task List_and_map_show_the_same_things()
    {
        await OpenAsync("paper/none");
        var entries = page.Locator("[data-item]");
        Assert.Equal(5, await entries.CountAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Show Field path on the map" }).ClickAsync();
        await Expect(page.Locator(".leaflet-popup-content")).ToContainTextAsync("Walk, permissive.");
        var names = await page.Locator(".leaflet-container [role=button][aria-label]:not(.leaflet-bar a)").EvaluateAllAsync<string[]>("all => all.map(e => e.getAttribute('aria-label'))");
        Assert.Equal(5, names.Length);
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Contains("Waves, hazard, severe", names);
        Assert.Contains("Turf, closed", names);
        Assert.Contains("Field path: by permission", names);
    }

    [Fact]
    public async Task The_address_says_where_the_map_is_and_opens_it_there()
    {
        await OpenAsync("paper/none");
        Assert.DoesNotContain("at=", page.Url, StringComparison.Ordinal);
        await page.Locator(".leaflet-container").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.WaitForURLAsync(new Regex(@"\?at=44\.\d{5},-67\.\d{5}&span=\d+$"));

        await page.GotoAsync($"{host.Address}/map/paper/none?at=44.70000,-67.10000&span=5000");
        await Expect(page.Locator(".leaflet-container")).ToBeVisibleAsync();
        await page.Locator(".leaflet-container").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        await page.WaitForURLAsync(new Regex(@"at=44\.(6999|7000)\d,-67\.0\d+"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Close the map" }).ClickAsync();
        Assert.DoesNotContain("at=", page.Url, StringComparison.Ordinal);
        Assert.Empty(complaints);
    }

    [Theory]
    [InlineData("?at=91,0&span=5000")]
    [InlineData("?at=NaN,0")]
    [InlineData("?at=44.7")]
    [InlineData("?at=44.7,-67.1,3&span=500")]
    [InlineData("?at=44.7,-67.1&span=-5")]
    public async Task An_address_that_is_no_place_leaves_the_map_closed(string query)
    {
        await page.GotoAsync($"{host.Address}/map/paper/none{query}");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Open the map" })).ToBeVisibleAsync();
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Laid_over_the_page_it_is_put_away_by_escape_and_leaves_the_list_behind()
    {
        await OpenAsync("paper/none?over=true");
        await Expect(page.GetByRole(AriaRole.Dialog)).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Outer ledge", Exact = true }).PressAsync("Enter");
        await Expect(page.Locator(".leaflet-popup")).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator(".leaflet-popup")).ToHaveCountAsync(0);
        await Expect(page.GetByRole(AriaRole.Dialog)).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.GetByRole(AriaRole.Dialog)).ToHaveCountAsync(0);
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Open the map" })).ToBeFocusedAsync();
        await Expect(page.Locator("coast-map > details [data-item]")).ToHaveCountAsync(5);
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the map" }).ClickAsync();
        await Expect(page.Locator(".leaflet-container")).ToBeVisibleAsync();
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Leaves_nothing_behind_when_taken_out_of_the_page()
    {
        await OpenAsync("paper/none");
        await page.EvaluateAsync("document.querySelector('coast-map').remove()");
        await page.SetViewportSizeAsync(700, 700);
        await Expect(page.Locator(".leaflet-container")).ToHaveCountAsync(0);
        Assert.Empty(complaints);
    }

    [Theory]
    [InlineData("come")]
    [InlineData("fail")]
    public async Task By_lamp_there_is_red_alone(string tiles)
    {
        await OpenAsync($"lamp/{tiles}");
        await Expect(tiles == "come" ? page.Locator(".leaflet-tile-loaded").First : page.Locator("path.coast-land")).ToBeAttachedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Outer ledge", Exact = true }).PressAsync("Enter");
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        var picture = Convert.ToBase64String(await page.ScreenshotAsync());
        await using var reading = await chromium.Browser.NewContextAsync();
        var reader = await reading.NewPageAsync();
        var (red, other) = await Channels(reader, picture);
        Assert.Equal(0, other);
        Assert.True(red > 200, "Nothing is to be seen.");
    }

    [Theory]
    [InlineData(1280, "paper")]
    [InlineData(390, "slate")]
    public async Task Axe_finds_nothing(int width, string theme)
    {
        await page.SetViewportSizeAsync(width, 844);
        await OpenAsync($"{theme}/none");
        await Expect(page.Locator("path.coast-land")).ToBeAttachedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Outer ledge", Exact = true }).PressAsync("Enter");
        var found = await page.RunAxe();
        Assert.Empty(found.Violations.Select(v => $"{v.Id}: {v.Help} {string.Join(" | ", v.Nodes.Select(n => n.Html))}"));
    }

    [Fact]
    public async Task In_print_the_page_stands_without_the_map()
    {
        await OpenAsync("paper/come");
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await Expect(page.Locator("coast-map")).ToBeHiddenAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Skerry Head" })).ToBeVisibleAsync();
    }

    private async Task OpenAsync(string path)
    {
        await page.GotoAsync($"{host.Address}/map/{path}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the map" }).ClickAsync();
        await Expect(page.Locator(".leaflet-container")).ToBeVisibleAsync();
    }

    /// <summary>The greatest red, and the greatest green or blue, of a picture.</summary>
    private static async Task<(int Red, int Other)> Channels(IPage reader, string base64)
    {
        var found = await reader.EvaluateAsync<int[]>("""
            async picture => {
              const image = new Image();
              image.src = "data:image/png;base64," + picture;
              await image.decode();
              const canvas = new OffscreenCanvas(image.width, image.height).getContext("2d");
              canvas.drawImage(image, 0, 0);
              const { data } = canvas.getImageData(0, 0, image.width, image.height);
              let red = 0, other = 0;
              for (let i = 0; i < data.length; i += 4) {
                red = Math.max(red, data[i]);
                other = Math.max(other, data[i + 1], data[i + 2]);
              }
              return [red, other];
            }
            """, base64);
        return (found[0], found[1]);
    }
}
