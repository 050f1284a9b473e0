using System.Collections.Concurrent;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Photos;

/// <summary>What members do with photos of their own.</summary>
public sealed class Album(IDbContextFactory<GuideDb> database, Darkroom darkroom, IClock clock)
{
    public const int MostOfProposal = 4;
    public const int MostOfMember = 200;
    public const int MostAnHour = 60;

    private readonly ConcurrentDictionary<Guid, Queue<Instant>> tries = new();

    /// <exception cref="NotAcceptedException">The file is not taken; the words say why and what to do.</exception>
    public Task<DevelopedPhoto> DevelopAsync(Reader member, byte[] file, CancellationToken cancel) => DevelopAsync(member, new MemoryStream(file), cancel);

    /// <exception cref="NotAcceptedException">The file is not taken; the words say why and what to do.</exception>
    public async Task<DevelopedPhoto> DevelopAsync(Reader member, Stream file, CancellationToken cancel)
    {
        Require.That(member is { IsMember: true, MemberId: not null }, "Sign in first, then choose the photo again.");
        CountTry(member.MemberId.Value);
        return await darkroom.DevelopAsync(file, cancel);
    }

    public async Task<IReadOnlyList<Photo>> OfProposalAsync(Guid proposal, Guid member, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.Photos.AsNoTracking().Where(p => p.ProposalId == proposal && p.MemberId == member).OrderBy(p => p.KeptAt).ThenBy(p => p.Id).ToListAsync(cancel);
    }

    /// <summary>Puts photos to a proposal. What it holds already is not put there twice.</summary>
    /// <exception cref="NotAcceptedException">More than a proposal or a member may have.</exception>
    public async Task AddAsync(Guid member, Guid proposal, IReadOnlyList<DevelopedPhoto> developed, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.OnceAsync(async () =>
        {
            db.ChangeTracker.Clear();
            await LockAsync(db, member, cancel);
            var held = await db.Photos.Where(p => p.ProposalId == proposal).Select(p => p.Sha256).ToListAsync(cancel);
            var added = developed.DistinctBy(each => Convert.ToHexString(each.Sha256)).Where(each => !held.Any(sum => sum.AsSpan().SequenceEqual(each.Sha256))).ToList();
            Require.That(held.Count + added.Count <= MostOfProposal, $"{MostOfProposal} photos go with this at most, and {held.Count} are here already. Remove one, then choose another.");
            await RequireRoomAsync(db, member, added.Count, cancel);
            db.AddRange(added.Select(each => Photo.OfProposal(each, member, proposal, clock.GetCurrentInstant())));
            await db.SaveChangesAsync(cancel);
        }, cancel);
    }

    /// <summary>Takes one's own photo out of a proposal, unless it is in the guide already.</summary>
    public async Task RemoveAsync(Guid member, Guid proposal, Guid photo, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.Photos.Where(p => p.Id == photo && p.ProposalId == proposal && p.MemberId == member && p.State != PhotoState.Shown).ExecuteDeleteAsync(cancel);
    }

    /// <summary>Out of the guide for good: one's own, or as a warden anybody's. False where it is not there, or not theirs to take down.</summary>
    public async Task<bool> TakeDownAsync(SignedIn who, Guid id, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.Photos.SingleOrDefaultAsync(p => p.Id == id, cancel) is not { } photo
            || !(photo.MemberId == who.MemberId || (who.Reader.IsWarden && photo.State != PhotoState.Kept)))
            return false;
        db.Remove(photo);
        db.Add(new AuditEntry(Act.PhotoTakenDown, clock.GetCurrentInstant(), who.MemberId, photo.MemberId, $"photo {photo.Id}"));
        try
        {
            await db.SaveChangesAsync(cancel);
        }
        catch (DbUpdateConcurrencyException)
        {
            // Somebody else, or the same button pressed twice, has taken it down already; it is logged once.
        }
        return true;
    }

    /// <exception cref="NotAcceptedException">The member has as many as are kept for one.</exception>
    public static async Task RequireRoomAsync(GuideDb db, Guid member, int more, CancellationToken cancel) =>
        Require.That(more == 0 || await db.Photos.CountAsync(p => p.MemberId == member, cancel) + more <= MostOfMember,
            $"{MostOfMember} photos of yours are kept already. Remove some from your drafts, or ask a warden to take old ones down.");

    /// <summary>
    /// For an account that is erased, inside its transaction: what nobody else sees goes, what is in the guide stays without a name.
    /// </summary>
    public static async Task ForgetAsync(GuideDb db, Guid member, CancellationToken cancel)
    {
        var published = db.Photos.Where(p => p.State == PhotoState.Shown
            || db.HazardNotes.Any(n => n.Id == p.HazardNoteId && (n.State == HazardState.Confirmed || (n.State == HazardState.Reported && n.Severity == HazardNote.Severe))));
        await db.Photos.Where(p => p.MemberId == member && !published.Any(shown => shown.Id == p.Id)).ExecuteDeleteAsync(cancel);
        await db.Photos.Where(p => p.MemberId == member).ExecuteUpdateAsync(photo => photo.SetProperty(p => p.MemberId, (Guid?)null), cancel);
    }

    /// <summary>One after the other for each member, so that two forms at once cannot pass a limit together.</summary>
    private static async Task LockAsync(GuideDb db, Guid member, CancellationToken cancel) =>
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM members WHERE id = {member} FOR UPDATE", cancel);

    /// <summary>Counted here and not in the database: it guards this machine's time, and a refused file costs as much as one that is taken.</summary>
    private void CountTry(Guid member)
    {
        var (now, of) = (clock.GetCurrentInstant(), tries.GetOrAdd(member, _ => new()));
        lock (of)
        {
            while (of.TryPeek(out var first) && first <= now - Duration.FromHours(1))
                of.Dequeue();
            Require.That(of.Count < MostAnHour, $"{MostAnHour} photos came from you within the hour. Send the rest later.");
            of.Enqueue(now);
        }
    }
}
