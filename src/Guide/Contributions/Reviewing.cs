using Foreshore.Guide.Locations;
using Foreshore.Guide.Mail;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>A field that changed between the proposal and now.</summary>
public sealed record Clash(SheetField Field, string Found, string Proposed, string Now);

/// <param name="Clashes">Nothing was applied: these changed meanwhile.</param>
/// <param name="Faults">Nothing was applied: these cannot be taken.</param>
/// <param name="Address">Where the accepted thing is read.</param>
public sealed record ReviewOutcome(IReadOnlyList<Clash> Clashes, IReadOnlyList<FieldFault> Faults, string? Address = null)
{
    public bool IsDone => Clashes.Count == 0 && Faults.Count == 0;

    public static ReviewOutcome Done(string? address = null) => new([], [], address);

    public static ReviewOutcome Refused(string words, string field = "decision") => new([], [new FieldFault(field, words)]);
}

/// <summary>
/// Verbs of wardens on proposals. Each is one transaction; the proposal's row version and a unique revision see to it that two
/// wardens never apply the same thing twice: the second is told what the first decided.
/// </summary>
public sealed class Reviewing(IDbContextFactory<GuideDb> database, IClock clock, Postbox postbox)
{
    private static readonly ReviewOutcome Meanwhile =
        ReviewOutcome.Refused("Somebody else decided on this, or changed it, at the same moment; nothing was done twice. Load the page again to see it as it is now.");

    private static readonly ReviewOutcome InQueue =
        ReviewOutcome.Refused("Another warden has to let this in: it changes a limit that lives may hang on. It stands in the queue now.");

    /// <summary>Applies the proposal, with the warden's edits on top.</summary>
    /// <param name="edits">Texts that the warden changed; empty: as proposed.</param>
    /// <param name="despite">Fields in which the proposal goes before what changed meanwhile.</param>
    public Task<ReviewOutcome> AcceptAsync(
        SignedIn warden, Guid id, IReadOnlyDictionary<string, string> edits, IReadOnlySet<string> despite, string? words, CancellationToken cancel) =>
        DecideAsync(warden, id, async (db, proposal, now) =>
        {
            var given = proposal.Given.ToDictionary();
            foreach (var (name, text) in edits.Where(pair => proposal.Matter.Sheet().Field(pair.Key) is not null))
                given[name] = text;
            // A browser sends line ends of its own; they are no edit.
            var changed = given.Where(pair => proposal.Given.GetValueOrDefault(pair.Key, "").Trim() != pair.Value.ReplaceLineEndings("\n").Trim()).Select(pair => pair.Key).ToList();
            var isOwn = proposal.ProposerId == warden.MemberId || changed.Any(name => proposal.Matter.Sheet().Field(name)!.IsGuarded);
            var isGuarded = proposal.Matter.IsGuarded(given);
            if (isGuarded && isOwn && await RefusalAsync(db, words, cancel) is { } refusal)
                return refusal;

            var outcome = proposal.Matter == Matter.NewStance
                ? await new Publishing(db, proposal, warden.MemberId, now).NewAsync(given, words, isGuarded && isOwn, cancel)
                : await new Publishing(db, proposal, warden.MemberId, now).ChangeAsync(given, despite, words, isGuarded && isOwn, warden.Reader, cancel);
            if (outcome.IsDone)
                db.Add(new AuditEntry(Act.ProposalAccepted, now, warden.MemberId, proposal.ProposerId, $"{proposal.Matter.Words()} {proposal.Id}{(isGuarded && isOwn ? ", single-handed" : "")}"));
            return outcome;
        }, cancel);

    public Task<ReviewOutcome> DeclineAsync(SignedIn warden, Guid id, string? words, CancellationToken cancel) =>
        DecideAsync(warden, id, async (db, proposal, now) =>
        {
            proposal.Decline(warden.MemberId, words, now);
            await db.DropPhotosAsync(proposal, cancel);
            db.Add(new AuditEntry(Act.ProposalDeclined, now, warden.MemberId, proposal.ProposerId, $"{proposal.Matter.Words()} {proposal.Id}"));
            return ReviewOutcome.Done();
        }, cancel);

