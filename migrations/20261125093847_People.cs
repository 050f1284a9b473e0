using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class People : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "audit_entries",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    act = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    about = table.Column<Guid>(type: "uuid", nullable: true),
                    words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_audit_entries", x => x.id);
                    table.CheckConstraint("ck_audit_entries_act", "act IN ('SignedIn', 'SignInRefused', 'SignedOut', 'SessionEnded', 'InvitationMade', 'InvitationRevoked', 'InvitationUsed', 'RoleChanged', 'MemberRemoved', 'MemberTakenBack', 'MemberErased', 'PasswordChanged', 'SecondStepSetUp', 'SecondStepDropped', 'RecoveryCodesMade', 'RecoveryCodeUsed', 'PasskeyAdded', 'PasskeyRemoved', 'Exported', 'VisitorsSetting', 'NewStartMade', 'NewStartUsed')");
                });

            migrationBuilder.CreateTable(
                name: "invitations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    token_hash = table.Column<byte[]>(type: "bytea", maxLength: 32, nullable: false),
                    role = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    email = table.Column<string>(type: "character varying(254)", maxLength: 254, nullable: true),
                    made_by = table.Column<Guid>(type: "uuid", nullable: true),
                    is_for_first_admin = table.Column<bool>(type: "boolean", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    revoked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_invitations", x => x.id);
                    table.CheckConstraint("ck_invitations_lasts_a_week_at_most", "expires_at > made_at AND expires_at <= made_at + interval '7 days'");
                    table.CheckConstraint("ck_invitations_role", "role IN ('Visitor', 'Member', 'Warden', 'Admin')");
                    table.CheckConstraint("ck_invitations_role_of_the_club", "role <> 'Visitor'");
                    table.CheckConstraint("ck_invitations_used_or_revoked", "used_at IS NULL OR revoked_at IS NULL");
                });

            migrationBuilder.CreateTable(
                name: "members",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    email = table.Column<string>(type: "character varying(254)", maxLength: 254, nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    role = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    password_hash = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    authenticator_key = table.Column<byte[]>(type: "bytea", maxLength: 20, nullable: true),
                    last_code_step = table.Column<long>(type: "bigint", nullable: false),
                    joined_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    removed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_members", x => x.id);
                    table.CheckConstraint("ck_members_email", "email = lower(email) AND position('@' in email) > 1");
                    table.CheckConstraint("ck_members_role", "role IN ('Visitor', 'Member', 'Warden', 'Admin')");
                    table.CheckConstraint("ck_members_role_of_the_club", "role <> 'Visitor'");
                });

            migrationBuilder.CreateTable(
                name: "sign_in_failures",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    subject = table.Column<byte[]>(type: "bytea", maxLength: 32, nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sign_in_failures", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "member_passkeys",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    member_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    credential_id = table.Column<byte[]>(type: "bytea", maxLength: 1023, nullable: false),
                    public_key = table.Column<byte[]>(type: "bytea", nullable: false),
                    attestation_object = table.Column<byte[]>(type: "bytea", nullable: false),
                    client_data_json = table.Column<byte[]>(type: "bytea", nullable: false),
                    transports = table.Column<string[]>(type: "text[]", nullable: false),
                    sign_count = table.Column<long>(type: "bigint", nullable: false),
                    is_backup_eligible = table.Column<bool>(type: "boolean", nullable: false),
                    is_backed_up = table.Column<bool>(type: "boolean", nullable: false),
                    added_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_member_passkeys", x => x.id);
                    table.ForeignKey(
                        name: "fk_member_passkeys_members_member_id",
                        column: x => x.member_id,
                        principalTable: "members",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "member_sessions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    member_id = table.Column<Guid>(type: "uuid", nullable: false),
                    factors = table.Column<int>(type: "integer", nullable: false),
                    way = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    device = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    began_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    seen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_member_sessions", x => x.id);
                    table.CheckConstraint("ck_member_sessions_factors", "factors IN (1, 2)");
                    table.ForeignKey(
                        name: "fk_member_sessions_members_member_id",
                        column: x => x.member_id,
                        principalTable: "members",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "new_starts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    token_hash = table.Column<byte[]>(type: "bytea", maxLength: 32, nullable: false),
                    member_id = table.Column<Guid>(type: "uuid", nullable: false),
                    made_by = table.Column<Guid>(type: "uuid", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_new_starts", x => x.id);
                    table.CheckConstraint("ck_new_starts_lasts_a_day_at_most", "expires_at > made_at AND expires_at <= made_at + interval '1 day'");
                    table.ForeignKey(
                        name: "fk_new_starts_members_member_id",
                        column: x => x.member_id,
                        principalTable: "members",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "recovery_codes",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    member_id = table.Column<Guid>(type: "uuid", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", maxLength: 32, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_recovery_codes", x => x.id);
                    table.ForeignKey(
                        name: "fk_recovery_codes_members_member_id",
                        column: x => x.member_id,
                        principalTable: "members",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_audit_entries_at",
                table: "audit_entries",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_invitations_token_hash",
                table: "invitations",
                column: "token_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_member_passkeys_credential_id",
                table: "member_passkeys",
                column: "credential_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_member_passkeys_member_id",
                table: "member_passkeys",
                column: "member_id");

            migrationBuilder.CreateIndex(
                name: "ix_member_sessions_member_id",
                table: "member_sessions",
                column: "member_id");

            migrationBuilder.CreateIndex(
                name: "ix_members_email",
                table: "members",
                column: "email",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_new_starts_member_id",
                table: "new_starts",
                column: "member_id");

            migrationBuilder.CreateIndex(
                name: "ix_new_starts_token_hash",
                table: "new_starts",
                column: "token_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_recovery_codes_member_id",
                table: "recovery_codes",
                column: "member_id");

            migrationBuilder.CreateIndex(
                name: "ix_sign_in_failures_subject_at",
                table: "sign_in_failures",
                columns: new[] { "subject", "at" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "audit_entries");

            migrationBuilder.DropTable(
                name: "invitations");

            migrationBuilder.DropTable(
                name: "member_passkeys");

            migrationBuilder.DropTable(
                name: "member_sessions");

            migrationBuilder.DropTable(
                name: "new_starts");

            migrationBuilder.DropTable(
                name: "recovery_codes");

            migrationBuilder.DropTable(
                name: "sign_in_failures");

            migrationBuilder.DropTable(
                name: "members");
        }
    }
}
