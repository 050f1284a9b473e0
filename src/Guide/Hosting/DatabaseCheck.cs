using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Npgsql;

namespace Foreshore.Guide.Hosting;

/// <summary><c>/health</c>: the site answers and reaches its database within two seconds. Says nothing about why not.</summary>
internal sealed class DatabaseCheck(IDbContextFactory<GuideDb> database) : IHealthCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(Patience);
        try
        {
            await using var db = await database.CreateDbContextAsync(limit.Token);
            // Past the retries of the context: a probe wants to know how things stand now.
            await db.Database.GetDbConnection().OpenAsync(limit.Token);
            return HealthCheckResult.Healthy();
        }
        catch (Exception fault) when (fault is NpgsqlException or OperationCanceledException or TimeoutException)
        {
            return HealthCheckResult.Unhealthy();
        }
    }
}