    public Task<ReviewOutcome> AskAsync(SignedIn warden, Guid id, string? question, CancellationToken cancel) =>
        DecideAsync(warden, id, (db, proposal, now) =>
        {
            proposal.Ask(warden.MemberId, question ?? "", now);
            db.Add(new AuditEntry(Act.ProposalAsked, now, warden.MemberId, proposal.ProposerId, $"{proposal.Matter.Words()} {proposal.Id}"));
            return Task.FromResult(ReviewOutcome.Done());
        }, cancel);

    /// <summary>Brings a thing back to what it was before a revision, as a revision of its own.</summary>
    public async Task<ReviewOutcome> RestoreAsync(SignedIn warden, long revisionId, string? reason, CancellationToken cancel)
    {
        RequireWarden(warden);
        try
        {
            return await BringBackAsync(warden, revisionId, reason, cancel);
        }
        catch (NotAcceptedException refused)
        {
            return ReviewOutcome.Refused(refused.Message);
        }
    }

    private async Task<ReviewOutcome> BringBackAsync(SignedIn warden, long revisionId, string? reason, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var now = clock.GetCurrentInstant();
        var revision = await db.Revisions.SingleOrDefaultAsync(r => r.Id == revisionId, cancel);
        if (revision is null || await db.ThingAsync(revision.Matter, revision.TargetId, warden.Reader, cancel) is not { } thing)
            return ReviewOutcome.Refused("That change is not there any more. Load the page again.");

        var before = thing.Read();
        var wanted = revision.Changes.ToDictionary(change => change.Field, change => change.Before);
        var isGuarded = revision.Matter.IsGuarded(wanted);
        if (isGuarded && await RefusalAsync(db, reason, cancel) is { } refusal)
        {
            if (string.IsNullOrWhiteSpace(reason) && await WardensAsync(db, cancel) < 2)
                return refusal;
            // Whoever restores such a value is its proposer: another warden lets it in. Asked twice it stands in the queue once.
            var id = SentContent.KeyOf(warden.MemberId, "restore", $"{revisionId}", Convert.ToHexString(SentContent.DigestOf(before.Select(pair => (pair.Key, pair.Value)))));
            if (await db.Proposals.AnyAsync(p => p.Id == id && (p.State == ProposalState.Sent || p.State == ProposalState.Asked), cancel))
                return InQueue;
            if (await db.Proposals.AnyAsync(p => p.Id == id, cancel))
                id = Guid.NewGuid();
            var proposal = new Proposal(id, revision.Matter, revision.LocationId, revision.TargetId, warden.MemberId, now)
                .Keep(wanted, now).FoundAs(before).Send(reason ?? $"As it was before {revision.At}", now);
            db.Add(proposal);
            return await SaveAsync(db, null, cancel) is { IsDone: false } meanwhile ? meanwhile : InQueue;
        }

        if (await db.StationFaultAsync(revision.Matter, wanted, cancel) is { } station)
            return new([], [station]);
        if (thing.Write(wanted) is { Count: > 0 } faults)
            return new([], faults);
        var changes = revision.Matter.Sheet().Differences(before, thing.Read());
        if (changes.Count == 0)
            return ReviewOutcome.Refused("It reads so already. Nothing was changed.");
        if (!isGuarded && changes.Any(change => revision.Matter.Sheet().Field(change.Field)!.IsGuarded))
            return ReviewOutcome.Refused("This would also change a limit that lives may hang on. Propose the change of that field itself, so that another warden sees it.");
        db.Add(new Revision(revision.Matter, revision.TargetId, revision.LocationId, changes, warden.MemberId, now, reason ?? "Restored").LetInBy(warden.MemberId, isGuarded));
        db.Add(new AuditEntry(Act.Restored, now, warden.MemberId, revision.By, $"{revision.Matter.Words()} {thing.Name}{(isGuarded ? ", single-handed" : "")}"));
        return await SaveAsync(db, thing.Address, cancel);
    }

