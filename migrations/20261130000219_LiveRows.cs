using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class LiveRows : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_hazard_notes_location_id",
                table: "hazard_notes");

            migrationBuilder.DropIndex(
                name: "ix_closures_location_id",
                table: "closures");

            migrationBuilder.CreateIndex(
                name: "ix_hazard_notes_location_id",
                table: "hazard_notes",
                column: "location_id",
                filter: "state IN ('Reported', 'Confirmed')");

            migrationBuilder.CreateIndex(
                name: "ix_hazard_notes_reported_by_reported_at",
                table: "hazard_notes",
                columns: new[] { "reported_by", "reported_at" });

            migrationBuilder.CreateIndex(
                name: "ix_closures_location_id",
                table: "closures",
                column: "location_id",
                filter: "state <> 'Lifted'");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "ix_hazard_notes_location_id",
                table: "hazard_notes");

            migrationBuilder.DropIndex(
                name: "ix_hazard_notes_reported_by_reported_at",
                table: "hazard_notes");

            migrationBuilder.DropIndex(
                name: "ix_closures_location_id",
                table: "closures");

            migrationBuilder.CreateIndex(
                name: "ix_hazard_notes_location_id",
                table: "hazard_notes",
                column: "location_id");

            migrationBuilder.CreateIndex(
                name: "ix_closures_location_id",
                table: "closures",
                column: "location_id");
        }
    }
}
