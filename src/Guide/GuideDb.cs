using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide;

/// <summary>
/// The guide's database. Taken from <see cref="IDbContextFactory{TContext}"/>, one context per operation; never injected.
/// Each entity's mapping stands beside it and is found by scanning, so that nobody keeps a list.
/// </summary>
public sealed class GuideDb(DbContextOptions<GuideDb> options) : DbContext(options), IDataProtectionKeyContext
{
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    protected override void OnModelCreating(ModelBuilder modelBuilder) =>
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(GuideDb).Assembly);
}
