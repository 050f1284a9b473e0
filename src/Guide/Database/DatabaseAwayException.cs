using System.Data.Common;
using Npgsql;

namespace Foreshore.Guide.Database;

/// <summary>The database is known not to answer: nobody waits for it, pages say so at once (503). No retry takes it for a passing fault.</summary>
public sealed class DatabaseAwayException() : DbException("The database does not answer.")
{
    public override string SqlState => PostgresErrorCodes.CannotConnectNow;
}
