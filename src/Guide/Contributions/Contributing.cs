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
    /// <summary>Drafts and open proposals of one member; a hand that marks spots all day is not hindered, a script is.</summary>
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

    /// <summary>Begins a draft, once: under a number that is there already it is left as it has become since.</summary>
    public async Task<ContributionOutcome> BeginAsync(Reader member, Guid id, Matter matter, IReadOnlyDictionary<string, string> given, CancellationToken cancel)
    {
        while (await FindAsync(id, member.MemberId!.Value, cancel) is { } begun)
        {
            if (begun.MayBeEdited)
                return new(begun, []);
            // The spot of one that was sent is marked again: that is another one.
            id = SentContent.KeyOf(id, "again");
        }
        return await KeepAsync(member, id, matter, null, given, cancel);
    }

    /// <summary>Keeps what was typed; the first time it begins the draft under the number that the form brought.</summary>
    /// <param name="content">Digest of all that the form brought; null: of the texts given.</param>
    public async Task<ContributionOutcome> KeepAsync(
        Reader member, Guid id, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given, CancellationToken cancel, byte[]? content = null) =>
        await ChangeAsync(member, id, matter, targetId, given, content ?? ContentOf(given), null, cancel);

    /// <summary>Keeps what was typed and, where all of it can be read, sends it to the wardens.</summary>
    /// <param name="content">Digest of all that the form brought; null: of the texts given.</param>
    public async Task<ContributionOutcome> SendAsync(
        Reader member, Guid id, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given, string? reason, string? reply, CancellationToken cancel, byte[]? content = null)
    {
        content ??= ContentOf(given, reason, reply);
        return await ChangeAsync(member, id, matter, targetId, given, content, async (db, proposal) =>
        {
            var faults = proposal.Matter == Matter.NewStance ? await OfNewAsync(db, proposal, member, cancel) : await OfChangeAsync(db, proposal, member, reason, cancel);
            if (faults.Count > 0)
                return faults;
            if (proposal.State == ProposalState.Asked)
                proposal.Reply(reply);
            proposal.Send(reason, clock.GetCurrentInstant(), content);
            await db.SendPhotosAsync(proposal, cancel);
            return [];
        }, cancel);
    }

    public async Task<ContributionOutcome> WithdrawAsync(Reader member, Guid id, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.Proposals.SingleOrDefaultAsync(p => p.Id == id && p.ProposerId == member.MemberId, cancel) is not { } own)
            return new(null, []);
        if (own.IsOpen || own.MayBeEdited)
            await db.DropPhotosAsync(own, cancel);
        return await SavedAsync(db, own, () => own.Withdraw(clock.GetCurrentInstant()), cancel);
    }

    private async Task<ContributionOutcome> ChangeAsync(Reader member, Guid id, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given,
        byte[] content, Func<GuideDb, Proposal, Task<IReadOnlyList<FieldFault>>>? then, CancellationToken cancel)
    {
        Require.That(member is { IsMember: true, MemberId: not null }, "Sign in first; what you typed is kept in this browser.");
        if (id == Guid.Empty)
            return new(null, [new("send", SheetPost.NoNumber)]);
        try
        {
            return await database.InTurnAsync(member.MemberId.Value, async db => (await InTurnAsync(db, member, id, matter, targetId, given, content, then, cancel), true), cancel);
        }
        catch (DbUpdateException)
        {
            return new(null, [new("send", "A warden decided on this at the same moment, so it was not kept. Send it again; what you typed stands below.")]);
        }
    }

    private async Task<ContributionOutcome> InTurnAsync(GuideDb db, Reader member, Guid number, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given,
        byte[] content, Func<GuideDb, Proposal, Task<IReadOnlyList<FieldFault>>>? then, CancellationToken cancel)
    {
        var (proposal, id) = await HeldAsync(db, member, number, matter, targetId, content, cancel);
        if (proposal is not null && proposal.ProposerId != member.MemberId)
            return new(null, [new("send", "This form belongs to somebody else's draft. Load the page again; what you typed is kept in this browser.")]);
        if (proposal is { MayBeEdited: false })
            return new(proposal, []);

        if (proposal is null)
        {
            var place = targetId is null ? null : await db.ThingAsync(matter, targetId.Value, member, cancel);
            if (matter != Matter.NewStance && place is null)
                return new(null, []);
            if (await db.Proposals.CountAsync(p => p.ProposerId == member.MemberId && (p.State == ProposalState.Draft || p.State == ProposalState.Sent || p.State == ProposalState.Asked), cancel) >= MostOpen)
                return new(null, [new("send", $"{MostOpen} drafts and proposals of yours are open. Send, withdraw or wait for some of them first.")]);
            proposal = new Proposal(id, matter, place?.Place.Id, targetId, member.MemberId!.Value, clock.GetCurrentInstant());
            if (place is not null)
                proposal.Keep(given, clock.GetCurrentInstant()).FoundAs(place.Read());
            db.Add(proposal);
        }

        try
        {
            proposal.Keep(given, clock.GetCurrentInstant());
            await db.SaveChangesAsync(cancel);
            var faults = then is null ? [] : await then(db, proposal);
            if (faults.Count == 0)
                await db.SaveChangesAsync(cancel);
            return new(proposal, faults);
        }
        catch (NotAcceptedException refused)
        {
            return new(proposal, [new("send", refused.Message)]);
        }
    }

    /// <summary>
    /// What a form's number stands for: a draft that goes on, or what was sent with this very content. After the Back button the number may
    /// come with other content, or from another form: that is a proposal of its own, under a number made from the first.
    /// </summary>
    private static async Task<(Proposal? Held, Guid Number)> HeldAsync(GuideDb db, Reader member, Guid number, Matter matter, int? targetId, byte[] content, CancellationToken cancel)
    {
        while (await db.Proposals.SingleOrDefaultAsync(p => p.Id == number, cancel) is { } held)
        {
            if (held.ProposerId != member.MemberId || held.IsAbout(matter, targetId) && (held.MayBeEdited || held.WasSentAs(content)))
                return (held, number);
            number = SentContent.KeyOf(number, matter.ToString(), $"{targetId}");
        }
        return (null, number);
    }

    /// <summary>A statement that only a warden makes, newly made by somebody else.</summary>
    private static FieldFault? ForWardens(Proposal proposal, Reader member, IReadOnlyDictionary<string, string> before) => member.IsWarden ? null
        : (from pair in proposal.Given
           let field = proposal.Matter.Sheet().Field(pair.Key)
           where field is not null && pair.Value.Length > 0 && pair.Value != before.GetValueOrDefault(pair.Key) && field.IsForWardens(pair.Value)
           orderby field.IsWardens descending
           select new FieldFault(field.Name, "Only a warden can say this. Write it into the reason, and a warden will.")).FirstOrDefault();

    private static byte[] ContentOf(IReadOnlyDictionary<string, string> given, string? reason = null, string? reply = null) =>
        SentContent.DigestOf([.. given.Select(pair => (SheetPost.Prefix + pair.Key, pair.Value)), ("reason", reason ?? ""), ("reply", reply ?? "")]);

    private async Task<IReadOnlyList<FieldFault>> OfNewAsync(GuideDb db, Proposal proposal, Reader member, CancellationToken cancel)
    {
        if (ForWardens(proposal, member, new Dictionary<string, string>()) is { } wardens)
            return [wardens];
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
        await using var apart = await database.BesideAsync(db, cancel);
        if (await apart.ThingAsync(proposal.Matter, proposal.TargetId!.Value, member, cancel) is not { } thing)
            return [new("send", "What this is about is not in the guide any more.")];
        var sheet = proposal.Matter.Sheet();
        var before = thing.Read();
        if (ForWardens(proposal, member, before) is { } wardens)
            return [wardens];
        if (await db.StationFaultAsync(proposal.Matter, proposal.Given, cancel) is { } station)
            return [station];
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
