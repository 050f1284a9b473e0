using CsCheck;
using Foreshore.Guide.Support;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Access;

/// <summary>The database lets in what the notations write, and nothing that they could not read again.</summary>
public class HoursColumnTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    [Fact]
    public async Task Whatever_is_written_is_let_in()
    {
        var hours = HoursNotationTests.AnyHours.Select(HoursNotation.Write).Array[500].Single();
        var sailings = HoursNotationTests.AnySailings.Select(SailingsNotation.Write).Array[500].Single();

        Assert.Empty(await RefusedAsync(HoursNotation.Check("written"), hours));
        Assert.Empty(await RefusedAsync(SailingsNotation.Check("written"), sailings));
    }

    [Theory]
    [InlineData("legs", "hours", "whenever")]
    [InlineData("legs", "hours", "")]
    [InlineData("legs", "hours", "8:00-18:00")]
    [InlineData("parking_areas", "hours", "open; ")]
    [InlineData("locations", "hours", "open;closed")]
    [InlineData("legs", "ferry_out", "hourly")]
    [InlineData("legs", "ferry_back", "first 07:00")]
    public async Task What_could_not_be_read_again_is_refused(string table, string column, string text)
    {
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => RunAsync($"UPDATE {table} SET {column} = '{text}'"));

        Assert.Equal($"ck_{table}_{column}", refusal.ConstraintName);
    }

    private async Task<IReadOnlyList<string>> RefusedAsync(string condition, IReadOnlyList<string> texts)
    {
        await using var connection = new NpgsqlConnection(guide.Database.AppConnection);
        await connection.OpenAsync();
#pragma warning disable CA2100 // A condition of this program alone.
        await using var command = new NpgsqlCommand($"SELECT array_agg(written) FROM unnest($1) AS texts (written) WHERE NOT ({condition})", connection) { Parameters = { new() { Value = texts.ToArray() } } };
#pragma warning restore CA2100
        return await command.ExecuteScalarAsync() as string[] ?? [];
    }

    private async Task RunAsync(string statement)
    {
        await using var connection = new NpgsqlConnection(guide.Database.AppConnection);
        await connection.OpenAsync();
#pragma warning disable CA2100 // Statements of this file alone.
        await using var command = new NpgsqlCommand(statement, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }
}
