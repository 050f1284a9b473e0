using System.Buffers.Binary;
using Deque.AxeCore.Playwright;
using Foreshore.Guide.Browser;
using Foreshore.Guide.Members;
using Microsoft.Playwright;
using Xunit;

namespace Foreshore.Guide.Tides;

/// <summary>Forms of tides and heights in the states that a first look does not show: with faults, and in their second step.</summary>
public sealed class AddStationTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private static readonly Device Narrow = new(320, 700, true);

    /// <summary>No blank to break it at.</summary>
    private static readonly string LongLine = "https://example.org/" + new string('w', 160);

    [Fact]
    public async Task A_station_is_mended_looked_at_changed_and_saved_without_script_on_the_narrowest_screen()
    {
        await using var visit = await site.VisitAsync(Narrow, javaScript: false, role: Role.Admin);
        var page = visit.Page;
        await page.GotoAsync("/admin/tides/new");
        foreach (var (field, value) in new[] { ("#name", "Pole at the wharf"), ("#id", "narrow-pole"), ("#latitude", "91"), ("#longitude", LongLine), ("#mean-sea-level", "2.1"), ("#attribution", LongLine) })
            await page.FillAsync(field, value);
        await page.FillAsync("#rows", "constituent;amplitude;phase\nM2;2,1;98,4\nS2;0,3;140\n");
        await page.ClickAsync("button[value=look]");
        await FitsAsync(page);
        Assert.Contains("latitude between -90 and 90", await page.InnerTextAsync("#latitude-fault"), StringComparison.Ordinal);

        await page.FillAsync("#latitude", "44,65");
        await page.FillAsync("#longitude", "-67,25");
        await page.ClickAsync("button[value=look]");
        await FitsAsync(page);
        Assert.Equal("As it would be", await page.InnerTextAsync("#look h2"));

        await page.ClickAsync("button[value=change]");
        Assert.Contains("M2;2,1;98,4", await page.InputValueAsync("#rows"), StringComparison.Ordinal);
        await page.ClickAsync("button[value=look]");
        await page.ClickAsync("button[value=keep]");
        Assert.Contains("/admin/tides?stored", page.Url, StringComparison.Ordinal);
        Assert.Contains("club/narrow-pole", await page.InnerTextAsync("#club"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("paper")]
    [InlineData("slate")]
    public async Task Axe_finds_nothing_on_the_second_step_nor_among_faults_and_stored_files(string theme)
    {
        await using var visit = await site.VisitAsync(Device.Phone, theme: theme, role: Role.Admin);
        var page = visit.Page;
        await page.GotoAsync("/admin/tides/new");
        await page.FillAsync("#rows", "constituent,amplitude,phase\nM2,-1,98\nNOPE,1,2\n");
        await page.ClickAsync("button[value=look]");
        await AxeAsync(page);
        foreach (var (field, value) in new[] { ("#name", "Lower lock"), ("#id", $"axe-{theme}"), ("#latitude", "47"), ("#longitude", "8.5"), ("#mean-sea-level", "2.1"), ("#attribution", "The club"), ("#rows", "constituent,amplitude,phase\nM2,1,98\n") })
            await page.FillAsync(field, value);
        await page.ClickAsync("button[value=look]");
        await AxeAsync(page);
        await FitsAsync(page);

        await page.GotoAsync("/admin/elevation");
        await page.SetInputFilesAsync("#file", new FilePayload { Name = "N44W067.hgt", MimeType = "application/octet-stream", Buffer = [1, 2, 3] });
        await page.ClickAsync("text=Store the file");
        Assert.Contains("cut short", await page.InnerTextAsync("#file-fault"), StringComparison.Ordinal);
        await AxeAsync(page);
        await page.SetInputFilesAsync("#file", new FilePayload { Name = "N44W067.hgt", MimeType = "application/octet-stream", Buffer = Flat(30) });
        await page.ClickAsync("text=Store the file");
        Assert.Contains("N44W067.hgt", await page.InnerTextAsync("table"), StringComparison.Ordinal);
        await AxeAsync(page);
        await FitsAsync(page);
    }

    private static byte[] Flat(short metres)
    {
        var bytes = new byte[1201 * 1201 * 2];
        for (var i = 0; i < bytes.Length; i += 2) BinaryPrimitives.WriteInt16BigEndian(bytes.AsSpan(i), metres);
        return bytes;
    }

    private static async Task FitsAsync(IPage page)
    {
        Assert.Equal("", await page.PastTheEdgeAsync());
        await page.SpreadLettersAsync();
        Assert.Equal("", await page.PastTheEdgeAsync());
    }

    private static async Task AxeAsync(IPage page) =>
        Assert.Empty((await page.RunAxe()).Violations.Select(v => $"{v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Select(n => n.Html).Take(4))}"));
}
