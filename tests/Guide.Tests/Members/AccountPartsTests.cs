using System.Text;
using Foreshore.Guide.Locations;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Members;

public class AccountPartsTests
{
    private static readonly AuthenticatorSeal Seal = new(new Database.SiteKey(new byte[32]));
    private static readonly Instant Now = Instant.FromUtc(2026, 11, 25, 12, 0);

    /// <summary>RFC 6238, appendix B, the rows of SHA-1: the secret is the ASCII figures 1 to 0 twice, eight figures are shown.</summary>
    [Theory]
    [InlineData(59, "94287082")]
    [InlineData(1111111109, "07081804")]
    [InlineData(1111111111, "14050471")]
    [InlineData(1234567890, "89005924")]
    [InlineData(2000000000, "69279037")]
    [InlineData(20000000000, "65353130")]
    public void Codes_are_those_of_the_standard(long seconds, string code) =>
        Assert.Equal(code, OneTimeCode.At(Encoding.ASCII.GetBytes("12345678901234567890"), seconds / 30, figures: 8));

    /// <summary>RFC 4648, section 10, without the padding.</summary>
    [Theory]
    [InlineData("", "")]
    [InlineData("f", "MY")]
    [InlineData("fo", "MZXQ")]
    [InlineData("foo", "MZXW6")]
    [InlineData("foob", "MZXW6YQ")]
    [InlineData("fooba", "MZXW6YTB")]
    [InlineData("foobar", "MZXW6YTBOI")]
    public void Base32_is_that_of_the_standard(string text, string encoded)
    {
        Assert.Equal(encoded, Base32.Of(Encoding.ASCII.GetBytes(text)));
        Assert.Equal(text, Encoding.ASCII.GetString(Base32.Bytes(encoded.ToLowerInvariant())!));
    }

    [Fact]
    public void A_code_holds_for_half_a_minute_either_side_and_once()
    {
        var key = OneTimeCode.NewKey();
        var ana = new Member("ana@example.org", "Ana", Role.Member, Now);
        Assert.False(ana.SpendCode(Seal, OneTimeCode.At(key, Now), Now));
        Assert.True(ana.SetUpAuthenticator(Seal, key, OneTimeCode.At(key, Now), Now));

        Assert.False(ana.SpendCode(Seal, OneTimeCode.At(key, Now), Now));
        var later = Now + Duration.FromMinutes(5);
        Assert.False(ana.SpendCode(Seal, OneTimeCode.At(key, later - Duration.FromSeconds(60)), later));
        Assert.False(ana.SpendCode(Seal, OneTimeCode.At(key, later + Duration.FromSeconds(60)), later));
        Assert.True(ana.SpendCode(Seal, OneTimeCode.At(key, later - Duration.FromSeconds(30)), later));
        Assert.True(ana.SpendCode(Seal, OneTimeCode.At(key, later), later));
        Assert.False(ana.SpendCode(Seal, OneTimeCode.At(key, later - Duration.FromSeconds(30)), later));
    }

    [Fact]
    public void A_recovery_code_works_once_however_it_is_written()
    {
        var ana = new Member("ana@example.org", "Ana", Role.Member, Now);
        var codes = ana.MakeRecoveryCodes();
        Assert.Equal(Member.RecoveryCodesGiven, codes.Distinct().Count());
        Assert.All(codes, code => Assert.Matches("^([a-z2-7]{6}-){3}[a-z2-7]{6}$", code));

        Assert.True(ana.SpendRecoveryCode(codes[3].ToUpperInvariant().Replace("-", " ", StringComparison.Ordinal)));
        Assert.False(ana.SpendRecoveryCode(codes[3]));
        Assert.False(ana.SpendRecoveryCode(""));
        ana.MakeRecoveryCodes();
        Assert.False(ana.SpendRecoveryCode(codes[4]));
    }

    [Theory]
    [InlineData("short12")]
    [InlineData("PASSWORD")]
    [InlineData("qwertyuiop")]
    [InlineData("foreshore2026")]
    [InlineData("ForeshoreForeshore")]
    [InlineData("gullcove!1")]
    [InlineData("anareed-anareed")]
    [InlineData("20261125")]
    [InlineData("aaaaaaaa")]
    [InlineData("Password1!")]
    [InlineData("letmein123")]
    [InlineData("aaaaaaaaaaaaaaaaaa")]
    [InlineData("letmein123456789")]
    [InlineData("P@ssw0rd!!!!!!!!!!")]
    [InlineData("passwordpassword")]
    [InlineData("letmeinletmeinletm")]
    [InlineData("qwertyuiopasdfgh")]
    [InlineData("nopqrstuvwxyzabcd")]
    [InlineData("12345678901234567")]
    [InlineData("ababababababababab")]
    [InlineData("seal and kelp.")]
    public void What_is_tried_first_is_no_password(string password) =>
        Assert.NotNull(Passwords.Fault(password, "Gull Cove Camera Club", "Gull Cove", "ana.reed@example.org"));

