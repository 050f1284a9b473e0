using System.Linq.Expressions;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Tides;

/// <summary>The stations that some places go by, read by one command.</summary>
public sealed class StationTides
{
    private readonly Dictionary<string, TideStation> stations;

    /// <param name="found">A station may be among them twice: for itself, and as the one that another goes by.</param>
    internal StationTides(IEnumerable<TideStation> found) => stations = found.DistinctBy(station => station.Id).ToDictionary(station => station.Id);

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
        return ids.Length == 0 ? new StationTides([]) : new StationTides(await db.WithReferences(s => ids.Contains(s.Id)).AsNoTracking().ToListAsync(cancel));
    }

    /// <summary>Stations and those they go by. Asked in one condition, "or" would keep the database from its indexes: all the catalogue would be read.</summary>
    internal static IQueryable<TideStation> WithReferences(this GuideDb db, Expression<Func<TideStation, bool>> wanted) =>
        db.TideStations.Where(wanted).Concat(db.TideStations.Where(s => db.TideStations.Where(wanted).Select(one => one.ReferenceId).Contains(s.Id)));

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
        var stations = db.WithReferences(s => ids.Contains(s.Id));
        // Each row is one or the other: joined to each other, every station would come once for each of the cautions.
        var rows = await (
            from isStation in db.Database.SqlQuery<bool>($"SELECT unnest(ARRAY[false, true]) AS \"Value\"")
            from caution in db.CountryCautions.Where(c => !isStation && (c.CountryCode == null || codes.Contains(c.CountryCode))).DefaultIfEmpty()
            from station in stations.Where(s => isStation).DefaultIfEmpty()
            select new { Caution = caution, Station = station }).AsNoTracking().ToListAsync(cancel);
        return (new StationTides(rows.Select(row => row.Station).OfType<TideStation>()), [.. rows.Select(row => row.Caution).OfType<CountryCautions>()]);
    }
}
