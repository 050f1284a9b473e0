using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Photos;

/// <summary>
/// Where photos are developed: a process of its own for each file, one at a time, with little memory, no secrets and ten seconds of a processor.
/// A file that breaks the decoder breaks that process and nothing else.
/// </summary>
public sealed partial class Darkroom(ILogger<Darkroom> log) : IDisposable
{
    /// <summary>Of a processor. By the clock it is given more: on a busy machine the clock says little about a file.</summary>
    public const int MostSeconds = 10;
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(40);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(60);
    /// <summary>An eighth of a gibibyte, as the runtime reads it: in hexadecimal. The pixels lie outside, bounded by <see cref="Developing.MostNative"/>.</summary>
    private const string HeapLimit = "8000000";
    private const int HeadBytes = 64;
    private const int MostAnswerBytes = 32 << 20;
    private const int MostWords = 400;
    private static readonly string[] Inherited = ["PATH", "HOME", "TMPDIR", "DOTNET_ROOT", "DOTNET_HOST_PATH", "LD_LIBRARY_PATH", "SystemRoot"];

    private readonly PhotoQueue queue = new();

    /// <exception cref="NotAcceptedException">The file is not taken; the words say why and what to do.</exception>
    public Task<DevelopedPhoto> DevelopAsync(byte[] file, CancellationToken cancel) => DevelopAsync(new MemoryStream(file), cancel);

    /// <summary>Read when its turn has come and piece by piece: those that wait take no memory.</summary>
    /// <exception cref="NotAcceptedException">The file is not taken; the words say why and what to do.</exception>
    public async Task<DevelopedPhoto> DevelopAsync(Stream file, CancellationToken cancel)
    {
        // What its first bytes rule out needs no process.
        Require.That(file.Length <= Developing.MostBytes, "The file is larger than 25 MB. Export it smaller; the long side is brought to 2400 pixels anyway.");
        var head = new byte[Math.Min(HeadBytes, file.Length)];
        await file.ReadExactlyAsync(head, cancel);
        Require.That(PhotoFormat.Of(head) is not null, PhotoFormat.WhyNot(head));
        file.Position = 0;
        using var turn = await queue.EnterAsync(LongestWait, cancel);
        Require.That(turn is not null, "Many photos are being read just now. Try again in a minute.");
        return await InItsOwnProcessAsync(file, cancel);
    }

    public void Dispose() => queue.Dispose();

    private async Task<DevelopedPhoto> InItsOwnProcessAsync(Stream file, CancellationToken cancel)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(Longest);
        using var process = Process.Start(Command()) ?? throw new InvalidOperationException("The process for photos did not start.");
        try
        {
            var answer = ReadAsync(process.StandardOutput.BaseStream, MostAnswerBytes, limit.Token);
            var words = ReadAsync(process.StandardError.BaseStream, MostWords * 4, limit.Token);
            var sha256 = await FeedAsync(process, file, limit.Token);
            await process.WaitForExitAsync(limit.Token);
            if (process.ExitCode == IngestVerb.Refused)
                throw new NotAcceptedException(Encoding.UTF8.GetString(await words));
            if (process.ExitCode == 0 && DevelopedPhoto.Read(await answer, sha256) is { } developed)
                return developed;
            if (process.ExitCode == ProcessBounds.OutOfTime)
                throw new OperationCanceledException();
            Broke(log, process.ExitCode, file.Length);
            throw new NotAcceptedException("The picture is damaged, or takes more memory than there is for one photo. Export it again as an ordinary JPEG, then choose it again.");
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            TookTooLong(log, file.Length);
            throw new NotAcceptedException("The picture took more than ten seconds to read, so it was given up. Export it smaller, then choose it again.");
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    /// <summary>Gives the file to the process; its SHA-256.</summary>
    private static async Task<byte[]> FeedAsync(Process process, Stream file, CancellationToken cancel)
    {
        using var sum = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var part = new byte[81920];
        try
        {
            while (await file.ReadAsync(part, cancel) is > 0 and var length)
            {
                sum.AppendData(part, 0, length);
                await process.StandardInput.BaseStream.WriteAsync(part.AsMemory(0, length), cancel);
            }

            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It has ended before reading all: its exit code says why.
        }

        return sum.GetHashAndReset();
    }

    private static async Task<byte[]> ReadAsync(Stream from, int most, CancellationToken cancel)
    {
        using var read = new MemoryStream();
        var part = new byte[81920];
        while (await from.ReadAsync(part, cancel) is > 0 and var length)
        {
            if (read.Length < most)
                read.Write(part, 0, (int)Math.Min(length, most - read.Length));
        }
        return read.ToArray();
    }

    /// <summary>The program itself once more, with none of the settings and secrets that came by the environment.</summary>
    private static ProcessStartInfo Command()
    {
        var program = typeof(Darkroom).Assembly.Location;
        var start = new ProcessStartInfo(Host(), program.Length > 0 ? [program, IngestVerb.Name] : [IngestVerb.Name])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = Path.GetTempPath(),
        };
        start.Environment.Clear();
        foreach (var name in Inherited)
        {
            if (Environment.GetEnvironmentVariable(name) is { Length: > 0 } value)
                start.Environment[name] = value;
        }
        start.Environment["DOTNET_GCHeapHardLimit"] = HeapLimit;
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        return start;

        // Started as a file of one's own (a single-file publish) the program is the host; else the runtime that runs this is asked for.
        string Host() => program.Length == 0 ? Environment.ProcessPath!
            : Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? Environment.ProcessPath!
            : Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } known ? known : "dotnet";
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The process for photos ended with {ExitCode} on a file of {Bytes} bytes.")]
    private static partial void Broke(ILogger log, int exitCode, long bytes);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The process for photos ran out of time on a file of {Bytes} bytes.")]
    private static partial void TookTooLong(ILogger log, long bytes);
}
