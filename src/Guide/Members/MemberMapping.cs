using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Foreshore.Guide.Members;

internal sealed class MemberMapping : IEntityTypeConfiguration<Member>
{
    public void Configure(EntityTypeBuilder<Member> member)
    {
        member.ToTable("members");
        member.Property(m => m.Id).ValueGeneratedNever();
        member.Property(m => m.Email).HasMaxLength(Member.LongestEmail);
        member.HasIndex(m => m.Email).IsUnique();
        member.Check("email", "email = lower(email) AND position('@' in email) > 1");
        member.Property(m => m.Name).HasMaxLength(Member.LongestName);
        member.EnumText(m => m.Role, "role");
        member.Check("role_of_the_club", "role <> 'Visitor'");
        member.Property(m => m.PasswordHash).HasMaxLength(200);
        member.Property(m => m.AuthenticatorKey).HasMaxLength(64);
        member.Property(m => m.Version).IsRowVersion();
        member.HasMany(m => m.RecoveryCodes).WithOne().HasForeignKey(c => c.MemberId).OnDelete(DeleteBehavior.Cascade);
        member.HasMany(m => m.Passkeys).WithOne().HasForeignKey(p => p.MemberId).OnDelete(DeleteBehavior.Cascade);
        member.HasMany<MemberSession>().WithOne().HasForeignKey(s => s.MemberId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class RecoveryCodeMapping : IEntityTypeConfiguration<RecoveryCode>
{
    public void Configure(EntityTypeBuilder<RecoveryCode> code)
    {
        code.ToTable("recovery_codes");
        code.Property(c => c.Hash).HasMaxLength(32);
    }
}

internal sealed class MemberPasskeyMapping : IEntityTypeConfiguration<MemberPasskey>
{
    public void Configure(EntityTypeBuilder<MemberPasskey> passkey)
    {
        passkey.ToTable("member_passkeys");
        passkey.Property(p => p.Id).ValueGeneratedNever();
        passkey.Property(p => p.Name).HasMaxLength(60);
        passkey.Property(p => p.CredentialId).HasMaxLength(1023);
        passkey.HasIndex(p => p.CredentialId).IsUnique();
    }
}

internal sealed class MemberSessionMapping : IEntityTypeConfiguration<MemberSession>
{
    public void Configure(EntityTypeBuilder<MemberSession> session)
    {
        session.ToTable("member_sessions");
        session.Property(s => s.Id).ValueGeneratedNever();
        session.Property(s => s.Way).HasMaxLength(80);
        session.Property(s => s.Device).HasMaxLength(80);
        session.Check("factors", "factors IN (1, 2)");
    }
}

internal sealed class InvitationMapping : IEntityTypeConfiguration<Invitation>
{
    public void Configure(EntityTypeBuilder<Invitation> invitation)
    {
        invitation.ToTable("invitations");
        invitation.Property(i => i.Id).ValueGeneratedNever();
        invitation.Property(i => i.TokenHash).HasMaxLength(32);
        invitation.HasIndex(i => i.TokenHash).IsUnique();
        invitation.EnumText(i => i.Role, "role");
        invitation.Check("role_of_the_club", "role <> 'Visitor'");
        invitation.Property(i => i.Email).HasMaxLength(Member.LongestEmail);
        invitation.Check("lasts_a_week_at_most", "expires_at > made_at AND expires_at <= made_at + interval '7 days'");
        invitation.Check("used_or_revoked", "used_at IS NULL OR revoked_at IS NULL");
        invitation.Property(i => i.Version).IsRowVersion();
    }
}

internal sealed class NewStartMapping : IEntityTypeConfiguration<NewStart>
{
    public void Configure(EntityTypeBuilder<NewStart> start)
    {
        start.ToTable("new_starts");
        start.Property(s => s.Id).ValueGeneratedNever();
        start.Property(s => s.TokenHash).HasMaxLength(32);
        start.HasIndex(s => s.TokenHash).IsUnique();
        start.Check("lasts_a_day_at_most", "expires_at > made_at AND expires_at <= made_at + interval '1 day'");
        start.Property(s => s.Version).IsRowVersion();
        start.HasOne<Member>().WithMany().HasForeignKey(s => s.MemberId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class AuditEntryMapping : IEntityTypeConfiguration<AuditEntry>
{
    public void Configure(EntityTypeBuilder<AuditEntry> entry)
    {
        entry.ToTable(AuditEntry.Table);
        entry.EnumText(e => e.Act, "act");
        entry.Property(e => e.Words).HasMaxLength(200);
        entry.HasIndex(e => e.At);
    }
}

internal sealed class SignInFailureMapping : IEntityTypeConfiguration<SignInFailure>
{
    public void Configure(EntityTypeBuilder<SignInFailure> failure)
    {
        failure.ToTable("sign_in_failures");
        failure.Property(f => f.Subject).HasMaxLength(32);
        failure.HasIndex(f => new { f.Subject, f.At });
    }
}
