using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Access;

internal sealed class ClosureMapping : IEntityTypeConfiguration<Closure>
{
    public void Configure(EntityTypeBuilder<Closure> closure)
    {
        closure.ToTable("closures");
        closure.Property(c => c.Reason).HasMaxLength(400);
        closure.Property(c => c.ClosedBy).HasMaxLength(120);
        closure.Property(c => c.Link).HasMaxLength(400);
        closure.Property(c => c.LiftReason).HasMaxLength(400);
        closure.HasIndex(c => c.FormId).IsUnique();
        closure.HasIndex(c => c.LocationId, "ix_closures_counting").HasFilter("state <> 'Lifted'");
        closure.Check("near_miss_without_name", "NOT is_near_miss OR made_by IS NULL");
        closure.Property(c => c.Version).IsRowVersion();
        closure.Property(c => c.YearlyFrom).HasConversion(d => MappingParts.AnnualText(d!.Value), t => MappingParts.AnnualOf(t)).HasMaxLength(5);
        closure.Property(c => c.YearlyUntil).HasConversion(d => MappingParts.AnnualText(d!.Value), t => MappingParts.AnnualOf(t)).HasMaxLength(5);
        closure.EnumText(c => c.Target, "target");
        closure.EnumText(c => c.State, "state");
        closure.Check("what", """
            (vantage_point_id IS NOT NULL) = (target = 'VantagePoint')
            AND (leg_id IS NOT NULL) = (target = 'Leg')
            AND (parking_area_id IS NOT NULL) = (target = 'ParkingArea')
            """);
        closure.Check("when", """
            (yearly_from IS NULL) = (yearly_until IS NULL)
            AND (yearly_from IS NULL) = ("from" IS NOT NULL)
            AND (until IS NULL OR until >= "from")
            """);
        closure.Check("yearly", "yearly_from ~ '^[01][0-9]-[0-3][0-9]$' AND yearly_until ~ '^[01][0-9]-[0-3][0-9]$'");
        closure.Ignore(c => c.IsYearly);
        closure.Ignore(c => c.CountsAsInForce);
        closure.HasOne(c => c.VantagePoint).WithMany().HasForeignKey(c => c.VantagePointId).OnDelete(DeleteBehavior.Cascade);
        closure.HasOne(c => c.Leg).WithMany().HasForeignKey(c => c.LegId).OnDelete(DeleteBehavior.Cascade);
        closure.HasOne(c => c.ParkingArea).WithMany().HasForeignKey(c => c.ParkingAreaId).OnDelete(DeleteBehavior.Cascade);
    }
}
