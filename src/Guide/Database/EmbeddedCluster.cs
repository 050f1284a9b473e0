using System.Diagnostics;
using System.Globalization;
using Npgsql;

namespace Foreshore.Guide.Database;

/// <summary>What to bring up. <paramref name="IsDurable"/> is false for tests alone: they may lose everything at a power cut.</summary>
public sealed record EmbeddedClusterOptions(string? Directory = null, string? Binaries = null, bool IsDurable = true);

/// <summary>
/// A private PostgreSQL cluster: page checksums, no network, a socket and passwords only we can read. Whether it runs is found out
/// by connecting, never from its lock file, which a killed run leaves behind; a server that outlived its run is taken over.
/// </summary>
public sealed class EmbeddedCluster : IAsyncDisposable
{
    private const string Admin = "foreshore_admin";
    private const string GuideDatabase = "foreshore";
    private const int Port = 5432;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);
    private static readonly TimeSpan BetweenTries = TimeSpan.FromMilliseconds(200);

    private readonly ClusterPlace place;
    private readonly Account account;
    private readonly PostgresBinaries binaries;
    private readonly ClusterPasswords passwords;
    private readonly FileStream? runLock;
    private readonly bool isDurable;

    private EmbeddedCluster(ClusterPlace place, Account account, PostgresBinaries binaries, ClusterPasswords passwords, FileStream? runLock, bool isDurable) =>
        (this.place, this.account, this.binaries, this.passwords, this.runLock, this.isDurable) = (place, account, binaries, passwords, runLock, isDurable);

    public string DataDirectory => place.Data;
    public string ClusterDirectory => place.Cluster(binaries.Major);
    public string PasswordFile => place.Passwords(binaries.Major);
    public string Version => binaries.Version;
    public string ProgramDirectory => binaries.Directory;
    public bool WasRunning { get; private set; }

    public string AdminConnection => Connection(Admin, passwords.Admin, "postgres");
    public string OwnerConnection => Connection(DatabaseRoles.Owner, passwords.Owner, GuideDatabase);
    public string AppConnection => Connection(DatabaseRoles.App, passwords.App, GuideDatabase);

    public static async Task<EmbeddedCluster> StartAsync(EmbeddedClusterOptions options, CancellationToken stop = default)
    {
        if (!OperatingSystem.IsLinux())
        {
            throw new EmbeddedClusterException(
                "The embedded PostgreSQL runs on Linux only.",
                "Give a server of your own in ConnectionStrings:Guide and ConnectionStrings:GuideOwner.");
        }

        var account = await Account.ChooseAsync(options.Directory is null ? "" : Path.Combine(options.Directory, "postgres"));
        var place = await ClusterPlace.ChooseAsync(options.Directory, account);
        var runLock = place.TakeLock();
        try
        {
            ClusterSwap.FinishIfWhole(place);
            Directory.CreateDirectory(place.Root);
            var binaries = Choose(await PostgresBinaries.FindAsync(options.Binaries, account, place.Root), place);
            CheckPasswords(place, binaries.Major);
            var passwords = ClusterPasswords.ReadOrMake(place.Passwords(binaries.Major));
            var cluster = new EmbeddedCluster(place, account, binaries, passwords, runLock, options.IsDurable);
            await cluster.MakeAsync(stop);
            await cluster.StartServerAsync(stop);
            await DatabaseRoles.PrepareAsync(cluster.AdminConnection, cluster.OwnerConnection, cluster.AppConnection, stop);
            return cluster;
        }
        catch
        {
            await runLock.DisposeAsync();
            throw;
        }
    }

    /// <summary>
    /// For a look at a cluster that its site may be serving: then its server is used and left running, else one is started for as long as
    /// this object lives.
    /// </summary>
    public static async Task<EmbeddedCluster> JoinAsync(EmbeddedClusterOptions options, CancellationToken stop = default)
    {
        var account = await Account.ChooseAsync(options.Directory is null ? "" : Path.Combine(options.Directory, "postgres"));
        var place = await ClusterPlace.ChooseAsync(options.Directory, account);
        if (place.Majors.Count == 0)
            throw new EmbeddedClusterException($"There is no database in {place.Data}.", "Give the folder that holds it, like --data /var/lib/foreshore.");
        if (!place.IsInUse())
            return await StartAsync(options, stop);

        var binaries = Choose(await PostgresBinaries.FindAsync(options.Binaries, account, place.Root), place);
        CheckPasswords(place, binaries.Major);
        var cluster = new EmbeddedCluster(place, account, binaries, ClusterPasswords.ReadOrMake(place.Passwords(binaries.Major)), runLock: null, options.IsDurable);
        return await cluster.AnswersAsync(stop) ? cluster : throw new EmbeddedClusterException(
            $"The site that uses {place.Data} runs, but its database does not answer.", "Try again when it does; the site's log says why.");
    }

    /// <summary>Throws the clusters of a data folder away; a server still running on one of them is stopped first.</summary>
    public static async Task RemoveAsync(EmbeddedClusterOptions options, CancellationToken stop = default)
    {
        var account = await Account.ChooseAsync(options.Directory is null ? "" : Path.Combine(options.Directory, "postgres"));
        var place = await ClusterPlace.ChooseAsync(options.Directory, account);
        await using var runLock = place.TakeLock();
        if (!Directory.Exists(place.Root))
            return;

        await StopServersAsync(place, account, options.Binaries, "immediate", stop);
        foreach (var major in place.Majors)
            File.Delete(place.Passwords(major));
        place.DropSocketFolder();
        Directory.Delete(place.Root, recursive: true);
    }

    /// <summary>What a killed site left running, for whoever holds its lock.</summary>
    internal static async Task StopServersAsync(ClusterPlace place, Account account, string? given, string how, CancellationToken stop)
    {
        if (place.Majors.Count == 0)
            return;
        var binaries = await PostgresBinaries.FindAsync(given, account, place.Root);
        foreach (var major in place.Majors)
        {
            if (binaries.FirstOrDefault(candidate => candidate.Major == major) is { } mine)
                await account.RunAsync(mine.PgCtl, ["stop", "-D", place.Cluster(major), "-m", how, "-w", "-s"], stop);
        }
    }

    /// <summary>Whether the process that serves this cluster lives; one that is frozen does.</summary>
    public bool HasServer
    {
        get
        {
            try
            {
                var process = File.ReadLines(Path.Combine(ClusterDirectory, "postmaster.pid")).First();
                // A line like "123 (postgres) S …". One that has ended and that nobody has taken note of stays as Z; another program may have got its number.
                return File.ReadAllText($"/proc/{process}/stat") is var state
                    && state.Contains("(postgres)", StringComparison.Ordinal) && state[(state.LastIndexOf(')') + 2)..] is not ['Z' or 'X', ..];
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or InvalidOperationException)
            {
                return false;
            }
        }
    }

    /// <summary>After its process has ended: one start, with the recovery that belongs to it.</summary>
    public async Task StartAgainAsync()
    {
        await MakeSocketFolderAsync();
        await StartServerAsync(CancellationToken.None);
    }

    /// <summary>Ends all sessions, writes a checkpoint and stops; the next start needs no recovery.</summary>
    public async Task StopAsync(CancellationToken stop = default)
    {
        NpgsqlConnection.ClearAllPools();
        await account.RunAsync(binaries.PgCtl, ["stop", "-D", ClusterDirectory, "-m", "fast", "-w", "-s"], stop);
        place.DropSocketFolder();
    }

    public async ValueTask DisposeAsync()
    {
        if (runLock is null)
            return;
        await StopAsync();
        await runLock.DisposeAsync();
    }

    /// <summary>Data made before decide: a cluster can only be opened by the major version that made it.</summary>
    private static PostgresBinaries Choose(IReadOnlyList<PostgresBinaries> found, ClusterPlace place)
    {
        if (place.Majors is not [var newest, ..])
            return found[0];

        return found.FirstOrDefault(candidate => candidate.Major == newest) ?? throw new EmbeddedClusterException(
            string.Create(CultureInfo.InvariantCulture, $"The data in {place.Data} were made by PostgreSQL {newest}, which is not here (found: {string.Join(", ", found.Select(candidate => candidate.Version))})."),
            string.Create(CultureInfo.InvariantCulture, $"Install PostgreSQL {newest}, or give another data folder with --data DIR."));
    }

    private static void CheckPasswords(ClusterPlace place, int major)
    {
        if (Directory.Exists(place.Cluster(major)) && !File.Exists(place.Passwords(major)))
        {
            throw new EmbeddedClusterException(
                $"The password file {place.Passwords(major)} is missing, though its database is there.",
                "Restore it from a backup, or begin anew with --reset (the data are thrown away).");
        }
    }

    private async Task MakeAsync(CancellationToken stop)
    {
        await account.GiveAsync(place.Root);
        if (place.Socket.StartsWith("/tmp/", StringComparison.Ordinal) || !Directory.Exists(place.Socket))
            await MakeSocketFolderAsync();
        if (Directory.Exists(ClusterDirectory))
            return;

        // Made beside and moved: a run killed half-way leaves no half cluster behind.
        var unfinished = ClusterDirectory + ".new";
        var passwordFile = ClusterDirectory + ".password";
        if (Directory.Exists(unfinished))
            Directory.Delete(unfinished, recursive: true);
        File.Delete(passwordFile);
        ClusterPasswords.WritePrivate(passwordFile, passwords.Admin);
        await account.GiveAsync(passwordFile);
        try
        {
            (await account.RunAsync(
                binaries.Initdb,
                ["-D", unfinished, "-U", Admin, "-A", "scram-sha-256", $"--pwfile={passwordFile}", "-E", "UTF8", "--locale=C.UTF-8", "--data-checksums", "--no-instructions"],
                stop)).OrThrow("The database cluster could not be made.");
        }
        finally
        {
            File.Delete(passwordFile);
        }

        Directory.Move(unfinished, ClusterDirectory);
    }

    private async Task MakeSocketFolderAsync()
    {
        (await account.RunAsync("mkdir", ["-p", "-m", "0700", place.Socket])).OrThrow($"The socket folder {place.Socket} could not be made.");
        // In /tmp the name could be taken by somebody else: only the account's own folder will do.
        if (!(await account.RunAsync("test", ["-O", place.Socket])).Succeeded)
            throw new EmbeddedClusterException($"The socket folder {place.Socket} belongs to somebody else.", "Remove it, or give a shorter data folder with --data DIR.");
    }

    private async Task StartServerAsync(CancellationToken stop)
    {
        string[] settings =
        [
            "listen_addresses=''", $"port={Port}", $"unix_socket_directories={place.Socket}", "unix_socket_permissions=0700",
            "max_connections=60", "timezone=UTC", "log_timezone=UTC", "log_checkpoints=off", "jit=off",
            .. isDurable ? Array.Empty<string>() : ["fsync=off", "synchronous_commit=off", "full_page_writes=off"],
        ];
        string[] line =
        [
            "start", "-D", ClusterDirectory, "-l", place.Log(binaries.Major), "-o", string.Join(' ', settings.Select(setting => $"-c {setting}")),
            "-w", "-t", "10", "-s",
        ];
        var since = Stopwatch.StartNew();
        WasRunning = await AnswersAsync(stop);
        for (var isUp = WasRunning; !isUp; isUp = await AnswersAsync(stop))
        {
            var start = await account.RunAsync(binaries.PgCtl, line, stop);
            // A server killed a moment ago may still count as alive: then the start is refused for a few seconds.
            if (since.Elapsed > Patience)
                throw new EmbeddedClusterException($"PostgreSQL did not start: {start.Errors.Trim()}", $"Its log may say why: {place.Log(binaries.Major)}");
            if (!start.Succeeded)
                await Task.Delay(BetweenTries, stop);
        }
    }

    private async Task<bool> AnswersAsync(CancellationToken stop)
    {
        try
        {
            await using var connection = new NpgsqlConnection(
                new NpgsqlConnectionStringBuilder(AdminConnection) { Pooling = false, Timeout = 2 }.ConnectionString);
            await connection.OpenAsync(stop);
            return true;
        }
        catch (PostgresException fault) when (fault.SqlState == PostgresErrorCodes.InvalidPassword)
        {
            throw new EmbeddedClusterException(
                $"The database refuses the passwords in {place.Passwords(binaries.Major)}.",
                "Restore the file that belongs to it, or begin anew with --reset (the data are thrown away).",
                fault);
        }
        catch (NpgsqlException)
        {
            return false;
        }
    }

    private string Connection(string role, string password, string database) => new NpgsqlConnectionStringBuilder
    {
        Host = place.Socket,
        Port = Port,
        Database = database,
        Username = role,
        Password = password,
        ApplicationName = "foreshore",
        Timeout = 5,
        MaxPoolSize = 20,
    }.ConnectionString;
}
