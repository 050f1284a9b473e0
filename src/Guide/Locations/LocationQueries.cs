using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>What to load with places. Routes and compositions cost a command each, all the rest together one, however many places there are.</summary>
[Flags]
public enum Parts
{
    /// <summary>The place alone.</summary>
    None = 0,

    /// <summary>Parking, overnight rules and permission letters.</summary>
    Stay = 1,

    /// <summary>Routes with their legs and the car parks that serve them; with vantage points, their own ways too.</summary>
    Routes = 2,

    /// <summary>Vantage points with their compositions.</summary>
    Compositions = 4,

    /// <summary>Hazard ratings, and the notes and closures that count.</summary>
    Hazards = 8,

    All = Stay | Routes | Compositions | Hazards,

    /// <summary>What is known of the photos of vantage points and of the hazard notes that are loaded; no command more than those.</summary>
    Photos = 16,
}

/// <summary>
/// Places as a reader may see them: members-only ones absent, sensitive ones blurred. Pages, map, API and search read places
/// through here and never from the sets themselves.
/// </summary>
public static class LocationQueries
{
    /// <summary>The one visibility filter. Sensitive places pass: they are shown blurred, see <see cref="Blur"/>.</summary>
    public static IQueryable<Location> VisibleTo(this IQueryable<Location> locations, Reader reader) =>
        reader.IsMember ? locations : locations.Where(l => l.Visibility != Visibility.Members);

    /// <summary>
    /// All places in coast order, or those that every word of the search meets. A search too long or without words finds nothing;
    /// pass null for no search. With <paramref name="now"/>, closures and notes whose last day has passed are left out; those that
    /// were lifted, ended or rejected always are. A stretch is a part of what was found, in coast order.
    /// </summary>
    public static async Task<IReadOnlyList<Location>> CoastAsync(
        this GuideDb db, Reader reader, Parts parts, string? search = null, Instant? now = null, (int Skip, int Take)? stretch = null, CancellationToken cancel = default)
    {
        var locations = db.Locations.VisibleTo(reader);
        if (search is not null)
        {
            if (SearchWords.ToPrefixQuery(search) is not { } words)
                return [];
            locations = locations.Meeting(words);
        }

        if (stretch is var (skip, take))
            locations = locations.OrderBy(l => l.CoastOrder).ThenBy(l => l.Id).Skip(skip).Take(take);
        var found = await locations.LoadAsync(db, parts, now, cancel);
        return [.. found.OrderBy(l => l.CoastOrder).ThenBy(l => l.Id).Select(l => Blur.For(l, reader))];
    }

    /// <summary>One place by its current slug, as on <see cref="CoastAsync"/>; null when there is none or the reader may not know of it.</summary>
    public static async Task<Location?> LocationAsync(
        this GuideDb db, string slug, Reader reader, Parts parts = Parts.All, Instant? now = null, CancellationToken cancel = default)
    {
        var found = await db.Locations.VisibleTo(reader).Where(l => l.Slug == slug).LoadAsync(db, parts, now, cancel);
        return found.Count == 0 ? null : Blur.For(found[0], reader);
    }

    /// <summary>
    /// Where an old address leads: the current slugs for once-used ones, or null when they are current, unknown, or not for this
    /// reader. Vantage point and composition are left out where the address has none.
    /// </summary>
    public static async Task<(string Location, string? VantagePoint, string? Composition)?> MovedToAsync(
        this GuideDb db, Reader reader, string location, string? vantagePoint = null, string? composition = null, CancellationToken cancel = default)
    {
        var place = await db.TargetAsync(UsedSlug.OfCoast, location, cancel) is { } id
            ? (await db.Locations.VisibleTo(reader).Where(l => l.Id == id).LoadAsync(db, Parts.Compositions, null, cancel)).SingleOrDefault()
            : null;
        if (place is null || (vantagePoint is not null && !place.MayBeSeenExactlyBy(reader)))
            return null;

        var point = vantagePoint is null ? null : await db.TargetAsync(UsedSlug.OfLocation(place.Id), vantagePoint, cancel) is { } pointId
            ? place.VantagePoints.SingleOrDefault(v => v.Id == pointId) : null;
        var picture = composition is null || point is null ? null : await db.TargetAsync(UsedSlug.OfVantagePoint(point.Id), composition, cancel) is { } pictureId
            ? point.Compositions.SingleOrDefault(c => c.Id == pictureId) : null;
        if ((vantagePoint is not null && point is null) || (composition is not null && picture is null))
            return null;

        var isCurrent = place.Slug == location && point?.Slug == vantagePoint && picture?.Slug == composition;
        return isCurrent ? null : (place.Slug, point?.Slug, picture?.Slug);
    }

