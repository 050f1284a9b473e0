using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class KeysOnceAndSignInsHeldUp : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // A retried insert could leave the same key twice; the first is the one in use.
            migrationBuilder.Sql("DELETE FROM data_protection_keys later USING data_protection_keys first WHERE later.friendly_name = first.friendly_name AND later.id > first.id");

            migrationBuilder.AlterColumn<string>(
                name: "xml",
                table: "data_protection_keys",
                type: "character varying(20000)",
                maxLength: 20000,
                nullable: false,
                defaultValue: "",
                oldClrType: typeof(string),
                oldType: "character varying(20000)",
                oldMaxLength: 20000,
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "friendly_name",
                table: "data_protection_keys",
                type: "character varying(200)",
                maxLength: 200,
                nullable: false,
                defaultValue: "",
                oldClrType: typeof(string),
                oldType: "character varying(200)",
                oldMaxLength: 200,
                oldNullable: true);

            migrationBuilder.CreateIndex(
                name: "ix_data_protection_keys_friendly_name",
                table: "data_protection_keys",
                column: "friendly_name",
                unique: true);

            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'ProposalAccepted', 'ProposalDeclined', 'ProposalAsked', 'Restored', 'HazardConfirmed', 'HazardRejected', 'HazardEnded', 'HazardReworded', 'Closed', 'ClosureConfirmed', 'LiftAsked', 'ClosureLifted', 'NewStartMade', 'NewStartUsed', 'PhotoTakenDown', 'StationAdded', 'StationRemoved', 'ElevationStored', 'ElevationDeleted', 'SkylineDrawn', 'SkylineAsked', 'SkylineComputed', 'SignInHeldUp')");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries");

            migrationBuilder.AddCheckConstraint(
                name: "ck_audit_entries_act",
                table: "audit_entries",
                sql: "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'ProposalAccepted', 'ProposalDeclined', 'ProposalAsked', 'Restored', 'HazardConfirmed', 'HazardRejected', 'HazardEnded', 'HazardReworded', 'Closed', 'ClosureConfirmed', 'LiftAsked', 'ClosureLifted', 'NewStartMade', 'NewStartUsed', 'PhotoTakenDown', 'StationAdded', 'StationRemoved', 'ElevationStored', 'ElevationDeleted', 'SkylineDrawn', 'SkylineAsked', 'SkylineComputed')");

            migrationBuilder.DropIndex(
                name: "ix_data_protection_keys_friendly_name",
                table: "data_protection_keys");

            migrationBuilder.AlterColumn<string>(
                name: "xml",
                table: "data_protection_keys",
                type: "character varying(20000)",
                maxLength: 20000,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(20000)",
                oldMaxLength: 20000);

            migrationBuilder.AlterColumn<string>(
                name: "friendly_name",
                table: "data_protection_keys",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(200)",
                oldMaxLength: 200);
        }
    }
}
