using Foreshore.Guide.Browser;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Playwright;

namespace Foreshore.Guide.Shell;

/// <summary>Opens the specimen in a browser without a server: the sheet is rendered here, the style and the type come from the repository.</summary>
public sealed class SpecimenSheet(Chromium chromium)
{
    private const string Origin = "http://specimen.test";
    private static readonly string Root = RepositoryRoot();

    public async Task<IPage> OpenAsync(string? theme, int width, ColorScheme device = ColorScheme.Light)
    {
        var html = await RenderAsync(theme);
        var page = await chromium.Browser.NewPageAsync(new() { ViewportSize = new() { Width = width, Height = 900 }, ColorScheme = device });
        await page.RouteAsync("**/*", route => AnswerAsync(route, html));
        await page.GotoAsync(Origin + "/");
        await page.EvaluateAsync("() => document.fonts.ready.then(() => null)");
        return page;
    }

    private static async Task AnswerAsync(IRoute route, string html)
    {
        var path = new Uri(route.Request.Url).AbsolutePath;
        var file = Path.Combine(Root, "wwwroot", path.TrimStart('/'));
        if (path == "/")
            await route.FulfillAsync(new() { ContentType = "text/html; charset=utf-8", Body = html });
        else if (path == "/many-colours.svg")
            await route.FulfillAsync(new() { ContentType = "image/svg+xml", Body = ManyColours });
        else if (File.Exists(file))
            await route.FulfillAsync(new() { Path = file });
        else
            await route.FulfillAsync(new() { Status = 404 });
    }

    private static async Task<string> RenderAsync(string? theme)
    {
        await using var services = new ServiceCollection().AddSingleton<NavigationManager, Here>().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<Specimen>(ParameterView.FromDictionary(new Dictionary<string, object?> { [nameof(Specimen.ThemeName)] = theme }))).ToHtmlString());
    }

    private const string ManyColours =
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 3 1'><path fill='#1F6F78' d='M0 0h1v1H0z'/><path fill='#fff' d='M1 0h1v1H1z'/><path fill='#00f' d='M2 0h1v1H2z'/></svg>";

    private static string RepositoryRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Foreshore.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("No folder above the tests holds Foreshore.slnx.");
    }

    private sealed class Here : NavigationManager
    {
        public Here() => Initialize(Origin + "/", Origin + "/");
    }
}
