using Foreshore.Guide.Compositions;
using Foreshore.Guide.Database;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Photos;

internal sealed class PhotoMapping : IEntityTypeConfiguration<Photo>
{
    public void Configure(EntityTypeBuilder<Photo> photo)
    {
        photo.ToTable("photos");
        photo.Property(p => p.Id).ValueGeneratedNever();
        photo.EnumText(p => p.State, "state");
        photo.HasIndex(p => new { p.ProposalId, p.Sha256 }).IsUnique();
        photo.HasIndex(p => p.MemberId);
        photo.Check("came_with", "(proposal_id IS NULL) <> (hazard_note_id IS NULL)");
        photo.Check("shown", "(state = 'Shown') = (vantage_point_id IS NOT NULL)");
        photo.Check("sha256", "octet_length(sha256) = 32");
        photo.Check("size", $"width BETWEEN 1 AND {Developing.LongestFull} AND height BETWEEN 1 AND {Developing.LongestFull}");
        photo.HasOne<Member>().WithMany().HasForeignKey(p => p.MemberId).OnDelete(DeleteBehavior.SetNull);
        photo.HasOne<VantagePoint>().WithMany(v => v.Photos).HasForeignKey(p => p.VantagePointId).OnDelete(DeleteBehavior.Cascade);
        photo.HasOne<HazardNote>().WithOne(n => n.Photo).HasForeignKey<Photo>(p => p.HazardNoteId).OnDelete(DeleteBehavior.Cascade);
        photo.HasOne(p => p.File).WithOne().HasForeignKey<PhotoFile>(f => f.PhotoId).OnDelete(DeleteBehavior.Cascade);
        photo.Ignore(p => p.Small);
        photo.Ignore(p => p.Address);
        photo.Ignore(p => p.SmallAddress);
    }
}

internal sealed class PhotoFileMapping : IEntityTypeConfiguration<PhotoFile>
{
    public void Configure(EntityTypeBuilder<PhotoFile> file)
    {
        file.ToTable("photo_files");
        file.HasKey(f => f.PhotoId);
        file.Property(f => f.PhotoId).ValueGeneratedNever();
        file.Check("bytes", "octet_length(\"full\") > 0 AND octet_length(small) > 0");
    }
}