    /// <summary>Null where one warden may do this alone, with a reason; else why not.</summary>
    public static async Task<ReviewOutcome?> RefusalAsync(GuideDb db, string? reason, CancellationToken cancel) =>
        await WardensAsync(db, cancel) >= 2
            ? ReviewOutcome.Refused("This changes a limit that lives may hang on, and it is yours: another warden has to accept it. It stays in the queue.")
            : string.IsNullOrWhiteSpace(reason)
                ? ReviewOutcome.Refused("You are the only warden, and this is your own change of a limit that lives may hang on. Type the reason; it is logged as single-handed.", "words")
                : null;

    /// <summary>Wardens and admins who belong.</summary>
    public static Task<int> WardensAsync(GuideDb db, CancellationToken cancel) =>
        db.Members.CountAsync(m => m.RemovedAt == null && (m.Role == Role.Warden || m.Role == Role.Admin), cancel);

    private async Task<ReviewOutcome> DecideAsync(SignedIn warden, Guid id, Func<GuideDb, Proposal, Instant, Task<ReviewOutcome>> decide, CancellationToken cancel)
    {
        RequireWarden(warden);
        await using var db = await database.CreateDbContextAsync(cancel);
        Letter? told = null;
        var decided = await db.OnceAsync(async () =>
        {
            db.ChangeTracker.Clear();
            if (await db.Proposals.SingleOrDefaultAsync(p => p.Id == id && p.State != ProposalState.Draft, cancel) is not { } proposal)
                return ReviewOutcome.Refused("That proposal is not there any more. Load the queue again.");
            try
            {
                var outcome = await decide(db, proposal, clock.GetCurrentInstant());
                if (outcome.IsDone)
                    outcome = await SaveAsync(db, outcome.Address, cancel);
                if (outcome.IsDone)
                    told = await LetterAsync(db, proposal, warden, cancel);
                return outcome;
            }
            catch (NotAcceptedException refused)
            {
                return ReviewOutcome.Refused(refused.Message);
            }
            catch (DbUpdateException)
            {
                return Meanwhile;
            }
        }, outcome => outcome.IsDone, cancel);
        // After the decision stands: a mail server that does not answer undoes nothing.
        if (told is not null && decided.IsDone)
            await postbox.SendAsync(told, cancel);
        return decided;
    }

    /// <summary>What its proposer is told by mail where a server is set; in the site it stands under "Contribute" in any case.</summary>
    private async Task<Letter?> LetterAsync(GuideDb db, Proposal proposal, SignedIn warden, CancellationToken cancel)
    {
        if (!postbox.IsThere || proposal.ProposerId == warden.MemberId)
            return null;
        var to = await db.Members.Where(m => m.Id == proposal.ProposerId && m.RemovedAt == null).Select(m => m.Email).SingleOrDefaultAsync(cancel);
        var words = proposal.State == ProposalState.Asked ? proposal.Question : proposal.DecisionWords;
        return to is null ? null : new Letter(to, $"{proposal.Title}: {proposal.State.Words()}",
            $"{proposal.Title}: {proposal.State.Words()}.\n{(words is null ? "" : $"\nThe warden's words: {words}\n")}\nIn the guide it stands under \"Contribute\".\n");
    }

    private static async Task<ReviewOutcome> SaveAsync(GuideDb db, string? address, CancellationToken cancel)
    {
        try
        {
            await db.SaveChangesAsync(cancel);
            return ReviewOutcome.Done(address);
        }
        catch (DbUpdateException)
        {
            return Meanwhile;
        }
    }

    private static void RequireWarden(SignedIn who) => Require.That(who.Reader.IsWarden, "Only wardens decide on proposals.");
}
