using Foreshore.Guide.Hosting;
using Foreshore.Guide.Support;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Database;

public class SchemaTests(GuideDatabase guide) : IClassFixture<GuideDatabase>
{
    [Fact]
    public async Task A_migrated_database_is_current() =>
        await Schema.RefuseUnlessCurrentAsync(guide.Database.AppConnection);

    [Fact]
    public async Task A_database_of_a_newer_version_is_refused()
    {
        await AskAsync(guide.Database.OwnerConnection, "INSERT INTO \"__EFMigrationsHistory\" VALUES ('29990101000000_Later', '99')");

        var refusal = await Assert.ThrowsAsync<OperatorException>(() => Schema.RefuseUnlessCurrentAsync(guide.Database.AppConnection));
        var onMigrate = await Assert.ThrowsAsync<OperatorException>(
            () => Schema.MigrateAsync(guide.Database.OwnerConnection, DatabaseRoles.App));

        await AskAsync(guide.Database.OwnerConnection, "DELETE FROM \"__EFMigrationsHistory\" WHERE migration_id LIKE '2999%'");
        Assert.Contains("newer version", refusal.What, StringComparison.Ordinal);
        Assert.Contains("newer version", onMigrate.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("CREATE TABLE mine (word text)")]
    [InlineData("DROP TABLE data_protection_keys")]
    [InlineData("ALTER TABLE data_protection_keys ADD COLUMN more text")]
    [InlineData("INSERT INTO \"__EFMigrationsHistory\" VALUES ('x', 'y')")]
    [InlineData("CREATE ROLE other")]
    public async Task The_app_role_changes_rows_never_tables(string statement)
    {
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => AskAsync(guide.Database.AppConnection, statement));

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refusal.SqlState);
    }

    [Theory]
    [InlineData("statement_timeout", "10s")]
    [InlineData("lock_timeout", "5s")]
    [InlineData("idle_in_transaction_session_timeout", "30s")]
    public async Task The_app_role_gives_up_in_time(string setting, string value) =>
        Assert.Equal(value, await AskAsync(guide.Database.AppConnection, $"SHOW {setting}"));

    private static Task<string?> AskAsync(string connection, string statement) => EmbeddedClusterTests.AskAsync(connection, statement);
}
