using System.Collections.Concurrent;
using System.Globalization;
using Foreshore.Guide.Database;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using NodaTime;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Running;

/// <summary>The verbs as an operator calls them, on a cluster of the test's own.</summary>
public class BackupTests
{
    private const int AtMost = 240_000;
    private const int Writers = 8;
    private static readonly Instant Then = GuideHost.UsualNow;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact(Timeout = AtMost)]
    public async Task What_is_restored_is_what_was_there_table_by_table()
    {
        await using var folder = new DataFolder();
        var file = Path.Combine(folder.Path, "backups", "one.tar.gz");
        SortedDictionary<string, string> before;
        await using (var cluster = await WithDemoAsync(folder))
        {
            before = await Tables.SumsAsync(cluster.OwnerConnection);
            Assert.Contains("is in", await SaidAsync("backup", file, folder), StringComparison.Ordinal);
            await RunAsync(cluster.OwnerConnection, "DELETE FROM hazard_notes; UPDATE locations SET summary = 'changed since'");
        }

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, OperatingSystem.IsWindows() ? default : File.GetUnixFileMode(file));
        Assert.Contains("is in place", await SaidAsync("restore", file, folder), StringComparison.Ordinal);

        await using var again = await folder.StartAsync();
        Assert.Equal(before, await Tables.SumsAsync(again.OwnerConnection));
        // With the rights they had: the site's role reads and writes, and changes no table.
        Assert.Equal("1", await EmbeddedClusterTests.AskAsync(again.AppConnection, "SELECT count(*) FROM club_settings"));
        await Assert.ThrowsAsync<PostgresException>(() => EmbeddedClusterTests.AskAsync(again.AppConnection, "DROP TABLE club_settings"));
        var former = Assert.Single(Directory.GetDirectories(folder.Path, "before-restore-*"));
        Assert.True(Directory.Exists(Path.Combine(former, "postgres")));
        Assert.Single(Directory.GetFiles(former, "*.passwords"));
    }

    /// <summary>Each writer writes 1, 2, 3 … and notes what the server acknowledged: a backup holds each up to some number, without a gap, and all from before it began.</summary>
    [Fact(Timeout = AtMost)]
    public async Task A_backup_taken_while_members_write_holds_all_they_had_written_before_and_no_half_of_anything()
    {
        await using var folder = new DataFolder();
        var file = Path.Combine(folder.Path, "backups", "two.tar.gz");
        var acknowledged = new ConcurrentDictionary<int, int>();
        Dictionary<int, int> atBegin, atEnd;
        SortedDictionary<string, string> others;
        await using (var cluster = await WithDemoAsync(folder))
        {
            await RunAsync(cluster.OwnerConnection, "CREATE TABLE written (writer int, number int, word text, PRIMARY KEY (writer, number)); CREATE TABLE doubled (writer int, number int)");
            using var enough = new CancellationTokenSource();
            var writing = Enumerable.Range(0, Writers).Select(writer => WriteAsync(cluster.OwnerConnection, writer, acknowledged, enough.Token)).ToList();
            while (acknowledged.Count < Writers || acknowledged.Values.Any(count => count < 3))
                await Task.Yield();
            atBegin = new(acknowledged);
            await SaidAsync("backup", file, folder);
            atEnd = new(acknowledged);
            await enough.CancelAsync();
            await Task.WhenAll(writing);
            others = await Tables.SumsAsync(cluster.OwnerConnection);
        }

        await SaidAsync("restore", file, folder);

        await using var again = await folder.StartAsync();
        var restored = await Tables.SumsAsync(again.OwnerConnection);
        Assert.Equal(others.Where(IsQuiet), restored.Where(IsQuiet));
        await using var connection = new NpgsqlConnection(again.OwnerConnection);
        await connection.OpenAsync(Stop);
        var gaps = await Tables.ListAsync(connection, "SELECT writer FROM written GROUP BY writer HAVING count(*) <> max(number) OR min(number) <> 1");
        var halves = await Tables.ListAsync(connection, "SELECT writer FROM written FULL JOIN doubled USING (writer, number) WHERE written.word IS NULL OR doubled IS NULL OR word <> repeat(number::text, 200)");
        var counts = (await Tables.ListAsync(connection, "SELECT writer || ' ' || max(number) FROM written GROUP BY writer"))
            .Select(line => line.Split(' ')).ToDictionary(part => Number(part[0]), part => Number(part[1]));
        Assert.Empty(gaps);
        Assert.Empty(halves);
        Assert.All(atBegin, writer => Assert.InRange(counts[writer.Key], writer.Value, int.MaxValue));
        Assert.True(atEnd.Values.Sum() > atBegin.Values.Sum(), "Nobody wrote during the backup.");
    }

    [Fact(Timeout = AtMost)]
    public async Task Who_was_erased_since_is_erased_again()
    {
        await using var folder = new DataFolder();
        var file = Path.Combine(folder.Path, "backups", "three.tar.gz");
        Guid gone, stays;
        await using (var cluster = await WithDemoAsync(folder))
        {
            await using var db = GuideConnection.Open(cluster.AppConnection);
            Member leaving = new("leaving@example.org", "Ute Weiss", Role.Member, Then), staying = new("staying@example.org", "Ina Ruiz", Role.Member, Then);
            db.AddRange(leaving, staying, new AuditEntry(Act.SignedIn, Then, leaving.Id));
            await db.SaveChangesAsync(Stop);
            (gone, stays) = (leaving.Id, staying.Id);
            await SaidAsync("backup", file, folder);
        }

        new ErasureNotes(folder.Path).Add(gone, Then + Duration.FromDays(1));
        Assert.Equal([(gone, Then + Duration.FromDays(1))], ErasureNotes.Read(Path.GetDirectoryName(file)!));
        // On another machine the notes beside the backup are all there is.
        await using var elsewhere = new DataFolder();
        Assert.Contains("1 of the members", await SaidAsync("restore", file, elsewhere), StringComparison.Ordinal);

        await using var again = await elsewhere.StartAsync();
        Assert.Equal(stays.ToString(), await EmbeddedClusterTests.AskAsync(again.AppConnection, "SELECT string_agg(id::text, ' ') FROM members WHERE email IN ('leaving@example.org', 'staying@example.org')"));
        Assert.Equal("1", await EmbeddedClusterTests.AskAsync(again.AppConnection, $"SELECT count(*) FROM audit_entries WHERE act = 'MemberErased' AND by = '{gone}'"));
    }

    private static bool IsQuiet(KeyValuePair<string, string> table) => table.Key is not ("written" or "doubled");

    /// <summary>One transaction with two rows, again and again.</summary>
    private static async Task WriteAsync(string connectionString, int writer, ConcurrentDictionary<int, int> acknowledged, CancellationToken enough)
    {
        await using var connection = new NpgsqlConnection(connectionString);
        await connection.OpenAsync(Stop);
        for (var number = 1; !enough.IsCancellationRequested; number++)
        {
            await using var one = await connection.BeginTransactionAsync(Stop);
            await using var command = new NpgsqlCommand("INSERT INTO written VALUES ($1, $2, repeat($2::text, 200))", connection, one) { Parameters = { new() { Value = writer }, new() { Value = number } } };
            await command.ExecuteNonQueryAsync(Stop);
            command.CommandText = "INSERT INTO doubled VALUES ($1, $2)";
            await command.ExecuteNonQueryAsync(Stop);
            await one.CommitAsync(Stop);
            acknowledged[writer] = number;
        }
    }

    internal static async Task<EmbeddedCluster> WithDemoAsync(DataFolder folder)
    {
        var cluster = await folder.StartAsync();
        await Schema.MigrateAsync(cluster.OwnerConnection, DatabaseRoles.App, Stop);
        await Support.Demo.LoadAsync(cluster.AppConnection);
        return cluster;
    }

    internal static async Task<string> SaidAsync(string verb, string file, DataFolder folder)
    {
        await using var program = GuideProcess.Start(verb, file, $"--Database:Directory={folder.Path}");
        var (code, output, errors) = await program.EndAsync();
        Assert.True(code == 0, errors);
        return output;
    }

    internal static async Task RunAsync(string connection, string statement) => await EmbeddedClusterTests.AskAsync(connection, statement);

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
