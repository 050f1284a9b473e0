using Foreshore.Guide.Locations;
using Microsoft.AspNetCore.Identity;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>A passkey of a phone, a computer or a stick: its public half. The private half never leaves the device.</summary>
public sealed class MemberPasskey
{
    /// <summary>As far as the clocks of two nodes may differ.</summary>
    private static readonly Duration Ahead = Duration.FromMinutes(1);

    private MemberPasskey() { }

    public Guid Id { get; private set; } = Guid.NewGuid();

    public Guid MemberId { get; private set; }

    /// <summary>What its owner calls it: "phone", "blue stick".</summary>
    public string Name { get; private set; } = "";

    public byte[] CredentialId { get; private set; } = [];

    public byte[] PublicKey { get; private set; } = [];

    public byte[] AttestationObject { get; private set; } = [];

    public byte[] ClientDataJson { get; private set; } = [];

    public string[] Transports { get; private set; } = [];

    public long SignCount { get; private set; }

    public bool IsBackupEligible { get; private set; }

    public bool IsBackedUp { get; private set; }

    public Instant AddedAt { get; private set; }

    /// <summary>An answer to a question asked before this is not taken: it was given already.</summary>
    public Instant UsedAt { get; private set; }

    public static MemberPasskey Of(UserPasskeyInfo made, string name, Instant at) => new()
    {
        Name = Require.Text(name, 60, "The passkey's name"),
        CredentialId = made.CredentialId,
        PublicKey = made.PublicKey,
        AttestationObject = made.AttestationObject,
        ClientDataJson = made.ClientDataJson,
        Transports = made.Transports ?? [],
        SignCount = made.SignCount,
        IsBackupEligible = made.IsBackupEligible,
        IsBackedUp = made.IsBackedUp,
        AddedAt = at,
        UsedAt = at,
    };

    /// <summary>
    /// A question asked before its last use was answered already. A use that lies ahead is of a clock that was wrong, and holds nobody up.
    /// </summary>
    internal bool HasAnswered(Instant askedAt, Instant now) => askedAt < UsedAt && UsedAt <= now + Ahead;

    public MemberPasskey Use(UserPasskeyInfo answered, Instant at)
    {
        (SignCount, IsBackedUp, UsedAt) = (answered.SignCount, answered.IsBackedUp, at);
        return this;
    }

    /// <summary>As the framework's handler of passkeys knows it. It is only ever kept when its owner was verified by the device.</summary>
    public UserPasskeyInfo ForHandler() => new(CredentialId, PublicKey, AddedAt.ToDateTimeOffset(), (uint)SignCount, Transports,
        isUserVerified: true, IsBackupEligible, IsBackedUp, AttestationObject, ClientDataJson)
    { Name = Name };
}
