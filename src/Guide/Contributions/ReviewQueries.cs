using Foreshore.Almanac.Sun;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Maps;
using Foreshore.Guide.Members;
using Foreshore.Guide.Photos;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>A proposal as a warden reads it.</summary>
/// <param name="Thing">What it changes; null for a new one, or when it is gone.</param>
/// <param name="Place">The place it belongs to; null for a new place.</param>
/// <param name="Made">What a new vantage point would be, where all of it can be read.</param>
public sealed record ReviewView(Proposal Proposal, string By, Published? Thing, Location? Place, NewStance? Made)
{
    public IReadOnlyList<Photo> Photos { get; init; } = [];

    /// <summary>Of those who took the photos.</summary>
    public IReadOnlyDictionary<Guid, string> Names => Proposal.ProposerId is { } id ? new Dictionary<Guid, string> { [id] = By } : new Dictionary<Guid, string>();

    public string Title => Thing is null || Proposal.Matter.IsNew() ? Proposal.Title : $"{Thing.Name}: change to a {Proposal.Matter.Words()}";

    public string PlaceName => Place?.Name ?? (Made?.NewPlace is { } place ? $"{place.Name}, a new place" : "");

    /// <summary>Where the new stance would stand, with its picture's angle.</summary>
    public MapSheet? Map => Made is null ? null : new($"Where {Made.Stance.Name} would stand",
    [
        new("The new vantage point", [new MapMark("new", MapMarkKind.Stance, Made.Stance.Name, null, Made.Stance.Summary, Made.Stance.Position,
            [new Wedge(Made.Picture.FacingDegrees, Made.Picture.Lens.HorizontalAngleDegrees)])]),
        new("Those already there", [.. (Place?.VantagePoints ?? []).Select(stance => new MapMark($"stance-{stance.Id}", MapMarkKind.Stance, stance.Name, stance.Address(Place!), stance.Summary, stance.Position, []))]),
    ]);

    /// <summary>What the lens would see there today.</summary>
    public FrameDrawing? Frame(SharedSky shared, Instant now)
    {
        if (Made is null)
            return null;
        var zone = (Place ?? Made.NewPlace!).Zone;
        var (scene, sun) = (Made.Picture.ToScene(Made.Stance, Place?.MeanSeaLevelAboveChartDatumMetres), shared.For(now).Sun);
        var subject = Made.Picture.Subject?.SeenFrom(Made.Stance, Place?.MeanSeaLevelAboveChartDatumMetres);
        return FrameDrawing.Of(scene.Observer, scene.Frame, subject, SunDays.On(now.InZone(zone).Date, scene.Observer, zone, sun), null, sun);
    }
}

internal static class ReviewQueries
{
    public static async Task<ReviewView?> ReviewAsync(this GuideDb db, Guid id, Reader warden, Instant now, CancellationToken cancel)
    {
        var found = await db.Proposals.AsNoTracking().Where(p => p.Id == id && p.State != ProposalState.Draft)
            .Select(p => new { Proposal = p, By = db.Members.Where(m => m.Id == p.ProposerId).Select(m => m.Name).FirstOrDefault(), Place = db.Locations.Where(l => l.Id == p.LocationId).Select(l => l.Slug).FirstOrDefault() })
            .SingleOrDefaultAsync(cancel);
        if (found is null)
            return null;

        var (proposal, by) = (found.Proposal, found.By ?? "somebody who has left");
        var photos = await db.Photos.AsNoTracking().Where(p => p.ProposalId == id && p.State != PhotoState.Kept).OrderBy(p => p.KeptAt).ThenBy(p => p.Id).ToListAsync(cancel);
        if (proposal.Matter != Matter.NewStance)
        {
            // Once accepted, the number is that of what was added, no longer of what it was added to.
            var thing = proposal is { Matter: var matter, State: ProposalState.Accepted } && matter.IsNew() ? null : await db.ThingAsync(proposal.Matter, proposal.TargetId ?? 0, warden, cancel);
            return new(proposal, by, thing, thing?.Place, null) { Photos = photos };
        }
        var place = found.Place is null ? null : await db.LocationAsync(found.Place, warden, Parts.Compositions, cancel: cancel);
        var (made, _) = NewStanceSheet.Make(proposal.Given, now.InZone(place?.Zone ?? DateTimeZone.Utc).Date, new HashSet<string>());
        return new(proposal, by, null, place, made) { Photos = photos };
    }
}
