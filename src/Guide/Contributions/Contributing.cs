using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <param name="Proposal">As it is kept now; null where it is not this member's, or not there.</param>
public sealed record ContributionOutcome(Proposal? Proposal, IReadOnlyList<FieldFault> Faults)
{
    public bool IsSent => Proposal is { State: ProposalState.Sent } && Faults.Count == 0;
}

/// <summary>Verbs of members on their own proposals. Beginning or sending twice makes one.</summary>
public sealed class Contributing(IDbContextFactory<GuideDb> database, IClock clock)
{
    /// <summary>Drafts of one member; a hand that marks spots all day is not hindered, a script is.</summary>
    public const int MostDrafts = 50;

    public const int MostOpen = 100;

    public async Task<IReadOnlyList<Proposal>> OwnAsync(Guid memberId, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.Proposals.AsNoTracking().Where(p => p.ProposerId == memberId).OrderByDescending(p => p.KeptAt).Take(200).ToListAsync(cancel);
    }

    public async Task<Proposal?> FindAsync(Guid id, Guid memberId, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.Proposals.AsNoTracking().SingleOrDefaultAsync(p => p.Id == id && p.ProposerId == memberId, cancel);
    }

    /// <summary>Keeps what was typed; the first time it begins the draft under the number that the form brought.</summary>
    public async Task<ContributionOutcome> KeepAsync(Reader member, Guid id, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given, CancellationToken cancel) =>
        await ChangeAsync(member, id, matter, targetId, (_, _) => Task.FromResult<IReadOnlyList<FieldFault>>([]), given, cancel);

    /// <summary>Keeps what was typed and, where all of it can be read, sends it to the wardens.</summary>
    public async Task<ContributionOutcome> SendAsync(
        Reader member, Guid id, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given, string? reason, string? reply, CancellationToken cancel) =>
        await ChangeAsync(member, id, matter, targetId, async (db, proposal) =>
        {
            var faults = proposal.Matter == Matter.NewStance ? await OfNewAsync(db, proposal, cancel) : await OfChangeAsync(db, proposal, member, reason, cancel);
            if (faults.Count > 0)
                return faults;
            if (proposal.State == ProposalState.Asked)
                proposal.Reply(reply);
            proposal.Send(reason, clock.GetCurrentInstant());
            await db.SendPhotosAsync(proposal, cancel);
            return [];
        }, given, cancel);

