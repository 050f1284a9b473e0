using System.Diagnostics;
using Xunit;

namespace Foreshore.Guide.Database;

/// <summary>The program as an operator starts it, in a process of its own that can be killed.</summary>
internal sealed class GuideProcess : IAsyncDisposable
{
    private readonly Process process;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private GuideProcess(Process process) => this.process = process;

    public static GuideProcess Start(params string[] line)
    {
        // A script in the background starts its children deaf to Ctrl-C; an operator's terminal doesn't.
        var start = new ProcessStartInfo("env", ["--default-signal=INT", "dotnet", Path.Combine(AppContext.BaseDirectory, "Foreshore.Guide.dll"), .. line])
        {
            WorkingDirectory = AppContext.BaseDirectory,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        return new GuideProcess(Process.Start(start)!);
    }

    /// <summary>Reads on until the site says where it is; the address.</summary>
    public async Task<Uri> ServingAsync()
    {
        while (await process.StandardOutput.ReadLineAsync(Stop) is { } line)
        {
            if (line.StartsWith("Foreshore is at ", StringComparison.Ordinal))
                return new Uri(line.Split(' ')[3]);
        }

        throw new InvalidOperationException($"It ended: {await process.StandardError.ReadToEndAsync()}");
    }

    /// <summary>Reads on until it says this; the line.</summary>
    public async Task<string> SaysAsync(string words)
    {
        while (await process.StandardOutput.ReadLineAsync(Stop) is { } line)
        {
            if (line.Contains(words, StringComparison.Ordinal))
                return line;
        }

        throw new InvalidOperationException($"It ended without \"{words}\": {await process.StandardError.ReadToEndAsync()}");
    }

    public async Task<(int ExitCode, string Output, string Errors)> EndAsync()
    {
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync(Stop);
        return (process.ExitCode, await output, await errors);
    }

    /// <summary>As a full machine or a power button would.</summary>
    public async Task KillAsync()
    {
        process.Kill();
        await process.WaitForExitAsync();
    }

    public async Task InterruptAsync()
    {
        using var kill = Process.Start("kill", ["-INT", $"{process.Id}"]);
        await kill.WaitForExitAsync(Stop);
        await process.WaitForExitAsync(Stop);
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
            await KillAsync();
        process.Dispose();
    }
}
