using MimeKit;

namespace Foreshore.Guide.Mail;

/// <summary>
/// One mail in plain text to one person. A subject is one line whatever names stand in it: a line break there would let somebody write
/// headers of their own.
/// </summary>
public sealed record Letter(string To, string Subject, string Body)
{
    public MimeMessage Message(MailboxAddress from)
    {
        var message = new MimeMessage { Subject = OneLine(Subject), Body = new TextPart("plain") { Text = Body } };
        message.From.Add(from);
        message.To.Add(new MailboxAddress("", OneLine(To)));
        // Answers of machines ("I am away") are not wanted; RFC 3834, section 5.
        message.Headers.Add("Auto-Submitted", "auto-generated");
        return message;
    }

    private static string OneLine(string text) => new([.. text.Select(letter => char.IsControl(letter) ? ' ' : letter)]);
}
