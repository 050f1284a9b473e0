using Foreshore.Guide.Hosting;
using Foreshore.Guide.Mail;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Members;

/// <summary>The mails that hold links, in words. What came of one is told to the admin who made it.</summary>
public sealed class Letters(Postbox postbox, SiteAddress address, MastheadQueries mastheads)
{
    private const string NotAsked = "If you know nothing of it, do nothing: without the link nothing happens.";

    public const string Sent = "It was sent by mail.";
    public const string NotSent = "The mail could not be sent: hand the link over yourself.";

    /// <summary>In words; null where the club has no mail server, or the invitation no address.</summary>
    public async Task<string?> InviteAsync(string? email, Role role, string token, CancellationToken cancel)
    {
        if (!postbox.IsThere || string.IsNullOrWhiteSpace(email))
            return null;

        var club = (await mastheads.CurrentAsync(cancel)).ClubName;
        return Told(await postbox.SendAsync(new(email.Trim(), $"{club}: an invitation to the coast guide", $"""
            {club} invites you to its coast guide as {role.Words()}.

            This link makes your account. It works once, for seven days:
            {Link(Invitations.PathOf(token))}

            {NotAsked}
            """), cancel));
    }

    /// <summary>
    /// To members alone: who has a warden's or an admin's mailbox shall not have their account with it, so for those the link is handed over.
    /// </summary>
    public async Task<string?> StartAnewAsync(Member member, string token, CancellationToken cancel)
    {
        if (!postbox.IsThere)
            return null;
        if (member.NeedsTwoFactors)
            return $"It is not sent by mail, for {member.Name} is {(member.Role == Role.Admin ? "an admin" : "a guide warden")}: hand it over yourself.";

        var club = (await mastheads.CurrentAsync(cancel)).ClubName;
        return Told(await postbox.SendAsync(new(member.Email, $"{club}: a new start in the coast guide", $"""
            An admin of {club} made this link for you. It lets you choose a new password, once, until tomorrow:
            {Link(NewStarts.PathOf(token))}

            What opened your account before ends with it. {NotAsked}
            """), cancel));
    }

    public async Task HeldUpAsync(string to, CancellationToken cancel)
    {
        if (!postbox.IsThere)
            return;

        var club = (await mastheads.CurrentAsync(cancel)).ClubName;
        await postbox.SendAsync(new(to, $"{club}: wrong tries to sign in as you", $"""
            Somebody typed a wrong password or code for your account in the coast guide so often that devices it has not been on have to
            wait, for an hour at most. The devices you have signed in on before, and passkeys, work as always.

            If it was you, there is nothing to do. If it was not, your password held: keep one here that you use nowhere else. A passkey
            cannot be guessed; you can add one on your account's page:
            {Link("/account")}
            """), cancel);
    }

    private static string Told(bool sent) => sent ? Sent : NotSent;

    private string Link(string path) => new Uri(address.Given!, path).ToString();
}
