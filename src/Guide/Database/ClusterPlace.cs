using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Foreshore.Guide.Database;

/// <summary>
/// Where an embedded cluster lives: <c>postgres/{major}</c> below the data folder, so that a new major version never meets old
/// files; its socket beside it, or below /tmp where the path would be too long for one.
/// </summary>
internal sealed record ClusterPlace(string Data)
{
    /// <summary>A socket's address holds 107 bytes; the file name in it takes 15.</summary>
    private const int LongestSocketFolder = 90;

    public string Root => Path.Combine(Data, "postgres");
    public string Lock => Path.Combine(Data, "lock");
    public string Cluster(int major) => Path.Combine(Root, major.ToString(CultureInfo.InvariantCulture));
    public string Log(int major) => Cluster(major) + ".log";
    public string Passwords(int major) => Path.Combine(Data, string.Create(CultureInfo.InvariantCulture, $"postgres-{major}.passwords"));

    public string Socket
    {
        get
        {
            var beside = Path.Combine(Root, "socket");
            return Encoding.UTF8.GetByteCount(beside) <= LongestSocketFolder && beside.All(IsPlain)
                ? beside
                : $"/tmp/foreshore-{Short(Data)}";
        }
    }

    /// <summary>Held as long as this process lives, however it ends: two sites never share one embedded cluster.</summary>
    public FileStream TakeLock()
    {
        try
        {
            return new FileStream(Lock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException fault)
        {
            throw new EmbeddedClusterException(
                $"Another run already uses the data folder {Data}.", "Stop that one first, or give this one another folder with --data DIR.", fault);
        }
    }

    public bool IsInUse()
    {
        try
        {
            using var free = TakeLock();
            return false;
        }
        catch (EmbeddedClusterException)
        {
            return true;
        }
    }

    /// <summary>Nothing of ours stays in /tmp; a folder still in use is not empty and stays.</summary>
    public void DropSocketFolder()
    {
        if (Directory.Exists(Socket) && !Directory.EnumerateFileSystemEntries(Socket).Any())
            Directory.Delete(Socket);
    }

    public IReadOnlyList<int> Majors => !Directory.Exists(Root) ? [] :
    [
        .. Directory.GetDirectories(Root)
            .Where(folder => File.Exists(Path.Combine(folder, "PG_VERSION")))
            .Select(folder => int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out var major) ? major : 0)
            .Where(major => major > 0)
            .OrderDescending(),
    ];

    /// <summary>The folder asked for, which must do; else the checkout's own, and where that cannot be entered, one outside it.</summary>
    public static async Task<ClusterPlace> ChooseAsync(string? given, Account account)
    {
        if (given is not null)
        {
            return await FaultOfAsync(Path.GetFullPath(given), account) is not { } fault
                ? new ClusterPlace(Path.GetFullPath(given))
                : throw new EmbeddedClusterException($"The data folder {given} cannot be used: {fault}.", "Give another one, like --data /var/lib/foreshore.");
        }

        var checkout = PostgresBinaries.Ancestors(AppContext.BaseDirectory)
            .FirstOrDefault(folder => File.Exists(Path.Combine(folder, "Foreshore.slnx"))) ?? Directory.GetCurrentDirectory();
        var outside = Path.Combine(
            Environment.IsPrivilegedProcess ? "/var/lib" : Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData),
            $"foreshore-{Short(checkout)}");
        var faults = new List<string>();
        foreach (var data in new[] { Path.Combine(checkout, ".data"), outside })
        {
            if (await FaultOfAsync(data, account) is not { } fault)
                return new ClusterPlace(data);
            faults.Add($"{data}: {fault}");
        }

        throw new EmbeddedClusterException($"No folder for the data can be used ({string.Join("; ", faults)}).", "Give one with --data DIR.");
    }

    private static async Task<string?> FaultOfAsync(string data, Account account)
    {
        if (data.Any(letter => letter is '"' or '$' or '`' or '\\' or '\'' || char.IsControl(letter)))
            return "its name holds a quote, $, ` or \\";
        try
        {
            var existing = PostgresBinaries.Ancestors(data).First(Directory.Exists);
            if (!await account.CanReachAsync(existing))
                return $"the account {account.Name}, which PostgreSQL runs under, cannot enter {existing} (a folder above may be closed to others)";
            Directory.CreateDirectory(data);
            var probe = Path.Combine(data, $"probe-{Environment.ProcessId}");
            File.WriteAllText(probe, "");
            File.Delete(probe);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return fault.Message.TrimEnd('.');
        }
    }

    private static bool IsPlain(char letter) => char.IsAsciiLetterOrDigit(letter) || letter is '/' or '.' or '_' or '-';

    private static string Short(string path) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(path)))[..10];
}
