using Foreshore.Guide.Database;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Access;

internal sealed class AccessRouteMapping : IEntityTypeConfiguration<AccessRoute>
{
    public void Configure(EntityTypeBuilder<AccessRoute> route)
    {
        route.ToTable("access_routes");
        route.Property(r => r.Name).HasMaxLength(80);
        route.Property(r => r.Notes).HasMaxLength(600);
        route.Property(r => r.Version).IsRowVersion();
        route.Ignore(r => r.MayBeRecommended);
        // Not unique: a new order is written row by row.
        route.HasIndex(r => new { r.LocationId, r.Order });
        route.HasMany(r => r.Parking).WithOne().HasForeignKey(p => p.AccessRouteId);
        route.HasMany(r => r.Legs).WithOne().HasForeignKey(leg => leg.AccessRouteId);
    }
}

internal sealed class RouteParkingMapping : IEntityTypeConfiguration<RouteParking>
{
    public void Configure(EntityTypeBuilder<RouteParking> served)
    {
        served.ToTable("route_parking");
        served.HasKey(s => new { s.AccessRouteId, s.ParkingAreaId });
        served.HasOne(s => s.ParkingArea).WithMany().HasForeignKey(s => s.ParkingAreaId).OnDelete(DeleteBehavior.Cascade);
        served.Property(s => s.Version).IsRowVersion();
        served.Between("walk_minutes", 0, 1440);
    }
}

internal sealed class StanceWayMapping : IEntityTypeConfiguration<StanceWay>
{
    public void Configure(EntityTypeBuilder<StanceWay> way)
    {
        way.ToTable("stance_ways");
        way.HasKey(w => new { w.VantagePointId, w.RouteId });
        way.HasOne(w => w.Route).WithMany().HasForeignKey(w => w.RouteId).OnDelete(DeleteBehavior.Cascade);
        way.Property(w => w.Version).IsRowVersion();
        way.Between("end_minutes", 0, 1440);
        way.Between("walk_in_minutes", 0, 1440);
        way.Between("walk_out_minutes", 0, 1440);
    }
}

internal sealed class LegMapping : IEntityTypeConfiguration<Leg>
{
    public void Configure(EntityTypeBuilder<Leg> leg)
    {
        leg.ToTable("legs");
        leg.HasIndex(l => new { l.AccessRouteId, l.Order }).IsUnique();
        leg.Property(l => l.Name).HasMaxLength(120);
        leg.Property(l => l.Notes).HasMaxLength(600);
        leg.Property(l => l.Surface).HasMaxLength(120);
        leg.Property(l => l.HoursText).HasMaxLength(300);
        leg.Property(l => l.AskWhom).HasMaxLength(200);
        leg.HoursText(l => l.Hours);
        leg.Ignore(l => l.HoursAreToBeEntered);
        leg.Property(l => l.Version).IsRowVersion();
        leg.EnumText(l => l.Kind, "kind");
        leg.EnumText(l => l.LegalStatus, "legal_status");
        leg.Property(l => l.Group).HasColumnName("group_allowed");
        leg.EnumText(l => l.Group, "group_allowed");
        leg.Property(l => l.Tripod).HasColumnName("tripod_allowed");
        leg.EnumText(l => l.Tripod, "tripod_allowed");
        leg.EnumText(l => l.Dogs, "dogs");
        leg.Between("distance_kilometres", 0, 2000);
        leg.Between("minutes", 0, 2880);
        leg.Between("climb_metres", 0, 3000);
        leg.Check("line", "cardinality(line_degrees) % 2 = 0 AND cardinality(line_degrees) <> 2");
        leg.Check("ferry", "(kind = 'Ferry') = (ferry_crossing_minutes IS NOT NULL)");
        leg.Check("ferry_out", SailingsNotation.Check("ferry_out"));
        leg.Check("ferry_back", SailingsNotation.Check("ferry_back"));
        leg.EnumText(l => l.Ground, "ground");
        leg.EnumText(l => l.LightAtNight, "light_at_night");
        leg.EnumText(l => l.TidalCut, "tidal_cut");
        leg.Check("crossing", "(tidal_cut = 'Crossing') = (crossing_passable_below_metres IS NOT NULL)");
        leg.OneOf<TideDatum>("crossing_passable_below_datum");
        leg.Ignore(l => l.Line);
        leg.Ignore(l => l.MayBeRecommended);
        leg.ComplexProperty(l => l.Check).Map();
        leg.ComplexProperty(l => l.Ferry, ferry =>
        {
            ferry.Property(f => f.Currency).HasMaxLength(3);
            ferry.Property(f => f.Fare).HasPrecision(10, 2);
            ferry.Property(f => f.Out).HasConversion(sailings => SailingsNotation.Write(sailings), text => SailingsNotation.Read(text)).HasMaxLength(RuleNotation.Longest);
            ferry.Property(f => f.Back).HasConversion(sailings => SailingsNotation.Write(sailings), text => SailingsNotation.Read(text)).HasMaxLength(RuleNotation.Longest);
        });
        leg.ComplexProperty(l => l.Crossing, crossing =>
        {
            crossing.Property(c => c.ShelteredBecause).HasMaxLength(300);
            crossing.ComplexProperty(c => c.PassableBelow).Map();
        });
    }
}
