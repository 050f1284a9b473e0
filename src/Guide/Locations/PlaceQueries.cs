using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>A place, its tide and its usual cautions on one day: what the pages of a location and of all below it begin with.</summary>
/// <param name="Tide">Null where the place has no station, or none that is known.</param>
public sealed record PlaceView(Location Place, LocalDate Today, Cautions Cautions, PlaceTide? Tide = null)
{
    public IReadOnlyList<Closure> Stopping => Place.ClosuresThatStop(Today);

    public IReadOnlyList<HazardNote> Notes => Place.NotesShown(Today);

    /// <summary>Closures of the place itself that do not apply today but will, or do every year.</summary>
    public IReadOnlyList<Closure> Coming => [.. Place.Closures.Where(c => c.CountsAsInForce && c.Target is ClosureTarget.Location or ClosureTarget.VantagePoint
        && c.CountsAsInForce && !c.AppliesOn(Today) && (c.IsYearly || c.From > Today))];

    /// <summary>Ways in, the recommended one first.</summary>
    public IReadOnlyList<AccessRoute> Routes => [.. Place.Routes.OrderByDescending(route => route == Place.DefaultRoute(Today)).ThenBy(route => route.Order)];
}

/// <summary>One stance of a place.</summary>
public sealed record StanceView(PlaceView At, VantagePoint Stance)
{
    public Location Place => At.Place;

    public LocalDate Today => At.Today;

    public IReadOnlyList<Closure> Stopping => Place.ClosuresThatStop(Stance, Today);

    public IReadOnlyList<Closure> Coming => [.. At.Coming.Where(c => c.VantagePoint is null || c.VantagePoint == Stance)];

    public IReadOnlyList<HazardNote> Notes => Place.NotesShown(Today, Stance);

    /// <summary>A closure stands over a date of the session (a night has two): no light makes it a good one.</summary>
    public bool IsClosedIn(Session session) => IsClosedOn(session.Start) || IsClosedOn(session.End);

    /// <summary>
    /// Why one keeps off on any date: a standing severe note about water, rockfall or the way back, until it is ended or
    /// rejected, or a cliff's foot too near. Null where neither holds.
    /// </summary>
    public string? KeepOff => Notes.FirstOrDefault(note => note.KeepsOff) is { } note ? $"while the severe note stands: {note.Kind.Words()}"
        : Stance.Cliff is { IsTooNear: true } ? "the cliff's foot: it is nearer than the cliff is high" : null;

    public IReadOnlyList<HazardRating> Ratings => [.. Place.HazardRatings.Where(r => r.VantagePoint is null || r.VantagePoint == Stance)];

    private bool IsClosedOn(Instant time) => Place.ClosuresThatStop(Stance, time.InZone(Place.Zone).Date).Count > 0;
}

/// <summary>One picture from a stance.</summary>
public sealed record PictureView(StanceView From, Composition Picture)
{
    public Location Place => From.Place;

    public VantagePoint Stance => From.Stance;

    public string? Sketch => Picture.Sketch ?? Stance.Sketch;
}

public static class PlaceQueries
{
    /// <summary>Null: no such place, or not for this reader.</summary>
    public static async Task<PlaceView?> PlaceAsync(
        this GuideDb db, string location, Reader reader, Instant now, Parts parts = Parts.All, CancellationToken cancel = default) =>
        await db.LocationAsync(location, reader, parts, now, cancel) is { } place ? await db.ViewAsync(place, now, cancel) : null;

    public static async Task<StanceView?> StanceAsync(
        this GuideDb db, string location, string stance, Reader reader, Instant now, CancellationToken cancel = default) =>
        await db.PlaceAsync(location, reader, now, Parts.All | Parts.Photos, cancel) is { } at
            && at.Place.VantagePoints.FirstOrDefault(v => v.Slug == stance) is { } found
            ? new StanceView(at, found)
            : null;

    public static async Task<PictureView?> PictureAsync(
        this GuideDb db, string location, string stance, string picture, Reader reader, Instant now, CancellationToken cancel = default) =>
        await db.StanceAsync(location, stance, reader, now, cancel) is { } from
            && from.Stance.Compositions.FirstOrDefault(c => c.Slug == picture) is { } found
            ? new PictureView(from, found)
            : null;

    private static async Task<PlaceView> ViewAsync(this GuideDb db, Location place, Instant now, CancellationToken cancel)
    {
        var (tides, cautions) = await db.TidesAndCautionsAsync([place.TideStationId], [place.CountryCode], cancel);
        return new PlaceView(place, now.InZone(place.Zone).Date, cautions.Of(place.CountryCode).ToPrint(), tides.Of(place));
    }
}
