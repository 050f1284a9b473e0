using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Foreshore.Trials;

/// <summary>The program as an operator starts it, on a port of its own of this machine alone.</summary>
internal sealed class SiteProcess : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private readonly string[] settings;
    private readonly string log;
    private readonly StreamWriter said;
    private readonly (string Name, string Value)[] environment;
    private readonly string[] before;
    private Process? process;

    /// <param name="data">Its data folder.</param>
    /// <param name="log">Where what it says goes.</param>
    /// <param name="environment">Of the units that are shipped.</param>
    /// <param name="before">Programs that start it, like one that bounds it.</param>
    /// <param name="connection">Of a server that is not the site's own.</param>
    public SiteProcess(string data, string log, (string Name, string Value)[]? environment = null, string[]? before = null, string? connection = null)
    {
        (Data, Connection) = (data, connection);
        Address = new Uri($"http://127.0.0.1:{FreePort()}");
        (this.log, this.environment, this.before) = (log, environment ?? [], before ?? []);
        said = new StreamWriter(log, append: true) { AutoFlush = true };
        settings = [connection is null ? $"--Database:Directory={data}" : $"--ConnectionStrings:Guide={connection}", $"--urls={Address.OriginalString}", "--Proxy:Networks=127.0.0.1/32", "--Logging:LogLevel:Microsoft=Critical"];
    }

    public string Data { get; }

    public string? Connection { get; }

    public Uri Address { get; }

    public int Id => process!.Id;

    public bool HasEnded => process?.HasExited != false;

    /// <summary>The first process of its database.</summary>
    public int Postmaster => int.Parse(File.ReadLines(Path.Combine(Cluster, "postmaster.pid")).First(), CultureInfo.InvariantCulture);

    public string Cluster => Directory.GetDirectories(Path.Combine(Data, "postgres")).Single(folder => File.Exists(Path.Combine(folder, "PG_VERSION")));

    public void Start()
    {
        // All who write come from one address, faster than people.
        string[] unlimited = ["--Limits:Pages=0", "--Limits:Api=0", "--Limits:Forms=0", "--Limits:SignIns=0"];
        string[] line = [.. before, "dotnet", Path.Combine(AppContext.BaseDirectory, "Foreshore.Guide.dll"), "serve", .. unlimited, .. settings];
        var start = new ProcessStartInfo(line[0], line[1..]) { WorkingDirectory = AppContext.BaseDirectory, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, line) => Write(line.Data);
        process.ErrorDataReceived += (_, line) => Write(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>How long until a page is answered, at most two minutes.</summary>
    public async Task<TimeSpan> AnswersAsync(string path = "/health")
    {
        using var reader = new HttpClient { BaseAddress = Address, Timeout = TimeSpan.FromSeconds(10) };
        var since = Stopwatch.StartNew();
        while (since.Elapsed < Patience)
        {
            try
            {
                using var answer = await reader.GetAsync(path);
                if (answer.StatusCode == HttpStatusCode.OK)
                    return since.Elapsed;
            }
            catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException)
            {
                // Not there yet.
            }

            await Task.Delay(50);
        }

        throw new TimeoutException($"{path} was not answered within {Patience.TotalSeconds} s; the site's log is {log}.");
    }

    public async Task KillAsync()
    {
        process!.Kill();
        await process.WaitForExitAsync();
    }

    /// <summary>In good order, with its database.</summary>
    public async ValueTask DisposeAsync()
    {
        if (process is { HasExited: false })
        {
            await SignalAsync("-TERM", process.Id);
            await process.WaitForExitAsync();
        }

        process?.Dispose();
        lock (said)
            said.Dispose();
    }

    /// <summary>A process and all that it started.</summary>
    public static IReadOnlyList<int> FamilyOf(int first)
    {
        var parents = Directory.GetDirectories("/proc").Select(Path.GetFileName).Where(name => int.TryParse(name, CultureInfo.InvariantCulture, out _))
            .Select(name => (Id: int.Parse(name!, CultureInfo.InvariantCulture), Parent: ParentOf(name!))).ToList();
        List<int> family = [first];
        for (var at = 0; at < family.Count; at++)
            family.AddRange(parents.Where(each => each.Parent == family[at]).Select(each => each.Id));
        return family;
    }

    public static async Task SignalAsync(string signal, params IEnumerable<int> processes)
    {
        using var kill = Process.Start("kill", [signal, .. processes.Select(id => id.ToString(CultureInfo.InvariantCulture))]);
        await kill.WaitForExitAsync();
    }

    private static int ParentOf(string id)
    {
        try
        {
            var state = File.ReadAllText($"/proc/{id}/stat");
            return int.Parse(state[(state.LastIndexOf(')') + 2)..].Split(' ')[1], CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return 0;
        }
    }

    private void Write(string? line)
    {
        if (line is null)
            return;
        lock (said)
            said.WriteLine(line);
    }

    private static int FreePort()
    {
        using var any = new TcpListener(IPAddress.Loopback, 0);
        any.Start();
        return ((IPEndPoint)any.LocalEndpoint).Port;
    }
}
