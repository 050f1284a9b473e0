using Foreshore.Guide.Database;
using Foreshore.Guide.Hosting;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Members;

public class SealTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    private static readonly Guid Ana = Guid.NewGuid();

    [Fact]
    public void A_secret_opens_with_its_key_for_its_member_and_in_no_other_way()
    {
        var (seal, secret) = (Of(1), OneTimeCode.NewKey());
        var kept = seal.Seal(secret, Ana);

        Assert.Equal(secret, seal.Open(kept, Ana));
        Assert.Null(seal.Open(kept, Guid.NewGuid()));
        Assert.Null(Of(2).Open(kept, Ana));
        Assert.Null(seal.Open(secret, Ana));
        Assert.Null(seal.Open([], Ana));
        for (var at = 0; at < kept.Length; at++)
        {
            var spoiled = (byte[])kept.Clone();
            spoiled[at] ^= 1;
            Assert.Null(seal.Open(spoiled, Ana));
        }

        Assert.NotEqual(kept, seal.Seal(secret, Ana));
    }

    /// <summary>With the database in hand: the secret stands nowhere, and what stands there computes no code.</summary>
    [Fact]
    public async Task The_database_holds_no_secret_of_an_authenticator()
    {
        using var person = new Person(guide);
        await person.JoinWithCodeAsync("quin@example.org", Role.Warden);
        await using var db = guide.Open();
        var kept = (await db.Members.AsNoTracking().SingleAsync(m => m.Email == "quin@example.org")).AuthenticatorKey!;

        Assert.False(OneTimeCode.IsKey(kept));
        Assert.NotNull(guide.Services.GetRequiredService<AuthenticatorSeal>().Open(kept, (await db.Members.SingleAsync(m => m.Email == "quin@example.org")).Id));
    }

    [Fact]
    public async Task Secrets_of_before_are_sealed_at_start_and_a_wrong_key_is_told()
    {
        var secret = OneTimeCode.NewKey();
        var member = new Member("rosa@example.org", "Rosa", Role.Member, GuideHost.UsualNow);
        await using (var db = guide.Open())
        {
            db.Add(member);
            await db.SaveChangesAsync();
        }

        await guide.RunAsOwnerAsync($"UPDATE members SET authenticator_key = '\\x{Convert.ToHexString(secret)}' WHERE id = '{member.Id}'");
        var (factory, seal) = (guide.Services.GetRequiredService<IDbContextFactory<GuideDb>>(), guide.Services.GetRequiredService<AuthenticatorSeal>());

        Assert.Null(await seal.SealAllAsync(factory));
        Assert.Null(await seal.SealAllAsync(factory));
        await using var fresh = guide.Open();
        var kept = await fresh.Members.SingleAsync(m => m.Id == member.Id);
        Assert.Equal(secret, seal.Open(kept.AuthenticatorKey!, member.Id));
        Assert.True(kept.SpendCode(seal, OneTimeCode.At(secret, GuideHost.UsualNow), GuideHost.UsualNow));
        Assert.Contains("another key", await Of(3).SealAllAsync(factory), StringComparison.Ordinal);
    }

    [Fact]
    public void The_key_is_made_once_for_the_owner_alone_and_what_is_no_key_is_refused()
    {
        var folder = Directory.CreateTempSubdirectory("foreshore-key-");
        try
        {
            var file = Path.Combine(folder.FullName, "deeper", "site.key");
            var first = From(file).For("a purpose");
            Assert.Equal(first, From(file).For("a purpose"));
            Assert.NotEqual(first, From(file).For("another"));
            if (!OperatingSystem.IsWindows())
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
            Assert.Single(Directory.GetFiles(Path.GetDirectoryName(file)!));

            File.WriteAllText(file, "no key");
            Assert.Contains("holds no key", Assert.Throws<SettingException>(() => From(file)).Message, StringComparison.Ordinal);
            Assert.Throws<SettingException>(() => From(folder.FullName));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>A clock that was ahead spent a code of next year: today's are taken all the same.</summary>
    [Fact]
    public void A_clock_that_was_ahead_spends_no_codes_of_today()
    {
        var (seal, secret) = (Of(1), OneTimeCode.NewKey());
        var (now, ahead) = (GuideHost.UsualNow, GuideHost.UsualNow + Duration.FromDays(400));
        var member = new Member("sam@example.org", "Sam", Role.Member, now);
        Assert.True(member.SetUpAuthenticator(seal, secret, OneTimeCode.At(secret, ahead), ahead));

        Assert.True(member.SpendCode(seal, OneTimeCode.At(secret, now), now));
        Assert.False(member.SpendCode(seal, OneTimeCode.At(secret, now), now));
    }

    /// <summary>A link lives as long as it says, also where it was made by a clock that was ahead.</summary>
    [Fact]
    public void A_clock_that_was_ahead_makes_no_link_of_a_year()
    {
        var (now, ahead) = (GuideHost.UsualNow, GuideHost.UsualNow + Duration.FromDays(400));

        Assert.False(Invitation.Make(Role.Member, ahead, Invitations.Usual).Invitation.IsOpenAt(now));
        Assert.False(NewStart.Make(Ana, Ana, ahead).Start.IsOpenAt(now));
        Assert.True(NewStart.Make(Ana, Ana, now).Start.IsOpenAt(now));
    }

    private static AuthenticatorSeal Of(byte number) => new(new SiteKey([.. Enumerable.Repeat(number, 32)]));

    private static SiteKey From(string file) => SiteKey.From(new ConfigurationBuilder().AddInMemoryCollection([new("Site:KeyFile", file)]).Build(), data: null);
}
