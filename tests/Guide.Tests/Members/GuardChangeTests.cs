using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>Whatever guards an account is changed in one session: all the others end, and the log says what was done.</summary>
public class GuardChangeTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    private const string NewPassword = "seven quiet gulls aloft";

    public static TheoryData<Act> Changes => [Act.PasswordChanged, Act.SecondStepSetUp, Act.SecondStepDropped, Act.RecoveryCodesMade, Act.PasskeyAdded, Act.PasskeyRemoved];

    [Theory]
    [MemberData(nameof(Changes))]
    public async Task Every_other_session_ends_and_it_is_written_down(Act change)
    {
        var (member, here, there) = await TwoSessionsAsync();
        var signedIn = new SignedIn(here, member.Id, member.Name, member.Email, Role.Member, Factors: 1, IsFresh: true, guide.Clock.GetCurrentInstant());
        await ChangeAsync(change, signedIn, member);

        await using var db = guide.Open();
        Assert.Equal([here], await db.MemberSessions.Where(s => s.MemberId == member.Id).Select(s => s.Id).ToListAsync());
        Assert.False(await db.MemberSessions.AnyAsync(s => s.Id == there));
        Assert.Equal(1, await db.AuditEntries.CountAsync(e => e.By == member.Id && e.Act == change));
    }

    [Fact]
    public async Task An_admin_ends_the_sessions_of_one_or_of_everybody_but_their_own()
    {
        var (first, _, _) = await TwoSessionsAsync();
        var (second, _, _) = await TwoSessionsAsync();
        var (admin, here, there) = await TwoSessionsAsync();
        var signedIn = new SignedIn(here, admin.Id, admin.Name, admin.Email, Role.Admin, Factors: 2, IsFresh: true, guide.Clock.GetCurrentInstant());
        var roster = guide.Services.GetRequiredService<Roster>();
        await Assert.ThrowsAsync<Locations.NotAcceptedException>(() => roster.EndSessionsAsync(signedIn with { IsFresh = false }, first.Id, default));

        await roster.EndSessionsAsync(signedIn, first.Id, default);
        await using var db = guide.Open();
        Assert.Equal(0, await db.MemberSessions.CountAsync(s => s.MemberId == first.Id));
        Assert.Equal(2, await db.MemberSessions.CountAsync(s => s.MemberId == second.Id));

        await roster.EndSessionsAsync(signedIn, null, default);
        Assert.Equal([here], await db.MemberSessions.Select(s => s.Id).ToListAsync());
        Assert.NotEqual(here, there);
        Assert.Equal([first.Id, null], await db.AuditEntries.Where(e => e.By == admin.Id && e.Act == Act.SessionEnded).OrderBy(e => e.Id).Select(e => e.About).ToListAsync());
    }

    /// <summary>Signing in, out, and being refused.</summary>
    [Fact]
    public async Task Ways_in_and_out_are_written_down()
    {
        using var person = new Person(guide);
        await person.JoinAsync("tess@example.org");
        await person.SignInAsync("tess@example.org", "wrong");
        await person.SignInAsync("tess@example.org");
        await person.SendAsync("/sign-out", "sign-out");

        await using var db = guide.Open();
        var tess = await db.Members.SingleAsync(m => m.Email == "tess@example.org");
        Assert.Equal([Act.InvitationUsed, Act.SignInRefused, Act.SignedIn, Act.SignedOut],
            await db.AuditEntries.Where(e => e.By == tess.Id || e.About == tess.Id).OrderBy(e => e.Id).Select(e => e.Act).ToListAsync());
    }

    private async Task ChangeAsync(Act change, SignedIn signedIn, Member member)
    {
        var (accounts, now) = (guide.Services.GetRequiredService<Accounts>(), guide.Clock.GetCurrentInstant());
        var key = OneTimeCode.NewKey();
        switch (change)
        {
            case Act.PasswordChanged:
                await accounts.ChangePasswordAsync(signedIn, Person.Password, NewPassword, "A club", default);
                break;
            case Act.SecondStepSetUp:
                Assert.True(await accounts.SetUpAuthenticatorAsync(signedIn, key, OneTimeCode.At(key, now), default));
                break;
            case Act.SecondStepDropped:
                await accounts.DropAuthenticatorAsync(signedIn, default);
                break;
            case Act.RecoveryCodesMade:
                await accounts.MakeRecoveryCodesAsync(signedIn, default);
                break;
            case Act.PasskeyAdded:
                await accounts.AddPasskeyAsync(signedIn, Made(), "phone", default);
                break;
            default:
                await using (var db = guide.Open())
                {
                    (await db.Members.Include(m => m.Passkeys).SingleAsync(m => m.Id == member.Id)).AddPasskey(MemberPasskey.Of(Made(), "phone", now));
                    await db.SaveChangesAsync();
                    await accounts.RemovePasskeyAsync(signedIn, await db.Set<MemberPasskey>().Where(p => p.MemberId == member.Id).Select(p => p.Id).SingleAsync(), default);
                }

                break;
        }
    }

    private static UserPasskeyInfo Made() => new(Guid.NewGuid().ToByteArray(), [1], GuideHost.UsualNow.ToDateTimeOffset(), 0, [], isUserVerified: true, isBackupEligible: false, isBackedUp: false, [1], [1]);

    private async Task<(Member Member, Guid Here, Guid There)> TwoSessionsAsync()
    {
        var now = guide.Clock.GetCurrentInstant();
        var member = new Member($"{Guid.NewGuid():N}@example.org", "Una", Role.Member, now);
        member.KeepPassword(guide.Services.GetRequiredService<Passwords>().Hash(member, Person.Password));
        var (here, there) = (new MemberSession(member.Id, 1, "password", "here", now), new MemberSession(member.Id, 1, "password", "there", now));
        await using var db = guide.Open();
        db.AddRange(member, here, there);
        await db.SaveChangesAsync();
        return (member, here.Id, there.Id);
    }
}
