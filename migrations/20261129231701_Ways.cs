using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class Ways : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "watch_place_seen_from_minus_nine_because",
                table: "vantage_points",
                type: "character varying(300)",
                maxLength: 300,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ground",
                table: "legs",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "Unknown");

            migrationBuilder.AddColumn<string>(
                name: "light_at_night",
                table: "legs",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "Unknown");

            migrationBuilder.AddColumn<string>(
                name: "tidal_cut",
                table: "legs",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "Unknown");

            migrationBuilder.CreateTable(
                name: "route_parking",
                columns: table => new
                {
                    access_route_id = table.Column<int>(type: "integer", nullable: false),
                    parking_area_id = table.Column<int>(type: "integer", nullable: false),
                    order = table.Column<int>(type: "integer", nullable: false),
                    walk_minutes = table.Column<double>(type: "double precision", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_route_parking", x => new { x.access_route_id, x.parking_area_id });
                    table.CheckConstraint("ck_route_parking_walk_minutes", "walk_minutes BETWEEN 0 AND 1440");
                    table.ForeignKey(
                        name: "fk_route_parking_access_routes_access_route_id",
                        column: x => x.access_route_id,
                        principalTable: "access_routes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_route_parking_parking_area_parking_area_id",
                        column: x => x.parking_area_id,
                        principalTable: "parking_areas",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "stance_ways",
                columns: table => new
                {
                    vantage_point_id = table.Column<int>(type: "integer", nullable: false),
                    route_id = table.Column<int>(type: "integer", nullable: false),
                    order = table.Column<int>(type: "integer", nullable: false),
                    end_minutes = table.Column<double>(type: "double precision", nullable: true),
                    walk_in_minutes = table.Column<double>(type: "double precision", nullable: true),
                    walk_out_minutes = table.Column<double>(type: "double precision", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stance_ways", x => new { x.vantage_point_id, x.route_id });
                    table.CheckConstraint("ck_stance_ways_end_minutes", "end_minutes BETWEEN 0 AND 1440");
                    table.CheckConstraint("ck_stance_ways_walk_in_minutes", "walk_in_minutes BETWEEN 0 AND 1440");
                    table.CheckConstraint("ck_stance_ways_walk_out_minutes", "walk_out_minutes BETWEEN 0 AND 1440");
                    table.ForeignKey(
                        name: "fk_stance_ways_access_routes_route_id",
                        column: x => x.route_id,
                        principalTable: "access_routes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_stance_ways_vantage_points_vantage_point_id",
                        column: x => x.vantage_point_id,
                        principalTable: "vantage_points",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            // What a leg without a crossing meant until now; and every car park may have been meant for every way, at a walk nobody has entered.
            migrationBuilder.Sql("""
                UPDATE legs SET tidal_cut = CASE WHEN crossing_passable_below_metres IS NULL THEN 'Never' ELSE 'Crossing' END;
                INSERT INTO route_parking (access_route_id, parking_area_id, "order")
                    SELECT route.id, lot.id, row_number() OVER (PARTITION BY route.id ORDER BY lot.id)
                    FROM access_routes route JOIN parking_areas lot ON lot.location_id = route.location_id;
                """);

            migrationBuilder.AddCheckConstraint(
                name: "ck_legs_crossing",
                table: "legs",
                sql: "(tidal_cut = 'Crossing') = (crossing_passable_below_metres IS NOT NULL)");

            migrationBuilder.AddCheckConstraint(
                name: "ck_legs_ground",
                table: "legs",
                sql: "ground IN ('Unknown', 'Firm', 'WetRock', 'Weed', 'Boulders', 'SoftGround')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_legs_light_at_night",
                table: "legs",
                sql: "light_at_night IN ('Unknown', 'Lit', 'KnownInTheDark', 'NotKnownInTheDark')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_legs_tidal_cut",
                table: "legs",
                sql: "tidal_cut IN ('Unknown', 'Never', 'Crossing')");

            migrationBuilder.CreateIndex(
                name: "ix_route_parking_parking_area_id",
                table: "route_parking",
                column: "parking_area_id");

            migrationBuilder.CreateIndex(
                name: "ix_stance_ways_route_id",
                table: "stance_ways",
                column: "route_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "route_parking");

            migrationBuilder.DropTable(
                name: "stance_ways");

            migrationBuilder.DropCheckConstraint(
                name: "ck_legs_crossing",
                table: "legs");

            migrationBuilder.DropCheckConstraint(
                name: "ck_legs_ground",
                table: "legs");

            migrationBuilder.DropCheckConstraint(
                name: "ck_legs_light_at_night",
                table: "legs");

            migrationBuilder.DropCheckConstraint(
                name: "ck_legs_tidal_cut",
                table: "legs");

            migrationBuilder.DropColumn(
                name: "watch_place_seen_from_minus_nine_because",
                table: "vantage_points");

            migrationBuilder.DropColumn(
                name: "ground",
                table: "legs");

            migrationBuilder.DropColumn(
                name: "light_at_night",
                table: "legs");

            migrationBuilder.DropColumn(
                name: "tidal_cut",
                table: "legs");
        }
    }
}
