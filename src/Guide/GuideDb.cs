using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Database;
using Foreshore.Guide.Elevation;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Photos;
using Foreshore.Guide.Tides;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide;

/// <summary>
/// The guide's database. Taken from <see cref="IDbContextFactory{TContext}"/>, one context per operation; never injected.
/// Each entity's mapping stands beside it and is found by scanning, so that nobody keeps a list.
/// </summary>
public sealed class GuideDb(DbContextOptions<GuideDb> options) : DbContext(options)
{
    public DbSet<ClubSettings> ClubSettings => Set<ClubSettings>();

    public DbSet<CountryCautions> CountryCautions => Set<CountryCautions>();

    /// <summary>Read places through <see cref="LocationQueries"/>, which applies visibility and blurring.</summary>
    internal DbSet<Location> Locations => Set<Location>();

    internal DbSet<VantagePoint> VantagePoints => Set<VantagePoint>();

    internal DbSet<Composition> Compositions => Set<Composition>();

    internal DbSet<AccessRoute> AccessRoutes => Set<AccessRoute>();

    internal DbSet<HazardNote> HazardNotes => Set<HazardNote>();

    internal DbSet<Closure> Closures => Set<Closure>();

    internal DbSet<TideStation> TideStations => Set<TideStation>();

    internal DbSet<ElevationFile> ElevationFiles => Set<ElevationFile>();

    internal DbSet<SkylineJob> SkylineJobs => Set<SkylineJob>();

    internal DbSet<Proposal> Proposals => Set<Proposal>();

    internal DbSet<Revision> Revisions => Set<Revision>();

    internal DbSet<Photo> Photos => Set<Photo>();

    internal DbSet<UsedSlug> UsedSlugs => Set<UsedSlug>();

    internal DbSet<Member> Members => Set<Member>();

    internal DbSet<MemberSession> MemberSessions => Set<MemberSession>();

    internal DbSet<Invitation> Invitations => Set<Invitation>();

    internal DbSet<NewStart> NewStarts => Set<NewStart>();

    internal DbSet<AuditEntry> AuditEntries => Set<AuditEntry>();

    /// <summary>Saved once, also where the connection broke before the database could say so.</summary>
    public override async Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        if (Database.CurrentTransaction is not null || !ChangeTracker.HasChanges())
            return await base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);

        // The transaction holds nothing else: going back to a point within it is going back to its beginning.
        Database.AutoSavepointsEnabled = false;
        try
        {
            var saved = await OnceAsync(() => base.SaveChangesAsync(acceptAllChangesOnSuccess: false, cancellationToken), _ => true, cancellationToken);
            if (acceptAllChangesOnSuccess)
                ChangeTracker.AcceptAllChanges();
            return saved;
        }
        finally
        {
            Database.AutoSavepointsEnabled = true;
        }
    }

    /// <summary>One transaction around several steps, retried and stored once; for <paramref name="work"/>, see <see cref="CertainCommits"/>.</summary>
    internal Task<T> OnceAsync<T>(Func<Task<T>> work, Func<T, bool> keeps, CancellationToken cancel) => CertainCommits.OnceAsync(this, work, keeps, cancel);

    internal Task OnceAsync(Func<Task> work, CancellationToken cancel) => OnceAsync(async () =>
    {
        await work();
        return true;
    }, _ => true, cancel);

    protected override void OnConfiguring(DbContextOptionsBuilder optionsBuilder) =>
        optionsBuilder.AddInterceptors(SearchTextOnSave.Instance);

    protected override void OnModelCreating(ModelBuilder modelBuilder) =>
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(GuideDb).Assembly);
}
