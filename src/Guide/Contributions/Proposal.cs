using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Contributions;

public enum ProposalState { Draft, Sent, Asked, Accepted, Declined, Withdrawn }

/// <summary>
/// What somebody wants to add or change: texts by field, with what they found there. A draft may hold anything; once sent it is read
/// strictly. Nothing published changes before it is accepted.
/// </summary>
public sealed class Proposal
{
    public const int LongestReason = 600;
    public const int MostLetters = 40_000;

    private Proposal() { }

    /// <param name="id">Made by whoever begins it, so that beginning twice makes one.</param>
    public Proposal(Guid id, Matter matter, int? locationId, int? targetId, Guid proposerId, Instant at)
    {
        Require.That(id != Guid.Empty, "The form lost its number. Load the page again; what you typed is kept in this browser.");
        (Id, Matter, LocationId, TargetId, ProposerId, StartedAt, KeptAt) = (id, matter, locationId, targetId, proposerId, at, at);
    }

    public Guid Id { get; private set; }

    public Matter Matter { get; private set; }

    /// <summary>The place it is about; null for a new place.</summary>
    public int? LocationId { get; private set; }

    /// <summary>The thing to be changed, or, once accepted, that was made; null while it is a new one.</summary>
    public int? TargetId { get; private set; }

    /// <summary>Null once the account is erased.</summary>
    public Guid? ProposerId { get; private set; }

    public ProposalState State { get; private set; }

    /// <summary>What is proposed, by field.</summary>
    public IReadOnlyDictionary<string, string> Given { get; private set; } = new Dictionary<string, string>();

    /// <summary>What the proposer found in the same fields: if it has changed since, the warden sees both.</summary>
    public IReadOnlyDictionary<string, string> Found { get; private set; } = new Dictionary<string, string>();

    public string Reason { get; private set; } = "";

    public Instant StartedAt { get; private set; }

    public Instant KeptAt { get; private set; }

    public Instant? SentAt { get; private set; }

    /// <summary>Digest of all that the form brought when it was sent: the same form again is this proposal, other content is not.</summary>
    public byte[]? SentContent { get; private set; }

    /// <summary>A warden's question, and what the proposer answered.</summary>
    public string? Question { get; private set; }

    public string? Answer { get; private set; }

    public Guid? DecidedBy { get; private set; }

    public Instant? DecidedAt { get; private set; }

    public string? DecisionWords { get; private set; }

    /// <summary>Accepted by the one warden there was, who had proposed it.</summary>
    public bool IsSingleHanded { get; private set; }

    public uint Version { get; private set; }

    public bool IsOpen => State is ProposalState.Sent or ProposalState.Asked;

    public bool MayBeEdited => State is ProposalState.Draft or ProposalState.Asked;

    /// <summary>A limit that lives may hang on is among the changes.</summary>
    public bool IsGuarded => Matter.IsGuarded(Given);

    /// <summary>Says that something is wrong, and proposes nothing in its place.</summary>
    public bool IsNote => State != ProposalState.Draft && Given.Count == 0;

    public IReadOnlyList<FieldChange> Changes => Matter.Sheet().Differences(Found, Given);

    /// <summary>What is new has no number until it is accepted; then the number is that of what was made.</summary>
    public bool IsAbout(Matter matter, int? targetId) => Matter == matter && (TargetId == targetId || (matter.IsNew() && State == ProposalState.Accepted));

    public bool WasSentAs(byte[] content) => SentContent is { } sent && sent.AsSpan().SequenceEqual(content);

    /// <summary>Keeps what was typed so far. Letters that no print can hold are left out, nothing else is judged.</summary>
    public Proposal Keep(IReadOnlyDictionary<string, string> given, Instant at)
    {
        Require.That(MayBeEdited, "This was sent already and is being looked at. Withdraw it first, or wait for the answer.");
        var sheet = Matter.Sheet();
        var kept = given.Where(pair => sheet.Field(pair.Key) is not null).ToDictionary(pair => pair.Key, pair => Clean(pair.Value));
        Require.That(kept.Values.Sum(text => text.Length) <= MostLetters, "This is more text than a proposal holds. Shorten it.");
        (Given, KeptAt) = (kept, at);
        return this;
    }

    /// <summary>What stood there when the form was opened.</summary>
    public Proposal FoundAs(IReadOnlyDictionary<string, string> found)
    {
        Found = found.Where(pair => Given.ContainsKey(pair.Key)).ToDictionary(pair => pair.Key, pair => pair.Value);
        return this;
    }

    public Proposal About(int? locationId)
    {
        LocationId = locationId;
        return this;
    }

    /// <param name="content">Digest of all that the form brought; null for what no form brought.</param>
    public Proposal Send(string? reason, Instant at, byte[]? content = null)
    {
        Require.That(MayBeEdited, "This was sent already. There is nothing more to do.");
        Reason = Require.TextOrNull(reason, LongestReason, "The reason") ?? "";
        (State, SentAt, SentContent) = (ProposalState.Sent, SentAt ?? at, content);
        return this;
    }

    /// <summary>Sends it back to its proposer with a question.</summary>
    public Proposal Ask(Guid by, string question, Instant at)
    {
        RequireSent();
        (Question, Answer, State) = (Require.Text(question, LongestReason, "The question"), null, ProposalState.Asked);
        (DecidedBy, DecidedAt) = (by, at);
        return this;
    }

    public Proposal Reply(string? answer)
    {
        Require.That(State == ProposalState.Asked, "Nobody has asked anything about this.");
        Answer = Require.Text(answer, LongestReason, "The answer");
        return this;
    }

    public Proposal Accept(Guid by, int targetId, string? words, bool isSingleHanded, Instant at)
    {
        RequireSent();
        (State, TargetId, DecidedBy, DecidedAt, IsSingleHanded) = (ProposalState.Accepted, targetId, by, at, isSingleHanded);
        DecisionWords = Require.TextOrNull(words, LongestReason, "The words to the proposer");
        return this;
    }

    public Proposal Decline(Guid by, string? words, Instant at)
    {
        Require.That(IsOpen, Settled());
        (State, DecidedBy, DecidedAt) = (ProposalState.Declined, by, at);
        DecisionWords = Require.Text(words, LongestReason, "The reason for declining");
        return this;
    }

    public Proposal Withdraw(Instant at)
    {
        Require.That(IsOpen || State == ProposalState.Draft, Settled());
        (State, DecidedAt) = (ProposalState.Withdrawn, at);
        return this;
    }

    public void ForgetProposer() => ProposerId = null;

    private void RequireSent() => Require.That(State == ProposalState.Sent, Settled());

    private string Settled() => State switch
    {
        ProposalState.Draft => "This is a draft that nobody has sent yet.",
        ProposalState.Asked => "This waits for its proposer's answer to a question.",
        ProposalState.Accepted => "This was accepted meanwhile. Nothing was done twice.",
        ProposalState.Declined => "This was declined meanwhile. Nothing was done.",
        _ => "This was withdrawn by its proposer meanwhile. Nothing was done.",
    };

    private static string Clean(string? text) =>
        new([.. (text ?? "").ReplaceLineEndings("\n").Where(letter => !char.IsControl(letter) || letter is '\n' or '\t')]);
}
