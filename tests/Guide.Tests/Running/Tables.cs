using System.Globalization;
using Npgsql;

namespace Foreshore.Guide.Running;

/// <summary>What every table holds, as one sum a table, for comparing two databases.</summary>
internal static class Tables
{
    private const string Names = "SELECT tablename FROM pg_tables WHERE schemaname = 'public' ORDER BY 1";

    public static async Task<SortedDictionary<string, string>> SumsAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString);
        await connection.OpenAsync();
        var sums = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var table in await ListAsync(connection, Names))
            sums[table] = (await ListAsync(connection, $"SELECT count(*) || ' ' || coalesce(md5(string_agg(each::text, '|' ORDER BY each::text)), '') FROM \"{table}\" AS each")).Single();
        foreach (var sequence in await ListAsync(connection, "SELECT sequencename FROM pg_sequences WHERE schemaname = 'public' ORDER BY 1"))
            sums[$"sequence {sequence}"] = (await ListAsync(connection, $"SELECT last_value::text FROM \"{sequence}\"")).Single();
        return sums;
    }

    public static async Task<List<string>> ListAsync(NpgsqlConnection connection, string question)
    {
#pragma warning disable CA2100 // Names as the server tells them.
        await using var command = new NpgsqlCommand(question, connection);
#pragma warning restore CA2100
        await using var row = await command.ExecuteReaderAsync();
        List<string> list = [];
        while (await row.ReadAsync())
            list.Add(Convert.ToString(row.GetValue(0), CultureInfo.InvariantCulture)!);
        return list;
    }
}
