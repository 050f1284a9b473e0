using System.Net;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>Signing in through the real pages, with the clock held.</summary>
public sealed class SignInTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private readonly DemoGuideSite guide = AMinuteLater(site);

    [Fact]
    public async Task Somebody_invited_signs_in_comes_back_and_signs_out()
    {
        using var ana = new Person(guide);
        await ana.JoinAsync("Ana@Example.org");

        var answer = await ana.SignInAsync(" ana@example.org ", back: "/weekend");
        Assert.Equal((HttpStatusCode.Redirect, "/weekend"), (answer.StatusCode, Person.Next(answer)));
        var page = await ana.GetAsync("/about");
        Assert.Contains("no-store", page.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        Assert.True(page.Headers.CacheControl.Private);

        Assert.Equal(HttpStatusCode.Redirect, (await ana.SendAsync("/sign-out", "sign-out")).StatusCode);
        Assert.False(await IsInAsync(ana));
        await using var db = guide.Open();
        Assert.False(await db.MemberSessions.Join(db.Members.Where(m => m.Email == "ana@example.org"), s => s.MemberId, m => m.Id, (s, _) => s).AnyAsync());
    }

    [Fact]
    public async Task A_wrong_password_and_an_unknown_address_get_the_same_answer()
    {
        using var ben = new Person(guide);
        await ben.JoinAsync("ben@example.org");

        var known = await ben.SignInAsync("ben@example.org", "not the password");
        var unknown = await ben.SignInAsync("bex@example.org", "not the password");

        Assert.Equal(HttpStatusCode.BadRequest, known.StatusCode);
        Assert.Equal(known.StatusCode, unknown.StatusCode);
        Assert.Equal(await WordsAsync(known), await WordsAsync(unknown));
    }

    [Theory]
    [InlineData("cat@example.org", true)]
    [InlineData("nobody@example.org", false)]
    public async Task After_five_wrong_tries_one_waits_whoever_it_is(string email, bool exists)
    {
        using var person = new Person(guide);
        if (exists)
            await person.JoinAsync(email);
        for (var i = 0; i < SignInLimits.MostPerAccount; i++)
            Assert.Equal(HttpStatusCode.BadRequest, (await person.SignInAsync(email, $"wrong {i}")).StatusCode);

        var refused = await person.SignInAsync(email);
        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        Assert.Equal(SignInLimits.AccountWindow.ToTimeSpan(), refused.Headers.RetryAfter!.Delta);

        guide.Clock.Advance(SignInLimits.AccountWindow);
        Assert.Equal(exists ? HttpStatusCode.Redirect : HttpStatusCode.BadRequest, (await person.SignInAsync(email)).StatusCode);
    }

    [Theory]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("https:elsewhere.example")]
    [InlineData("https://elsewhere.example/")]
    public async Task One_is_never_led_to_another_site(string back)
    {
        using var person = new Person(guide);
        var email = $"way{back.Length}@example.org";
        await person.JoinAsync(email);

        Assert.Equal("/", Person.Next(await person.SignInAsync(email, back: back)));
    }

    [Fact]
    public async Task A_session_ends_after_two_idle_weeks_and_after_ninety_days()
    {
        using var eva = new Person(guide);
        await eva.JoinAsync("eva@example.org");
        await eva.SignInAsync("eva@example.org");
        for (var day = 0; day < 84; day += 12)
        {
            Assert.True(await IsInAsync(eva));
            guide.Clock.Advance(Duration.FromDays(12));
        }

        Assert.True(await IsInAsync(eva));
        guide.Clock.Advance(Duration.FromDays(7));
        Assert.False(await IsInAsync(eva));

        await eva.SignInAsync("eva@example.org");
        guide.Clock.Advance(Duration.FromDays(15));
        Assert.False(await IsInAsync(eva));
    }

    [Fact]
    public async Task Whoever_is_removed_is_out_at_the_next_request_and_cannot_come_back()
    {
        using var flo = new Person(guide);
        await flo.JoinAsync("flo@example.org");
        await flo.SignInAsync("flo@example.org");
        Assert.True(await IsInAsync(flo));

        await using (var db = guide.Open())
        {
            (await db.Members.SingleAsync(m => m.Email == "flo@example.org")).Remove(guide.Clock.GetCurrentInstant());
            await db.SaveChangesAsync();
        }

        Assert.False(await IsInAsync(flo));
        Assert.Equal(HttpStatusCode.BadRequest, (await flo.SignInAsync("flo@example.org")).StatusCode);
    }

    [Fact]
    public async Task A_warden_is_led_to_the_second_step_and_nowhere_else_then_signs_in_with_it()
    {
        using var gil = new Person(guide);
        await gil.JoinAsync("gil@example.org", Role.Warden);
        Assert.Equal(Admission.SecondStepPage, Person.Next(await gil.SignInAsync("gil@example.org")));
        foreach (var elsewhere in new[] { "/", "/weekend", "/about" })
            Assert.Equal(Admission.SecondStepPage, Person.Next(await gil.GetAsync(elsewhere)));
        Assert.Equal(HttpStatusCode.Forbidden, (await gil.GetAsync("/api/v1/locations")).StatusCode);

        var key = Base32.Bytes((await gil.ReadAsync(Admission.SecondStepPage)).QuerySelector("input[name='Form.Key']")!.GetAttribute("value"))!;
        var wrong = await gil.SendAsync(Admission.SecondStepPage, "authenticator", ("Form.Key", Base32.Of(key)), ("Form.Code", "000000"));
        Assert.Equal(HttpStatusCode.BadRequest, wrong.StatusCode);
        var set = await gil.SendAsync(Admission.SecondStepPage, "authenticator", ("Form.Key", Base32.Of(key)), ("Form.Code", OneTimeCode.At(key, guide.Clock.GetCurrentInstant())));
        var codes = (await Person.DocumentAsync(set)).QuerySelectorAll("li code").Select(code => code.TextContent).ToList();
        Assert.Equal(Member.RecoveryCodesGiven, codes.Count);
        Assert.Equal(HttpStatusCode.OK, (await gil.GetAsync("/weekend")).StatusCode);

        guide.Clock.Advance(Duration.FromMinutes(1));
        using var again = new Person(guide);
        Assert.StartsWith(Admission.CodePage, Person.Next(await again.SignInAsync("gil@example.org"))!, StringComparison.Ordinal);
        Assert.False(await IsInAsync(again));
        var code = OneTimeCode.At(key, guide.Clock.GetCurrentInstant());
        Assert.Equal(HttpStatusCode.Redirect, (await again.SendAsync(Admission.CodePage, "code", ("Form.Code", code))).StatusCode);
        Assert.True(await IsInAsync(again));

        using var third = new Person(guide);
        await third.SignInAsync("gil@example.org");
        Assert.Equal(HttpStatusCode.BadRequest, (await third.SendAsync(Admission.CodePage, "code", ("Form.Code", code))).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await third.SendAsync(Admission.CodePage, "code", ("Form.Code", codes[0].ToUpperInvariant()))).StatusCode);
        using var fourth = new Person(guide);
        await fourth.SignInAsync("gil@example.org");
        Assert.Equal(HttpStatusCode.BadRequest, (await fourth.SendAsync(Admission.CodePage, "code", ("Form.Code", codes[0]))).StatusCode);
    }

    [Fact]
    public async Task Signing_in_again_begins_another_session_in_place_of_the_one_this_browser_had()
    {
        using var hal = new Person(guide);
        await hal.JoinAsync("hal@example.org");
        List<Guid> seen = [];
        for (var i = 0; i < 2; i++)
        {
            await hal.SignInAsync("hal@example.org");
            await using var db = guide.Open();
            seen.Add(await db.MemberSessions.Join(db.Members.Where(m => m.Email == "hal@example.org"), s => s.MemberId, m => m.Id, (s, _) => s.Id).SingleAsync());
        }

        Assert.Equal(2, seen.Distinct().Count());
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        using var person = new Person(guide);
        await person.JoinAsync("tok@example.org");
        Assert.Equal(HttpStatusCode.BadRequest, (await person.SendAsync("/sign-in", "sign-in", ("Form.Email", "tok@example.org"), ("Form.Password", Person.Password), ("__RequestVerificationToken", ""))).StatusCode);
        Assert.False(await IsInAsync(person));
    }

    private static async Task<bool> IsInAsync(Person person) => (await person.GetAsync("/about")).Headers.CacheControl is { Private: true };

    /// <summary>The page as read, without seals and tokens, which differ each time by design.</summary>
    private static async Task<string> WordsAsync(HttpResponseMessage answer)
    {
        var page = await Person.DocumentAsync(answer);
        foreach (var input in page.QuerySelectorAll("input"))
            input.RemoveAttribute("value");
        foreach (var form in page.QuerySelectorAll("form"))
            form.RemoveAttribute("data-options");
        return page.DocumentElement.OuterHtml;
    }

    /// <summary>The clock stands still, and all tests come from one machine: each has its tries of a minute for itself.</summary>
    private static DemoGuideSite AMinuteLater(DemoGuideSite site)
    {
        site.Clock.Advance(SignInLimits.MachineWindow);
        return site;
    }
}
