using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class GuardedContributions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // The hour at which a near miss was told leads to whoever was signed in then.
            migrationBuilder.Sql("UPDATE closures SET made_at = NULL WHERE is_near_miss");

            migrationBuilder.DropTable(
                name: "near_miss_keys");

            migrationBuilder.DropTable(
                name: "near_miss_tallies");

            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.DropCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions");

            migrationBuilder.DropCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals");

            migrationBuilder.AddColumn<byte[]>(
                name: "sent_content",
                table: "proposals",
                type: "bytea",
                maxLength: 32,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "is_near_miss",
                table: "hazard_notes",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'ProposalAccepted', 'ProposalDeclined', 'ProposalAsked', 'Restored', 'HazardConfirmed', 'HazardRejected', 'HazardEnded', 'HazardReworded', 'Closed', 'ClosureConfirmed', 'LiftAsked', 'ClosureLifted', 'NewStartMade', 'NewStartUsed', 'PhotoTakenDown', 'StationAdded', 'StationRemoved', 'ElevationStored', 'ElevationDeleted', 'SkylineDrawn', 'SkylineAsked', 'SkylineComputed')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay', 'Tide')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay', 'Tide')");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.DropCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions");

            migrationBuilder.DropCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals");

            migrationBuilder.DropColumn(
                name: "sent_content",
                table: "proposals");

            migrationBuilder.DropColumn(
                name: "is_near_miss",
                table: "hazard_notes");

            migrationBuilder.CreateTable(
                name: "near_miss_keys",
                columns: table => new
                {
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    key = table.Column<byte[]>(type: "bytea", maxLength: 32, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_near_miss_keys", x => x.day);
                });

            migrationBuilder.CreateTable(
                name: "near_miss_tallies",
                columns: table => new
                {
                    hash = table.Column<byte[]>(type: "bytea", maxLength: 32, nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_near_miss_tallies", x => x.hash);
                    table.CheckConstraint("ck_near_miss_tallies_count", "count BETWEEN 0 AND 2");
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'ProposalAccepted', 'ProposalDeclined', 'ProposalAsked', 'Restored', 'HazardConfirmed', 'HazardRejected', 'HazardEnded', 'HazardReworded', 'Closed', 'ClosureConfirmed', 'LiftAsked', 'ClosureLifted', 'NewStartMade', 'NewStartUsed', 'PhotoTakenDown')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_revisions_matter",
                table: "revisions",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay')");

            migrationBuilder.AddCheckConstraint(
                name: "ck_proposals_matter",
                table: "proposals",
                sql: "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay')");
        }
    }
}
