using Foreshore.Guide.Browser;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Foreshore.Guide.Contributions;

/// <summary>Back in Chromium brings a form with its old number. A second report from there is a second report, with and without script.</summary>
public sealed class BackButtonTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_second_hazard_after_going_back_is_stored_beside_the_first(bool javaScript)
    {
        await using var visit = await site.VisitAsync(Device.Phone, javaScript, role: Role.Member);
        var page = visit.Page;
        var (first, second) = ($"Foam on the boards, {javaScript}.", $"A plank is gone, {javaScript}.");
        await page.GotoAsync("/contribute/hazard?place=tern-bank");
        var number = await page.Locator("input[name=form-id]").InputValueAsync();
        await ReportAsync(page, first);

        foreach (var text in javaScript ? (string[])[second, second, first] : [second])
        {
            await page.GoBackAsync();
            // People's browsers keep the whole page for the way back, its number too; the driver's loads it anew.
            if (javaScript)
                await page.Locator("input[name=form-id]").EvaluateAsync("(field, number) => { field.value = number; }", number);
            await ReportAsync(page, text);
        }

        Assert.Equal([second, first], await TextsAsync(javaScript));
    }

    [Fact]
    public async Task Two_taps_on_the_button_make_one()
    {
        await using var visit = await site.VisitAsync(Device.Phone, javaScript: false, role: Role.Member);
        await visit.Page.GotoAsync("/contribute/hazard?place=tern-bank");
        await FillAsync(visit.Page, "Tapped twice.");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Report it" }).DblClickAsync();
        await Expect(visit.Page.Locator("#hazards")).ToBeVisibleAsync(new() { Timeout = 20_000 });

        await using var db = site.Open();
        Assert.Equal(1, await db.HazardNotes.CountAsync(n => n.Text == "Tapped twice."));
    }

    [Fact]
    public async Task A_second_change_and_a_second_spot_after_going_back_are_their_own()
    {
        await using var visit = await site.VisitAsync(Device.Desktop, role: Role.Member);
        var page = visit.Page;
        await using var db = site.Open();
        var stance = await db.VantagePoints.SingleAsync(v => v.Slug == "church-hill");
        await page.GotoAsync($"/contribute/change/stance/{stance.Id}");
        foreach (var name in (string[])["Chapel rise", "Chapel brow"])
        {
            await page.Locator("#name").FillAsync(name);
            await page.GetByRole(AriaRole.Button, new() { Name = "Send to the wardens" }).ClickAsync();
            await Expect(page.Locator(".done")).ToBeVisibleAsync();
            await page.GoBackAsync();
        }
        Assert.Equal(["Chapel brow", "Chapel rise"], (await db.Proposals.Where(p => p.TargetId == stance.Id && p.State == ProposalState.Sent).ToListAsync()).Select(p => p.Given["name"]).Order());

        await page.Context.GrantPermissionsAsync(["geolocation"]);
        await page.GotoAsync("/contribute");
        List<string> drafts = [];
        foreach (var latitude in (float[])[44.7716f, 44.9f])
        {
            await page.Context.SetGeolocationAsync(new Geolocation { Latitude = latitude, Longitude = -67.0649f, Accuracy = 7 });
            await page.GetByRole(AriaRole.Button, new() { Name = "Mark the spot" }).ClickAsync();
            await page.WaitForURLAsync("**/contribute/stance/**");
            drafts.Add(page.Url);
            await page.GoBackAsync();
        }
        Assert.Equal(2, drafts.Distinct().Count());
    }

    private static async Task ReportAsync(IPage page, string text)
    {
        await FillAsync(page, text);
        await page.GetByRole(AriaRole.Button, new() { Name = "Report it" }).ClickAsync();
        await page.WaitForURLAsync("**/coast/tern-bank?reported**");
    }

    private static async Task FillAsync(IPage page, string text)
    {
        await page.Locator("#kind").SelectOptionAsync("Slip");
        await page.Locator("input[name='f.severity'][value='2']").CheckAsync();
        await page.Locator("#text").FillAsync(text);
    }

    private async Task<List<string>> TextsAsync(bool javaScript)
    {
        await using var db = site.Open();
        var ending = $", {javaScript}.";
        return await db.HazardNotes.Where(n => n.Text.EndsWith(ending)).Select(n => n.Text).OrderBy(text => text).ToListAsync();
    }
}
