using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;

namespace Foreshore.Guide.Mail;

/// <summary>Hands letters to the club's mail server, if there is one. What cannot be sent is told to whoever asked, and nothing waits for it.</summary>
public sealed partial class Postbox(MailServer? server, ILogger<Postbox> log)
{
    /// <summary>A page waits for it: longer than a healthy server takes, shorter than a person's patience.</summary>
    private const int PatienceMilliseconds = 8_000;

    public bool IsThere => server is not null;

    /// <summary>True once the server has taken it.</summary>
    public async Task<bool> SendAsync(Letter letter, CancellationToken cancel)
    {
        if (server is null)
            return false;

        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        patience.CancelAfter(PatienceMilliseconds);
        try
        {
            using var message = letter.Message(server.Sender);
            using var client = new SmtpClient { Timeout = PatienceMilliseconds };
            await client.ConnectAsync(server.Host, server.Port, server.Security, patience.Token);
            if (server.User is not null)
                await client.AuthenticateAsync(server.User, server.Password ?? "", patience.Token);
            await client.SendAsync(message, patience.Token);
            await client.DisconnectAsync(quit: true, patience.Token);
            return true;
        }
        catch (Exception fault) when (!cancel.IsCancellationRequested
            && fault is IOException or System.Net.Sockets.SocketException or CommandException or ProtocolException or AuthenticationException
                or SslHandshakeException or OperationCanceledException or NotSupportedException or ServiceNotAuthenticatedException or MimeKit.ParseException)
        {
            // Neither address nor words: the log is no place for them.
            NotSent(log, server.Host, fault.GetType().Name);
            return false;
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "A mail was not taken by {Host}: {Fault}. The settings of Mail and the server's own log tell more.")]
    private static partial void NotSent(ILogger log, string host, string fault);
}
