using Foreshore.Guide.Database;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Foreshore.Guide.Hosting;

/// <summary><c>/health</c>: the site answers and reaches its database within two seconds. Says nothing about why not.</summary>
internal sealed class DatabaseCheck(DatabasePulse pulse) : IHealthCheck
{
    /// <summary>Shorter than the two seconds by what the answer itself takes.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1.5);

    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        !pulse.IsFrozen && await pulse.AnswersNowAsync(Patience, cancellationToken) ? HealthCheckResult.Healthy() : HealthCheckResult.Unhealthy();
}
