using System.Net;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>The first admin's link, and what an admin does with people.</summary>
public sealed class RosterTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    [Fact]
    public async Task From_the_first_link_to_an_invited_member_who_is_removed()
    {
        var invitations = guide.Services.GetRequiredService<Invitations>();
        var former = (await invitations.ForFirstAdminAsync())!;
        var first = (await invitations.ForFirstAdminAsync())!;
        using var ada = new Person(guide);
        foreach (var dead in new[] { former, "made-up", first[..^1] + (first[^1] == 'A' ? 'B' : 'A') })
            Assert.Equal("This link cannot be used", (await ada.ReadAsync(Invitations.PathOf(dead))).QuerySelector("h1")!.TextContent);

        var weak = await ada.SendAsync(Invitations.PathOf(first), "join", ("Form.Email", "ada"), ("Form.Name", ""), ("Form.Password", "password"));
        Assert.Equal(HttpStatusCode.BadRequest, weak.StatusCode);
        Assert.Equal(3, (await Person.DocumentAsync(weak)).QuerySelectorAll(".error-summary li").Length);
        await ada.SendAsync(Invitations.PathOf(first), "join", ("Form.Email", "ada@example.org"), ("Form.Name", "Ada"), ("Form.Password", Person.Password));
        Assert.Null(await invitations.ForFirstAdminAsync());
        await ada.SignInAsync("ada@example.org");
        await ada.SetUpCodeAsync();

        var made = await Person.DocumentAsync(await ada.SendAsync("/admin/members", "invite", ("Form.Email", "bob@example.org"), ("Form.Role", "Member")));
        var link = new Uri(made.QuerySelector("code.link")!.TextContent).AbsolutePath;
        using var bob = new Person(guide);
        await bob.SendAsync(link, "join", ("Form.Email", "other@example.org"), ("Form.Name", "Bob"), ("Form.Password", Person.Password));
        Assert.Equal("This link cannot be used", (await bob.ReadAsync(link)).QuerySelector("h1")!.TextContent);
        Assert.Equal(HttpStatusCode.Redirect, (await bob.SignInAsync("bob@example.org")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await bob.GetAsync("/account")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await bob.GetAsync("/admin/members")).StatusCode);

        await using var db = guide.Open();
        var (bobId, adaId) = (await IdAsync(db, "bob@example.org"), await IdAsync(db, "ada@example.org"));
        Assert.Equal(HttpStatusCode.BadRequest, (await ada.SendAsync($"/admin/members/{adaId}", "belongs")).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await ada.SendAsync($"/admin/members/{adaId}", "role", ("Form.Role", "Member"))).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await ada.SendAsync($"/admin/members/{bobId}", "belongs")).StatusCode);
        Assert.Equal(SignInAddress.For("/account"), Person.Next(await bob.GetAsync("/account")));
        Assert.Contains("member removed", (await ada.ReadAsync("/admin/log")).Body!.TextContent, StringComparison.Ordinal);

        guide.Clock.Advance(MemberSession.Fresh);
        Assert.Equal(HttpStatusCode.BadRequest, (await ada.SendAsync($"/admin/members/{bobId}", "belongs")).StatusCode);
    }

    /// <summary>A link is no way to ask who belongs to the club.</summary>
    [Fact]
    public async Task An_address_that_has_an_account_gets_the_answer_of_one_that_has_none()
    {
        using var cleo = new Person(guide);
        await cleo.JoinAsync("cleo@example.org");
        using var mallory = new Person(guide);
        List<string> answers = [];
        foreach (var email in new[] { "cleo@example.org", "cley@example.org" })
        {
            var token = await guide.Services.GetRequiredService<Invitations>().PrintAsync(Role.Member);
            var answer = await mallory.SendAsync(Invitations.PathOf(token), "join", ("Form.Email", email), ("Form.Name", "M"), ("Form.Password", "another four words"));
            answers.Add($"{answer.StatusCode} {await answer.Content.ReadAsStringAsync()}".Replace(token, "", StringComparison.Ordinal));
        }

        Assert.Equal(answers[0], answers[1]);
        Assert.Equal(HttpStatusCode.BadRequest, (await mallory.SignInAsync("cleo@example.org", "another four words")).StatusCode);
    }

    [Fact]
    public async Task One_link_sent_ten_times_at_once_makes_one_account()
    {
        var invitations = guide.Services.GetRequiredService<Invitations>();
        var token = await invitations.PrintAsync(Role.Member);
        var made = await Task.WhenAll(Enumerable.Range(0, 10).Select(i => invitations.AcceptAsync(token, $"many{i}@example.org", "Many", Person.Password)));

        Assert.Single(made, one => one);
        await using var db = guide.Open();
        Assert.Equal(1, await db.Members.CountAsync(m => m.Email.StartsWith("many")));
    }

    [Fact]
    public async Task Thirty_guesses_at_once_are_five()
    {
        var limits = guide.Services.GetRequiredService<SignInLimits>();
        var waits = await Task.WhenAll(Enumerable.Range(0, 30).Select(i => limits.CountAsync(new SignInTry("crowd@example.org", $"machine {i}", "one network"), default)));

        Assert.Equal(SignInLimits.MostPerAccount, waits.Count(wait => wait is null));
        var machine = await Task.WhenAll(Enumerable.Range(0, 30).Select(i => limits.CountAsync(new SignInTry($"one{i}@example.org", "192.0.2.1", "192.0.2"), default)));
        Assert.Equal(SignInLimits.MostPerMachine, machine.Count(wait => wait is null));
    }

    [Theory]
    [InlineData("UPDATE audit_entries SET words = 'x'")]
    [InlineData("DELETE FROM audit_entries")]
    [InlineData("TRUNCATE audit_entries")]
    public async Task The_log_only_grows(string statement)
    {
        await using var connection = new NpgsqlConnection(guide.Database.AppConnection);
        await connection.OpenAsync();
#pragma warning disable CA2100 // Written above alone.
        await using var command = new NpgsqlCommand(statement, connection);
#pragma warning restore CA2100
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, (await Assert.ThrowsAsync<PostgresException>(() => command.ExecuteNonQueryAsync())).SqlState);
    }

    private static Task<Guid> IdAsync(GuideDb db, string email) => db.Members.Where(m => m.Email == email).Select(m => m.Id).SingleAsync();
}
