using System.Text.Json;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Browser;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Foreshore.Guide.Contributions;

/// <summary>The form on a headland: no signal, a killed tab, no leave for sensors, no script, somebody else at the same thing.</summary>
public sealed class OnTheCoastTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    [Fact]
    public async Task Without_signal_in_mid_form_nothing_typed_is_lost_and_it_is_sent_once()
    {
        await using var visit = await site.VisitAsync(Device.Phone, role: Role.Member);
        var page = visit.Page;
        await BeginAsync(page);
        await page.Context.SetOfflineAsync(true);
        await page.EvaluateAsync("window.dispatchEvent(new Event('offline'))");
        await FillAsync(page, "Kelp gully");
        await ShowAsync(page, "send");
        await page.GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).ClickAsync();
        await Expect(page.Locator("#draft-status")).ToContainTextAsync("No signal. Everything is kept in this browser");

        // The tab is killed; another one is opened on the same phone, with signal.
        var address = page.Url;
        await page.CloseAsync();
        await visit.Page.Context.SetOfflineAsync(false);
        var again = await visit.Page.Context.NewPageAsync();
        await again.GotoAsync(address);
        await Expect(again.Locator("#name")).ToHaveValueAsync("Kelp gully");
        await ShowAsync(again, "send");
        await again.GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).ClickAsync();
        await Expect(again.Locator(".done")).ToContainTextAsync("Kelp gully");

        await using var db = site.Open();
        var id = Guid.Parse(address.Split('/')[^1]);
        Assert.Equal(ProposalState.Sent, (await db.Proposals.SingleAsync(p => p.Id == id)).State);
        Assert.Null(await again.EvaluateAsync<string?>($"localStorage.getItem('draft:{id}')"));
    }

    [Fact]
    public async Task Turning_on_the_spot_takes_reading_declination_and_true_facing()
    {
        await using var visit = await site.VisitAsync(Device.Desktop, role: Role.Member);
        var page = visit.Page;
        await BeginAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Turn on the spot" }).ClickAsync();
        await Expect(page.Locator("[data-live=facing]")).ToContainTextAsync("Point the back of the phone where the picture faces.");
        // Upright, as one holds it to take a picture: alpha 0 and beta 90 point the back of the phone to magnetic north; alpha turns leftwards.
        await page.EvaluateAsync("window.dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { absolute: true, alpha: 250, beta: 90, gamma: 0 }))");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take this reading: compass 110°" }).ClickAsync();

        var declination = MagneticField.On(new NodaTime.LocalDate(2026, 11, 25), new Foreshore.Almanac.Earth.Position(44.7716, -67.0649))!.Value.DeclinationDegrees;
        await Expect(page.Locator("#picture-compass")).ToHaveValueAsync("110");
        await Expect(page.Locator("#picture-declination")).ToHaveValueAsync(FormattableString.Invariant($"{Math.Round(declination, 1):0.#}"));
        await Expect(page.Locator("#picture-facing")).ToHaveValueAsync(FormattableString.Invariant($"{Math.Round(110 + Math.Round(declination, 1), MidpointRounding.AwayFromZero):0}"));
    }

    [Fact]
    public async Task The_modules_frame_is_the_almanacs()
    {
        await using var visit = await site.VisitAsync(Device.Desktop, role: Role.Member);
        await BeginAsync(visit.Page);
        foreach (var (facing, tilt, focal) in ((double, double, double)[])[(118, 0, 24), (3, 12, 14), (251.5, -8, 85)])
        {
            var frame = new Frame(Bearing.FromDegrees(facing), tilt, new Lens(focal, Sensor.FullFrame, Orientation.Landscape));
            for (var azimuth = 0; azimuth < 360; azimuth += 17)
                for (var altitude = -20; altitude <= 60; altitude += 16)
                {
                    var drawn = await visit.Page.EvaluateAsync<JsonElement?>(
                        "async ([address, lens, azimuth, altitude]) => (await import(address)).project(lens, azimuth, altitude) ?? null",
                        new object[] { await visit.Page.Locator("script[data-live]").GetAttributeAsync("data-live") ?? "", new { facing, tilt, focal }, azimuth, altitude });
                    var computed = frame.Project(azimuth, altitude);
                    Assert.Equal(computed is null, drawn is null or { ValueKind: JsonValueKind.Null });
                    if (computed is { } point && Math.Abs(point.XMm) < 1e4 && Math.Abs(point.YMm) < 1e4)
                    {
                        Assert.Equal(point.XMm, drawn!.Value[0].GetDouble(), 1e-6 * Math.Max(1, Math.Abs(point.XMm)));
                        Assert.Equal(point.YMm, drawn.Value[1].GetDouble(), 1e-6 * Math.Max(1, Math.Abs(point.YMm)));
                    }
                }
        }
    }

    [Fact]
    public async Task Without_leave_or_script_the_spot_is_typed()
    {
        await using var refused = await site.VisitAsync(Device.Phone, role: Role.Member);
        await refused.Page.GotoAsync("/contribute");
        await refused.Page.GetByRole(AriaRole.Button, new() { Name = "Mark the spot" }).ClickAsync();
        await refused.Page.WaitForURLAsync("**/contribute/stance/**");
        await Expect(refused.Page.Locator("#position")).ToHaveValueAsync("");

        await using var plain = await site.VisitAsync(Device.Phone, javaScript: false, role: Role.Member);
        var page = plain.Page;
        await page.GotoAsync("/contribute");
        await page.GetByRole(AriaRole.Button, new() { Name = "Mark the spot" }).ClickAsync();
        await page.Locator("#position").FillAsync("44.7716, -67.0649");
        await FillAsync(page, "Typed by hand");
        await page.GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).ClickAsync();
        await Expect(page.Locator(".done")).ToContainTextAsync("Typed by hand");
        await page.GotoAsync("/contribute/hazard?place=tern-bank");
        await page.Locator("#kind").SelectOptionAsync(new SelectOptionValue { Label = "waves" });
        await page.GetByText("4 – severe").ClickAsync();
        await page.Locator("#text").FillAsync("Sets over the pavilion bank.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Report it" }).ClickAsync();
        await Expect(page.Locator(".stop-bar").First).ToContainTextAsync("Sets over the pavilion bank. Reported, not yet checked.");
    }

    [Fact]
    public async Task Two_wardens_on_one_proposal_see_what_the_other_did()
    {
        await using var member = await site.VisitAsync(Device.Desktop, role: Role.Member);
        await BeginAsync(member.Page);
        await FillAsync(member.Page, "Twice looked at");
        await member.Page.GetByRole(AriaRole.Button, new() { Name = "Send", Exact = true }).ClickAsync();
        await Expect(member.Page.Locator(".done")).ToBeVisibleAsync();
        await using var one = await site.VisitAsync(Device.Desktop, role: Role.Warden);
        await using var other = await site.VisitAsync(Device.Phone, role: Role.Warden);
        foreach (var page in new[] { one.Page, other.Page })
        {
            await page.GotoAsync("/queue?kind=proposal");
            await page.GetByRole(AriaRole.Link, new() { Name = "New vantage point: Twice looked at" }).ClickAsync();
        }

        await one.Page.GetByRole(AriaRole.Button, new() { Name = "Accept" }).ClickAsync();
        await Expect(one.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Twice looked at");
        await other.Page.GetByLabel("Words to the proposer").FillAsync("It is there already");
        await other.Page.GetByRole(AriaRole.Button, new() { Name = "Decline" }).ClickAsync();
        await Expect(other.Page.Locator("main")).ToContainTextAsync("accepted");
        await using var db = site.Open();
        Assert.Equal(1, await db.VantagePoints.CountAsync(v => v.Name == "Twice looked at"));
    }

    private static async Task BeginAsync(IPage page)
    {
        await page.Context.SetGeolocationAsync(new Geolocation { Latitude = 44.7716f, Longitude = -67.0649f, Accuracy = 7 });
        await page.Context.GrantPermissionsAsync(["geolocation", "accelerometer", "gyroscope", "magnetometer"]);
        await page.GotoAsync("/contribute");
        await page.GetByRole(AriaRole.Button, new() { Name = "Mark the spot" }).ClickAsync();
        await page.WaitForURLAsync("**/contribute/stance/**");
        await Expect(page.Locator("#turn")).ToHaveCountAsync(1);
    }

    /// <summary>The least that is needed; hidden questions of a phone are shown one by one.</summary>
    private static async Task FillAsync(IPage page, string name)
    {
        await ShowAsync(page, "where");
        await page.Locator("#kind").SelectOptionAsync("Ledge");
        await page.Locator("#footing").SelectOptionAsync("Steady");
        await ShowAsync(page, "facing");
        await page.Locator("#picture-facing").FillAsync("118");
        await ShowAsync(page, "light");
        await page.GetByLabel("golden light").CheckAsync();
        await ShowAsync(page, "name");
        await page.Locator("#name").FillAsync(name);
        await page.Locator("#summary").FillAsync("A gully with kelp in it");
        await ShowAsync(page, "place");
        await page.Locator("#place").SelectOptionAsync("long-slip");
    }

    private static async Task ShowAsync(IPage page, string step)
    {
        for (var i = 0; i < 12 && !await page.Locator($"#step-{step} h2").IsVisibleAsync(); i++)
            await page.Locator(".step:not([hidden]) .step-bar").GetByRole(AriaRole.Button, new() { Name = "Next" }).ClickAsync();
    }
}
