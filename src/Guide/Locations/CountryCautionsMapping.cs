using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Locations;

internal sealed class CountryCautionsMapping : IEntityTypeConfiguration<CountryCautions>
{
    public void Configure(EntityTypeBuilder<CountryCautions> cautions)
    {
        cautions.ToTable("country_cautions");
        // One general default: two rows without a country count as the same.
        cautions.HasIndex(c => c.CountryCode).IsUnique().AreNullsDistinct(false);
        cautions.Property(c => c.CountryCode).HasMaxLength(2);
        cautions.Check("country_code", "country_code ~ '^[A-Z]{2}$'");
        cautions.Check("cautions", "cardinality(cautions) > 0");
        cautions.Property(c => c.EmergencyNumber).HasMaxLength(40);
        cautions.Property(c => c.AskFor).HasMaxLength(120);
        cautions.Property(c => c.WarningsName).HasMaxLength(120);
        cautions.Property(c => c.WarningsLink).HasMaxLength(400);
        cautions.Property(c => c.Version).IsRowVersion();
    }
}
