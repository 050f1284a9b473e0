using System.Net.Sockets;
using System.Runtime.InteropServices;
using Foreshore.Guide.Database;
using Foreshore.Guide.Demo;
using Foreshore.Guide.Mail;
using Foreshore.Guide.Members;
using Foreshore.Guide.Photos;
using Foreshore.Guide.Running;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;

namespace Foreshore.Guide.Hosting;

/// <summary>What the program can be asked to do. Settings follow as <c>--Name:Part=value</c>.</summary>
internal static class Verbs
{
    private const string Usage = """
        foreshore [serve]   serve the guide (the default)
        foreshore migrate   bring the database's tables up to date
        foreshore demo      load the demo guide into an empty database
        foreshore reset     throw the embedded database away
        foreshore backup F  back the embedded database up into the new file F, while the site runs or not
        foreshore restore F put the backup in file F in the place of the embedded database; the site must be stopped
        foreshore forget D  erase again who is noted in folder D, after a server of one's own was restored
        foreshore link R    print a link that makes one account of role R: member, warden or admin
        foreshore parts     list every library inside, as CycloneDX
        foreshore healthy   ask the site on this machine whether it is well (for containers)
        foreshore ingest    make a photo anew, from standard input to standard output (the site asks this of itself)

        Settings follow as --Name=value; DEVELOPERS.md lists them all.
        """;

    private static readonly string[] ToldOnceStarted = ["Microsoft.Extensions.Hosting.Internal.Host", "Microsoft.AspNetCore.Server.Kestrel"];

    public static async Task<int> RunAsync(string[] line)
    {
        var (verb, settings) = line is [var first, .. var rest] && !first.StartsWith('-') ? (first, rest) : ("serve", line);
        try
        {
            switch (verb)
            {
                case "serve":
                    await ServeAsync(settings);
                    return 0;
                case "migrate":
                    await MigrateAsync(Settings(settings));
                    return 0;
                case "demo":
                    await LoadDemoAsync(Settings(settings));
                    return 0;
                case "link":
                    await LinkPrinter.PrintAsync(settings is [var role, ..] ? role : "", Settings([.. settings.Skip(1)]));
                    return 0;
                case IngestVerb.Name:
                    return IngestVerb.Run(Console.OpenStandardInput(), Console.OpenStandardOutput(), Console.OpenStandardError());
                case "parts":
                    Console.WriteLine(BillOfMaterials.Text());
                    return 0;
                case "healthy":
                    return await SelfCheck.IsHealthyAsync(Settings(settings)) ? 0 : 1;
                case "reset":
                    await EmbeddedCluster.RemoveAsync(GuideServer.EmbeddedOptions(Settings(settings)));
                    return 0;
                case "backup":
                    var taken = WebApplication.CreateBuilder([.. settings.Skip(1)]);
                    await BackupVerbs.BackUpAsync(settings.FirstOrDefault() ?? "", taken.Configuration, taken.Environment.ContentRootPath);
                    return 0;
                case "restore":
                    await BackupVerbs.RestoreAsync(settings.FirstOrDefault() ?? "", Settings([.. settings.Skip(1)]));
                    return 0;
                case "forget":
                    await BackupVerbs.ForgetAsync(settings.FirstOrDefault() ?? "", Settings([.. settings.Skip(1)]));
                    return 0;
                case "help":
                    Console.WriteLine(Usage);
                    return 0;
                default:
                    Console.Error.WriteLine($"foreshore cannot \"{verb}\".\n{Usage}");
                    return 2;
            }
        }
        catch (OperatorException fault)
        {
            Console.Error.WriteLine($"foreshore: {fault.What}\n{fault.Todo}");
            return 1;
        }
        catch (IOException fault) when (fault.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException or SocketException)
        {
            Console.Error.WriteLine($"foreshore: {fault.Message}\nAnother program listens there: stop it, or give another port.");
            return 1;
        }
        catch (NpgsqlException fault)
        {
            Console.Error.WriteLine($"foreshore: the database does not answer as it should ({fault.Message}).\nCheck that it runs and that the connection string is right.");
            return 1;
        }
        catch (Exception fault) when (fault is not (OperationCanceledException or HostAbortedException))
        {
            // One line for whoever looks, then all of it for whoever mends it.
            Console.Error.WriteLine($"foreshore: \"{verb}\" did not succeed: {OneLineConsole.Plain(fault.Message)}\n{fault}");
            return 1;
        }
    }

