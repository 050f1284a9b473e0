using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Database;

/// <summary>The ring of keys that seals cookies and form tokens: one for all nodes, kept with the data.</summary>
internal sealed class DataProtectionKeyMapping : IEntityTypeConfiguration<DataProtectionKey>
{
    public void Configure(EntityTypeBuilder<DataProtectionKey> builder)
    {
        builder.ToTable("data_protection_keys");
        builder.Property(key => key.FriendlyName).HasMaxLength(200);
        builder.Property(key => key.Xml).HasMaxLength(20_000);
    }
}
