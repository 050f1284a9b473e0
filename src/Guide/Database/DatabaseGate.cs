using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Foreshore.Guide.Database;

/// <summary>While the database is away no query is begun: a page says so at once rather than after several tries of seconds each.</summary>
internal sealed class DatabaseGate(DatabasePulse pulse) : DbConnectionInterceptor
{
    public override InterceptionResult ConnectionOpening(DbConnection connection, ConnectionEventData eventData, InterceptionResult result) =>
        pulse.IsAway ? throw new DatabaseAwayException() : result;

    public override ValueTask<InterceptionResult> ConnectionOpeningAsync(
        DbConnection connection, ConnectionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default) =>
        pulse.IsAway ? throw new DatabaseAwayException() : ValueTask.FromResult(result);
}
