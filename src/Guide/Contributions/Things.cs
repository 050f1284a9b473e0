using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Contributions;

/// <summary>Finds the published thing that a proposal or revision is about. Who may not see its place exactly finds nothing.</summary>
internal static class Things
{
    /// <summary>Tracked, so that a verb on it can be saved.</summary>
    public static async Task<Published?> ThingAsync(this GuideDb db, Matter matter, int id, Reader reader, CancellationToken cancel)
    {
        var found = await db.FindAsync(matter, id, cancel);
        return found is not null && found.Place.MayBeSeenBy(reader) && found.Place.MayBeSeenExactlyBy(reader) ? found : null;
    }

    /// <summary>A place goes by no station that is not there.</summary>
    public static async Task<FieldFault?> StationFaultAsync(this GuideDb db, Matter matter, IReadOnlyDictionary<string, string> given, CancellationToken cancel) =>
        matter == Matter.Tide && given.GetValueOrDefault("station") is { Length: > 0 } id && (await db.StationBySlugAsync(TideStation.SlugOf(id), cancel)).Tide?.Station.Id != id
            ? new("station", $"There is no station \"{(id.Length <= 40 ? id : id[..40] + "…")}\". Search for it by name and take its id from the list.") : null;

    /// <summary>A place's car parks and ways in, joined.</summary>
    private static IQueryable<Location> WithWays(this GuideDb db) => db.Locations.Include(l => l.Parking.OrderBy(lot => lot.Id)).Include(l => l.Routes).ThenInclude(route => route.Parking.OrderBy(served => served.Order)).AsSplitQuery();

    private static async Task<Published?> FindAsync(this GuideDb db, Matter matter, int id, CancellationToken cancel)
    {
        var (thing, locationId) = matter switch
        {
            Matter.Place or Matter.Tide => ((object?)await db.Locations.SingleOrDefaultAsync(l => l.Id == id, cancel), id),
            Matter.Stance => await db.VantagePoints.Include(v => v.Location).SingleOrDefaultAsync(v => v.Id == id, cancel) is { } point ? (point, point.LocationId) : default,
            Matter.Picture => await db.Compositions.Include(c => c.VantagePoint).SingleOrDefaultAsync(c => c.Id == id, cancel) is { } picture ? (picture, picture.VantagePoint!.LocationId) : default,
            Matter.Leg => await db.AccessRoutes.Where(r => r.Legs.Any(leg => leg.Id == id)).Include(r => r.Legs).SingleOrDefaultAsync(cancel) is { } route
                ? (route.Legs.Single(leg => leg.Id == id), route.LocationId) : default,
            Matter.Parking => await db.Set<ParkingArea>().SingleOrDefaultAsync(p => p.Id == id, cancel) is { } area ? (area, area.LocationId) : default,
            Matter.Overnight => await db.Set<OvernightRule>().Include(r => r.ParkingArea).SingleOrDefaultAsync(r => r.Id == id, cancel) is { } rule ? (rule, rule.LocationId) : default,
            Matter.NewPicture => await db.VantagePoints.Include(v => v.Location).Include(v => v.Compositions).SingleOrDefaultAsync(v => v.Id == id, cancel) is { } stance
                ? (new Addition(matter, stance.Location!, stance), stance.LocationId) : default,
            Matter.NewParking or Matter.NewOvernight or Matter.NewWay => await db.Locations.Include(l => l.Parking).Include(l => l.OvernightRules).Include(l => l.Routes).ThenInclude(r => r.Legs)
                .AsSplitQuery().SingleOrDefaultAsync(l => l.Id == id, cancel) is { } place ? (new Addition(matter, place), id) : default,
            Matter.Way => await db.WithWays().SingleOrDefaultAsync(l => l.Routes.Any(route => route.Id == id), cancel) is { } at
                ? (new WayAt(at.Routes.Single(route => route.Id == id), at), at.Id) : default,
            Matter.OwnWays => await db.WithWays().Include(l => l.VantagePoints.Where(v => v.Id == id)).ThenInclude(v => v.Ways.OrderBy(way => way.Order))
                .SingleOrDefaultAsync(l => l.VantagePoints.Any(v => v.Id == id), cancel) is { } led ? (new OwnWays(led.VantagePoints.Single(v => v.Id == id), led), led.Id) : default,
            Matter.Rating => await db.Set<HazardRating>().Include(r => r.VantagePoint).SingleOrDefaultAsync(r => r.Id == id, cancel) is { } rating ? (rating, rating.LocationId) : default,
            _ => default,
        };
        return thing is null ? null : new Published(matter, id, await db.Locations.Include(l => l.Grants).SingleAsync(l => l.Id == locationId, cancel), thing);
    }
}
