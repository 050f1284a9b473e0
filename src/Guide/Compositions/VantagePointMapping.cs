using Foreshore.Guide.Database;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Compositions;

internal sealed class VantagePointMapping : IEntityTypeConfiguration<VantagePoint>
{
    public void Configure(EntityTypeBuilder<VantagePoint> point)
    {
        point.ToTable("vantage_points");
        point.HasIndex(v => new { v.LocationId, v.Slug }).IsUnique();
        point.Property(v => v.Slug).HasMaxLength(Slug.Longest);
        point.SlugShape();
        point.Property(v => v.Name).HasMaxLength(80);
        point.Property(v => v.Summary).HasMaxLength(400);
        point.Property(v => v.ReachReason).HasMaxLength(300);
        point.Property(v => v.SkylineText).HasMaxLength(16000);
        point.Property(v => v.SkylineOrigin).HasMaxLength(600);
        point.Property(v => v.Sketch).HasMaxLength(120);
        point.Property(v => v.Version).IsRowVersion();
        point.EnumText(v => v.Kind, "kind");
        point.EnumText(v => v.Reach, "reach");
        point.EnumText(v => v.Footing, "footing");
        point.EnumText(v => v.Edge, "edge");
        point.OnEarth();
        point.Check("reach_reason", "reach IN ('Unknown', 'Waves') OR reach_reason IS NOT NULL");
        point.Check("tripods", "tripods BETWEEN 1 AND 100");
        point.Between("walk_in_minutes", 0, 1440);
        point.Between("walk_out_minutes", 0, 1440);
        point.Between("minutes_to_beyond_reach", 0, 1440);
        point.Between("eye_height_metres", 0.05, 10);
        point.Between("gust_limit_metres_per_second", 1, 60);
        point.Between("ground_metres", -2, 1500);
        point.Check("cut_off", "NOT (is_never_cut_off AND path_cut_off_metres IS NOT NULL)");
        point.Degrees("sea_exposed_from_degrees");
        point.Degrees("sea_exposed_to_degrees");
        point.OneOf<HeightMethod>("ground_method");
        point.OneOf<TideDatum>("ground_datum");
        point.OneOf<TideDatum>("path_cut_off_datum");
        point.OneOf<TideDatum>("highest_usable_tide_datum");

        point.Ignore(v => v.Position);
        point.Ignore(v => v.Skyline);
        point.Ignore(v => v.IsWaveExposed);
        point.ComplexProperty(v => v.Check).Map();
        point.ComplexProperty(v => v.Ground, ground =>
        {
            ground.Property(g => g.StationId).HasMaxLength(StationIds.Longest);
            ground.Property(g => g.How).HasMaxLength(300);
            ground.Property(g => g.Method).HasConversion<string>().HasMaxLength(40);
            ground.Property(g => g.Datum).HasConversion<string>().HasMaxLength(40);
            ground.Ignore(g => g.LowerEndMetres);
        });
        point.ComplexProperty(v => v.PathCutOff).Map();
        point.ComplexProperty(v => v.HighestUsableTide).Map();
        point.ComplexProperty(v => v.Sea, sea => sea.Property(s => s.OutsideBecause).HasMaxLength(300));
        point.ComplexProperty(v => v.WatchPlace, watch =>
        {
            watch.Map();
            watch.Property(w => w.SeenFromMinusNineBecause).HasMaxLength(300);
        });
        point.ComplexProperty(v => v.DarkStance, dark =>
        {
            dark.Map();
            dark.Ignore(d => d.SeenFromMinusNineBecause);
        });
        point.ComplexProperty(v => v.Cliff, cliff =>
        {
            cliff.Property(c => c.AcceptedBecause).HasMaxLength(300);
            cliff.Ignore(c => c.IsTooNear);
        });
        point.HasMany(v => v.Ways).WithOne().HasForeignKey(w => w.VantagePointId);
        point.HasMany(v => v.Compositions).WithOne(c => c.VantagePoint).HasForeignKey(c => c.VantagePointId);
    }
}
