using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class ElevationAndSkylines : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<string>(
                name: "skyline_text",
                table: "vantage_points",
                type: "character varying(16000)",
                maxLength: 16000,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(4000)",
                oldMaxLength: 4000,
                oldNullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "skyline_made_on",
                table: "vantage_points",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "skyline_origin",
                table: "vantage_points",
                type: "character varying(600)",
                maxLength: 600,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "compass_model",
                table: "compositions",
                type: "character varying(20)",
                maxLength: 20,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "elevation_files",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    added_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    north_degrees = table.Column<double>(type: "double precision", nullable: false),
                    south_degrees = table.Column<double>(type: "double precision", nullable: false),
                    west_degrees = table.Column<double>(type: "double precision", nullable: false),
                    east_degrees = table.Column<double>(type: "double precision", nullable: false),
                    latitude_step_degrees = table.Column<double>(type: "double precision", nullable: false),
                    longitude_step_degrees = table.Column<double>(type: "double precision", nullable: false),
                    columns = table.Column<int>(type: "integer", nullable: false),
                    rows = table.Column<int>(type: "integer", nullable: false),
                    metres_per_unit = table.Column<double>(type: "double precision", nullable: false),
                    void_count = table.Column<int>(type: "integer", nullable: false),
                    highest_metres = table.Column<double>(type: "double precision", nullable: false),
                    packed = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_elevation_files", x => x.id);
                    table.CheckConstraint("ck_elevation_files_edges", "north_degrees > south_degrees AND east_degrees > west_degrees");
                    table.CheckConstraint("ck_elevation_files_size", "columns >= 2 AND rows >= 2 AND metres_per_unit > 0");
                });

            migrationBuilder.CreateTable(
                name: "skyline_jobs",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    vantage_point_id = table.Column<int>(type: "integer", nullable: false),
                    outside_is_sea = table.Column<bool>(type: "boolean", nullable: false),
                    asked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    percent_done = table.Column<int>(type: "integer", nullable: false),
                    outcome = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_skyline_jobs", x => x.id);
                    table.CheckConstraint("ck_skyline_jobs_outcome", "(state IN ('Done', 'Failed')) = (outcome IS NOT NULL)");
                    table.CheckConstraint("ck_skyline_jobs_percent_done", "percent_done BETWEEN 0 AND 100");
                    table.CheckConstraint("ck_skyline_jobs_state", "state IN ('Waiting', 'Running', 'Done', 'Failed')");
                    table.ForeignKey(
                        name: "fk_skyline_jobs_vantage_points_vantage_point_id",
                        column: x => x.vantage_point_id,
                        principalTable: "vantage_points",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_elevation_files_name",
                table: "elevation_files",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_skyline_jobs_open",
                table: "skyline_jobs",
                column: "vantage_point_id",
                unique: true,
                filter: "state IN ('Waiting', 'Running')");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "elevation_files");

            migrationBuilder.DropTable(
                name: "skyline_jobs");

            migrationBuilder.DropColumn(
                name: "skyline_made_on",
                table: "vantage_points");

            migrationBuilder.DropColumn(
                name: "skyline_origin",
                table: "vantage_points");

            migrationBuilder.DropColumn(
                name: "compass_model",
                table: "compositions");

            migrationBuilder.AlterColumn<string>(
                name: "skyline_text",
                table: "vantage_points",
                type: "character varying(4000)",
                maxLength: 4000,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(16000)",
                oldMaxLength: 16000,
                oldNullable: true);
        }
    }
}
