using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Every transition of a proposal, and every forbidden one.</summary>
public sealed class ProposalTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 11, 25, 12, 0);
    private static readonly Guid Proposer = Guid.NewGuid(), Warden = Guid.NewGuid();

    private static readonly Dictionary<string, Action<Proposal>> Verbs = new()
    {
        ["keep"] = p => p.Keep(new Dictionary<string, string> { ["name"] = "Slip end" }, Now),
        ["send"] = p => p.Send("seen today", Now),
        ["ask"] = p => p.Ask(Warden, "Which side of the slip?", Now),
        ["reply"] = p => p.Reply("The seaward side."),
        ["accept"] = p => p.Accept(Warden, 7, null, false, Now),
        ["decline"] = p => p.Decline(Warden, "It is there already.", Now),
        ["withdraw"] = p => p.Withdraw(Now),
    };

    [Theory]
    [InlineData(ProposalState.Draft, "keep send withdraw")]
    [InlineData(ProposalState.Sent, "ask accept decline withdraw")]
    [InlineData(ProposalState.Asked, "keep send reply decline withdraw")]
    [InlineData(ProposalState.Accepted, "")]
    [InlineData(ProposalState.Declined, "")]
    [InlineData(ProposalState.Withdrawn, "")]
    public void Each_state_allows_its_verbs_and_no_other(ProposalState state, string allowed)
    {
        foreach (var (name, verb) in Verbs)
        {
            var proposal = In(state);
            if (allowed.Split(' ').Contains(name))
            {
                verb(proposal);
                continue;
            }
            Assert.Throws<NotAcceptedException>(() => verb(proposal));
            Assert.Equal(state, proposal.State);
        }
    }

    [Fact]
    public void A_question_goes_back_and_the_first_day_of_sending_is_kept()
    {
        var proposal = In(ProposalState.Asked).Reply("The seaward side.").Send("", Now + Duration.FromDays(2));

        Assert.Equal((ProposalState.Sent, Now, "The seaward side."), (proposal.State, proposal.SentAt, proposal.Answer));
    }

    [Fact]
    public void Unknown_fields_and_letters_that_nothing_can_hold_are_left_out()
    {
        var proposal = New().Keep(new Dictionary<string, string> { ["name"] = "Slip\u0000 end\u0007", ["state"] = "Accepted", ["summary"] = "one\r\ntwo" }, Now);

        Assert.Equal(["name", "summary"], proposal.Given.Keys.Order());
        Assert.Equal(("Slip end", "one\ntwo"), (proposal.Given["name"], proposal.Given["summary"]));
    }

    [Fact]
    public void A_draft_has_an_end() =>
        Assert.Throws<NotAcceptedException>(() => New().Keep(new Dictionary<string, string> { ["summary"] = new('a', 50_000) }, Now));

    [Fact]
    public void A_limit_makes_it_guarded_and_a_name_does_not()
    {
        Assert.False(New().Keep(new Dictionary<string, string> { ["name"] = "Slip end" }, Now).IsGuarded);
        Assert.True(New().Keep(new Dictionary<string, string> { ["usable-tide"] = "2.4" }, Now).IsGuarded);
    }

    private static Proposal New() => new(Guid.NewGuid(), Matter.Stance, 1, 7, Proposer, Now);

    private static Proposal In(ProposalState state)
    {
        var proposal = New();
        if (state is ProposalState.Draft)
            return proposal;
        if (state is ProposalState.Withdrawn)
            return proposal.Withdraw(Now);
        proposal.Send("seen today", Now);
        return state switch
        {
            ProposalState.Asked => proposal.Ask(Warden, "Which side of the slip?", Now),
            ProposalState.Accepted => proposal.Accept(Warden, 7, null, false, Now),
            ProposalState.Declined => proposal.Decline(Warden, "It is there already.", Now),
            _ => proposal,
        };
    }
}
