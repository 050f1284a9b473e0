using Foreshore.Guide.Database;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Access;

internal sealed class ParkingAreaMapping : IEntityTypeConfiguration<ParkingArea>
{
    public void Configure(EntityTypeBuilder<ParkingArea> area)
    {
        area.ToTable("parking_areas");
        area.Property(p => p.Name).HasMaxLength(80);
        area.Property(p => p.Surface).HasMaxLength(80);
        area.Property(p => p.Currency).HasMaxLength(3);
        area.Property(p => p.Cost).HasPrecision(10, 2);
        area.Property(p => p.Notes).HasMaxLength(600);
        area.Property(p => p.AskWhom).HasMaxLength(200);
        area.HoursText(p => p.Hours);
        area.Property(p => p.Version).IsRowVersion();
        area.OnEarth();
        area.Between("height_barrier_metres", 1, 6);
        area.Check("capacity", "capacity >= 0");
        area.Check("cost", "cost >= 0 AND (cost = 0 OR currency IS NOT NULL)");
        area.Check("locked", "(locked_from IS NULL) = (locked_until IS NULL)");
        area.OneOf<TideDatum>("floods_above_datum");
        area.Ignore(p => p.Position);
        area.ComplexProperty(p => p.Check).Map();
        area.ComplexProperty(p => p.FloodsAbove).Map();
    }
}

internal sealed class OvernightRuleMapping : IEntityTypeConfiguration<OvernightRule>
{
    public void Configure(EntityTypeBuilder<OvernightRule> rule)
    {
        rule.ToTable("overnight_rules");
        rule.HasIndex(r => new { r.LocationId, r.ParkingAreaId, r.Sleeper }).IsUnique().AreNullsDistinct(false);
        rule.Property(r => r.GrantedBy).HasMaxLength(200);
        rule.Property(r => r.Version).IsRowVersion();
        rule.EnumText(r => r.Sleeper, "sleeper");
        rule.EnumText(r => r.Standing, "standing");
        rule.Check("granted_by", "standing <> 'Allowed' OR granted_by IS NOT NULL");
        rule.ComplexProperty(r => r.Check).Map();
        rule.HasOne(r => r.ParkingArea).WithMany().HasForeignKey(r => r.ParkingAreaId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class PermissionLetterMapping : IEntityTypeConfiguration<PermissionLetter>
{
    public void Configure(EntityTypeBuilder<PermissionLetter> letter)
    {
        letter.ToTable("permission_letters");
        letter.Property(p => p.GrantedBy).HasMaxLength(160);
        letter.Property(p => p.Purpose).HasMaxLength(400);
        letter.Property(p => p.Link).HasMaxLength(400);
        letter.Property(p => p.Version).IsRowVersion();
        letter.Check("until", "until >= dated");
        letter.HasOne(p => p.Leg).WithMany().HasForeignKey(p => p.LegId).OnDelete(DeleteBehavior.SetNull);
    }
}
