using System.Diagnostics;
using System.Globalization;

namespace Foreshore.Guide.Database;

/// <summary>
/// The account PostgreSQL runs under. It refuses to run as root, so root lends it an account without rights, by setpriv;
/// anybody else runs it as themselves.
/// </summary>
internal sealed record Account(string Name, string? Ids)
{
    private static readonly Account Ourselves = new(Environment.UserName, null);
    private static readonly string[] Known = ["postgres", "foreshore"];

    /// <summary>The owner of data made before, else an account this machine has for it, else a new one, else nobody.</summary>
    public static async Task<Account> ChooseAsync(string existingData)
    {
        if (!Environment.IsPrivilegedProcess)
            return Ourselves;

        if (Directory.Exists(existingData))
        {
            var owner = (await Ourselves.RunAsync("stat", ["--format=%U %u:%g", existingData])).Output.Trim().Split(' ');
            if (owner is [var name, var ids] && !ids.StartsWith("0:", StringComparison.Ordinal))
                return new Account(name, ids);
        }

        foreach (var name in Known)
        {
            if (await FindAsync(name) is { } account)
                return account;
        }

        if (File.Exists("/usr/sbin/useradd"))
            await Ourselves.RunAsync("/usr/sbin/useradd", ["--system", "--no-create-home", "--shell", "/usr/sbin/nologin", "foreshore"]);
        return await FindAsync("foreshore") ?? await FindAsync("nobody") ?? throw new EmbeddedClusterException(
            "PostgreSQL may not run as root and no other account was found.",
            "Make one (useradd --system foreshore), or run as an ordinary user.");
    }

    private static async Task<Account?> FindAsync(string name)
    {
        var user = await Ourselves.RunAsync("id", ["-u", name]);
        var group = await Ourselves.RunAsync("id", ["-g", name]);
        return user.Succeeded && group.Succeeded ? new Account(name, $"{user.Output.Trim()}:{group.Output.Trim()}") : null;
    }

    /// <summary>Whether this account can pass through or execute what lies there: the rights of every parent folder count.</summary>
    public async Task<bool> CanReachAsync(string path) => (await RunAsync("test", ["-x", path])).Succeeded;

    public async Task GiveAsync(string path, bool withContents = false)
    {
        if (Ids is not null)
            (await Ourselves.RunAsync("chown", withContents ? ["--no-dereference", "-R", Ids, path] : ["--no-dereference", Ids, path])).OrThrow($"Could not give {path} to the account {Name}.");
    }

    public async Task<Finished> RunAsync(string program, IEnumerable<string> arguments, CancellationToken stop = default)
    {
        string[] lead = Ids is null ? [] : ["setpriv", $"--reuid={Ids.Split(':')[0]}", $"--regid={Ids.Split(':')[1]}", "--clear-groups"];
        string[] line = [.. lead, Locate(program), .. arguments];
        line[0] = Locate(line[0]);
        var start = new ProcessStartInfo(line[0], line[1..])
        {
            // A folder everybody may enter, whatever the caller's own is.
            WorkingDirectory = "/",
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("PG", StringComparison.Ordinal)).ToList())
            start.Environment.Remove(name);
        start.Environment["LC_ALL"] = "C";

        using var process = Begin(start);
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync(stop);
        var errors = process.StandardError.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);
        return new Finished(string.Join(' ', line), process.ExitCode, await output, await errors);
    }

    /// <summary>
    /// By its full path: a bare name would first be looked for in the current folder, where a checkout has a "test" of its own.
    /// </summary>
    internal static string Locate(string program)
    {
        if (Path.IsPathRooted(program))
            return program;

        string[] folders = ["/usr/bin", "/bin", "/usr/sbin", "/sbin", .. (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Where(Path.IsPathRooted)];
        return folders.Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists) ?? throw new EmbeddedClusterException(
            $"The program {program} is not on this machine.",
            "It belongs to coreutils, util-linux or passwd: install it, or give a server of your own in ConnectionStrings:Guide.");
    }

    private static Process Begin(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start) ?? throw new InvalidOperationException($"{start.FileName} did not start.");
        }
        catch (System.ComponentModel.Win32Exception fault)
        {
            throw new EmbeddedClusterException(
                $"The program {start.FileName} could not be started ({fault.Message}).",
                "It belongs to coreutils, util-linux or PostgreSQL: install it, or give a server of your own in ConnectionStrings:Guide.",
                fault);
        }
    }
}

/// <summary>How a program ended.</summary>
internal sealed record Finished(string Line, int ExitCode, string Output, string Errors)
{
    public bool Succeeded => ExitCode == 0;

    public Finished OrThrow(string what) => Succeeded ? this : throw new EmbeddedClusterException(
        what,
        string.Create(CultureInfo.InvariantCulture, $"\"{Line}\" ended with {ExitCode}: {Errors.Trim()} {Output.Trim()}"));
}
