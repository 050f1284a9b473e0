using System.Net;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>A way back for whoever lost password or phone, and new codes for whoever did not.</summary>
public sealed class NewStartTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    private const string Other = "seven oars in the shed";

    [Fact]
    public async Task A_link_made_by_an_admin_gives_a_new_password_once_and_ends_what_was_before()
    {
        using var ada = new Person(guide);
        await ada.JoinWithCodeAsync("ada@example.org", Role.Admin);
        using var wes = new Person(guide);
        var codes = await wes.JoinWithCodeAsync("wes@example.org", Role.Warden);
        await using var db = guide.Open();
        var id = await db.Members.Where(m => m.Email == "wes@example.org").Select(m => m.Id).SingleAsync();

        var former = await MadeAsync(ada, id);
        var link = await MadeAsync(ada, id);
        using var finder = new Person(guide);
        foreach (var dead in new[] { former, NewStarts.PathOf("made-up") })
            Assert.Equal("This link cannot be used", await HeadingAsync(finder, dead));
        var weak = await finder.SendAsync(link, "new-start", ("Form.Password", "password"));
        Assert.Equal(HttpStatusCode.BadRequest, weak.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await wes.GetAsync("/account")).StatusCode);

        await finder.SendAsync(link, "new-start", ("Form.Password", Other));
        Assert.Equal("This link cannot be used", await HeadingAsync(finder, link));
        Assert.Equal(SignInAddress.For("/account"), Person.Next(await wes.GetAsync("/account")));
        Assert.Equal(HttpStatusCode.BadRequest, (await wes.SignInAsync("wes@example.org")).StatusCode);
        // No second step is left, so the way leads to setting one up, and codes of before open nothing.
        Assert.Equal(Admission.SecondStepPage, Person.Next(await wes.SignInAsync("wes@example.org", Other)));
        var anew = await db.Members.AsNoTracking().Include(m => m.RecoveryCodes).SingleAsync(m => m.Id == id);
        Assert.False(anew.HasSecondStep || anew.SpendRecoveryCode(codes[0]));

        var log = (await ada.ReadAsync($"/admin/members/{id}")).QuerySelector("main table")!.TextContent;
        Assert.Contains("new start made", log, StringComparison.Ordinal);
        Assert.Contains("new start used", log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_lasts_a_day_and_is_nothing_for_whoever_was_removed()
    {
        using var eve = new Person(guide);
        await eve.JoinWithCodeAsync("eve@example.org", Role.Admin);
        using var kim = new Person(guide);
        await kim.JoinAsync("kim@example.org");
        await using var db = guide.Open();
        var id = await db.Members.Where(m => m.Email == "kim@example.org").Select(m => m.Id).SingleAsync();
        var link = await MadeAsync(eve, id);
        await eve.SendAsync($"/admin/members/{id}", "belongs");
        Assert.Equal("This link cannot be used", await HeadingAsync(kim, link));
        Assert.Null((await eve.ReadAsync($"/admin/members/{id}")).QuerySelector("#new-start"));
        await eve.SendAsync($"/admin/members/{id}", "belongs");
        Assert.Equal("A new start for Ana Reed", await HeadingAsync(kim, link));

        guide.Clock.Advance(NewStart.Lasts);
        Assert.Equal("This link cannot be used", await HeadingAsync(kim, link));
        // A stale sign-in makes none.
        Assert.Equal(HttpStatusCode.BadRequest, (await eve.SendAsync($"/admin/members/{id}", "new-start")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await eve.GetAsync($"/admin/members/{Guid.NewGuid()}")).StatusCode);
    }

    [Fact]
    public async Task One_link_sent_ten_times_at_once_is_used_once()
    {
        using var ada = new Person(guide);
        await ada.JoinWithCodeAsync("ada2@example.org", Role.Admin);
        await using var db = guide.Open();
        var token = (await MadeAsync(ada, await db.Members.Where(m => m.Email == "ada2@example.org").Select(m => m.Id).SingleAsync())).Split('/')[^1];
        var starts = guide.Services.GetRequiredService<NewStarts>();

        var used = await Task.WhenAll(Enumerable.Range(0, 10).Select(i => starts.UseAsync(token, $"{Other} {i}", default)));

        Assert.Single(used, one => one);
    }

    [Fact]
    public async Task New_recovery_codes_take_the_place_of_the_old_ones()
    {
        using var wyn = new Person(guide);
        var old = await wyn.JoinWithCodeAsync("wyn@example.org", Role.Warden);
        var answer = await Person.DocumentAsync(await wyn.SendAsync("/account", "codes"));
        var codes = answer.QuerySelectorAll("li code").Select(code => code.TextContent).ToList();
        Assert.Equal(Member.RecoveryCodesGiven, codes.Count);

        await wyn.SignInAsync("wyn@example.org");
        Assert.Equal(HttpStatusCode.BadRequest, (await wyn.SendAsync(Admission.CodePage, "code", ("Form.Code", old[0]))).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await wyn.SendAsync(Admission.CodePage, "code", ("Form.Code", codes[0]))).StatusCode);
        Assert.Contains("9 recovery codes are left", (await wyn.ReadAsync("/account")).QuerySelector("#second-step")!.TextContent, StringComparison.Ordinal);
        // A warden keeps a second step.
        Assert.Equal(HttpStatusCode.BadRequest, (await wyn.SendAsync("/account", "authenticator")).StatusCode);
    }

    private static async Task<string> MadeAsync(Person admin, Guid member)
    {
        var page = await Person.DocumentAsync(await admin.SendAsync($"/admin/members/{member}", "new-start"));
        return new Uri(page.QuerySelector("code.link")!.TextContent).AbsolutePath;
    }

    private static async Task<string> HeadingAsync(Person person, string address) => (await person.ReadAsync(address)).QuerySelector("h1")!.TextContent;
}
