using Npgsql;

namespace Foreshore.Trials;

/// <summary>What of a journal is in the database when all is over.</summary>
/// <param name="Acknowledged">Lines of the journal.</param>
/// <param name="Lost">Of them not there, or there with another text.</param>
/// <param name="Unasked">There without having been acknowledged: the answer was lost, the draft was not.</param>
/// <param name="Members">Rows of members whose session is there.</param>
internal sealed record Verified(int Acknowledged, IReadOnlyList<Guid> Lost, int Unasked, int Members)
{
    public bool IsWhole => Lost.Count == 0 && Acknowledged > 0;

    public static async Task<Verified> ReadAsync(string connection, Journal journal)
    {
        await using var server = new NpgsqlConnection(connection);
        await server.OpenAsync();
        Dictionary<Guid, string> stored = [];
        await using (var command = new NpgsqlCommand("SELECT id, given->>'summary' FROM proposals WHERE given->>'summary' LIKE 'writer %'", server))
        await using (var row = await command.ExecuteReaderAsync())
        {
            while (await row.ReadAsync())
                stored.Add(row.GetGuid(0), row.GetString(1));
        }

        await using var members = new NpgsqlCommand("SELECT count(*)::int FROM members JOIN member_sessions ON member_id = members.id", server);
        var lost = journal.Acknowledged.Where(line => stored.GetValueOrDefault(line.Key) != line.Value).Select(line => line.Key).ToList();
        return new(journal.Acknowledged.Count, lost, stored.Keys.Count(id => !journal.Acknowledged.ContainsKey(id)), (int)(await members.ExecuteScalarAsync())!);
    }

    public override string ToString() => $"{Acknowledged} acknowledged, {Lost.Count} lost, {Unasked} stored without an answer";
}
