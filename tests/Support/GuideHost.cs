using Foreshore.Guide.Database;
using Foreshore.Guide.Hosting;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Testing;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Support;

/// <summary>The real site on a database of its own, at a time that stands still, with its commands counted.</summary>
public class GuideHost(TestCluster cluster, bool withDemo, bool onRealPort = false) : WebApplicationFactory<Program>, IAsyncLifetime
{
    public static readonly Instant UsualNow = Instant.FromUtc(2026, 11, 25, 12, 0);

    public FakeClock Clock { get; } = new(UsualNow);
    public CommandCounter Commands { get; } = new();
    public LogLines Log { get; } = new();
    public TestDatabase Database { get; private set; } = null!;

    /// <summary>Keeps to one address: a redirect is an answer to look at.</summary>
    public HttpClient Client { get; private set; } = null!;

    public virtual async ValueTask InitializeAsync()
    {
        Database = await PrepareAsync();
        if (!onRealPort)
        {
            Client = CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });
            return;
        }

        // Kestrel itself: for browsers, and where limits and headers of the server are asked about.
        UseKestrel(0);
        StartServer();
        Client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = ClientOptions.BaseAddress };
    }

    /// <summary>A copy of one's own.</summary>
    protected virtual async Task<TestDatabase> PrepareAsync() => await cluster.CreateAsync(withDemo);

    /// <summary>What an operator could do to the tables, and the site cannot.</summary>
    public async Task RunAsOwnerAsync(string statement)
    {
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(Database.OwnerConnection) { Pooling = false }.ConnectionString);
        await connection.OpenAsync();
#pragma warning disable CA2100 // Statements of tests alone.
        await using var command = new NpgsqlCommand(statement, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>With the rights the site has.</summary>
    public GuideDb Open() => GuideConnection.Open(Database.AppConnection);

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Production");
        builder.UseSetting("ConnectionStrings:Guide", Database.AppConnection);
        builder.UseSetting("Site:KeyFile", Path.Combine(AppContext.BaseDirectory, "tests.key"));
        // All tests come from one address, faster than people: what limits them is asked about by tests of its own.
        foreach (var limit in new[] { "Pages", "Api", "Forms", "SignIns" })
            builder.UseSetting($"Limits:{limit}", "0");
        foreach (var (name, value) in Settings)
            builder.UseSetting(name, value);
        builder.ConfigureServices(services =>
        {
            services.AddSingleton<IClock>(Clock);
            services.AddSingleton<IInterceptor>(Commands);
            services.AddSingleton<ILoggerProvider>(Log);
            // What the shipped settings leave to the log of the failed request, the tests want to see where nobody logs that either.
            services.AddLogging(logging => logging.AddFilter<LogLines>("Microsoft.EntityFrameworkCore", LogLevel.Error)
                .AddFilter<LogLines>("Microsoft.EntityFrameworkCore.Query", LogLevel.Error)
                .AddFilter<LogLines>("Microsoft.EntityFrameworkCore.Database.Connection", LogLevel.Error));
            // What a test counts is what it asked for.
            if (!WarmsItself && services.SingleOrDefault(each => each.ImplementationType == typeof(Warming)) is { } warming)
                services.Remove(warming);
        });
    }

    /// <summary>Whether the site asks itself for its first pages, as it does when it is run.</summary>
    protected virtual bool WarmsItself => false;

    /// <summary>What differs from the shipped settings.</summary>
    protected virtual IEnumerable<(string Name, string Value)> Settings => [];

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await Database.DisposeAsync();
        GC.SuppressFinalize(this);
    }
}

/// <summary>Class fixture: the site with nothing in it.</summary>
public sealed class EmptyGuide(TestCluster cluster) : GuideHost(cluster, withDemo: false);

/// <summary>Class fixture: the site with the demo guide, loaded at <see cref="GuideHost.UsualNow"/>.</summary>
public sealed class DemoGuideSite(TestCluster cluster) : GuideHost(cluster, withDemo: true);

/// <summary>Another run of the site on a database that a first one had; it leaves it there.</summary>
public sealed class SecondSite(TestCluster cluster, TestDatabase database) : GuideHost(cluster, withDemo: false)
{
    protected override Task<TestDatabase> PrepareAsync() => Task.FromResult(database);
}

/// <summary>Class fixture: a migrated database without a site.</summary>
public sealed class GuideDatabase(TestCluster cluster) : IAsyncLifetime
{
    public TestDatabase Database { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Database = await cluster.CreateAsync();

    public GuideDb Open() => GuideConnection.Open(Database.AppConnection);

    public async ValueTask DisposeAsync() => await Database.DisposeAsync();
}
