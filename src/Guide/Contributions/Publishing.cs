using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>Turns an accepted proposal into published content with its revisions. Nothing is saved here.</summary>
internal sealed class Publishing(GuideDb db, Proposal proposal, Guid warden, Instant now)
{
    public async Task<ReviewOutcome> ChangeAsync(
        IReadOnlyDictionary<string, string> given, IReadOnlySet<string> despite, string? words, bool isSingleHanded, Reader reader, CancellationToken cancel)
    {
        if (proposal.TargetId is not { } target || await db.ThingAsync(proposal.Matter, target, reader, cancel) is not { } thing)
            return ReviewOutcome.Refused("What this is about is not in the guide any more. Decline it, with a word to its proposer.");

        var sheet = proposal.Matter.Sheet();
        var before = thing.Read();
        if (await db.StationFaultAsync(proposal.Matter, given, cancel) is { } station)
            return new([], [station]);
        var clashes = given.Where(pair => sheet.Field(pair.Key) is not null && !despite.Contains(pair.Key)
                && before[pair.Key] != proposal.Found.GetValueOrDefault(pair.Key, before[pair.Key]) && before[pair.Key] != pair.Value)
            .Select(pair => new Clash(sheet.Field(pair.Key)!, proposal.Found[pair.Key], pair.Value, before[pair.Key])).ToList();
        if (clashes.Count > 0)
            return new(clashes, []);
        if (thing.Write(given) is { Count: > 0 } faults)
            return new([], faults);

        if (thing.Thing is Addition addition)
            return await AddAsync(addition, thing.Place, words, isSingleHanded, cancel);

        var changes = sheet.Differences(before, thing.Read());
        if (changes.Count == 0)
            return ReviewOutcome.Refused("The guide reads so already, so nothing would change. Decline it, with a word of thanks.");
        // Writing a part can change more of it than was typed; what was let in as harmless must not move a limit.
        if (!proposal.Matter.IsGuarded(given) && changes.FirstOrDefault(change => sheet.Field(change.Field)!.IsGuarded) is { } limit)
            return ReviewOutcome.Refused($"This would also change \"{sheet.Field(limit.Field)!.Label}\", a limit that lives may hang on. Change that field itself, so that another warden sees it.");
        proposal.Accept(warden, target, words, isSingleHanded, now);
        db.Add(new Revision(proposal.Matter, target, thing.Place.Id, changes, proposal.ProposerId, now, proposal.Reason).Of(proposal, warden));
        await db.ShowPhotosAsync(proposal, thing.Thing switch { VantagePoint stance => stance.Id, Composition picture => picture.VantagePointId, _ => null }, cancel);
        return ReviewOutcome.Done(thing.Address);
    }

    public async Task<ReviewOutcome> NewAsync(IReadOnlyDictionary<string, string> given, string? words, bool isSingleHanded, CancellationToken cancel)
    {
        var slug = given.GetValueOrDefault("place");
        var place = slug is null or NewStanceSheet.AnotherPlace ? null : await db.Locations.Include(l => l.Grants).Include(l => l.VantagePoints).SingleOrDefaultAsync(l => l.Slug == slug, cancel);
        if (place is null && slug is not NewStanceSheet.AnotherPlace)
            return new([], [new("place", "That place is not in the guide any more. Choose another.")]);

        var (made, faults) = NewStanceSheet.Make(given, Today(place), await db.TakenAsync(place, cancel));
        if (made is null)
            return new([], faults);

        if (place is null)
        {
            place = made.NewPlace!.ShowTo(made.NewPlace.Visibility, proposal.ProposerId).TakeOrder(await db.Locations.MaxAsync(l => (int?)l.CoastOrder, cancel) + 1 ?? 1);
            db.Add(place);
        }
        place.AddVantagePoint(made.Stance);
        foreach (var rating in made.Ratings)
            place.Rate(rating);
        // Numbers come from the database; the revisions and the proposal name them, so the things are saved first, in the same transaction.
        await db.SaveChangesAsync(cancel);
        proposal.About(place.Id).Accept(warden, made.Stance.Id, words, isSingleHanded, now);
        await db.ShowPhotosAsync(proposal, made.Stance.Id, cancel);
        Keep(Matter.Stance, made.Stance.Id, place, VantageSheet.Whole.Read(made.Stance));
        Keep(Matter.Picture, made.Picture.Id, place, CompositionSheet.Whole.Read(made.Picture));
        return ReviewOutcome.Done(made.Picture.Address(place, made.Stance));
    }

    private async Task<ReviewOutcome> AddAsync(Addition addition, Location place, string? words, bool isSingleHanded, CancellationToken cancel)
    {
        var taken = addition.Stance is { } stance ? await db.UsedSlugs.Where(u => u.Parent == UsedSlug.OfVantagePoint(stance.Id)).Select(u => u.Slug).ToHashSetAsync(cancel) : [];
        var (id, thing) = addition.Attach(taken);
        await db.SaveChangesAsync(cancel);
        proposal.Accept(warden, id(), words, isSingleHanded, now);
        await db.ShowPhotosAsync(proposal, addition.Stance?.Id, cancel);
        var added = new Published(addition.Matter.Becomes(), id(), place, thing);
        Keep(added.Matter, added.Id, place, added.Read());
        return ReviewOutcome.Done(added.Address);
    }

    private void Keep(Matter matter, int id, Location place, IReadOnlyDictionary<string, string> values) =>
        db.Add(new Revision(matter, id, place.Id, matter.Sheet().Differences(new Dictionary<string, string>(), values), proposal.ProposerId, now, proposal.Reason).Of(proposal, warden));

    private LocalDate Today(Location? place) => now.InZone(place?.Zone ?? DateTimeZone.Utc).Date;
}

internal static class TakenSlugs
{
    /// <summary>Addresses that a new place, or a new stance of this one, cannot have: slugs are never used again.</summary>
    public static async Task<IReadOnlySet<string>> TakenAsync(this GuideDb db, Location? place, CancellationToken cancel)
    {
        var parent = place is null ? UsedSlug.OfCoast : UsedSlug.OfLocation(place.Id);
        return await db.UsedSlugs.Where(u => u.Parent == parent).Select(u => u.Slug).ToHashSetAsync(cancel);
    }
}
