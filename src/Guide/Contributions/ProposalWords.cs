using Foreshore.Guide.Locations;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Contributions;

/// <summary>How pages name proposals and say where they stand.</summary>
internal static class ProposalWords
{
    private static readonly InstantPattern Universal = InstantPattern.CreateWithInvariantCulture("d MMM uuuu HH:mm 'UTC'");

    extension(Proposal proposal)
    {
        public string Title => proposal.Matter.IsNew()
                ? $"{char.ToUpperInvariant(proposal.Matter.Words()[0])}{proposal.Matter.Words()[1..]}{(proposal.Given.GetValueOrDefault("name") is { Length: > 0 } name ? $": {name}" : "")}"
                : $"Change to a {proposal.Matter.Words()}";

        /// <summary>Where its proposer reads that it was sent. The page's number, where it became a proposal of its own, lets this browser forget what it kept.</summary>
        public string SentAddress(Guid form) => $"/contribute?sent={proposal.Id}{(form == proposal.Id ? "" : $"&form={form}")}";

        /// <summary>Where its proposer goes on with it.</summary>
        public string OwnAddress => proposal.Matter == Matter.NewStance ? $"/contribute/stance/{proposal.Id}"
            : proposal is { State: ProposalState.Accepted } && proposal.Matter.IsNew() ? History(proposal.Matter.Becomes(), proposal.TargetId!.Value)
            : Change(proposal.Matter, proposal.TargetId!.Value, proposal.Id);
    }

    public static string Words(this ProposalState state) => state switch
    {
        ProposalState.Draft => "a draft, not sent",
        ProposalState.Sent => "sent, waiting for a warden",
        ProposalState.Asked => "a warden asks something",
        ProposalState.Accepted => "accepted",
        ProposalState.Declined => "declined",
        ProposalState.Withdrawn => "withdrawn",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "No such state."),
    };

    /// <summary>The form in which a published thing is put right.</summary>
    public static string Change(Matter matter, int targetId, Guid? proposal = null) =>
        $"/contribute/change/{matter.Address()}/{targetId}{(proposal is { } id ? $"?proposal={id}" : "")}";

    public static string History(Matter matter, int targetId) => $"/history/{matter.Address()}/{targetId}";

    /// <summary>As it stands in an address: <c>stance</c>.</summary>
    public static string Address(this Matter matter) => SearchWords.Fold(matter.ToString());

    public static Matter? Of(string? address) => Enum.GetValues<Matter>().Cast<Matter?>().FirstOrDefault(matter => matter!.Value.Address() == address && matter != Matter.NewStance);

    public static string When(Instant at) => Universal.Format(at);

    public static string Day(Instant at) => Access.AccessWords.Day(at.InUtc().Date);
}
