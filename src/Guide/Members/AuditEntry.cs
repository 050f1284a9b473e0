using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>What the log of acts tells apart.</summary>
public enum Act
{
    SignedIn, SignInRefused, SignedOut, SessionEnded,
    InvitationMade, InvitationRevoked, InvitationUsed,
    RoleChanged, MemberRemoved, MemberTakenBack, MemberErased,
    PasswordChanged, SecondStepSetUp, SecondStepDropped, RecoveryCodesMade, RecoveryCodeUsed, PasskeyAdded, PasskeyRemoved,
    Exported, VisitorsSetting,
    ProposalAccepted, ProposalDeclined, ProposalAsked, Restored,
    HazardConfirmed, HazardRejected, HazardEnded, HazardReworded, Closed, ClosureConfirmed, LiftAsked, ClosureLifted, NewStartMade, NewStartUsed, PhotoTakenDown,
    StationAdded, StationRemoved, ElevationStored, ElevationDeleted, SkylineDrawn, SkylineAsked, SkylineComputed, SignInHeldUp,
}

/// <summary>
/// One line of the log that only grows: the site's own database role may add and read, not change or delete. People stand in it by
/// their number, so it outlives an erased account without naming anybody; no address of a machine is kept.
/// </summary>
public sealed class AuditEntry
{
    public const string Table = "audit_entries";

    private AuditEntry() { }

    public AuditEntry(Act act, Instant at, Guid? by, Guid? about = null, string words = "") =>
        (Act, At, By, About, Words) = (act, at, by, about, OneLine(words));

    public long Id { get; private set; }

    public Instant At { get; private set; }

    public Act Act { get; private set; }

    /// <summary>Who did it; null for the program or for somebody not signed in.</summary>
    public Guid? By { get; private set; }

    /// <summary>Whom it was done to, where that is somebody else.</summary>
    public Guid? About { get; private set; }

    public string Words { get; private set; } = "";

    /// <summary>A line break would let somebody write a line of their own; Unicode knows two more than the controls.</summary>
    private static string OneLine(string words) => new([.. words.Select(letter => char.IsControl(letter) || letter is '\u2028' or '\u2029' ? ' ' : letter).Take(200)]);
}
