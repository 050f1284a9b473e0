using System.Buffers.Binary;
using System.Text.RegularExpressions;
using Xunit;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>
/// README's pictures, of the demo guide at the tests' own time. With FORESHORE_WRITE_PICTURES=1 they are taken anew; look at
/// them before keeping them.
/// </summary>
public sealed partial class PictureTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int MostBytes = 200_000;
    private const string Composition = "/coast/halfmoon-light/high-edge/winter-sun-on-the-horizon";

    private static bool IsWriting => Environment.GetEnvironmentVariable("FORESHORE_WRITE_PICTURES") is "1";

    [Fact]
    public async Task The_weekend_board_on_a_desktop() =>
        await TakeAsync("weekend.png", Device.Desktop, "/weekend", scrollTo: null);

    [Fact]
    public async Task A_composition_on_a_phone() =>
        await TakeAsync("composition-phone.png", Device.Phone, Composition, scrollTo: "#seen");

    [Fact]
    public void README_shows_these_and_no_others()
    {
        var shown = Shown().Matches(WalkThrough.Readme).Select(match => match.Groups[1].Value);

        Assert.Equal(["composition-phone.png", "weekend.png"], shown.Order());
        Assert.Equal(shown.Order(), Directory.GetFiles(Folder).Select(Path.GetFileName).Order());
    }

    private static string Folder => Path.Combine(WalkThrough.Root, "docs/screenshots");

    private async Task TakeAsync(string name, Device device, string address, string? scrollTo)
    {
        var file = Path.Combine(Folder, name);
        if (IsWriting)
        {
            await using var visit = await site.VisitAsync(device, theme: "paper");
            await visit.Page.GotoAsync(address);
            if (scrollTo is not null)
                await visit.Page.EvaluateAsync("selector => document.querySelector(selector).scrollIntoView()", scrollTo);
            await visit.Page.ScreenshotAsync(new() { Path = file });
        }

        var picture = await File.ReadAllBytesAsync(file);
        Assert.InRange(picture.Length, 10_000, MostBytes);
        // Width and height stand at fixed places of a PNG's first chunk (ISO/IEC 15948, 11.2.2).
        Assert.Equal(device.Width, BinaryPrimitives.ReadInt32BigEndian(picture.AsSpan(16)));
        Assert.Equal(device.Height, BinaryPrimitives.ReadInt32BigEndian(picture.AsSpan(20)));
    }

    [GeneratedRegex(@"docs/screenshots/([\w-]+\.png)")]
    private static partial Regex Shown();
}
