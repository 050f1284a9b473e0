using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class Contributions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.AddColumn<Instant>(
                name: "decided_at",
                table: "hazard_notes",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "decided_by",
                table: "hazard_notes",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "decision_words",
                table: "hazard_notes",
                type: "character varying(400)",
                maxLength: 400,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "form_id",
                table: "hazard_notes",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Instant>(
                name: "reported_at",
                table: "hazard_notes",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "reported_by",
                table: "hazard_notes",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "form_id",
                table: "closures",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "is_lifted_single_handed",
                table: "closures",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<bool>(
                name: "is_near_miss",
                table: "closures",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<Guid>(
                name: "lift_asked_by",
                table: "closures",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "lift_reason",
                table: "closures",
                type: "character varying(400)",
                maxLength: 400,
                nullable: true);

            migrationBuilder.AddColumn<Instant>(
                name: "lifted_at",
                table: "closures",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "lifted_by",
                table: "closures",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Instant>(
                name: "made_at",
                table: "closures",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "made_by",
                table: "closures",
                type: "uuid",
                nullable: true);

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
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_near_miss_tallies", x => x.hash);
                    table.CheckConstraint("ck_near_miss_tallies_count", "count BETWEEN 0 AND 2");
                });

            migrationBuilder.CreateTable(
                name: "proposals",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    matter = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    location_id = table.Column<int>(type: "integer", nullable: true),
                    target_id = table.Column<int>(type: "integer", nullable: true),
                    proposer_id = table.Column<Guid>(type: "uuid", nullable: true),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    given = table.Column<string>(type: "jsonb", nullable: false),
                    found = table.Column<string>(type: "jsonb", nullable: false),
                    reason = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    kept_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    sent_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    question = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true),
                    answer = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true),
                    decided_by = table.Column<Guid>(type: "uuid", nullable: true),
                    decided_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    decision_words = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: true),
                    is_single_handed = table.Column<bool>(type: "boolean", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_proposals", x => x.id);
                    table.CheckConstraint("ck_proposals_applied", "state <> 'Accepted' OR target_id IS NOT NULL");
                    table.CheckConstraint("ck_proposals_decided", "state NOT IN ('Accepted', 'Declined') OR (decided_by IS NOT NULL AND decided_at IS NOT NULL)");
                    table.CheckConstraint("ck_proposals_matter", "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay')");
                    table.CheckConstraint("ck_proposals_sent", "state IN ('Draft', 'Withdrawn') OR sent_at IS NOT NULL");
                    table.CheckConstraint("ck_proposals_state", "state IN ('Draft', 'Sent', 'Asked', 'Accepted', 'Declined', 'Withdrawn')");
                    table.ForeignKey(
                        name: "fk_proposals_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "revisions",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    matter = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    target_id = table.Column<int>(type: "integer", nullable: false),
                    location_id = table.Column<int>(type: "integer", nullable: false),
                    changes = table.Column<string>(type: "jsonb", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    accepted_by = table.Column<Guid>(type: "uuid", nullable: true),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    reason = table.Column<string>(type: "character varying(600)", maxLength: 600, nullable: false),
                    proposal_id = table.Column<Guid>(type: "uuid", nullable: true),
                    is_single_handed = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_revisions", x => x.id);
                    table.CheckConstraint("ck_revisions_matter", "matter IN ('NewStance', 'Place', 'Stance', 'Picture', 'Leg', 'Parking', 'Overnight', 'Rating', 'NewPicture', 'NewParking', 'NewOvernight', 'NewWay')");
                    table.ForeignKey(
                        name: "fk_revisions_locations_location_id",
                        column: x => x.location_id,
                        principalTable: "locations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_hazard_notes_form_id",
                table: "hazard_notes",
                column: "form_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_closures_form_id",
                table: "closures",
                column: "form_id",
                unique: true);

            migrationBuilder.AddCheckConstraint(
                name: "ck_closures_near_miss_without_name",
                table: "closures",
                sql: "NOT is_near_miss OR made_by IS NULL");

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'ProposalAccepted', 'ProposalDeclined', 'ProposalAsked', 'Restored', 'HazardConfirmed', 'HazardRejected', 'HazardEnded', 'HazardReworded', 'Closed', 'ClosureConfirmed', 'LiftAsked', 'ClosureLifted', 'NewStartMade', 'NewStartUsed')");

            migrationBuilder.CreateIndex(
                name: "ix_proposals_location_id",
                table: "proposals",
                column: "location_id");

            migrationBuilder.CreateIndex(
                name: "ix_proposals_proposer_id",
                table: "proposals",
                column: "proposer_id");

            migrationBuilder.CreateIndex(
                name: "ix_proposals_state_sent_at",
                table: "proposals",
                columns: new[] { "state", "sent_at" });

            migrationBuilder.CreateIndex(
                name: "ix_revisions_location_id",
                table: "revisions",
                column: "location_id");

            migrationBuilder.CreateIndex(
                name: "ix_revisions_matter_target_id_id",
                table: "revisions",
                columns: new[] { "matter", "target_id", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_revisions_proposal_id_matter_target_id",
                table: "revisions",
                columns: new[] { "proposal_id", "matter", "target_id" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "near_miss_keys");

            migrationBuilder.DropTable(
                name: "near_miss_tallies");

            migrationBuilder.DropTable(
                name: "proposals");

            migrationBuilder.DropTable(
                name: "revisions");

            migrationBuilder.DropIndex(
                name: "ix_hazard_notes_form_id",
                table: "hazard_notes");

            migrationBuilder.DropIndex(
                name: "ix_closures_form_id",
                table: "closures");

            migrationBuilder.DropCheckConstraint(
                name: "ck_closures_near_miss_without_name",
                table: "closures");

            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.DropColumn(
                name: "decided_at",
                table: "hazard_notes");

            migrationBuilder.DropColumn(
                name: "decided_by",
                table: "hazard_notes");

            migrationBuilder.DropColumn(
                name: "decision_words",
                table: "hazard_notes");

            migrationBuilder.DropColumn(
                name: "form_id",
                table: "hazard_notes");

            migrationBuilder.DropColumn(
                name: "reported_at",
                table: "hazard_notes");

            migrationBuilder.DropColumn(
                name: "reported_by",
                table: "hazard_notes");

            migrationBuilder.DropColumn(
                name: "form_id",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "is_lifted_single_handed",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "is_near_miss",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "lift_asked_by",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "lift_reason",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "lifted_at",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "lifted_by",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "made_at",
                table: "closures");

            migrationBuilder.DropColumn(
                name: "made_by",
                table: "closures");

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'NewStartMade', 'NewStartUsed')");
        }
    }
}
