using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NpgsqlTypes;

namespace Foreshore.Guide.Locations;

internal sealed class LocationMapping : IEntityTypeConfiguration<Location>
{
    public const string SearchVector = "SearchVector";

    public void Configure(EntityTypeBuilder<Location> location)
    {
        location.ToTable("locations");
        location.HasIndex(l => l.Slug).IsUnique();
        location.Property(l => l.Slug).HasMaxLength(Slug.Longest);
        location.SlugShape();
        location.Property(l => l.Name).HasMaxLength(80);
        location.Property(l => l.Summary).HasMaxLength(200);
        location.Property(l => l.Background).HasMaxLength(4000);
        location.Property(l => l.ZoneId).HasMaxLength(60);
        location.Property(l => l.CountryCode).HasMaxLength(2);
        location.Check("country_code", "country_code ~ '^[A-Z]{2}$'");
        location.Property(l => l.SubdivisionCode).HasMaxLength(6);
        location.Check("subdivision_code", "subdivision_code LIKE country_code || '-%'");
        location.Property(l => l.TideStationId).HasMaxLength(StationIds.Longest);
        location.Property(l => l.ForeshoreOwner).HasMaxLength(200);
        location.Property(l => l.Byelaws).HasMaxLength(600);
        location.Property(l => l.AskWhom).HasMaxLength(200);
        location.HoursText(l => l.Hours);
        location.Ignore(l => l.HoursAreToBeEntered);
        location.Property(l => l.Version).IsRowVersion();
        location.EnumText(l => l.Visibility, "visibility");
        location.OnEarth();
        location.Between("mean_sea_level_above_chart_datum_metres", -2, 12);
        location.HasIndex(l => l.CoastOrder);
        location.ComplexProperty(l => l.TideCorrections);
        location.ComplexProperty(l => l.Emergency, emergency =>
        {
            emergency.Property(e => e.WhomToRing).HasMaxLength(200);
            emergency.Property(e => e.GridReference).HasMaxLength(60);
            emergency.Property(e => e.NearestRoad).HasMaxLength(300);
            emergency.Property(e => e.LastPhoneSignal).HasMaxLength(300);
            emergency.Property(e => e.ThrowLine).HasMaxLength(300);
            emergency.Property(e => e.WayOutOfWater).HasMaxLength(300);
            emergency.Property(e => e.Shelter).HasMaxLength(300);
            emergency.Property(e => e.WarningsLink).HasMaxLength(400);
            emergency.Ignore(e => e.Position);
            emergency.Ignore(e => e.ReadOut);
        });

        // IsBlurred is a state of copies only; Position, Zone and the like are computed.
        location.Ignore(l => l.IsBlurred);
        location.Ignore(l => l.Position);
        location.Ignore(l => l.Zone);

        location.Property<NpgsqlTsVector>(SearchVector).HasComputedColumnSql("to_tsvector('simple', search_text)", stored: true);
        location.HasIndex(SearchVector).HasMethod("gin");

        location.HasMany(l => l.Routes).WithOne().HasForeignKey(r => r.LocationId);
        location.HasMany(l => l.Parking).WithOne().HasForeignKey(p => p.LocationId);
        location.HasMany(l => l.OvernightRules).WithOne().HasForeignKey(r => r.LocationId);
        location.HasMany(l => l.PermissionLetters).WithOne().HasForeignKey(p => p.LocationId);
        location.HasMany(l => l.Closures).WithOne().HasForeignKey(c => c.LocationId);
        location.HasMany(l => l.HazardRatings).WithOne().HasForeignKey(r => r.LocationId);
        location.HasMany(l => l.HazardNotes).WithOne().HasForeignKey(n => n.LocationId);
        location.HasMany(l => l.VantagePoints).WithOne(v => v.Location).HasForeignKey(v => v.LocationId);
        location.HasMany(l => l.Grants).WithOne().HasForeignKey(g => g.LocationId);
    }
}

internal sealed class LocationGrantMapping : IEntityTypeConfiguration<LocationGrant>
{
    public void Configure(EntityTypeBuilder<LocationGrant> grant)
    {
        grant.ToTable("location_grants");
        grant.HasKey(g => new { g.LocationId, g.MemberId });
    }
}

internal sealed class UsedSlugMapping : IEntityTypeConfiguration<UsedSlug>
{
    public void Configure(EntityTypeBuilder<UsedSlug> used)
    {
        used.ToTable("used_slugs");
        used.HasKey(u => new { u.Parent, u.Slug });
        used.Property(u => u.Parent).HasMaxLength(40);
        used.Property(u => u.Slug).HasMaxLength(Slug.Longest);
    }
}
