using Foreshore.Guide.Hosting;
using MailKit.Security;
using MimeKit;

namespace Foreshore.Guide.Mail;

/// <summary>
/// The club's mail server, from <c>Mail:Host</c> and its companions. Without a host no mail is sent, and links are handed over by whoever
/// made them.
/// </summary>
public sealed record MailServer(string Host, int Port, SecureSocketOptions Security, MailboxAddress Sender, string? User, string? Password)
{
    private const int SubmissionPort = 587;
    private const int TlsPort = 465;

    /// <summary>Null without a host. Links in mails begin with <c>Site:Address</c>, so that is needed too.</summary>
    public static MailServer? From(IConfiguration configuration, SiteAddress address)
    {
        var mail = configuration.GetSection("Mail");
        if (mail["Host"] is not { Length: > 0 } host)
            return null;
        if (address.Given is null)
            throw new SettingException("Mail:Host", "mails hold links, and nothing says with what they begin", "Set Site:Address too, like https://guide.example.org.");

        var security = SecurityOf(mail["Security"]);
        return new(host, PortOf(mail["Port"], security), security, SenderOf(mail["From"]), mail["User"] is { Length: > 0 } user ? user : null, mail["Password"]);
    }

    /// <summary>Without encryption only where somebody wrote so: a server on this machine, or a test.</summary>
    private static SecureSocketOptions SecurityOf(string? text) => text?.Trim().ToLowerInvariant() switch
    {
        null or "" or "starttls" => SecureSocketOptions.StartTls,
        "tls" => SecureSocketOptions.SslOnConnect,
        "none" => SecureSocketOptions.None,
        _ => throw new SettingException("Mail:Security", $"\"{text}\" is no way to reach a mail server", "Write starttls (as shipped), tls, or none for a server on this machine."),
    };

    private static int PortOf(string? text, SecureSocketOptions security) =>
        string.IsNullOrWhiteSpace(text) ? security == SecureSocketOptions.SslOnConnect ? TlsPort : SubmissionPort
        : ushort.TryParse(text, out var port) && port > 0 ? port
        : throw new SettingException("Mail:Port", $"\"{text}\" is no port", "Write a number from 1 to 65535, or leave it out.");

    private static MailboxAddress SenderOf(string? text) =>
        MailboxAddress.TryParse(text ?? "", out var from) && from.Address.Contains('@', StringComparison.Ordinal) ? from
        : throw new SettingException("Mail:From", $"\"{text}\" is no address to send from", "Write one, like guide@example.org or \"Coast guide\" <guide@example.org>.");
}
