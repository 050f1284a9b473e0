using Foreshore.Guide.Compositions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Foreshore.Guide.Locations;

/// <summary>
/// Writes each changed place's search text before it is saved: names and summaries of all below it, folded. Saving is the one
/// moment every change passes, so no page can forget it.
/// </summary>
internal sealed class SearchTextOnSave : SaveChangesInterceptor
{
    public static readonly SearchTextOnSave Instance = new();

    /// <summary>The framework saves its own keys this way; places need the database for their text and are refused.</summary>
    public override InterceptionResult<int> SavingChanges(DbContextEventData eventData, InterceptionResult<int> result) =>
        eventData.Context?.ChangeTracker.Entries().Any(e => e.Entity is Location or VantagePoint or Composition && e.State != EntityState.Unchanged) == true
            ? throw new NotSupportedException("Save places with SaveChangesAsync: their search text is read from the database.")
            : result;

    public override async ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        if (eventData.Context is { } db)
            foreach (var location in await ChangedAsync(db, cancellationToken))
                location.WriteSearchText();
        return result;
    }

    /// <summary>The tracked places of all changed places, vantage points and compositions, with everything below them loaded.</summary>
    private static async Task<List<Location>> ChangedAsync(DbContext db, CancellationToken cancel)
    {
        var changed = db.ChangeTracker.Entries().Where(e => e.State is EntityState.Added or EntityState.Modified or EntityState.Deleted).ToList();
        var locations = changed.Select(e => e.Entity).OfType<Location>().ToHashSet();
        var points = changed.Select(e => e.Entity).OfType<VantagePoint>().ToHashSet();

        foreach (var composition in changed.Select(e => e.Entity).OfType<Composition>())
            if ((composition.VantagePoint ?? await db.Set<VantagePoint>().FindAsync([composition.VantagePointId], cancel)) is { } point)
                points.Add(point);
        foreach (var point in points)
            if ((point.Location ?? await db.Set<Location>().FindAsync([point.LocationId], cancel)) is { } location)
                locations.Add(location);

        locations.RemoveWhere(l => db.Entry(l).State == EntityState.Deleted);
        foreach (var location in locations.Where(l => db.Entry(l).State != EntityState.Added))
            await db.Set<VantagePoint>().Where(v => v.LocationId == location.Id).Include(v => v.Compositions).LoadAsync(cancel);
        return [.. locations];
    }
}
