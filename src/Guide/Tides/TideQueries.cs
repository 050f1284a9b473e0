using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Tides;

/// <summary>The stations that some places go by, read by one command.</summary>
public sealed class StationTides
{
    private readonly Dictionary<string, TideStation> stations;

    internal StationTides(IEnumerable<TideStation> found) => stations = found.ToDictionary(station => station.Id);

    /// <summary>The station; null where there is none of that id.</summary>
    public TideStation? Station(string? id) => id is null ? null : stations.GetValueOrDefault(id);

    internal TideStation? WithSlug(string slug) => stations.Values.FirstOrDefault(station => station.Slug == slug);

    /// <summary>The place's tide with its corrections; null where it has no station, or one that is not among the stations.</summary>
    public PlaceTide? Of(Location place) => Of(place.TideStationId, place.TideCorrections);

    /// <summary>The station's own tide, or one corrected.</summary>
    public PlaceTide? Of(string? stationId, TideCorrections? corrections = null)
    {
        if (Station(stationId) is not { } station)
            return null;
        try
        {
            return PlaceTide.Of(station, Station(station.ReferenceId), corrections);
        }
        catch (TideInputException)
        {
            // Nothing that is stored should come to this; if it does, the tide is unknown and pages say so.
            return null;
        }
    }
}

public static class TideQueries
{
    /// <summary>The stations of these ids with those they go by, in one command; none where no id is given.</summary>
    public static async Task<StationTides> TidesOfAsync(this GuideDb db, IEnumerable<string?> stationIds, CancellationToken cancel = default)
    {
        var ids = stationIds.OfType<string>().Distinct().ToArray();
        if (ids.Length == 0)
            return new StationTides([]);

        var wanted = db.TideStations.Where(station => ids.Contains(station.Id));
        return new StationTides(await db.TideStations.AsNoTracking()
            .Where(station => ids.Contains(station.Id) || wanted.Any(one => one.ReferenceId == station.Id)).ToListAsync(cancel));
    }

    /// <summary>The stations of these places.</summary>
    public static Task<StationTides> TidesOfAsync(this GuideDb db, IEnumerable<Location> places, CancellationToken cancel = default) =>
        db.TidesOfAsync(places.Select(place => place.TideStationId), cancel);

    /// <summary>
    /// The stations and the cautions of the countries, both in one command: pages of a place need both and may ask five times in all.
    /// </summary>
    public static async Task<(StationTides Tides, IReadOnlyList<CountryCautions> Cautions)> TidesAndCautionsAsync(
        this GuideDb db, IEnumerable<string?> stationIds, IEnumerable<string> countryCodes, CancellationToken cancel = default)
    {
        var ids = stationIds.OfType<string>().Distinct().ToArray();
        var codes = countryCodes.Distinct().ToArray();
        var wanted = db.TideStations.Where(station => ids.Contains(station.Id));
        var rows = await (
            from caution in db.CountryCautions.AsNoTracking().Where(c => c.CountryCode == null || codes.Contains(c.CountryCode))
            from station in db.TideStations.Where(s => ids.Contains(s.Id) || wanted.Any(one => one.ReferenceId == s.Id)).DefaultIfEmpty()
            select new { Caution = caution, Station = station }).ToListAsync(cancel);
        // A club that keeps no cautions at all has no row to hang the stations on.
        return rows.Count == 0 ? (await db.TidesOfAsync(ids, cancel), [])
            : (new StationTides(rows.Select(row => row.Station).OfType<TideStation>().DistinctBy(station => station.Id)),
                [.. rows.Select(row => row.Caution).DistinctBy(caution => caution.Id)]);
    }
}
