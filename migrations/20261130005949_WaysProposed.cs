using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class WaysProposed : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions");

            migrationBuilder.DropCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals");

            migrationBuilder.DropIndex(
                name: "ix_access_routes_location_id_order",
                table: "access_routes");

            migrationBuilder.AddCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay', 'Tide', 'Way', 'OwnWays')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay', 'Tide', 'Way', 'OwnWays')");

            migrationBuilder.CreateIndex(
                name: "ix_access_routes_location_id_order",
                table: "access_routes",
                columns: new[] { "location_id", "order" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions");

            migrationBuilder.DropCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals");

            migrationBuilder.DropIndex(
                name: "ix_access_routes_location_id_order",
                table: "access_routes");

            migrationBuilder.AddCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay', 'Tide')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay', 'Tide')");

            migrationBuilder.CreateIndex(
                name: "ix_access_routes_location_id_order",
                table: "access_routes",
                columns: new[] { "location_id", "order" },
                unique: true);
        }
    }
}
