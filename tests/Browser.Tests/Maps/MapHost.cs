using Foreshore.Almanac.Earth;
using Foreshore.Guide.Access;
using Foreshore.Guide.Hosting;
using Foreshore.Guide.Maps;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Shell.Maps;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Logging;
using Xunit;

namespace Foreshore.Guide.Browser.Maps;

/// <summary>
/// A page with nothing but a map on it, and a tile server beside it that can be told to fail: the shipped tiles are on the
/// Internet, which no test needs. The policy is the site's own.
/// </summary>
public sealed class MapHost : IAsyncLifetime
{
    private WebApplication app = null!;

    public string Address { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Services.AddScoped<HtmlRenderer>();
        app = builder.Build();
        app.UseSecurityHeaders(new MapTiles(null, null, null));
        app.UseStaticFiles(new StaticFileOptions { FileProvider = new PhysicalFileProvider(Path.Combine(Root(), "wwwroot")) });
        app.MapCoastline();
        app.MapGet("/tiles/{answer}/{z}/{x}/{y}.svg", (string answer) => answer == "fail" ? Results.NotFound() : Results.Content(Tile, "image/svg+xml"));
        app.MapGet("/map/{theme}/{tiles}", (string theme, string tiles, bool? over, HttpContext http) => PageAsync(theme, tiles, over == true, http));
        await app.StartAsync();
        Address = app.Urls.Single();
    }

    public async ValueTask DisposeAsync() => await app.DisposeAsync();

    private const string Tile = """
        <svg xmlns="http://www.w3.org/2000/svg" width="256" height="256"><rect width="256" height="256" fill="#aad3df"/>
        <path d="M0,0H120L180,90L60,256H0Z" fill="#f2efe9"/><path d="M0,40L256,200" stroke="#e892a2" stroke-width="6"/></svg>
        """;

    private static readonly MapSheet Sheet = new("Skerry Head",
    [
        new("Hazards and closures", [new MapMark("hazard-1", MapMarkKind.Hazard, "Waves", null, "Severe. Breaks over the ledge.", new Position(44.6602, -67.1921), [], "severe")]),
        new("Vantage points",
        [
            new MapMark("stance-ledge", MapMarkKind.Stance, "Outer ledge", "/coast/skerry-head/outer-ledge", "Ledge.", new Position(44.6612, -67.1935), [new(112, 65)]),
            new MapMark("stance-turf", MapMarkKind.Stance, "Turf", "/coast/skerry-head/turf", "Closed now.", new Position(44.6630, -67.1962), [], "closed", true),
        ]),
        new("Ways in", [new MapWay("way-1", "Field path", null, "Walk, permissive.", [new Position(44.6690, -67.2080), new Position(44.6612, -67.1935)], LegalStatus.Permissive, false)]),
        new("Parking", [new MapMark("parking-1", MapMarkKind.Parking, "Head lot", null, "Gravel.", new Position(44.6691, -67.2085), [])]),
    ]);

    private static async Task<IResult> PageAsync(string theme, string tiles, bool over, HttpContext http)
    {
        var template = tiles == "none" ? null : $"/tiles/{tiles}/{{z}}/{{x}}/{{y}}.svg";
        var services = new ServiceCollection().AddLogging()
            .AddSingleton(new MapTiles(template, "© OpenStreetMap contributors", null)).BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, http.RequestServices.GetRequiredService<ILoggerFactory>());
        var patterns = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<InkPatterns>()).ToHtmlString());
        var map = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<CoastMap>(
            ParameterView.FromDictionary(new Dictionary<string, object?> { [nameof(CoastMap.Sheet)] = Sheet, [nameof(CoastMap.LaidOver)] = over }))).ToHtmlString());
        return Results.Content($"""
            <!DOCTYPE html><html lang="en" data-theme="{theme}"><head><meta charset="utf-8"><title>A map</title>
            <meta name="viewport" content="width=device-width, initial-scale=1"><link rel="icon" href="/icons/mark.svg"><link rel="stylesheet" href="/site.css"></head>
            <body>{patterns}<main><h1>Skerry Head</h1><h2>Map</h2>{map}</main></body></html>
            """, "text/html; charset=utf-8");
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Foreshore.slnx"))) folder = folder.Parent!;
        return folder.FullName;
    }
}
