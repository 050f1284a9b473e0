using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>A link that lets a member who lost password or phone choose a new password, once. An admin makes it and hands it over.</summary>
public sealed class NewStart
{
    /// <summary>It opens an account that has things in it: shorter than an invitation.</summary>
    public static readonly Duration Lasts = Duration.FromDays(1);

    private NewStart() { }

    public Guid Id { get; private set; } = Guid.NewGuid();

    public byte[] TokenHash { get; private set; } = [];

    /// <summary>Whose account it opens.</summary>
    public Guid MemberId { get; private set; }

    public Guid MadeBy { get; private set; }

    public Instant MadeAt { get; private set; }

    public Instant ExpiresAt { get; private set; }

    public Instant? UsedAt { get; private set; }

    public uint Version { get; private set; }

    /// <summary>The link's secret is returned here and nowhere else.</summary>
    public static (NewStart Start, string Token) Make(Guid memberId, Guid by, Instant at)
    {
        var (token, hash) = LinkSecret.New();
        return (new NewStart { TokenHash = hash, MemberId = memberId, MadeBy = by, MadeAt = at, ExpiresAt = at + Lasts }, token);
    }

    /// <summary>For a day, also where the clock was ahead when it was made.</summary>
    public bool IsOpenAt(Instant now) => UsedAt is null && now < ExpiresAt && now > MadeAt - Lasts;

    public NewStart Use(Instant at)
    {
        Require.That(IsOpenAt(at), "This link is used or out of date.");
        UsedAt = at;
        return this;
    }
}
