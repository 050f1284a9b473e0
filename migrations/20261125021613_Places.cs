using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;
using NpgsqlTypes;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class Places : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "club_settings",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    club_name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    coast_name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    introduction = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: false),
                    is_demo = table.Column<bool>(type: "boolean", nullable: false),
                    earliest_alarm = table.Column<LocalTime>(type: "time", nullable: false),
                    latest_home = table.Column<LocalTime>(type: "time", nullable: false),
                    cautions_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    visitors_may_read = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_club_settings", x => x.id);
                    table.CheckConstraint("ck_club_settings_one_row", "id = 1");
                });

            migrationBuilder.CreateTable(
                name: "country_cautions",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    country_code = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: true),
                    cautions = table.Column<string[]>(type: "text[]", nullable: false),
                    emergency_number = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    ask_for = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    warnings_name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    warnings_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_country_cautions", x => x.id);
                    table.CheckConstraint("ck_country_cautions_cautions", "cardinality(cautions) > 0");
                    table.CheckConstraint("ck_country_cautions_country_code", "country_code ~ '^[A-Z]{2}$'");
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    friendly_name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    xml = table.Column<string>(type: "character varying(20000)", maxLength: 20000, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "locations",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    slug = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    other_names = table.Column<string[]>(type: "text[]", nullable: false),
                    latitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    longitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    zone_id = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    country_code = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: false),
                    subdivision_code = table.Column<string>(type: "character varying(6)", maxLength: 6, nullable: true),
                    coast_order = table.Column<int>(type: "integer", nullable: false),
                    summary = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    background = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    visibility = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    proposed_by = table.Column<Guid>(type: "uuid", nullable: true),
                    tide_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    mean_sea_level_above_chart_datum_metres = table.Column<double>(type: "double precision", nullable: true),
                    foreshore_owner = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    byelaws = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true),
                    search_text = table.Column<string>(type: "text", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    search_vector = table.Column<NpgsqlTsVector>(type: "tsvector", nullable: true, computedColumnSql: "to_tsvector('simple', search_text)", stored: true),
                    emergency_grid_reference = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    emergency_last_phone_signal = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    emergency_latitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    emergency_longitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    emergency_nearest_road = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    emergency_shelter = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    emergency_throw_line = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    emergency_throw_line_seen_on = table.Column<LocalDate>(type: "date", nullable: true),
                    emergency_warnings_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    emergency_way_out_of_water = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    emergency_whom_to_ring = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    tide_corrections_high_water_minutes = table.Column<int>(type: "integer", nullable: true),
                    tide_corrections_high_water_ratio = table.Column<double>(type: "double precision", nullable: true),
                    tide_corrections_low_water_minutes = table.Column<int>(type: "integer", nullable: true),
                    tide_corrections_low_water_ratio = table.Column<double>(type: "double precision", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_locations", x => x.id);
                    table.CheckConstraint("ck_locations_country_code", "country_code ~ '^[A-Z]{2}$'");
                    table.CheckConstraint("ck_locations_latitude_degrees", "latitude_degrees BETWEEN -90 AND 90");
                    table.CheckConstraint("ck_locations_longitude_degrees", "longitude_degrees >= -180 AND longitude_degrees < 180");
                    table.CheckConstraint("ck_locations_mean_sea_level_above_chart_datum_metres", "mean_sea_level_above_chart_datum_metres BETWEEN -2 AND 12");
                    table.CheckConstraint("ck_locations_slug", "slug ~ '^[a-z0-9]+(-[a-z0-9]+)*$' AND length(slug) <= 60");
                    table.CheckConstraint("ck_locations_subdivision_code", "subdivision_code LIKE country_code || '-%'");
                    table.CheckConstraint("ck_locations_visibility", "visibility IN ('Public', 'Members', 'Sensitive')");
                });

            migrationBuilder.CreateTable(
                name: "used_slugs",
                columns: table => new
                {
                    parent = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    slug = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    target_id = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_used_slugs", x => new { x.parent, x.slug });
                });

            migrationBuilder.CreateTable(
                name: "access_routes",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    order = table.Column<int>(type: "integer", nullable: false),
                    notes = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_access_routes", x => x.id);
                    table.ForeignKey(
                        name: "fk_access_routes_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "location_grants",
                columns: table => new
                {
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    member_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_location_grants", x => new { x.location_id, x.member_id });
                    table.ForeignKey(
                        name: "fk_location_grants_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "parking_areas",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    latitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    longitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    surface = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    capacity = table.Column<int>(type: "integer", nullable: true),
                    cost = table.Column<decimal>(type: "numeric(10,2)", precision: 10, scale: 2, nullable: true),
                    currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    height_barrier_metres = table.Column<double>(type: "double precision", nullable: true),
                    locked_from = table.Column<LocalTime>(type: "time", nullable: true),
                    locked_until = table.Column<LocalTime>(type: "time", nullable: true),
                    notes = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    check_checked_by = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    check_last_checked = table.Column<LocalDate>(type: "date", nullable: false),
                    check_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    check_says_who = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    floods_above_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    floods_above_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    floods_above_metres = table.Column<double>(type: "double precision", nullable: true),
                    floods_above_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_parking_areas", x => x.id);
                    table.CheckConstraint("ck_parking_areas_capacity", "capacity >= 0");
                    table.CheckConstraint("ck_parking_areas_cost", "cost >= 0 AND (cost = 0 OR currency IS NOT NULL)");
                    table.CheckConstraint("ck_parking_areas_floods_above_datum", "floods_above_datum IN ('ChartDatum', 'MeanSeaLevel', 'LowestAstronomicalTide')");
                    table.CheckConstraint("ck_parking_areas_height_barrier_metres", "height_barrier_metres BETWEEN 1 AND 6");
                    table.CheckConstraint("ck_parking_areas_latitude_degrees", "latitude_degrees BETWEEN -90 AND 90");
                    table.CheckConstraint("ck_parking_areas_locked", "(locked_from IS NULL) = (locked_until IS NULL)");
                    table.CheckConstraint("ck_parking_areas_longitude_degrees", "longitude_degrees >= -180 AND longitude_degrees < 180");
                    table.ForeignKey(
                        name: "fk_parking_areas_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "vantage_points",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    slug = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    summary = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: false),
                    latitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    longitude_degrees = table.Column<double>(type: "double precision", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    reach = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    reach_reason = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    footing = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    tripods = table.Column<int>(type: "integer", nullable: true),
                    walk_in_minutes = table.Column<double>(type: "double precision", nullable: true),
                    walk_out_minutes = table.Column<double>(type: "double precision", nullable: true),
                    minutes_to_beyond_reach = table.Column<double>(type: "double precision", nullable: true),
                    walked_in_the_dark = table.Column<bool>(type: "boolean", nullable: false),
                    eye_height_metres = table.Column<double>(type: "double precision", nullable: false),
                    is_never_cut_off = table.Column<bool>(type: "boolean", nullable: false),
                    edge = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    gust_limit_metres_per_second = table.Column<double>(type: "double precision", nullable: true),
                    skyline_text = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: true),
                    sketch = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    check_checked_by = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    check_last_checked = table.Column<LocalDate>(type: "date", nullable: false),
                    check_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    check_says_who = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    cliff_accepted_because = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    cliff_distance_metres = table.Column<double>(type: "double precision", nullable: true),
                    cliff_height_metres = table.Column<double>(type: "double precision", nullable: true),
                    dark_stance_latitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    dark_stance_longitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    dark_stance_minutes_to_stance = table.Column<double>(type: "double precision", nullable: true),
                    dark_stance_text = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    ground_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    ground_how = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    ground_measured_on = table.Column<LocalDate>(type: "date", nullable: true),
                    ground_method = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    ground_metres = table.Column<double>(type: "double precision", nullable: true),
                    ground_plus_minus_metres = table.Column<double>(type: "double precision", nullable: true),
                    ground_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    highest_usable_tide_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    highest_usable_tide_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    highest_usable_tide_metres = table.Column<double>(type: "double precision", nullable: true),
                    highest_usable_tide_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    path_cut_off_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    path_cut_off_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    path_cut_off_metres = table.Column<double>(type: "double precision", nullable: true),
                    path_cut_off_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    sea_exposed_from_degrees = table.Column<double>(type: "double precision", nullable: true),
                    sea_exposed_to_degrees = table.Column<double>(type: "double precision", nullable: true),
                    sea_highest_wave_metres = table.Column<double>(type: "double precision", nullable: true),
                    sea_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    sea_longest_period_seconds = table.Column<double>(type: "double precision", nullable: true),
                    sea_outside_because = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    watch_place_latitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    watch_place_longitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    watch_place_minutes_to_stance = table.Column<double>(type: "double precision", nullable: true),
                    watch_place_text = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_vantage_points", x => x.id);
                    table.CheckConstraint("ck_vantage_points_cut_off", "NOT (is_never_cut_off AND path_cut_off_metres IS NOT NULL)");
                    table.CheckConstraint("ck_vantage_points_edge", "edge IN ('None', 'WithinFiveMetres', 'OnIt')");
                    table.CheckConstraint("ck_vantage_points_eye_height_metres", "eye_height_metres BETWEEN 0.05 AND 10");
                    table.CheckConstraint("ck_vantage_points_footing", "footing IN ('Anyone', 'Steady', 'SureFooted', 'Scramble')");
                    table.CheckConstraint("ck_vantage_points_ground_datum", "ground_datum IN ('ChartDatum', 'MeanSeaLevel', 'LowestAstronomicalTide')");
                    table.CheckConstraint("ck_vantage_points_ground_method", "ground_method IN ('StillWaterMark', 'Levelling', 'Lidar', 'Chart')");
                    table.CheckConstraint("ck_vantage_points_ground_metres", "ground_metres BETWEEN -2 AND 1500");
                    table.CheckConstraint("ck_vantage_points_gust_limit_metres_per_second", "gust_limit_metres_per_second BETWEEN 1 AND 60");
                    table.CheckConstraint("ck_vantage_points_highest_usable_tide_datum", "highest_usable_tide_datum IN ('ChartDatum', 'MeanSeaLevel', 'LowestAstronomicalTide')");
                    table.CheckConstraint("ck_vantage_points_kind", "kind IN ('OpenGround', 'Ledge', 'Ramp', 'Beach', 'CliffTop', 'UnderCliff', 'HarbourWall', 'Pier')");
                    table.CheckConstraint("ck_vantage_points_latitude_degrees", "latitude_degrees BETWEEN -90 AND 90");
                    table.CheckConstraint("ck_vantage_points_longitude_degrees", "longitude_degrees >= -180 AND longitude_degrees < 180");
                    table.CheckConstraint("ck_vantage_points_minutes_to_beyond_reach", "minutes_to_beyond_reach BETWEEN 0 AND 1440");
                    table.CheckConstraint("ck_vantage_points_path_cut_off_datum", "path_cut_off_datum IN ('ChartDatum', 'MeanSeaLevel', 'LowestAstronomicalTide')");
                    table.CheckConstraint("ck_vantage_points_reach", "reach IN ('Unknown', 'None', 'StillWaterOnly', 'Waves')");
                    table.CheckConstraint("ck_vantage_points_reach_reason", "reach IN ('Unknown', 'Waves') OR reach_reason IS NOT NULL");
                    table.CheckConstraint("ck_vantage_points_sea_exposed_from_degrees", "sea_exposed_from_degrees >= 0 AND sea_exposed_from_degrees < 360");
                    table.CheckConstraint("ck_vantage_points_sea_exposed_to_degrees", "sea_exposed_to_degrees >= 0 AND sea_exposed_to_degrees < 360");
                    table.CheckConstraint("ck_vantage_points_slug", "slug ~ '^[a-z0-9]+(-[a-z0-9]+)*$' AND length(slug) <= 60");
                    table.CheckConstraint("ck_vantage_points_tripods", "tripods BETWEEN 1 AND 100");
                    table.CheckConstraint("ck_vantage_points_walk_in_minutes", "walk_in_minutes BETWEEN 0 AND 1440");
                    table.CheckConstraint("ck_vantage_points_walk_out_minutes", "walk_out_minutes BETWEEN 0 AND 1440");
                    table.ForeignKey(
                        name: "fk_vantage_points_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "legs",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    access_route_id = table.Column<int>(type: "integer", nullable: false),
                    order = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    notes = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true),
                    legal_status = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    distance_kilometres = table.Column<double>(type: "double precision", nullable: true),
                    minutes = table.Column<double>(type: "double precision", nullable: true),
                    climb_metres = table.Column<double>(type: "double precision", nullable: true),
                    surface = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    group_allowed = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    tripod_allowed = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    dogs = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    opens_at = table.Column<LocalTime>(type: "time", nullable: true),
                    closes_at = table.Column<LocalTime>(type: "time", nullable: true),
                    hours_text = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    line_degrees = table.Column<double[]>(type: "double precision[]", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    check_checked_by = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    check_last_checked = table.Column<LocalDate>(type: "date", nullable: false),
                    check_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    check_says_who = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    crossing_is_beach = table.Column<bool>(type: "boolean", nullable: true),
                    crossing_minutes_from_stance = table.Column<double>(type: "double precision", nullable: true),
                    crossing_sheltered_because = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    crossing_passable_below_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    crossing_passable_below_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    crossing_passable_below_metres = table.Column<double>(type: "double precision", nullable: true),
                    crossing_passable_below_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    ferry_crossing_minutes = table.Column<double>(type: "double precision", nullable: true),
                    ferry_currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    ferry_fare = table.Column<decimal>(type: "numeric(10,2)", precision: 10, scale: 2, nullable: true),
                    ferry_first_sailing = table.Column<LocalTime>(type: "time", nullable: true),
                    ferry_interval_minutes = table.Column<double>(type: "double precision", nullable: true),
                    ferry_last_check_in_minutes = table.Column<int>(type: "integer", nullable: true),
                    ferry_last_sailing = table.Column<LocalTime>(type: "time", nullable: true),
                    ferry_minutes_saved = table.Column<double>(type: "double precision", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_legs", x => x.id);
                    table.CheckConstraint("ck_legs_climb_metres", "climb_metres BETWEEN 0 AND 3000");
                    table.CheckConstraint("ck_legs_crossing_passable_below_datum", "crossing_passable_below_datum IN ('ChartDatum', 'MeanSeaLevel', 'LowestAstronomicalTide')");
                    table.CheckConstraint("ck_legs_distance_kilometres", "distance_kilometres BETWEEN 0 AND 2000");
                    table.CheckConstraint("ck_legs_dogs", "dogs IN ('Unknown', 'Yes', 'OnLead', 'No')");
                    table.CheckConstraint("ck_legs_ferry", "(kind = 'Ferry') = (ferry_crossing_minutes IS NOT NULL)");
                    table.CheckConstraint("ck_legs_group_allowed", "group_allowed IN ('Unknown', 'Yes', 'No', 'AskFirst')");
                    table.CheckConstraint("ck_legs_kind", "kind IN ('Drive', 'Ferry', 'Walk', 'Other')");
                    table.CheckConstraint("ck_legs_legal_status", "legal_status IN ('RightOfWay', 'OpenAccess', 'Permissive', 'Customary', 'Private', 'Closed', 'Unknown')");
                    table.CheckConstraint("ck_legs_line", "cardinality(line_degrees) % 2 = 0 AND cardinality(line_degrees) <> 2");
                    table.CheckConstraint("ck_legs_minutes", "minutes BETWEEN 0 AND 2880");
                    table.CheckConstraint("ck_legs_tripod_allowed", "tripod_allowed IN ('Unknown', 'Yes', 'No', 'AskFirst')");
                    table.ForeignKey(
                        name: "fk_legs_access_routes_access_route_id",
                        column: x => x.access_route_id,
                        principalTable: "access_routes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "overnight_rules",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    parking_area_id = table.Column<int>(type: "integer", nullable: true),
                    sleeper = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    standing = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    granted_by = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    check_checked_by = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    check_last_checked = table.Column<LocalDate>(type: "date", nullable: false),
                    check_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    check_says_who = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_overnight_rules", x => x.id);
                    table.CheckConstraint("ck_overnight_rules_granted_by", "standing <> 'Allowed' OR granted_by IS NOT NULL");
                    table.CheckConstraint("ck_overnight_rules_sleeper", "sleeper IN ('Vehicle', 'Motorhome', 'Tent')");
                    table.CheckConstraint("ck_overnight_rules_standing", "standing IN ('Unknown', 'Allowed', 'NoRuleFound', 'Forbidden')");
                    table.ForeignKey(
                        name: "fk_overnight_rules_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_overnight_rules_parking_area_parking_area_id",
                        column: x => x.parking_area_id,
                        principalTable: "parking_areas",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "compositions",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    vantage_point_id = table.Column<int>(type: "integer", nullable: false),
                    slug = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    summary = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: false),
                    facing_degrees = table.Column<double>(type: "double precision", nullable: false),
                    tilt_degrees = table.Column<double>(type: "double precision", nullable: false),
                    focal_length_mm = table.Column<double>(type: "double precision", nullable: false),
                    sensor_width_mm = table.Column<double>(type: "double precision", nullable: false),
                    sensor_height_mm = table.Column<double>(type: "double precision", nullable: false),
                    orientation = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    wanted = table.Column<string[]>(type: "text[]", nullable: false),
                    galaxy_from_five_degrees = table.Column<bool>(type: "boolean", nullable: false),
                    water = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    kit_notes = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    sketch = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    compass_declination_degrees = table.Column<double>(type: "double precision", nullable: true),
                    compass_read_on = table.Column<LocalDate>(type: "date", nullable: true),
                    compass_reading_degrees = table.Column<double>(type: "double precision", nullable: true),
                    ground_state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    ground_foreground_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    ground_foreground_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    ground_foreground_metres = table.Column<double>(type: "double precision", nullable: true),
                    ground_foreground_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    sea_from_degrees = table.Column<double>(type: "double precision", nullable: true),
                    sea_highest_wave_metres = table.Column<double>(type: "double precision", nullable: true),
                    sea_highest_wind_metres_per_second = table.Column<double>(type: "double precision", nullable: true),
                    sea_longest_period_seconds = table.Column<double>(type: "double precision", nullable: true),
                    sea_lowest_wave_metres = table.Column<double>(type: "double precision", nullable: true),
                    sea_shortest_period_seconds = table.Column<double>(type: "double precision", nullable: true),
                    sea_to_degrees = table.Column<double>(type: "double precision", nullable: true),
                    sea_words = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    subject_base_metres_above_mean_sea = table.Column<double>(type: "double precision", nullable: true),
                    subject_height_metres = table.Column<double>(type: "double precision", nullable: true),
                    subject_latitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    subject_longitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    subject_name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    tide_flow = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    tide_from_minutes = table.Column<int>(type: "integer", nullable: true),
                    tide_range = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    tide_range_at_least_metres = table.Column<double>(type: "double precision", nullable: true),
                    tide_to_minutes = table.Column<int>(type: "integer", nullable: true),
                    tide_turn = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    tide_highest_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    tide_highest_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    tide_highest_metres = table.Column<double>(type: "double precision", nullable: true),
                    tide_highest_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    tide_lowest_datum = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    tide_lowest_is_repeated = table.Column<bool>(type: "boolean", nullable: true),
                    tide_lowest_metres = table.Column<double>(type: "double precision", nullable: true),
                    tide_lowest_station_id = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_compositions", x => x.id);
                    table.CheckConstraint("ck_compositions_facing_degrees", "facing_degrees >= 0 AND facing_degrees < 360");
                    table.CheckConstraint("ck_compositions_focal_length_mm", "focal_length_mm BETWEEN 1 AND 3000");
                    table.CheckConstraint("ck_compositions_ground_state", "ground_state IN ('Any', 'FreshlyWashed', 'Dry')");
                    table.CheckConstraint("ck_compositions_orientation", "orientation IN ('Landscape', 'Portrait')");
                    table.CheckConstraint("ck_compositions_sensor_height_mm", "sensor_height_mm BETWEEN 1 AND 200");
                    table.CheckConstraint("ck_compositions_sensor_width_mm", "sensor_width_mm BETWEEN 1 AND 200");
                    table.CheckConstraint("ck_compositions_slug", "slug ~ '^[a-z0-9]+(-[a-z0-9]+)*$' AND length(slug) <= 60");
                    table.CheckConstraint("ck_compositions_tide", "tide_flow IS NULL OR (tide_turn IS NOT NULL) <> (tide_lowest_metres IS NOT NULL OR tide_highest_metres IS NOT NULL)");
                    table.CheckConstraint("ck_compositions_tide_flow", "tide_flow IN ('Any', 'Rising', 'Falling')");
                    table.CheckConstraint("ck_compositions_tide_range", "tide_range IN ('Any', 'Springs', 'Neaps', 'AtLeast')");
                    table.CheckConstraint("ck_compositions_tide_turn", "tide_turn IN ('LowWater', 'HighWater')");
                    table.CheckConstraint("ck_compositions_tilt_degrees", "tilt_degrees BETWEEN -80 AND 80");
                    table.CheckConstraint("ck_compositions_wanted", "cardinality(wanted) > 0 AND wanted <@ ARRAY['SunInFrame', 'SunburstOverSkyline', 'BackLight', 'SideLight', 'FrontLight', 'GoldenLight', 'TwilightGlow', 'AntiTwilightArch', 'BlueLight', 'SoftLight', 'AnyDaylight', 'FullMoonBalanced', 'ThinCrescent', 'MoonlitCoast', 'GalaxyCore', 'GalaxyBand', 'StarTrails']::text[]");
                    table.CheckConstraint("ck_compositions_water", "water IN ('Any', 'Frozen', 'SoftMovement', 'Streaks', 'FlowingFormKept', 'Smooth')");
                    table.ForeignKey(
                        name: "fk_compositions_vantage_points_vantage_point_id",
                        column: x => x.vantage_point_id,
                        principalTable: "vantage_points",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "hazard_notes",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    vantage_point_id = table.Column<int>(type: "integer", nullable: true),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    severity = table.Column<int>(type: "integer", nullable: false),
                    text = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: false),
                    place = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    latitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    longitude_degrees = table.Column<double>(type: "double precision", nullable: true),
                    from = table.Column<LocalDate>(type: "date", nullable: false),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    confirmed_on = table.Column<LocalDate>(type: "date", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_hazard_notes", x => x.id);
                    table.CheckConstraint("ck_hazard_notes_kind", "kind IN ('Waves', 'BoatWash', 'Slip', 'Fall', 'Rockfall', 'CutOff', 'SoftGround', 'ColdWater', 'Path', 'Animals', 'Traffic', 'Firing', 'Other')");
                    table.CheckConstraint("ck_hazard_notes_latitude_degrees", "latitude_degrees BETWEEN -90 AND 90");
                    table.CheckConstraint("ck_hazard_notes_longitude_degrees", "longitude_degrees >= -180 AND longitude_degrees < 180");
                    table.CheckConstraint("ck_hazard_notes_place", "(latitude_degrees IS NULL) = (longitude_degrees IS NULL)");
                    table.CheckConstraint("ck_hazard_notes_severity", "severity BETWEEN 0 AND 4");
                    table.CheckConstraint("ck_hazard_notes_state", "state IN ('Reported', 'Confirmed', 'Rejected', 'Ended')");
                    table.CheckConstraint("ck_hazard_notes_until", "until >= \"from\"");
                    table.ForeignKey(
                        name: "fk_hazard_notes_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_hazard_notes_vantage_points_vantage_point_id",
                        column: x => x.vantage_point_id,
                        principalTable: "vantage_points",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "hazard_ratings",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    vantage_point_id = table.Column<int>(type: "integer", nullable: true),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    severity = table.Column<int>(type: "integer", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    check_checked_by = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    check_last_checked = table.Column<LocalDate>(type: "date", nullable: false),
                    check_link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    check_says_who = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_hazard_ratings", x => x.id);
                    table.CheckConstraint("ck_hazard_ratings_kind", "kind IN ('Waves', 'BoatWash', 'Slip', 'Fall', 'Rockfall', 'CutOff', 'SoftGround', 'ColdWater', 'Path', 'Animals', 'Traffic', 'Firing', 'Other')");
                    table.CheckConstraint("ck_hazard_ratings_severity", "severity BETWEEN 0 AND 4");
                    table.ForeignKey(
                        name: "fk_hazard_ratings_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_hazard_ratings_vantage_points_vantage_point_id",
                        column: x => x.vantage_point_id,
                        principalTable: "vantage_points",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "closures",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    target = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    vantage_point_id = table.Column<int>(type: "integer", nullable: true),
                    leg_id = table.Column<int>(type: "integer", nullable: true),
                    parking_area_id = table.Column<int>(type: "integer", nullable: true),
                    reason = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: false),
                    closed_by = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    from = table.Column<LocalDate>(type: "date", nullable: true),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    yearly_from = table.Column<string>(type: "character varying(5)", maxLength: 5, nullable: true),
                    yearly_until = table.Column<string>(type: "character varying(5)", maxLength: 5, nullable: true),
                    link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_closures", x => x.id);
                    table.CheckConstraint("ck_closures_state", "state IN ('UnderReview', 'InForce', 'LiftAsked', 'Lifted')");
                    table.CheckConstraint("ck_closures_target", "target IN ('Location', 'VantagePoint', 'Leg', 'ParkingArea')");
                    table.CheckConstraint("ck_closures_what", "(vantage_point_id IS NOT NULL) = (target = 'VantagePoint')\nAND (leg_id IS NOT NULL) = (target = 'Leg')\nAND (parking_area_id IS NOT NULL) = (target = 'ParkingArea')");
                    table.CheckConstraint("ck_closures_when", "(yearly_from IS NULL) = (yearly_until IS NULL)\nAND (yearly_from IS NULL) = (\"from\" IS NOT NULL)\nAND (until IS NULL OR until >= \"from\")");
                    table.CheckConstraint("ck_closures_yearly", "yearly_from ~ '^[01][0-9]-[0-3][0-9]$' AND yearly_until ~ '^[01][0-9]-[0-3][0-9]$'");
                    table.ForeignKey(
                        name: "fk_closures_leg_leg_id",
                        column: x => x.leg_id,
                        principalTable: "legs",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_closures_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_closures_parking_area_parking_area_id",
                        column: x => x.parking_area_id,
                        principalTable: "parking_areas",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_closures_vantage_points_vantage_point_id",
                        column: x => x.vantage_point_id,
                        principalTable: "vantage_points",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "permission_letters",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    leg_id = table.Column<int>(type: "integer", nullable: true),
                    granted_by = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    purpose = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: false),
                    dated = table.Column<LocalDate>(type: "date", nullable: false),
                    until = table.Column<LocalDate>(type: "date", nullable: true),
                    link = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_permission_letters", x => x.id);
                    table.CheckConstraint("ck_permission_letters_until", "until >= dated");
                    table.ForeignKey(
                        name: "fk_permission_letters_legs_leg_id",
                        column: x => x.leg_id,
                        principalTable: "legs",
                        principalColumn: "id",
                        onDelete: ReferentialAction.SetNull);
                    table.ForeignKey(
                        name: "fk_permission_letters_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_access_routes_location_id_order",
                table: "access_routes",
                columns: new[] { "location_id", "order" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_closures_leg_id",
                table: "closures",
                column: "leg_id");

            migrationBuilder.CreateIndex(
                name: "ix_closures_location_id",
                table: "closures",
                column: "location_id");

            migrationBuilder.CreateIndex(
                name: "ix_closures_parking_area_id",
                table: "closures",
                column: "parking_area_id");

            migrationBuilder.CreateIndex(
                name: "ix_closures_vantage_point_id",
                table: "closures",
                column: "vantage_point_id");

            migrationBuilder.CreateIndex(
                name: "ix_compositions_vantage_point_id_slug",
                table: "compositions",
                columns: new[] { "vantage_point_id", "slug" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_country_cautions_country_code",
                table: "country_cautions",
                column: "country_code",
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_hazard_notes_location_id",
                table: "hazard_notes",
                column: "location_id");

            migrationBuilder.CreateIndex(
                name: "ix_hazard_notes_vantage_point_id",
                table: "hazard_notes",
                column: "vantage_point_id");

            migrationBuilder.CreateIndex(
                name: "ix_hazard_ratings_location_id_vantage_point_id_kind",
                table: "hazard_ratings",
                columns: new[] { "location_id", "vantage_point_id", "kind" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_hazard_ratings_vantage_point_id",
                table: "hazard_ratings",
                column: "vantage_point_id");

            migrationBuilder.CreateIndex(
                name: "ix_legs_access_route_id_order",
                table: "legs",
                columns: new[] { "access_route_id", "order" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_locations_coast_order",
                table: "locations",
                column: "coast_order");

            migrationBuilder.CreateIndex(
                name: "ix_locations_search_vector",
                table: "locations",
                column: "search_vector")
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.CreateIndex(
                name: "ix_locations_slug",
                table: "locations",
                column: "slug",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_overnight_rules_location_id_parking_area_id_sleeper",
                table: "overnight_rules",
                columns: new[] { "location_id", "parking_area_id", "sleeper" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_overnight_rules_parking_area_id",
                table: "overnight_rules",
                column: "parking_area_id");

            migrationBuilder.CreateIndex(
                name: "ix_parking_areas_location_id",
                table: "parking_areas",
                column: "location_id");

            migrationBuilder.CreateIndex(
                name: "ix_permission_letters_leg_id",
                table: "permission_letters",
                column: "leg_id");

            migrationBuilder.CreateIndex(
                name: "ix_permission_letters_location_id",
                table: "permission_letters",
                column: "location_id");

            migrationBuilder.CreateIndex(
                name: "ix_vantage_points_location_id_slug",
                table: "vantage_points",
                columns: new[] { "location_id", "slug" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) =>
            throw new System.NotSupportedException("Migrations go forward only. Restore a backup instead.");
    }
}
