using Foreshore.Guide.Hosting;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Xunit;

namespace Foreshore.Guide.Mail;

/// <summary>Mails as a server gets them: a small one of the test's own, on this machine.</summary>
public sealed class MailTests(MailGuide guide) : IClassFixture<MailGuide>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_invitation_with_an_address_is_sent_there_and_its_link_works()
    {
        using var ada = new Person(guide);
        await ada.JoinWithCodeAsync("ada@example.org", Role.Admin);
        var page = await Person.DocumentAsync(await ada.SendAsync("/admin/members", "invite", ("Form.Email", "new@example.org"), ("Form.Role", "Member")));
        Assert.Contains(Letters.Sent, page.Body!.TextContent, StringComparison.Ordinal);

        var mail = await guide.Post.NextAsync();
        Assert.Equal(("guide@example.org", "new@example.org"), (mail.From, Assert.Single(mail.To)));
        Assert.Contains("Auto-Submitted: auto-generated", mail.Text, StringComparison.Ordinal);
        var link = mail.Text.Split('\n').Select(line => line.Trim()).Single(line => line.StartsWith("http://localhost/invitation/", StringComparison.Ordinal));
        using var invited = new Person(guide);
        Assert.Equal("Join the club's guide", (await invited.ReadAsync(new Uri(link).AbsolutePath)).QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task A_new_start_is_sent_to_members_and_handed_over_to_wardens()
    {
        using var eve = new Person(guide);
        await eve.JoinWithCodeAsync("eve@example.org", Role.Admin);
        using var tom = new Person(guide);
        await tom.JoinAsync("tom@example.org");
        using var wes = new Person(guide);
        await wes.JoinAsync("wes@example.org", Role.Warden);
        await using var db = guide.Open();
        async Task<string> WordsAsync(string email)
        {
            var id = await db.Members.Where(m => m.Email == email).Select(m => m.Id).SingleAsync(Cancel);
            return (await Person.DocumentAsync(await eve.SendAsync($"/admin/members/{id}", "new-start"))).Body!.TextContent;
        }

        Assert.Contains("not sent by mail", await WordsAsync("wes@example.org"), StringComparison.Ordinal);
        Assert.Contains(Letters.Sent, await WordsAsync("tom@example.org"), StringComparison.Ordinal);
        var mail = await guide.Post.NextAsync();
        Assert.Equal("tom@example.org", Assert.Single(mail.To));
        Assert.Contains("http://localhost/new-start/", mail.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_is_guessed_at_is_told_and_nobody_else()
    {
        using var vic = new Person(guide);
        await vic.JoinAsync("vic@example.org");
        using var guesser = new Person(guide);
        for (var i = 0; i <= SignInLimits.MostPerAccount; i++)
        {
            await guesser.SignInAsync("vic@example.org", "wrong");
            await guesser.SignInAsync("nobody-of-that-name@example.org", "wrong");
        }

        var mail = await guide.Post.NextAsync();
        Assert.Equal("vic@example.org", Assert.Single(mail.To));
        Assert.Contains("wrong tries to sign in as you", mail.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("/sign-in", mail.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_refuses_leaves_the_link_with_the_admin()
    {
        using var una = new Person(guide);
        await una.JoinWithCodeAsync("una@example.org", Role.Admin);
        var page = await Person.DocumentAsync(await una.SendAsync("/admin/members", "invite", ("Form.Email", "refused@example.org"), ("Form.Role", "Member")));

        Assert.Contains(Letters.NotSent, page.Body!.TextContent, StringComparison.Ordinal);
        Assert.StartsWith("http", page.QuerySelector("code.link")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("new@example.org\r\nBcc: all@example.org", "Club", "words")]
    [InlineData("new@example.org", "Club\r\nBcc: all@example.org", "words")]
    [InlineData("new@example.org", "Club\nBcc: all@example.org\n\nOther words", "words")]
    [InlineData("new@example.org", "Club", "words\r\n.\r\nMAIL FROM:<x@example.org>\r\nRCPT TO:<all@example.org>")]
    public async Task No_name_or_word_becomes_a_header_or_an_address_of_its_own(string to, string subject, string body)
    {
        await using var server = new MailListener();
        var postbox = new Postbox(new("127.0.0.1", server.Port, MailKit.Security.SecureSocketOptions.None, new("Guide", "guide@example.org"), null, null),
            Microsoft.Extensions.Logging.Abstractions.NullLogger<Postbox>.Instance);
        if (!await postbox.SendAsync(new(to, subject, body), Cancel))
        {
            Assert.Empty(server.Taken);
            return;
        }

        var mail = await server.NextAsync();
        Assert.Equal("new@example.org", Assert.Single(mail.To));
        var head = mail.Text[..mail.Text.IndexOf("\r\n\r\n", StringComparison.Ordinal)];
        Assert.DoesNotContain("\r\nBcc:", head, StringComparison.OrdinalIgnoreCase);
        Assert.Empty(server.Taken);
    }

    [Theory]
    [InlineData("Mail:Security", "ssl3")]
    [InlineData("Mail:Port", "0")]
    [InlineData("Mail:Port", "many")]
    [InlineData("Mail:From", "nobody")]
    [InlineData("Site:Address", "")]
    public void A_setting_that_cannot_be_used_is_refused_in_words(string name, string value)
    {
        Dictionary<string, string?> settings = new() { ["Mail:Host"] = "mail.example.org", ["Mail:From"] = "guide@example.org", ["Site:Address"] = "https://guide.example.org", [name] = value };
        var read = new ConfigurationBuilder().AddInMemoryCollection(settings).Build();
        Assert.Contains("cannot be used", Assert.Throws<SettingException>(() => MailServer.From(read, SiteAddress.From(read))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void As_shipped_there_is_no_mail_and_given_a_host_it_is_encrypted()
    {
        var none = new ConfigurationBuilder().Build();
        Assert.Null(MailServer.From(none, SiteAddress.From(none)));
        var some = new ConfigurationBuilder().AddInMemoryCollection(new Dictionary<string, string?>
        { ["Mail:Host"] = "mail.example.org", ["Mail:From"] = "guide@example.org", ["Site:Address"] = "https://guide.example.org" }).Build();
        Assert.Equal((587, MailKit.Security.SecureSocketOptions.StartTls), MailServer.From(some, SiteAddress.From(some)) is { } server ? (server.Port, server.Security) : default);
    }
}

/// <summary>Class fixture: the site with a mail server beside it.</summary>
public sealed class MailGuide(TestCluster cluster) : GuideHost(cluster, withDemo: false)
{
    public MailListener Post { get; } = new();

    protected override IEnumerable<(string Name, string Value)> Settings =>
    [
        ("Mail:Host", "127.0.0.1"), ("Mail:Port", Post.Port.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("Mail:Security", "none"),
        ("Mail:From", "guide@example.org"), ("Site:Address", "http://localhost"),
    ];

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await Post.DisposeAsync();
        GC.SuppressFinalize(this);
    }
}
