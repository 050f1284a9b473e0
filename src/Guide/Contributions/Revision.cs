using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>One accepted change of one published thing: readable beside the state before, and restorable. Never changed, never deleted.</summary>
public sealed class Revision
{
    private Revision() { }

    public Revision(Matter matter, int targetId, int locationId, IReadOnlyList<FieldChange> changes, Guid? by, Instant at, string reason)
    {
        Require.That(changes.Count > 0, "Nothing differs, so there is nothing to keep.");
        (Matter, TargetId, LocationId, Changes, By, At) = (matter, targetId, locationId, changes, by, at);
        Reason = Require.TextOrNull(reason, Proposal.LongestReason, "The reason") ?? "";
    }

    public long Id { get; private set; }

    public Matter Matter { get; private set; }

    public int TargetId { get; private set; }

    public int LocationId { get; private set; }

    public IReadOnlyList<FieldChange> Changes { get; private set; } = [];

    /// <summary>Whose change it is; null once the account is erased, or for the club's first content.</summary>
    public Guid? By { get; private set; }

    /// <summary>The warden who let it in.</summary>
    public Guid? AcceptedBy { get; private set; }

    public Instant At { get; private set; }

    public string Reason { get; private set; } = "";

    public Guid? ProposalId { get; private set; }

    public bool IsSingleHanded { get; private set; }

    /// <summary>Without a proposal: what was restored.</summary>
    public Revision LetInBy(Guid warden, bool isSingleHanded)
    {
        (AcceptedBy, IsSingleHanded) = (warden, isSingleHanded);
        return this;
    }

    /// <summary>A skyline drawn or computed on its own page: no proposal, for it limits nobody's way back, but readable beside the one before and restorable.</summary>
    internal static Revision OfSkyline(VantagePoint stance, string? before, Guid? by, Instant at, string reason) =>
        new(Matter.Stance, stance.Id, stance.LocationId, [new FieldChange("skyline", before ?? "", stance.SkylineText ?? "")], by, at, reason);

    public Revision Of(Proposal proposal, Guid acceptedBy)
    {
        (ProposalId, AcceptedBy, IsSingleHanded) = (proposal.Id, acceptedBy, proposal.IsSingleHanded);
        return this;
    }
}
