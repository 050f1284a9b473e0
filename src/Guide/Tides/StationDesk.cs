using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;

namespace Foreshore.Guide.Tides;

/// <summary>What the page of stations shows: the places and what they go by, what was searched for, the club's own.</summary>
/// <param name="Places">All places, each with its tide where it is known.</param>
/// <param name="Chosen">The place whose station is being changed.</param>
/// <param name="Near">Stations near it.</param>
/// <param name="Found">Stations that a search met; null where nobody searched.</param>
/// <param name="Club">The club's own.</param>
internal sealed record StationDesk(IReadOnlyList<(Location Place, PlaceTide? Tide)> Places, Location? Chosen, IReadOnlyList<NearStation> Near,
    IReadOnlyList<StationLine>? Found, IReadOnlyList<StationLine> Club)
{
    private const int NearShown = 8;

    /// <summary>The page is open to whoever sits at the machine, as an admin.</summary>
    private static readonly Reader AtTheMachine = new(Role.Admin);

    public static async Task<StationDesk> ReadAsync(GuideDb db, string? chosen, string? search, CancellationToken cancel)
    {
        var places = await db.CoastAsync(AtTheMachine, Parts.None, cancel: cancel);
        var tides = await db.TidesOfAsync(places, cancel);
        var place = places.FirstOrDefault(one => one.Slug == chosen);
        return new([.. places.Select(one => (one, tides.Of(one)))], place,
            place is null ? [] : await db.StationsNearAsync(place.Position, NearShown, cancel),
            string.IsNullOrWhiteSpace(search) ? null : await db.FindStationsAsync(search, cancel),
            await db.ClubStationsAsync(cancel));
    }
}
