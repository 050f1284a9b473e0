using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Tides;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Contributions;

/// <summary>A place that a new vantage point could belong to.</summary>
/// <param name="Kilometres">From the spot; null while the spot is not known.</param>
public sealed record NearPlace(string Slug, string Name, double? Kilometres, string ZoneId, string CountryCode, string? StationId);

/// <summary>A place in a list to choose from, with its vantage points where the reader may know them.</summary>
/// <param name="Ring">The emergency number and whom to ask for.</param>
public sealed record PlaceToName(string Slug, string Name, IReadOnlyList<(string Slug, string Name)> Stances, string Ring);

/// <summary>A change with the names of today; an erased account has none.</summary>
public sealed record RevisionLine(Revision Revision, string? By, string? AcceptedBy);

internal static class ContributionQueries
{
    /// <summary>Changes of one thing, the latest first.</summary>
    public static async Task<IReadOnlyList<RevisionLine>> HistoryAsync(this GuideDb db, Matter matter, int id, CancellationToken cancel) =>
        await db.Revisions.AsNoTracking().Where(r => r.Matter == matter && r.TargetId == id).OrderByDescending(r => r.Id).Take(100)
            .Select(r => new RevisionLine(r, db.Members.Where(m => m.Id == r.By).Select(m => m.Name).FirstOrDefault(), db.Members.Where(m => m.Id == r.AcceptedBy).Select(m => m.Name).FirstOrDefault()))
            .ToListAsync(cancel);

    public static async Task<IReadOnlyList<PlaceToName>> PlacesToNameAsync(this GuideDb db, Reader reader, CancellationToken cancel)
    {
        var places = await db.CoastAsync(reader, Parts.Compositions, cancel: cancel);
        var cautions = await db.CountryCautions.AsNoTracking().ToListAsync(cancel);
        return [.. places.Select(place => new PlaceToName(place.Slug, place.Name, [.. place.VantagePoints.Select(stance => (stance.Slug, stance.Name))], Ring(cautions.Of(place.CountryCode).ToPrint())))];

        static string Ring(Shell.Cautions cautions) => $"{cautions.EmergencyNumber}, and ask for {cautions.AskFor}";
    }

    /// <summary>Places the reader may know of, nearest first where the spot is known, else in coast order.</summary>
    public static async Task<IReadOnlyList<NearPlace>> NearPlacesAsync(this GuideDb db, Reader reader, Position? spot, CancellationToken cancel)
    {
        var places = await db.CoastAsync(reader, Parts.None, cancel: cancel);
        var near = places.Select(place => new NearPlace(place.Slug, place.Name,
            spot is { } at ? Geodesic.Between(at, place.Position).Metres / 1000 : null, place.ZoneId, place.CountryCode, place.TideStationId));
        return [.. near.OrderBy(place => place.Kilometres ?? 0)];
    }
}
