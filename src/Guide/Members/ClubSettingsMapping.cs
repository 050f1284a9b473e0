using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Members;

internal sealed class ClubSettingsMapping : IEntityTypeConfiguration<ClubSettings>
{
    public void Configure(EntityTypeBuilder<ClubSettings> settings)
    {
        settings.ToTable("club_settings");
        settings.Property(s => s.Id).ValueGeneratedNever();
        settings.Check("one_row", $"id = {ClubSettings.OnlyId}");
        settings.Property(s => s.ClubName).HasMaxLength(80);
        settings.Property(s => s.CoastName).HasMaxLength(80);
        settings.Property(s => s.Introduction).HasMaxLength(1000);
        settings.Property(s => s.CautionsLink).HasMaxLength(400);
        settings.Property(s => s.Version).IsRowVersion();
    }
}
