using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Hazards;

internal sealed class HazardRatingMapping : IEntityTypeConfiguration<HazardRating>
{
    public void Configure(EntityTypeBuilder<HazardRating> rating)
    {
        rating.ToTable("hazard_ratings");
        rating.HasIndex(r => new { r.LocationId, r.VantagePointId, r.Kind }).IsUnique().AreNullsDistinct(false);
        rating.Property(r => r.Version).IsRowVersion();
        rating.EnumText(r => r.Kind, "kind");
        rating.Between("severity", 0, HazardNote.Severe);
        rating.ComplexProperty(r => r.Check).Map();
        rating.HasOne(r => r.VantagePoint).WithMany().HasForeignKey(r => r.VantagePointId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class HazardNoteMapping : IEntityTypeConfiguration<HazardNote>
{
    public void Configure(EntityTypeBuilder<HazardNote> note)
    {
        note.ToTable("hazard_notes");
        note.Property(n => n.Text).HasMaxLength(600);
        note.Property(n => n.Place).HasMaxLength(200);
        note.Property(n => n.DecisionWords).HasMaxLength(400);
        note.HasIndex(n => n.FormId).IsUnique();
        // Pages read what stands; after years that is a fiftieth of all there are.
        note.HasIndex(n => n.LocationId, "ix_hazard_notes_standing").HasFilter("state IN ('Reported', 'Confirmed')");
        note.HasIndex(n => new { n.ReportedBy, n.ReportedAt });
        note.Property(n => n.Version).IsRowVersion();
        note.EnumText(n => n.Kind, "kind");
        note.EnumText(n => n.State, "state");
        note.Between("severity", 0, HazardNote.Severe);
        note.OnEarth();
        note.Check("place", "(latitude_degrees IS NULL) = (longitude_degrees IS NULL)");
        note.Check("until", "until >= \"from\"");
        note.Ignore(n => n.Position);
        note.Ignore(n => n.IsSevere);
        note.Ignore(n => n.Stands);
        note.Ignore(n => n.IsUnchecked);
        note.Ignore(n => n.KeepsOff);
        note.HasOne(n => n.VantagePoint).WithMany().HasForeignKey(n => n.VantagePointId).OnDelete(DeleteBehavior.Cascade);
    }
}
