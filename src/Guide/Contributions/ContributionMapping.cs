using System.Text.Json;
using Foreshore.Guide.Database;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Photos;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Contributions;

internal sealed class ProposalMapping : IEntityTypeConfiguration<Proposal>
{
    public void Configure(EntityTypeBuilder<Proposal> proposal)
    {
        proposal.ToTable("proposals");
        proposal.Property(p => p.Id).ValueGeneratedNever();
        proposal.EnumText(p => p.Matter, "matter");
        proposal.EnumText(p => p.State, "state");
        proposal.Property(p => p.Given).KeptAsJson();
        proposal.Property(p => p.Found).KeptAsJson();
        proposal.Property(p => p.Reason).HasMaxLength(Proposal.LongestReason);
        proposal.Property(p => p.Question).HasMaxLength(Proposal.LongestReason);
        proposal.Property(p => p.Answer).HasMaxLength(Proposal.LongestReason);
        proposal.Property(p => p.DecisionWords).HasMaxLength(Proposal.LongestReason);
        proposal.Property(p => p.SentContent).HasMaxLength(32);
        proposal.Property(p => p.Version).IsRowVersion();
        proposal.HasIndex(p => new { p.State, p.SentAt });
        proposal.HasIndex(p => p.ProposerId);
        proposal.Check("sent", "state IN ('Draft', 'Withdrawn') OR sent_at IS NOT NULL");
        proposal.Check("decided", "state NOT IN ('Accepted', 'Declined') OR (decided_by IS NOT NULL AND decided_at IS NOT NULL)");
        proposal.Check("applied", "state <> 'Accepted' OR target_id IS NOT NULL");
        proposal.HasOne<Location>().WithMany().HasForeignKey(p => p.LocationId).OnDelete(DeleteBehavior.Restrict);
        proposal.HasMany<Photo>().WithOne().HasForeignKey(p => p.ProposalId).OnDelete(DeleteBehavior.Cascade);
        proposal.Ignore(p => p.Changes);
        proposal.Ignore(p => p.IsNote);
    }
}

internal sealed class RevisionMapping : IEntityTypeConfiguration<Revision>
{
    public void Configure(EntityTypeBuilder<Revision> revision)
    {
        revision.ToTable("revisions");
        revision.EnumText(r => r.Matter, "matter");
        revision.Property(r => r.Changes).KeptAsJson();
        revision.Property(r => r.Reason).HasMaxLength(Proposal.LongestReason);
        revision.HasIndex(r => new { r.Matter, r.TargetId, r.Id });
        // A proposal is applied once: the second revision of the same thing for it is refused by the database.
        revision.HasIndex(r => new { r.ProposalId, r.Matter, r.TargetId }).IsUnique();
        revision.HasOne<Location>().WithMany().HasForeignKey(r => r.LocationId).OnDelete(DeleteBehavior.Restrict);
    }
}

internal static class KeptTexts
{
    /// <summary>Texts by field, or changes of them, in one jsonb column.</summary>
    public static PropertyBuilder<T> KeptAsJson<T>(this PropertyBuilder<T> property) => property
        .HasColumnType("jsonb")
        .HasConversion(
            value => JsonSerializer.Serialize(value, JsonSerializerOptions.Default),
            text => JsonSerializer.Deserialize<T>(text, JsonSerializerOptions.Default)!,
            new ValueComparer<T>((a, b) => JsonSerializer.Serialize(a, JsonSerializerOptions.Default) == JsonSerializer.Serialize(b, JsonSerializerOptions.Default),
                value => JsonSerializer.Serialize(value, JsonSerializerOptions.Default).GetHashCode(StringComparison.Ordinal), value => value));
}
