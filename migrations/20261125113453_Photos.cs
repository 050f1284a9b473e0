using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class Photos : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    member_id = table.Column<Guid>(type: "uuid", nullable: true),
                    sha256 = table.Column<byte[]>(type: "bytea", nullable: false),
                    width = table.Column<int>(type: "integer", nullable: false),
                    height = table.Column<int>(type: "integer", nullable: false),
                    kept_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    proposal_id = table.Column<Guid>(type: "uuid", nullable: true),
                    hazard_note_id = table.Column<int>(type: "integer", nullable: true),
                    vantage_point_id = table.Column<int>(type: "integer", nullable: true),
                    state = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_photos", x => x.id);
                    table.CheckConstraint("ck_photos_came_with", "(proposal_id IS NULL) <> (hazard_note_id IS NULL)");
                    table.CheckConstraint("ck_photos_sha256", "octet_length(sha256) = 32");
                    table.CheckConstraint("ck_photos_shown", "(state = 'Shown') = (vantage_point_id IS NOT NULL)");
                    table.CheckConstraint("ck_photos_size", "width BETWEEN 1 AND 2400 AND height BETWEEN 1 AND 2400");
                    table.CheckConstraint("ck_photos_state", "state IN ('Kept', 'Sent', 'Shown')");
                    table.ForeignKey(
                        name: "fk_photos_hazard_notes_hazard_note_id",
                        column: x => x.hazard_note_id,
                        principalTable: "hazard_notes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_photos_members_member_id",
                        column: x => x.member_id,
                        principalTable: "members",
                        principalColumn: "id",
                        onDelete: ReferentialAction.SetNull);
                    table.ForeignKey(
                        name: "fk_photos_proposals_proposal_id",
                        column: x => x.proposal_id,
                        principalTable: "proposals",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_photos_vantage_points_vantage_point_id",
                        column: x => x.vantage_point_id,
                        principalTable: "vantage_points",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "photo_files",
                columns: table => new
                {
                    photo_id = table.Column<Guid>(type: "uuid", nullable: false),
                    full = table.Column<byte[]>(type: "bytea", nullable: false),
                    small = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_photo_files", x => x.photo_id);
                    table.CheckConstraint("ck_photo_files_bytes", "octet_length(\"full\") > 0 AND octet_length(small) > 0");
                    table.ForeignKey(
                        name: "fk_photo_files_photos_photo_id",
                        column: x => x.photo_id,
                        principalTable: "photos",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'ProposalAccepted', 'ProposalDeclined', 'ProposalAsked', 'Restored', 'HazardConfirmed', 'HazardRejected', 'HazardEnded', 'HazardReworded', 'Closed', 'ClosureConfirmed', 'LiftAsked', 'ClosureLifted', 'NewStartMade', 'NewStartUsed', 'PhotoTakenDown')");

            migrationBuilder.CreateIndex(
                name: "ix_photos_hazard_note_id",
                table: "photos",
                column: "hazard_note_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_photos_member_id",
                table: "photos",
                column: "member_id");

            migrationBuilder.CreateIndex(
                name: "ix_photos_proposal_id_sha256",
                table: "photos",
                columns: new[] { "proposal_id", "sha256" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_photos_vantage_point_id",
                table: "photos",
                column: "vantage_point_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "photo_files");

            migrationBuilder.DropTable(
                name: "photos");

            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'ProposalAccepted', 'ProposalDeclined', 'ProposalAsked', 'Restored', 'HazardConfirmed', 'HazardRejected', 'HazardEnded', 'HazardReworded', 'Closed', 'ClosureConfirmed', 'LiftAsked', 'ClosureLifted', 'NewStartMade', 'NewStartUsed')");
        }
    }
}
