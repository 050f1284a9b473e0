using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>A link that makes one account, once.</summary>
public sealed class Invitation
{
    public static readonly Duration Longest = Duration.FromDays(7);

    private Invitation() { }

    public Guid Id { get; private set; } = Guid.NewGuid();

    public byte[] TokenHash { get; private set; } = [];

    public Role Role { get; private set; }

    /// <summary>The address it is for; null for a link that is handed over by other means.</summary>
    public string? Email { get; private set; }

    /// <summary>The admin who invites; null for a link printed by the program itself.</summary>
    public Guid? MadeBy { get; private set; }

    /// <summary>Good only while there is no admin.</summary>
    public bool IsForFirstAdmin { get; private set; }

    public Instant MadeAt { get; private set; }

    public Instant ExpiresAt { get; private set; }

    public Instant? UsedAt { get; private set; }

    public Instant? RevokedAt { get; private set; }

    public uint Version { get; private set; }

    /// <summary>The link's secret is returned here and nowhere else.</summary>
    public static (Invitation Invitation, string Token) Make(Role role, Instant at, Duration lasts, Guid? by = null, string? email = null, bool isForFirstAdmin = false)
    {
        Require.That(role is >= Role.Member and <= Role.Admin, "An invitation makes a member, a warden or an admin.");
        Require.That(lasts > Duration.Zero && lasts <= Longest, "An invitation lasts seven days at most.");
        Require.That(email is null || Member.LooksLikeEmail(email), "Enter an e-mail address, like ana@example.org.");
        var (token, hash) = LinkSecret.New();
        return (new Invitation
        {
            TokenHash = hash,
            Role = role,
            Email = email is null ? null : Member.Folded(email),
            MadeBy = by,
            IsForFirstAdmin = isForFirstAdmin,
            MadeAt = at,
            ExpiresAt = at + lasts,
        }, token);
    }

    /// <summary>For its own length, also where the clock was ahead when it was made.</summary>
    public bool IsOpenAt(Instant now) => UsedAt is null && RevokedAt is null && now < ExpiresAt && now > MadeAt - (ExpiresAt - MadeAt);

    public Invitation Use(Instant at)
    {
        Require.That(IsOpenAt(at), "This invitation is used, withdrawn or out of date.");
        // Whose address it was stands with the account from now on, and nowhere else.
        (UsedAt, Email) = (at, null);
        return this;
    }

    public Invitation Revoke(Instant at)
    {
        Require.That(UsedAt is null && RevokedAt is null, "This invitation is used or withdrawn already.");
        RevokedAt = at;
        return this;
    }
}