    [Theory]
    [InlineData("four grey seals asleep")]
    [InlineData("öäü ß 漢字 🌊 kelp")]
    [InlineData("        x        y")]
    [InlineData("aaaaaaab9kelpie")]
    public void Anything_else_one_can_type_is_one(string password) => Assert.Null(Passwords.Fault(password, "Gull Cove Camera Club"));

    [Fact]
    public void Long_ones_are_taken_and_the_list_is_long_enough()
    {
        Assert.Null(Passwords.Fault(string.Concat(Enumerable.Repeat("ledge and kelp, ", 16))));
        Assert.NotNull(Passwords.Fault(string.Concat(Enumerable.Repeat("ledge and kelp, ", 17))));
        // ASVS 5.0, 6.2.4: the 3,000 most used at least; here the whole list of the source.
        Assert.Equal(49_193, Passwords.CommonCount);
    }

    [Fact]
    public void Passwords_are_hashed_as_advised_and_old_hashes_made_anew()
    {
        var ana = new Member("ana@example.org", "Ana", Role.Member, Now);
        var passwords = new Passwords(Hasher(Passwords.Rounds));
        ana.KeepPassword(passwords.Hash(ana, "four grey seals"));
        // The framework's format 3: a byte, then the function (2 is HMAC-SHA-512) and the rounds, each in four bytes, high ones first.
        var kept = Convert.FromBase64String(ana.PasswordHash);
        Assert.Equal((1, 2, 220_000), (kept[0], kept[4], (kept[5] << 24) | (kept[6] << 16) | (kept[7] << 8) | kept[8]));
        Assert.Equal((true, null), passwords.Verify(ana, "four grey seals"));
        Assert.False(passwords.Verify(ana, "four grey seal").Fits);

        ana.KeepPassword(Hasher(100_000).HashPassword(ana, "four grey seals"));
        Assert.NotNull(passwords.Verify(ana, "four grey seals").NewHash);
    }

    /// <summary>Each verification costs the same rounds: what differs between addresses is not how long one waits.</summary>
    [Fact]
    public void Nobody_and_somebody_cost_one_verification_each()
    {
        var counting = new CountingHasher(Hasher(1000));
        var passwords = new Passwords(counting);
        var known = new Member("ana@example.org", "Ana", Role.Member, Now).KeepPassword(Hasher(1000).HashPassword(null!, "four grey seals"));
        foreach (var member in new[] { known, new Member("ben@example.org", "Ben", Role.Member, Now), null })
        {
            foreach (var typed in new[] { "wrong", "", null, new string('x', 100_000) })
            {
                var before = counting.Verified;
                Assert.False(passwords.Verify(member, typed).Fits);
                Assert.Equal(before + 1, counting.Verified);
            }
        }
    }

    [Fact]
    public void An_invitation_is_long_random_kept_as_a_hash_and_used_once_in_a_week()
    {
        var (invitation, token) = Invitation.Make(Role.Member, Now, Invitation.Longest);
        Assert.True(token.Length >= 43);
        Assert.DoesNotContain(token, Convert.ToBase64String(invitation.TokenHash), StringComparison.Ordinal);
        Assert.True(invitation.IsOpenAt(Now + Duration.FromDays(7) - Duration.FromSeconds(1)));
        Assert.False(invitation.IsOpenAt(Now + Duration.FromDays(7)));
        invitation.Use(Now);
        Assert.False(invitation.IsOpenAt(Now));
        Assert.Throws<NotAcceptedException>(() => invitation.Use(Now));
        Assert.Throws<NotAcceptedException>(() => invitation.Revoke(Now));
        Assert.Throws<NotAcceptedException>(() => Invitation.Make(Role.Member, Now, Duration.FromDays(8)));
        Assert.Throws<NotAcceptedException>(() => Invitation.Make(Role.Visitor, Now, Duration.FromDays(1)));
    }

    [Fact]
    public void Roles_nest_and_removal_is_undone_by_taking_back_alone()
    {
        var ana = new Member("ana@example.org", "Ana", Role.Member, Now);
        Assert.False(ana.NeedsTwoFactors);
        Assert.True(ana.GiveRole(Role.Warden).NeedsTwoFactors);
        Assert.Throws<NotAcceptedException>(() => ana.GiveRole(Role.Visitor));
        Assert.Throws<NotAcceptedException>(() => ana.TakeBack());
        Assert.Throws<NotAcceptedException>(() => ana.Remove(Now).Remove(Now));
        Assert.False(ana.TakeBack().IsRemoved);
        Assert.Throws<NotAcceptedException>(() => ana.CallThemselves("two\nlines"));
        Assert.True(new Reader(Role.Admin) is { IsAdmin: true, IsWarden: true, IsMember: true });
    }

    private static PasswordHasher<Member> Hasher(int rounds) => new(Options.Create(new PasswordHasherOptions { IterationCount = rounds }));

    private sealed class CountingHasher(IPasswordHasher<Member> inner) : IPasswordHasher<Member>
    {
        public int Verified { get; private set; }

        public string HashPassword(Member user, string password) => inner.HashPassword(user, password);

        public PasswordVerificationResult VerifyHashedPassword(Member user, string hashedPassword, string providedPassword)
        {
            Verified++;
            return inner.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }
}
