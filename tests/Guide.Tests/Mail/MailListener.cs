using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Threading.Channels;

namespace Foreshore.Guide.Mail;

/// <summary>A mail as the server took it: whom the envelope named, and every line between DATA and the dot.</summary>
public sealed record TakenMail(string From, IReadOnlyList<string> To, string Text);

/// <summary>As much of a mail server as RFC 5321 asks of the smallest one, on a port of this machine. It refuses whoever is called refused.</summary>
public sealed class MailListener : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly Channel<TakenMail> taken = Channel.CreateUnbounded<TakenMail>();
    private readonly CancellationTokenSource stop = new();
    private readonly Task serving;

    public MailListener()
    {
        listener.Start();
        serving = ServeAsync();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>What nobody has looked at yet.</summary>
    public IReadOnlyList<TakenMail> Taken => taken.Reader.TryRead(out var one) ? [one] : [];

    public async Task<TakenMail> NextAsync() => await taken.Reader.ReadAsync(stop.Token);

    private async Task ServeAsync()
    {
        try
        {
            while (true)
            {
                using var client = await listener.AcceptTcpClientAsync(stop.Token);
                await TalkAsync(client.GetStream());
            }
        }
        catch (OperationCanceledException)
        {
        }
    }

    private async Task TalkAsync(NetworkStream stream)
    {
        using var reader = new StreamReader(stream, Encoding.UTF8, leaveOpen: true);
        await using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\r\n", AutoFlush = true };
        var (from, to) = ("", new List<string>());
        await writer.WriteLineAsync("220 listening");
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            switch (line.Split(' ', ':')[0].ToUpperInvariant())
            {
                case "EHLO" or "HELO":
                    await writer.WriteLineAsync("250 good day");
                    break;
                case "MAIL":
                    (from, to) = (Angled(line), []);
                    await writer.WriteLineAsync("250 well");
                    break;
                case "RCPT" when Angled(line).StartsWith("refused", StringComparison.Ordinal):
                    await writer.WriteLineAsync("550 nobody of that name");
                    break;
                case "RCPT":
                    to.Add(Angled(line));
                    await writer.WriteLineAsync("250 well");
                    break;
                case "DATA":
                    await writer.WriteLineAsync("354 go on");
                    taken.Writer.TryWrite(new(from, to, await TextAsync(reader)));
                    await writer.WriteLineAsync("250 taken");
                    break;
                case "QUIT":
                    await writer.WriteLineAsync("221 good night");
                    return;
                default:
                    await writer.WriteLineAsync("250 well");
                    break;
            }
        }
    }

    /// <summary>To the line with a dot alone; a dot that begins a line was doubled (RFC 5321, 4.5.2).</summary>
    private async Task<string> TextAsync(StreamReader reader)
    {
        var text = new StringBuilder();
        while (await reader.ReadLineAsync(stop.Token) is { } line && line != ".")
            text.Append(line.StartsWith('.') ? line[1..] : line).Append("\r\n");
        return text.ToString();
    }

    private static string Angled(string line) => line[(line.IndexOf('<', StringComparison.Ordinal) + 1)..line.IndexOf('>', StringComparison.Ordinal)];

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await serving;
        listener.Dispose();
        stop.Dispose();
    }
}
