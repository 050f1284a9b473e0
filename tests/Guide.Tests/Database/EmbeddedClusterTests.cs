using System.Globalization;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Database;

public class EmbeddedClusterTests
{
    private const int AtMost = 90_000;

    [Fact(Timeout = AtMost)]
    public async Task A_new_cluster_has_checksums_no_network_and_no_rights_and_keeps_its_data()
    {
        await using var folder = new DataFolder();
        await using (var cluster = await folder.StartAsync())
        {
            Assert.False(cluster.WasRunning);
            Assert.Equal("on", await AskAsync(cluster.AdminConnection, "SHOW data_checksums"));
            Assert.Equal("", await AskAsync(cluster.AdminConnection, "SHOW listen_addresses"));
            Assert.Equal("UTF8", await AskAsync(cluster.AppConnection, "SHOW server_encoding"));
            Assert.NotEqual("0", UserOf(folder.Postmaster));
            await AskAsync(cluster.OwnerConnection, "CREATE TABLE kept (word text); INSERT INTO kept VALUES ('ebb')");
        }

        Assert.False(File.Exists(Path.Combine(folder.Cluster, "postmaster.pid")));
        await using var again = await folder.StartAsync();
        Assert.Equal("ebb", await AskAsync(again.OwnerConnection, "SELECT word FROM kept"));
    }

    [Fact(Timeout = AtMost)]
    public async Task Passwords_are_ours_alone_to_read_and_needed()
    {
        await using var folder = new DataFolder();
        await using var cluster = await folder.StartAsync();

        var file = Assert.Single(Directory.GetFiles(folder.Path, "*.passwords"));
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        var wrong = new NpgsqlConnectionStringBuilder(cluster.AppConnection) { Password = "guessed", Pooling = false };
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => AskAsync(wrong.ConnectionString, "SELECT 1"));
        Assert.Equal(PostgresErrorCodes.InvalidPassword, refusal.SqlState);
    }

    [Fact(Timeout = AtMost)]
    public async Task A_lock_file_of_a_killed_run_does_not_stop_the_next()
    {
        await using var folder = new DataFolder();
        await using (await folder.StartAsync())
        {
        }

        // It names a process that lives, but is no PostgreSQL: this one.
        await File.WriteAllTextAsync(
            Path.Combine(folder.Cluster, "postmaster.pid"),
            string.Create(CultureInfo.InvariantCulture, $"{Environment.ProcessId}\n{folder.Cluster}\n1\n5432\n{folder.Path}/postgres/socket\n\n"));

        await using var next = await folder.StartAsync();
        Assert.Equal("1", await AskAsync(next.AppConnection, "SELECT 1"));
    }

    [Fact(Timeout = AtMost)]
    public async Task A_half_made_cluster_is_made_anew()
    {
        await using var folder = new DataFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "postgres", "18.new", "base"));
        Directory.CreateDirectory(Path.Combine(folder.Path, "postgres", "15.new", "base"));

        await using var cluster = await folder.StartAsync();

        Assert.Equal("1", await AskAsync(cluster.AppConnection, "SELECT 1"));
    }

    [Fact(Timeout = AtMost)]
    public async Task Two_runs_do_not_share_a_cluster()
    {
        await using var folder = new DataFolder();
        await using var first = await folder.StartAsync();

        var refusal = await Assert.ThrowsAsync<EmbeddedClusterException>(() => folder.StartAsync());

        Assert.Contains("Another run", refusal.What, StringComparison.Ordinal);
        Assert.Contains("--data", refusal.Todo, StringComparison.Ordinal);
    }

    [Fact(Timeout = AtMost)]
    public async Task A_long_or_odd_path_gets_its_socket_elsewhere()
    {
        await using var folder = new DataFolder("the club " + new string('x', 90));
        string socket;
        await using (var cluster = await folder.StartAsync())
        {
            socket = new NpgsqlConnectionStringBuilder(cluster.AppConnection).Host!;
            Assert.StartsWith("/tmp/foreshore-", socket, StringComparison.Ordinal);
            Assert.Equal("1", await AskAsync(cluster.AppConnection, "SELECT 1"));
        }

        Assert.False(Directory.Exists(socket));
    }

    [Fact]
    public async Task A_folder_name_a_shell_would_read_is_refused()
    {
        var refusal = await Assert.ThrowsAsync<EmbeddedClusterException>(
            () => EmbeddedCluster.StartAsync(new EmbeddedClusterOptions("/tmp/foreshore-$HOME")));

        Assert.Contains("$", refusal.What, StringComparison.Ordinal);
    }

    [Fact(Timeout = AtMost)]
    public async Task Data_of_a_version_that_is_not_here_are_left_alone_and_named()
    {
        await using var folder = new DataFolder();
        var old = Directory.CreateDirectory(Path.Combine(folder.Path, "postgres", "12")).FullName;
        await File.WriteAllTextAsync(Path.Combine(old, "PG_VERSION"), "12\n");

        var refusal = await Assert.ThrowsAsync<EmbeddedClusterException>(() => folder.StartAsync());

        Assert.Contains("PostgreSQL 12", refusal.What, StringComparison.Ordinal);
        Assert.True(Directory.Exists(old));
    }

    [Fact(Timeout = AtMost)]
    public async Task A_lost_password_file_is_told_rather_than_replaced()
    {
        await using var folder = new DataFolder();
        await using (await folder.StartAsync())
        {
        }

        File.Delete(Directory.GetFiles(folder.Path, "*.passwords").Single());

        var refusal = await Assert.ThrowsAsync<EmbeddedClusterException>(() => folder.StartAsync());
        Assert.Contains("password file", refusal.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("test")]
    [InlineData("stat")]
    public void Programs_are_the_systems_own_not_those_of_the_current_folder(string name) =>
        Assert.Contains(Account.Locate(name), new[] { $"/usr/bin/{name}", $"/bin/{name}" });

    private static string UserOf(int process) => File.ReadLines($"/proc/{process}/status")
        .First(line => line.StartsWith("Uid:", StringComparison.Ordinal)).Split('\t')[1];

    internal static async Task<string?> AskAsync(string connectionString, string question)
    {
        await using var connection = new NpgsqlConnection(
            new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ConnectionString);
        await connection.OpenAsync();
#pragma warning disable CA2100 // Written above.
        await using var command = new NpgsqlCommand(question, connection);
#pragma warning restore CA2100
        return Convert.ToString(await command.ExecuteScalarAsync(), CultureInfo.InvariantCulture);
    }
}
