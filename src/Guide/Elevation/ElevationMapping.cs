using Foreshore.Guide.Compositions;
using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Elevation;

internal sealed class ElevationFileMapping : IEntityTypeConfiguration<ElevationFile>
{
    public void Configure(EntityTypeBuilder<ElevationFile> file)
    {
        file.ToTable("elevation_files");
        file.Property(f => f.Name).HasMaxLength(120);
        file.HasIndex(f => f.Name).IsUnique();
        file.Check("edges", "north_degrees > south_degrees AND east_degrees > west_degrees");
        file.Check("size", "columns >= 2 AND rows >= 2 AND metres_per_unit > 0");
    }
}

internal sealed class SkylineJobMapping : IEntityTypeConfiguration<SkylineJob>
{
    public void Configure(EntityTypeBuilder<SkylineJob> job)
    {
        job.ToTable("skyline_jobs");
        job.EnumText(j => j.State, "state");
        job.Property(j => j.Outcome).HasMaxLength(600);
        job.Between("percent_done", 0, 100);
        job.Check("outcome", "(state IN ('Done', 'Failed')) = (outcome IS NOT NULL)");
        job.HasOne<VantagePoint>().WithMany().HasForeignKey(j => j.VantagePointId).OnDelete(DeleteBehavior.Cascade);
        // One at a time for a stance: asking twice is asking once.
        job.HasIndex(j => j.VantagePointId).IsUnique().HasFilter("state IN ('Waiting', 'Running')").HasDatabaseName("ix_skyline_jobs_open");
        job.Ignore(j => j.IsOpen);
        job.Ignore(j => j.Words);
    }
}