    public async Task<ContributionOutcome> WithdrawAsync(Reader member, Guid id, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.Proposals.SingleOrDefaultAsync(p => p.Id == id && p.ProposerId == member.MemberId, cancel) is not { } own)
            return new(null, []);
        if (own.IsOpen || own.MayBeEdited)
            await db.DropPhotosAsync(own, cancel);
        return await SavedAsync(db, own, () => own.Withdraw(clock.GetCurrentInstant()), cancel);
    }

    private async Task<ContributionOutcome> ChangeAsync(Reader member, Guid id, Matter matter, int? targetId,
        Func<GuideDb, Proposal, Task<IReadOnlyList<FieldFault>>> then, IReadOnlyDictionary<string, string> given, CancellationToken cancel)
    {
        Require.That(member is { IsMember: true, MemberId: not null }, "Sign in first; what you typed is kept in this browser.");
        await using var db = await database.CreateDbContextAsync(cancel);
        var proposal = await db.Proposals.SingleOrDefaultAsync(p => p.Id == id, cancel);
        if (proposal is not null && proposal.ProposerId != member.MemberId)
            return new(null, []);
        if (proposal is { MayBeEdited: false })
            return new(proposal, []);

        if (proposal is null)
        {
            var place = targetId is null ? null : await db.ThingAsync(matter, targetId.Value, member, cancel);
            if (matter != Matter.NewStance && place is null)
                return new(null, []);
            if (await db.Proposals.CountAsync(p => p.ProposerId == member.MemberId && (p.State == ProposalState.Draft || p.State == ProposalState.Sent || p.State == ProposalState.Asked), cancel) >= MostOpen)
                return new(null, [new("send", $"{MostOpen} drafts and proposals of yours are open. Send, withdraw or wait for some of them first.")]);
            proposal = new Proposal(id, matter, place?.Place.Id, targetId, member.MemberId.Value, clock.GetCurrentInstant());
            if (place is not null)
                proposal.Keep(given, clock.GetCurrentInstant()).FoundAs(place.Read());
            db.Add(proposal);
        }

        IReadOnlyList<FieldFault> faults = [];
        var outcome = await SavedAsync(db, proposal, () => proposal.Keep(given, clock.GetCurrentInstant()), cancel);
        if (outcome.Faults.Count > 0 || outcome.Proposal is null)
            return outcome;
        try
        {
            faults = await then(db, proposal);
        }
        catch (NotAcceptedException refused)
        {
            faults = [new("send", refused.Message)];
        }
        return faults.Count > 0 ? new(proposal, faults) : await SavedAsync(db, proposal, () => { }, cancel);
    }

    private async Task<IReadOnlyList<FieldFault>> OfNewAsync(GuideDb db, Proposal proposal, CancellationToken cancel)
    {
        var slug = proposal.Given.GetValueOrDefault("place");
        var place = await db.Locations.AsNoTracking().SingleOrDefaultAsync(l => l.Slug == slug, cancel);
        if (place is null && slug is { Length: > 0 } and not NewStanceSheet.AnotherPlace)
            return [new("place", "That place is not in the guide. Choose one of the list, or another.")];
        var today = clock.GetCurrentInstant().InZone(place?.Zone ?? DateTimeZone.Utc).Date;
        var (made, faults) = NewStanceSheet.Make(proposal.Given, today, await db.TakenAsync(place, cancel));
        if (made is not null)
            proposal.About(place?.Id);
        return faults;
    }

    /// <summary>Read strictly on a copy that is thrown away; what is kept then is what differs, as the sheet writes it.</summary>
    private async Task<IReadOnlyList<FieldFault>> OfChangeAsync(GuideDb db, Proposal proposal, Reader member, string? note, CancellationToken cancel)
    {
        await using var apart = await database.CreateDbContextAsync(cancel);
        if (await apart.ThingAsync(proposal.Matter, proposal.TargetId!.Value, member, cancel) is not { } thing)
            return [new("send", "What this is about is not in the guide any more.")];
        var sheet = proposal.Matter.Sheet();
        var before = thing.Read();
        if (!member.IsWarden && proposal.Given.FirstOrDefault(pair => sheet.Field(pair.Key) is { IsWardens: true } && pair.Value != before[pair.Key]) is { Key: { } wardens })
            return [new(wardens, "Only a warden can say this. Write it into the reason, and a warden will.")];
        if (thing.Write(proposal.Given) is { Count: > 0 } faults)
            return faults;
        var changes = sheet.Differences(before, thing.Read());
        // A note without a change says that something is wrong; a warden puts it right.
        if (changes.Count == 0 && (proposal.Matter.IsNew() || string.IsNullOrWhiteSpace(note)))
            return [new("send", "Nothing differs from what the guide says. Change at least one field, write below what is wrong, or tell it is still correct.")];
        var found = proposal.Found;
        proposal.Keep(changes.ToDictionary(change => change.Field, change => change.After), clock.GetCurrentInstant())
            .FoundAs(changes.ToDictionary(change => change.Field, change => found.GetValueOrDefault(change.Field, change.Before)));
        return [];
    }

    private static async Task<ContributionOutcome> SavedAsync(GuideDb db, Proposal proposal, Action change, CancellationToken cancel)
    {
        try
        {
            change();
            await db.SaveChangesAsync(cancel);
            return new(proposal, []);
        }
        catch (NotAcceptedException refused)
        {
            return new(proposal, [new("send", refused.Message)]);
        }
        catch (DbUpdateException)
        {
            // The same form came twice at once: the first has made it, and this one is that.
            db.ChangeTracker.Clear();
            var there = await db.Proposals.AsNoTracking().SingleOrDefaultAsync(p => p.Id == proposal.Id && p.ProposerId == proposal.ProposerId, cancel);
            return new(there, there is null ? [new("send", "This could not be kept. Load the page again; what you typed is kept in this browser.")] : []);
        }
    }
}
