using System.Data.Common;
using System.Security.Cryptography;
using Foreshore.Guide.Database;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// <c>/health</c>: within two seconds the site reaches its database and can seal and open a token, without which nobody signs in and no form
/// is taken. Says nothing about why not.
/// </summary>
internal sealed class DatabaseCheck(DatabasePulse pulse, IDataProtectionProvider seals) : IHealthCheck
{
    /// <summary>Shorter than the two seconds by what the answer itself takes.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1.5);

    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(Patience);
        return !pulse.IsFrozen && await pulse.AnswersNowAsync(Patience, cancellationToken) && await SealsAsync(limit.Token) ? HealthCheckResult.Healthy() : HealthCheckResult.Unhealthy();
    }

    /// <summary>The ring of keys may have to be read from the database, and the framework reads it without waiting for anybody.</summary>
    private async Task<bool> SealsAsync(CancellationToken limit)
    {
        try
        {
            return await Task.Run(SealsAndOpens, limit).WaitAsync(limit);
        }
        catch (Exception fault) when (fault is DbException or CryptographicException or OperationCanceledException or TimeoutException)
        {
            return false;
        }
    }

    private bool SealsAndOpens()
    {
        var seal = seals.CreateProtector("Foreshore.Health");
        var word = Guid.NewGuid().ToString();
        return seal.Unprotect(seal.Protect(word)) == word;
    }
}
