using System.Linq.Expressions;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Tides;

/// <summary>Looking for stations: by where they lie, by name, by address.</summary>
public static class StationQueries
{
    public const int Most = 50;

    private static readonly Expression<Func<TideStation, StationLine>> Line = s => new StationLine(
        s.Id, s.Slug, s.Name, s.LatitudeDegrees, s.LongitudeDegrees, s.CountryCode, s.SubdivisionCode, s.Kind, s.CatalogueEdition == null,
        s.ChartDatum, s.LowestMetres, s.HighestMetres, s.Quality, s.Disclaimer, s.Licence, s.LicenceLink, s.Attribution);

    /// <summary>The nearest stations, nearest first, in one command and however far away: ask each whether it is too far.</summary>
    public static async Task<IReadOnlyList<NearStation>> StationsNearAsync(this GuideDb db, Position at, int count, CancellationToken cancel = default)
    {
        const double radian = Math.PI / 180;
        var (sine, cosine, longitude) = (Math.Sin(at.LatitudeDegrees * radian), Math.Cos(at.LatitudeDegrees * radian), at.LongitudeDegrees);
        // The cosine of the angle on a sphere puts them into nearly the right order, over poles and the date line too; the
        // ellipsoid then decides among somewhat more than are asked for. A few thousand rows need no index for that.
        var candidates = await db.TideStations.AsNoTracking()
            .OrderByDescending(s => sine * Math.Sin(s.LatitudeDegrees * radian)
                + cosine * Math.Cos(s.LatitudeDegrees * radian) * Math.Cos((s.LongitudeDegrees - longitude) * radian))
            .Take(count * 2 + 10).Select(Line).ToListAsync(cancel);
        return [.. candidates.Select(station => NearStation.Of(station, at)).OrderBy(near => near.Metres).Take(count)];
    }

    /// <summary>Stations whose name or id holds every word, by name; a search without words finds nothing.</summary>
    public static async Task<IReadOnlyList<StationLine>> FindStationsAsync(this GuideDb db, string? words, CancellationToken cancel = default)
    {
        if (words is null || words.Length > SearchWords.LongestQuery
            || SearchWords.Fold(words).Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(SearchWords.MostWords).ToList() is not { Count: > 0 } folded)
            return [];

        var stations = db.TideStations.AsNoTracking();
        foreach (var word in folded)
        {
            // Folding leaves letters and digits, so that none of LIKE's signs can be among them.
            stations = stations.Where(s => EF.Functions.Like(s.SearchText, $"%{word}%"));
        }
        return await stations.OrderBy(s => s.CatalogueEdition != null).ThenBy(s => s.Name).ThenBy(s => s.Id).Take(Most).Select(Line).ToListAsync(cancel);
    }

    /// <summary>Stations the club added.</summary>
    public static async Task<IReadOnlyList<StationLine>> ClubStationsAsync(this GuideDb db, CancellationToken cancel = default) =>
        await db.TideStations.AsNoTracking().Where(s => s.CatalogueEdition == null).OrderBy(s => s.Name).Select(Line).ToListAsync(cancel);

    /// <summary>One station by its address name, with the one it goes by; null where there is none.</summary>
    public static async Task<(PlaceTide? Tide, TideStation? Station)> StationBySlugAsync(this GuideDb db, string slug, CancellationToken cancel = default)
    {
        var found = new StationTides(await db.WithReferences(s => s.Slug == slug).AsNoTracking().ToListAsync(cancel));
        return found.WithSlug(slug) is { } station ? (found.Of(station.Id), station) : (null, null);
    }
}