    /// <summary>Cautions of the country, else the general default.</summary>
    public static Task<CountryCautions?> CautionsAsync(this GuideDb db, string countryCode, CancellationToken cancel = default) =>
        db.CountryCautions.AsNoTracking().Where(c => c.CountryCode == countryCode || c.CountryCode == null)
            .OrderBy(c => c.CountryCode == null).FirstOrDefaultAsync(cancel);

    /// <summary>
    /// The cautions of a page about several places: of each country, in the order given. Countries without a row of their own
    /// share the general default, which then stands once.
    /// </summary>
    public static async Task<IReadOnlyList<(string? CountryCode, Shell.Cautions Cautions)>> CautionsAsync(
        this GuideDb db, IEnumerable<string> countryCodes, CancellationToken cancel = default)
    {
        var codes = countryCodes.Distinct().ToArray();
        var rows = await db.CountryCautions.AsNoTracking().Where(c => c.CountryCode == null || codes.Contains(c.CountryCode)).ToListAsync(cancel);
        return rows.ToPrint(codes);
    }

    private static IQueryable<Location> Meeting(this IQueryable<Location> locations, string words) =>
        locations.Where(l => EF.Property<NpgsqlTypes.NpgsqlTsVector>(l, LocationMapping.SearchVector).Matches(EF.Functions.ToTsQuery("simple", words)));

    private static Task<int?> TargetAsync(this GuideDb db, string parent, string slug, CancellationToken cancel) =>
        db.UsedSlugs.Where(u => u.Parent == parent && u.Slug == slug).Select(u => (int?)u.TargetId).SingleOrDefaultAsync(cancel);

    /// <summary>Loads the places, then their parts by a command each kind of nesting; the context's own fix-up joins them.</summary>
    private static async Task<List<Location>> LoadAsync(this IQueryable<Location> locations, GuideDb db, Parts parts, Instant? now, CancellationToken cancel)
    {
        var found = await locations.Include(l => l.Grants).AsSingleQuery().ToListAsync(cancel);
        if (found.Count == 0)
            return found;

        var ids = found.Select(l => l.Id).ToArray();
        if (parts.HasFlag(Parts.Routes))
            await db.Set<AccessRoute>().Where(r => ids.Contains(r.LocationId)).Include(r => r.Legs.OrderBy(leg => leg.Order))
                .Include(r => r.Parking.OrderBy(served => served.Order)).AsSingleQuery().OrderBy(r => r.Order).LoadAsync(cancel);
        if (parts.HasFlag(Parts.Compositions))
        {
            var stances = db.Set<VantagePoint>().Where(v => ids.Contains(v.LocationId)).Include(v => v.Compositions.OrderBy(c => c.Id)).AsQueryable();
            if (parts.HasFlag(Parts.Routes))
                stances = stances.Include(v => v.Ways.OrderBy(way => way.Order));
            await stances.AsSingleQuery().OrderBy(v => v.Id).LoadAsync(cancel);
        }
        // Of a session that began yesterday, and wherever on Earth: two days back.
        await db.LoadPartsAsync(ids, parts, now?.InUtc().Date.PlusDays(-2), cancel);
        return found;
    }
}
