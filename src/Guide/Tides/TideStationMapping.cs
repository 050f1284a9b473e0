using Foreshore.Guide.Database;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Tides;

internal sealed class TideStationMapping : IEntityTypeConfiguration<TideStation>
{
    public void Configure(EntityTypeBuilder<TideStation> station)
    {
        station.ToTable("tide_stations");
        station.Property(s => s.Id).HasMaxLength(StationIds.Longest).ValueGeneratedNever();
        station.Check("id", "id ~ '^[a-z]+/[A-Za-z0-9]+([_-][A-Za-z0-9]+)*$'");
        station.Property(s => s.Slug).HasMaxLength(StationIds.Longest);
        station.Check("slug", "slug = replace(lower(id), '/', '-')");
        station.HasIndex(s => s.Slug).IsUnique();
        station.Property(s => s.Name).HasMaxLength(120);
        station.OnEarth();
        station.Property(s => s.CountryCode).HasMaxLength(2);
        station.Property(s => s.SubdivisionCode).HasMaxLength(6);
        station.EnumText(s => s.Kind, "kind");
        station.EnumText(s => s.NodalModel, "nodal_model");
        station.Property(s => s.Licence).HasMaxLength(60);
        station.Property(s => s.LicenceLink).HasMaxLength(400);
        station.Property(s => s.Attribution).HasMaxLength(600);
        station.Property(s => s.Disclaimer).HasMaxLength(1000);
        station.Between("quality", 0, 100);
        station.Property(s => s.ChartDatum).HasMaxLength(10);
        station.Property(s => s.ReferenceId).HasMaxLength(StationIds.Longest);
        station.Property(s => s.Version).IsRowVersion();
        station.HasIndex(s => s.ReferenceId);
        station.HasOne<TideStation>().WithMany().HasForeignKey(s => s.ReferenceId).OnDelete(DeleteBehavior.Restrict);

        station.Check("levels", "cardinality(level_codes) = cardinality(levels_metres)");
        station.Check("constituents", "cardinality(constituent_names) = cardinality(amplitudes_metres) AND cardinality(constituent_names) = cardinality(phases_degrees)");
        station.Check("turns", "cardinality(turn_times) = cardinality(turn_metres)");
        station.Check("what_it_is_made_from", """
            (kind = 'Harmonic' AND cardinality(constituent_names) > 0 AND reference_id IS NULL AND cardinality(turn_times) = 0)
            OR (kind = 'Subordinate' AND reference_id IS NOT NULL AND high_water_minutes IS NOT NULL AND low_water_minutes IS NOT NULL
                AND high_water_height IS NOT NULL AND low_water_height IS NOT NULL AND heights_are_ratios IS NOT NULL
                AND cardinality(constituent_names) = 0 AND cardinality(turn_times) = 0)
            OR (kind = 'HighLowTable' AND cardinality(turn_times) > 1 AND reference_id IS NULL AND cardinality(constituent_names) = 0)
            """.ReplaceLineEndings(" "));
        station.Ignore(s => s.Position);
        station.Ignore(s => s.IsOfClub);
    }
}

/// <summary>Which edition of the catalogue is stored; one row, or none before the first loading.</summary>
internal sealed class StoredCatalogue
{
    public int Id { get; private set; } = 1;

    public int Edition { get; private set; }
}

internal sealed class StoredCatalogueMapping : IEntityTypeConfiguration<StoredCatalogue>
{
    public void Configure(EntityTypeBuilder<StoredCatalogue> stored)
    {
        stored.ToTable("tide_catalogue");
        stored.Property(s => s.Id).ValueGeneratedNever();
        stored.Check("one_row", "id = 1");
    }
}
