using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Foreshore.Guide.Database;

/// <summary>How a <see cref="GuideDb"/> reaches PostgreSQL: one place for the site, the migrations and the tests.</summary>
public static class GuideConnection
{
    public static DbContextOptionsBuilder UseGuideDatabase(this DbContextOptionsBuilder options, string connectionString) =>
        options
            .UseNpgsql(connectionString, npgsql => npgsql
                .UseNodaTime()
                .SetPostgresVersion(15, 0)
                // A connection left in the pool by a restarted server fails once; the retry hides that from readers.
                .EnableRetryOnFailure(maxRetryCount: 3, maxRetryDelay: TimeSpan.FromSeconds(1), errorCodesToAdd: null))
            .UseSnakeCaseNamingConvention();

    public static IServiceCollection AddGuideDatabase(this IServiceCollection services, string connectionString) => services
        .AddSingleton(new DatabasePulse(connectionString))
        .AddSingleton<IInterceptor, DatabaseGate>()
        .AddDbContextFactory<GuideDb>((provider, options) => options
            .UseGuideDatabase(connectionString)
            .AddInterceptors(provider.GetServices<IInterceptor>()));

    /// <summary>The ring of keys that seals cookies and form tokens, kept with the data.</summary>
    public static IServiceCollection AddKeyRing(this IServiceCollection services)
    {
        services.AddDataProtection().SetApplicationName("Foreshore");
        KeyRing.Describe(services);
        return services;
    }

    /// <summary>For a site that serves: whether the database answers, and what is done where it does not.</summary>
    public static void WatchDatabase(this IServiceCollection services) => services
        .AddHostedService(provider => provider.GetRequiredService<DatabasePulse>())
        .AddHostedService(provider => new DatabaseWatch(
            provider.GetRequiredService<DatabasePulse>(), provider.GetRequiredService<ILogger<DatabaseWatch>>(), provider.GetService<EmbeddedCluster>()));

    public static GuideDb Open(string connectionString)
    {
        var options = new DbContextOptionsBuilder<GuideDb>();
        options.UseGuideDatabase(connectionString);
        return new GuideDb(options.Options);
    }
}

/// <summary>Lets <c>dotnet ef</c> build the model without starting the site; it never connects.</summary>
internal sealed class DesignTimeGuideDb : IDesignTimeDbContextFactory<GuideDb>
{
    public GuideDb CreateDbContext(string[] args) => GuideConnection.Open("Host=/nowhere;Database=foreshore");
}
