using Foreshore.Guide.Api;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Database;
using Foreshore.Guide.Elevation;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Mail;
using Foreshore.Guide.Members;
using Foreshore.Guide.Photos;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Shell.Maps;
using Foreshore.Guide.Tides;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using NodaTime;

namespace Foreshore.Guide.Hosting;

/// <summary>What the site is made of, and the order in which a request passes through it.</summary>
internal static class Site
{
    /// <summary>This machine alone: a proxy or a setting opens the site to others.</summary>
    private const string DefaultAddress = "http://localhost:5080";
    private static readonly string[] AddressSettings = ["urls", "http_ports", "https_ports"];
    private const string WatchAssets = "ReloadStaticAssetsAtRuntime";
    private const int MostBytesPosted = 1 << 20;

    public static void AddSite(this WebApplicationBuilder builder, string connectionString)
    {
        builder.WebHost.UseStaticWebAssets();
        // A build that was not published would look at its files again for every answer, and let nobody keep them.
        if (!builder.Environment.IsDevelopment())
            builder.Configuration[WatchAssets] = "false";
        if (AddressSettings.All(setting => builder.Configuration[setting] is null))
            builder.WebHost.UseUrls(DefaultAddress);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBytesPosted;
        });

        var services = builder.Services;
        services.TryAddSingleton<IClock>(SystemClock.Instance);
        services.AddSingleton<SharedSky>();
        services.AddSingleton<LightCache>();
        services.AddSingleton<PictureLight>();
        services.AddSingleton<SkylineQueue>();
        services.AddHostedService(provider => provider.GetRequiredService<SkylineQueue>());
        services.AddSingleton<CoastRows>();
        services.AddSingleton<TideCurves>();
        services.AddSingleton(MapTiles.From(builder.Configuration));
        services.AddGuideDatabase(connectionString);
        services.WatchDatabase();
        services.AddDataProtection().SetApplicationName("Foreshore").PersistKeysToDbContext<GuideDb>();
        services.AddHealthChecks().AddCheck<DatabaseCheck>("database");
        services.AddProblemDetails();
        services.AddPageCompression();
        services.AddReadApi();
        services.AddRazorComponents();
        services.AddContributions();
        services.AddPhotos();
        services.AddSingleton<MastheadQueries>();
        services.AddAntiforgery();
        var address = SiteAddress.From(builder.Configuration);
        services.AddMembership(address);
        var mail = MailServer.From(builder.Configuration, address);
        services.AddSingleton(provider => new Postbox(mail, provider.GetRequiredService<ILogger<Postbox>>()));
        services.AddHsts(options => (options.MaxAge, options.IncludeSubDomains) = (TimeSpan.FromDays(365), true));
    }

    public static void UseSite(this WebApplication app)
    {
        ZoneTables.WarnIfOlder(app.Logger);
        app.UseNamedProxies();
        app.UseSecurityHeaders(app.Services.GetRequiredService<MapTiles>());
        app.UseResponseCompression();
        app.UseHeadRequests();
        if (!app.Environment.IsDevelopment())
            app.UseHsts();
        app.UseStatusPages();
        app.UseRouting();
        app.UseMembership();
        app.UseAntiforgery();
        app.UseUnreadForms();

        app.MapStaticAssets().AllowAnonymous();
        app.MapRazorComponents<App>();
        app.MapThemes();
        app.MapCoastline();
        app.MapSketches();
        app.MapOwnExport();
        app.MapContributions();
        app.MapPhotos();
        app.MapReadApi();
        app.MapOpenApi();
        app.MapHealthChecks("/health").AllowAnonymous();
    }
}
