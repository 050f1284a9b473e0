using Npgsql;

namespace Foreshore.Guide.Database;

/// <summary>
/// Two roles from the first day: the owner changes tables and is used by <c>migrate</c> alone; the app reads and writes rows.
/// Names, passwords and the database come from the two connection strings, so that a server of one's own is prepared alike.
/// </summary>
public static class DatabaseRoles
{
    public const string Owner = "foreshore_owner";
    public const string App = "foreshore_app";

    public static async Task PrepareAsync(string adminConnection, string ownerConnection, string appConnection, CancellationToken stop = default)
    {
        var owner = new NpgsqlConnectionStringBuilder(ownerConnection);
        var app = new NpgsqlConnectionStringBuilder(appConnection);
        var database = Quoted(owner.Database);

        await using (var admin = await OpenAsync(adminConnection, stop))
        {
            await MakeRoleAsync(admin, owner, stop);
            await MakeRoleAsync(admin, app, stop);
            foreach (var (setting, value) in AppLimits)
                await RunAsync(admin, $"ALTER ROLE {Quoted(app.Username)} SET {setting} = '{value}'", stop);
            if (!await ExistsAsync(admin, "SELECT 1 FROM pg_database WHERE datname = $1", owner.Database!, stop))
                await RunAsync(admin, $"CREATE DATABASE {database} OWNER {Quoted(owner.Username)} TEMPLATE template0 ENCODING 'UTF8'", stop);
            await RunAsync(admin, $"REVOKE ALL ON DATABASE {database} FROM PUBLIC", stop);
            await RunAsync(admin, $"GRANT CONNECT ON DATABASE {database} TO {Quoted(app.Username)}", stop);
        }

        var inside = new NpgsqlConnectionStringBuilder(adminConnection) { Database = owner.Database, Pooling = false };
        await using var there = await OpenAsync(inside.ConnectionString, stop);
        await RunAsync(there, $"ALTER SCHEMA public OWNER TO {Quoted(owner.Username)}", stop);
        await RunAsync(there, "REVOKE ALL ON SCHEMA public FROM PUBLIC", stop);
    }

    /// <summary>A page that asks for too much ends, rather than holding the others up.</summary>
    private static readonly (string Setting, string Value)[] AppLimits =
    [
        ("statement_timeout", "10s"),
        ("lock_timeout", "5s"),
        ("idle_in_transaction_session_timeout", "30s"),
    ];

    /// <summary>The log of acts only grows: its table is named here too, so that giving the rights anew never opens it.</summary>
    private const string GrowsOnly = "audit_entries";

    /// <summary>Rows, not tables: what the app may do, given anew after each migration by the owner of the tables.</summary>
    public static async Task GrantAsync(string ownerConnection, string appRole, CancellationToken stop = default)
    {
        var to = Quoted(appRole);
        await using var owner = await OpenAsync(ownerConnection, stop);
        await RunAsync(owner, $"GRANT USAGE ON SCHEMA public TO {to}", stop);
        await RunAsync(owner, $"GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO {to}", stop);
        await RunAsync(owner, $"GRANT USAGE, SELECT ON ALL SEQUENCES IN SCHEMA public TO {to}", stop);
        if (await ExistsAsync(owner, "SELECT 1 FROM pg_tables WHERE schemaname = 'public' AND tablename = $1", GrowsOnly, stop))
            await RunAsync(owner, $"REVOKE UPDATE, DELETE ON {Quoted(GrowsOnly)} FROM {to}", stop);
        await RunAsync(owner, $"REVOKE INSERT, UPDATE, DELETE ON \"__EFMigrationsHistory\" FROM {to}", stop);
    }

    private static async Task MakeRoleAsync(NpgsqlConnection admin, NpgsqlConnectionStringBuilder role, CancellationToken stop)
    {
        var name = Quoted(role.Username);
        if (!await ExistsAsync(admin, "SELECT 1 FROM pg_roles WHERE rolname = $1", role.Username!, stop))
            await RunAsync(admin, $"CREATE ROLE {name} LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE", stop);
        await RunAsync(admin, $"ALTER ROLE {name} PASSWORD '{(role.Password ?? "").Replace("'", "''", StringComparison.Ordinal)}'", stop);
    }

    private static async Task<bool> ExistsAsync(NpgsqlConnection connection, string question, string name, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand(question, connection) { Parameters = { new() { Value = name } } };
        return await command.ExecuteScalarAsync(stop) is not null;
    }

    private static async Task<NpgsqlConnection> OpenAsync(string connectionString, CancellationToken stop)
    {
        var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString);
        await connection.OpenAsync(stop);
        return connection;
    }

    /// <summary>Names come from the operator's own settings and are quoted; PostgreSQL takes no parameters in these statements.</summary>
    private static async Task RunAsync(NpgsqlConnection connection, string statement, CancellationToken stop)
    {
#pragma warning disable CA2100
        await using var command = new NpgsqlCommand(statement, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(stop);
    }

    private static string Quoted(string? name) => $"\"{(name ?? "").Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
