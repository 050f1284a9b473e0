using Foreshore.Guide.Mail;
using Foreshore.Guide.Members;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>The proposer is told by mail where a server is set.</summary>
public sealed class TellingTests(MailGuide guide) : IClassFixture<MailGuide>
{
    [Fact]
    public async Task What_a_warden_decides_is_mailed_to_its_proposer_in_one_line_of_subject()
    {
        var club = new Club(guide);
        var (member, warden) = (await club.SomebodyAsync(Role.Member), await club.SomebodyAsync(Role.Warden));
        var typed = NewStanceTests.Typed;
        (typed["place"], typed["place-name"], typed["place-summary"], typed["place-country"], typed["place-zone"]) = (NewStanceSheet.AnotherPlace, "Cormorant Sound", "A sound", "US", "America/New_York");
        typed["name"] = "Slip end\nBcc: all@example.org";
        var id = await club.SentAsync(member, Matter.NewStance, null, typed);

        Assert.True((await club.Reviewing.DeclineAsync(warden, id, "It is private land.", default)).IsDone);

        var mail = await guide.Post.NextAsync();
        Assert.Equal(member.Email, Assert.Single(mail.To));
        Assert.Contains("The warden's words: It is private land.", mail.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(mail.Text.Split("\r\n\r\n")[0].Split("\r\n"), line => line.StartsWith("Bcc:", StringComparison.OrdinalIgnoreCase));
    }
}
