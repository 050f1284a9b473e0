using Foreshore.Almanac.Light;
using Foreshore.Guide.Database;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Compositions;

internal sealed class CompositionMapping : IEntityTypeConfiguration<Composition>
{
    public void Configure(EntityTypeBuilder<Composition> composition)
    {
        composition.ToTable("compositions");
        composition.HasIndex(c => new { c.VantagePointId, c.Slug }).IsUnique();
        composition.Property(c => c.Slug).HasMaxLength(Slug.Longest);
        composition.SlugShape();
        composition.Property(c => c.Name).HasMaxLength(80);
        composition.Property(c => c.Summary).HasMaxLength(600);
        composition.Property(c => c.KitNotes).HasMaxLength(400);
        composition.Property(c => c.Sketch).HasMaxLength(120);
        composition.Property(c => c.Version).IsRowVersion();
        composition.EnumText(c => c.Orientation, "orientation");
        composition.EnumText(c => c.Water, "water");
        composition.Degrees("facing_degrees");
        composition.Between("tilt_degrees", -80, 80);
        composition.Between("focal_length_mm", 1, 3000);
        composition.Between("sensor_width_mm", 1, 200);
        composition.Between("sensor_height_mm", 1, 200);

        composition.PrimitiveCollection(c => c.Wanted).ElementType(element => element.HasConversion<string>());
        composition.Check("wanted", $"cardinality(wanted) > 0 AND wanted <@ ARRAY[{MappingParts.Names<WantedLight>()}]::text[]");
        composition.OneOf<TideTurn>("tide_turn");
        composition.OneOf<TideFlow>("tide_flow");
        composition.OneOf<TideRange>("tide_range");
        composition.OneOf<GroundState>("ground_state");
        composition.Check("tide", "tide_flow IS NULL OR (tide_turn IS NOT NULL) <> (tide_lowest_metres IS NOT NULL OR tide_highest_metres IS NOT NULL)");

        composition.Ignore(c => c.Facing);
        composition.Ignore(c => c.Lens);
        composition.Ignore(c => c.Frame);
        composition.ComplexProperty(c => c.Compass, compass =>
        {
            compass.Property(r => r.Model).HasMaxLength(20);
            compass.Ignore(r => r.TrueDegrees);
        });
        composition.ComplexProperty(c => c.Subject, subject =>
        {
            subject.Property(s => s.Name).HasMaxLength(80);
            subject.Ignore(s => s.Position);
        });
        composition.ComplexProperty(c => c.Tide, tide =>
        {
            tide.Property(t => t.Turn).HasConversion<string>().HasMaxLength(40);
            tide.Property(t => t.Flow).HasConversion<string>().HasMaxLength(40);
            tide.Property(t => t.Range).HasConversion<string>().HasMaxLength(40);
            tide.ComplexProperty(t => t.Lowest).Map();
            tide.ComplexProperty(t => t.Highest).Map();
            tide.Ignore(t => t.IsBand);
        });
        composition.ComplexProperty(c => c.Ground, ground =>
        {
            ground.Property(g => g.State).HasConversion<string>().HasMaxLength(40);
            ground.ComplexProperty(g => g.Foreground).Map();
            ground.Ignore(g => g.CanBeJudged);
        });
        composition.ComplexProperty(c => c.Sea, sea => sea.Property(s => s.Words).HasMaxLength(60));
    }
}