    private static async Task ServeAsync(string[] settings)
    {
        var builder = WebApplication.CreateBuilder(settings);
        if (EF.IsDesignTime)
        {
            // dotnet ef builds the site to look for its services: it gets them without a database.
            builder.AddSite("Host=/nowhere;Database=foreshore");
            await using var unused = builder.Build();
            return;
        }

        // A setting that cannot be used is told before anything is started for it.
        MapTiles.From(builder.Configuration);
        MailServer.From(builder.Configuration, SiteAddress.From(builder.Configuration));
        if (NamedProxies.DoubtAbout(builder.Configuration) is { } doubtful)
            Console.Error.WriteLine($"foreshore: {doubtful}");
        RequestLimits.From(builder.Configuration);
        var printer = LinkPrinter.From(builder.Configuration);
        // What keeps the site from starting is told in one line at the end of this file, not in the framework's trace before it.
        var hasStarted = false;
        foreach (var category in ToldOnceStarted)
            builder.Logging.AddFilter(category, level => hasStarted && level >= LogLevel.Warning);
        await using var server = await GuideServer.OpenAsync(builder.Configuration);
        if (server.IsEmbedded)
            await server.MigrateAsync();
        else
            await Schema.RefuseUnlessCurrentAsync(server.AppConnection);

        if (server.IsEmbedded && builder.Configuration.GetValue("Demo:Load", true))
            await LoadDemoAsync(server);

        builder.Services.AddSingleton(SiteKey.From(builder.Configuration, server.IsEmbedded ? server.Place : null));
        builder.AddSite(server.AppConnection);
        if (server.Embedded is { } embedded)
            builder.Services.AddSingleton(embedded).AddSingleton(new ErasureNotes(embedded.DataDirectory));
        else if (builder.Configuration["Database:Erasures"] is { Length: > 0 } noted)
            builder.Services.AddSingleton(new ErasureNotes(noted));
        await using var app = builder.Build();
        app.UseSite();
        app.Lifetime.ApplicationStarted.Register(() => hasStarted = true);
        app.Lifetime.ApplicationStarted.Register(() =>
            Console.WriteLine($"Foreshore is at {string.Join(" and ", app.Urls)} (Ctrl-C stops it); its data are in {server.Place}"));
        if (await app.Services.GetRequiredService<AuthenticatorSeal>().SealAllAsync(app.Services.GetRequiredService<IDbContextFactory<GuideDb>>()) is { } doubt)
            Console.Error.WriteLine($"foreshore: {doubt}");
        await printer.PrepareAsync(app.Services);
        app.Lifetime.ApplicationStarted.Register(() => printer.Print(app.Urls.First()));
        // A closed terminal ends the site in good order too.
        using var closedTerminal = PosixSignalRegistration.Create(PosixSignal.SIGHUP, signal =>
        {
            signal.Cancel = true;
            app.Lifetime.StopApplication();
        });
        await app.RunAsync();
    }

    private static async Task MigrateAsync(IConfiguration settings)
    {
        await using var server = await GuideServer.OpenAsync(settings);
        await server.MigrateAsync();
        Console.WriteLine("The database is up to date.");
    }

    private static async Task LoadDemoAsync(IConfiguration settings)
    {
        await using var server = await GuideServer.OpenAsync(settings);
        if (server.IsEmbedded)
            await server.MigrateAsync();
        Console.WriteLine(await LoadDemoAsync(server) ? "The demo guide is loaded." : "The database is not empty: nothing was loaded.");
    }

    private static async Task<bool> LoadDemoAsync(GuideServer server)
    {
        await using var db = GuideConnection.Open(server.AppConnection);
        return await DemoGuide.LoadAsync(db, SystemClock.Instance);
    }

    private static ConfigurationManager Settings(string[] settings) => WebApplication.CreateBuilder(settings).Configuration;
}
