using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class TideStations : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<string>(
                name: "path_cut_off_station_id",
                table: "vantage_points",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "highest_usable_tide_station_id",
                table: "vantage_points",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "ground_station_id",
                table: "vantage_points",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "floods_above_station_id",
                table: "parking_areas",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "tide_station_id",
                table: "locations",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "crossing_passable_below_station_id",
                table: "legs",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "tide_lowest_station_id",
                table: "compositions",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "tide_highest_station_id",
                table: "compositions",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "ground_foreground_station_id",
                table: "compositions",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(40)",
                oldMaxLength: 40,
                oldNullable: true);

            migrationBuilder.CreateTable(
                name: "tide_catalogue",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    edition = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tide_catalogue", x => x.id);
                    table.CheckConstraint("ck_tide_catalogue_one_row", "id = 1");
                });

            migrationBuilder.CreateTable(
                name: "tide_stations",
                columns: table => new
                {
                    id = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    slug = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    latitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    longitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    country_code = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: true),
                    subdivision_code = table.Column<string>(type: "character varying(6)", maxLength: 6, nullable: true),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    catalogue_edition = table.Column<int>(type: "integer", nullable: true),
                    licence = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    licence_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    attribution = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: false),
                    disclaimer = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    quality = table.Column<int>(type: "integer", nullable: true),
                    has_reckoned_levels = table.Column<bool>(type: "boolean", nullable: false),
                    first_year = table.Column<int>(type: "integer", nullable: true),
                    last_year = table.Column<int>(type: "integer", nullable: true),
                    chart_datum = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    level_codes = table.Column<string[]>(type: "text[]", nullable: false),
                    levels_metres = table.Column<double[]>(type: "double precision[]", nullable: false),
                    lowest_metres = table.Column<double>(type: "double precision", nullable: true),
                    highest_metres = table.Column<double>(type: "double precision", nullable: true),
                    constituent_names = table.Column<string[]>(type: "text[]", nullable: false),
                    amplitudes_metres = table.Column<double[]>(type: "double precision[]", nullable: false),
                    phases_degrees = table.Column<double[]>(type: "double precision[]", nullable: false),
                    nodal_model = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    reference_id = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true),
                    high_water_minutes = table.Column<int>(type: "integer", nullable: true),
                    low_water_minutes = table.Column<int>(type: "integer", nullable: true),
                    high_water_height = table.Column<double>(type: "double precision", nullable: true),
                    low_water_height = table.Column<double>(type: "double precision", nullable: true),
                    heights_are_ratios = table.Column<bool>(type: "boolean", nullable: true),
                    turn_times = table.Column<Instant[]>(type: "timestamp with time zone[]", nullable: false),
                    turn_metres = table.Column<double[]>(type: "double precision[]", nullable: false),
                    search_text = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tide_stations", x => x.id);
                    table.CheckConstraint("ck_tide_stations_constituents", "cardinality(constituent_names) = cardinality(amplitudes_metres) AND cardinality(constituent_names) = cardinality(phases_degrees)");
                    table.CheckConstraint("ck_tide_stations_id", "id ~ '^[a-z]+/[A-Za-z0-9]+([_-][A-Za-z0-9]+)*$'");
                    table.CheckConstraint("ck_tide_stations_kind", "kind IN ('Harmonic', 'Subordinate', 'HighLowTable')");
                    table.CheckConstraint("ck_tide_stations_latitude_degrees", "latitude_degrees BETWEEN -90 AND 90");
                    table.CheckConstraint("ck_tide_stations_levels", "cardinality(level_codes) = cardinality(levels_metres)");
                    table.CheckConstraint("ck_tide_stations_longitude_degrees", "longitude_degrees >= -180 AND longitude_degrees < 180");
                    table.CheckConstraint("ck_tide_stations_nodal_model", "nodal_model IN ('Schureman', 'Iho')");
                    table.CheckConstraint("ck_tide_stations_quality", "quality BETWEEN 0 AND 100");
                    table.CheckConstraint("ck_tide_stations_slug", "slug = replace(lower(id), '/', '-')");
                    table.CheckConstraint("ck_tide_stations_turns", "cardinality(turn_times) = cardinality(turn_metres)");
                    table.CheckConstraint("ck_tide_stations_what_it_is_made_from", "(kind = 'Harmonic' AND cardinality(constituent_names) > 0 AND reference_id IS NULL AND cardinality(turn_times) = 0) OR (kind = 'Subordinate' AND reference_id IS NOT NULL AND high_water_minutes IS NOT NULL AND low_water_minutes IS NOT NULL     AND high_water_height IS NOT NULL AND low_water_height IS NOT NULL AND heights_are_ratios IS NOT NULL     AND cardinality(constituent_names) = 0 AND cardinality(turn_times) = 0) OR (kind = 'HighLowTable' AND cardinality(turn_times) > 1 AND reference_id IS NULL AND cardinality(constituent_names) = 0)");
                    table.ForeignKey(
                        name: "fk_tide_stations_tide_stations_reference_id",
                        column: x => x.reference_id,
                        principalTable: "tide_stations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_tide_stations_reference_id",
                table: "tide_stations",
                column: "reference_id");

            migrationBuilder.CreateIndex(
                name: "ix_tide_stations_slug",
                table: "tide_stations",
                column: "slug",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "tide_catalogue");

            migrationBuilder.DropTable(
                name: "tide_stations");

            migrationBuilder.AlterColumn<string>(
                name: "path_cut_off_station_id",
                table: "vantage_points",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "highest_usable_tide_station_id",
                table: "vantage_points",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "ground_station_id",
                table: "vantage_points",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "floods_above_station_id",
                table: "parking_areas",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "tide_station_id",
                table: "locations",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "crossing_passable_below_station_id",
                table: "legs",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "tide_lowest_station_id",
                table: "compositions",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "tide_highest_station_id",
                table: "compositions",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "ground_foreground_station_id",
                table: "compositions",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(100)",
                oldMaxLength: 100,
                oldNullable: true);
        }
    }
}
