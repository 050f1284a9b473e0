using System.Data.Common;
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
            var connection = db.Database.GetDbConnection();
            try
            {
                await AskAsync(connection, limit.Token);
            }
            catch (NpgsqlException)
            {
                // It may have been a connection from before a restart of the server; a new one decides.
                await connection.CloseAsync();
                await AskAsync(connection, limit.Token);
            }

            return HealthCheckResult.Healthy();
        }
        catch (Exception fault) when (fault is NpgsqlException or OperationCanceledException or TimeoutException)
        {
            return HealthCheckResult.Unhealthy();
        }
    }

    /// <summary>An open connection proves nothing: it may come from the pool. An answer does.</summary>
    private static async Task AskAsync(DbConnection connection, CancellationToken stop)
    {
        await connection.OpenAsync(stop);
        await using var question = connection.CreateCommand();
        question.CommandText = "SELECT 1";
        await question.ExecuteScalarAsync(stop);
    }
}
