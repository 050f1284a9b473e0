using System.Net;
using System.Text.RegularExpressions;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>Every address of the site against everybody who may ask; an address without a row here fails.</summary>
public sealed partial class WhoMaySeeWhatTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private enum Open { ToAll, ToReaders, ToMembers, ToWardens, ToAdmins }

    /// <summary>By the pattern: whom it is open to, and an address of that pattern.</summary>
    private static readonly Dictionary<string, (Open To, string Address)> Rows = new()
    {
        ["/"] = (Open.ToReaders, "/"),
        ["/coast/{slug}"] = (Open.ToReaders, "/coast/halfmoon-light"),
        ["/coast/{slug}/{stanceslug}"] = (Open.ToReaders, "/coast/halfmoon-light/high-edge"),
        ["/coast/{slug}/{stanceslug}/{pictureslug}"] = (Open.ToReaders, "/coast/halfmoon-light/high-edge/light-and-first-sun"),
        ["/coast/{slug}/tide"] = (Open.ToReaders, "/coast/halfmoon-light/tide"),
        ["/coast/{slug}/{stanceslug}/skyline"] = (Open.ToWardens, "/coast/halfmoon-light/high-edge/skyline"),
        ["/weekend"] = (Open.ToReaders, "/weekend"),
        ["/yours"] = (Open.ToReaders, "/yours"),
        ["/sketches/{name}"] = (Open.ToReaders, "/sketches/nothing"),
        ["/photos/{id}"] = (Open.ToReaders, "/photos/6f9619ff-8b86-d011-b42d-00cf4fc964ff"),
        ["/photos/{id}/small"] = (Open.ToReaders, "/photos/6f9619ff-8b86-d011-b42d-00cf4fc964ff/small"),
        ["/photos/{id}/take-down"] = (Open.ToMembers, "/photos/6f9619ff-8b86-d011-b42d-00cf4fc964ff/take-down"),
        ["/coastline"] = (Open.ToReaders, "/coastline?west=-68&south=44&east=-67&north=45"),
        ["/api/v1/locations"] = (Open.ToReaders, "/api/v1/locations"),
        ["/api/v1/locations/{location}"] = (Open.ToReaders, "/api/v1/locations/halfmoon-light"),
        ["/api/v1/compositions/{location}/{vantage}/{composition}/season"] = (Open.ToReaders, "/api/v1/compositions/halfmoon-light/high-edge/light-and-first-sun/season"),
        ["/api/v1/compositions/{location}/{vantage}/{composition}/alignments"] = (Open.ToReaders, "/api/v1/compositions/halfmoon-light/high-edge/light-and-first-sun/alignments"),
        ["/api/v1/tides/stations"] = (Open.ToReaders, "/api/v1/tides/stations?near=44.9,-66.98"),
        ["/api/v1/tides/{station}"] = (Open.ToReaders, "/api/v1/tides/noaa-8410140"),
        ["/api/v1/tides/{station}/extremes"] = (Open.ToReaders, "/api/v1/tides/noaa-8410140/extremes"),
        ["/api/v1/almanac/declination"] = (Open.ToReaders, "/api/v1/almanac/declination?lat=44&lon=-67&date=2026-11-25"),
        ["/api/v1/weekend"] = (Open.ToReaders, "/api/v1/weekend"),
        ["/api/v1/almanac/day"] = (Open.ToReaders, "/api/v1/almanac/day?lat=44&lon=-67&date=2026-11-25"),
        ["/api/{**rest}"] = (Open.ToReaders, "/api/nothing"),
        ["/openapi/{documentname}.json"] = (Open.ToReaders, "/openapi/v1.json"),
        ["/account"] = (Open.ToMembers, "/account"),
        ["/account/second-step"] = (Open.ToMembers, "/account/second-step"),
        ["/contribute"] = (Open.ToMembers, "/contribute"),
        ["/contribute/stance/{id}"] = (Open.ToMembers, "/contribute/stance/6f9619ff-8b86-d011-b42d-00cf4fc964ff"),
        ["/contribute/change/{kind}/{id}"] = (Open.ToMembers, "/contribute/change/stance/1"),
        ["/contribute/hazard"] = (Open.ToMembers, "/contribute/hazard"),
        ["/contribute/near-miss"] = (Open.ToMembers, "/contribute/near-miss"),
        ["/contribute/sky"] = (Open.ToMembers, "/contribute/sky?at=44.7,-67.1&zone=America/New_York"),
        ["/contribute/season"] = (Open.ToMembers, "/contribute/season?at=44.7,-67.1&facing=100&focal-length=24&sensor-width=36&sensor-height=24&wanted=GoldenLight"),
        ["/still-correct"] = (Open.ToMembers, "/still-correct"),
        ["/history/{kind}/{id}"] = (Open.ToMembers, "/history/stance/1"),
        ["/queue"] = (Open.ToWardens, "/queue"),
        ["/queue/{id}"] = (Open.ToWardens, "/queue/6f9619ff-8b86-d011-b42d-00cf4fc964ff"),
        ["/queue/hazard/{id}"] = (Open.ToWardens, "/queue/hazard/1"),
        ["/queue/closure/{id}"] = (Open.ToWardens, "/queue/closure/1"),
        ["/queue/close"] = (Open.ToWardens, "/queue/close"),
        ["/admin/tides"] = (Open.ToAdmins, "/admin/tides"),
        ["/admin/tides/new"] = (Open.ToAdmins, "/admin/tides/new"),
        ["/admin/elevation"] = (Open.ToAdmins, "/admin/elevation"),
        ["/account/erase"] = (Open.ToMembers, "/account/erase"),
        ["/account/export"] = (Open.ToMembers, "/account/export"),
        ["/admin/members/{id}"] = (Open.ToAdmins, $"/admin/members/{Guid.Empty}"),
        ["/admin/members"] = (Open.ToAdmins, "/admin/members"),
        ["/admin/log"] = (Open.ToAdmins, "/admin/log"),
        ["/about"] = (Open.ToAll, "/about"),
        ["/sign-in"] = (Open.ToAll, "/sign-in"),
        ["/sign-in/code"] = (Open.ToAll, "/sign-in/code"),
        ["/sign-out"] = (Open.ToAll, "/sign-out"),
        ["/invitation/{token}"] = (Open.ToAll, "/invitation/made-up"),
        ["/new-start/{token}"] = (Open.ToAll, "/new-start/made-up"),
        ["/theme"] = (Open.ToAll, "/theme"),
        ["/health"] = (Open.ToAll, "/health"),
        ["/error"] = (Open.ToAll, "/error"),
        ["/not-found"] = (Open.ToAll, "/not-found"),
        ["/status/{code}"] = (Open.ToAll, "/status/404"),
    };

    [Fact]
    public void Every_address_has_a_row()
    {
        var patterns = guide.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Select(Plain).Distinct()
            .Where(pattern => pattern == "/openapi/{documentname}.json" || !Path.HasExtension(pattern))
            .Where(pattern => !pattern.StartsWith("/lib/", StringComparison.Ordinal) && !pattern.StartsWith("/_", StringComparison.Ordinal));

        Assert.Equal(Rows.Keys.Order(), patterns.Order());
    }

    /// <summary>Whoever can come: by what they are at the moment they ask.</summary>
    private enum Who { Visitor, Removed, WardenOnOneFactor, Member, Warden, Admin }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Each_answers_each_as_its_row_says(bool visitorsMayRead)
    {
        await LetVisitorsReadAsync(visitorsMayRead);
        List<string> wrong = [];
        foreach (var who in Enum.GetValues<Who>())
        {
            using var browser = await BrowserOfAsync(who);
            foreach (var (pattern, (to, address)) in Rows)
            {
                foreach (var method in Methods(pattern))
                {
                    using var question = new HttpRequestMessage(method, address);
                    using var answer = await browser.SendAsync(question);
                    var (got, expected) = (Found(answer, pattern), Expected(who, to, pattern, visitorsMayRead));
                    if (got != expected)
                        wrong.Add($"{who} {method} {pattern}: {got} ({(int)answer.StatusCode}), not {expected}");
                }
            }
        }

        await LetVisitorsReadAsync(true);
        Assert.Empty(wrong);
    }

    /// <summary>Those that the address takes; all else there is method not allowed, to everybody.</summary>
    private IEnumerable<HttpMethod> Methods(string pattern) => guide.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
        .Where(endpoint => Plain(endpoint) == pattern)
        .SelectMany(endpoint => endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods is { Count: > 0 } only ? only : ["GET", "POST"])
        .Where(method => method is "GET" or "POST" or "PUT" or "PATCH" or "DELETE").Distinct().Select(method => new HttpMethod(method));

    private static string Plain(RouteEndpoint endpoint) => Constraint().Replace("/" + endpoint.RoutePattern.RawText?.TrimStart('/'), "}").ToLowerInvariant();

    private enum Outcome { Answered, LedToSignIn, ToldToSignIn, LedToSecondStep, Forbidden }

    private static Outcome Expected(Who who, Open to, string pattern, bool visitorsMayRead)
    {
        var isProgram = pattern.StartsWith("/api", StringComparison.Ordinal) || pattern.StartsWith("/openapi", StringComparison.Ordinal);
        if (who == Who.WardenOnOneFactor)
            return IsOpenOnOneFactor(pattern) ? Outcome.Answered : isProgram ? Outcome.Forbidden : Outcome.LedToSecondStep;
        if (who <= Who.Removed && (to >= Open.ToMembers || (to == Open.ToReaders && !visitorsMayRead)))
            return isProgram ? Outcome.ToldToSignIn : Outcome.LedToSignIn;
        return (to == Open.ToWardens && who < Who.Warden) || (to == Open.ToAdmins && who < Who.Admin) ? Outcome.Forbidden : Outcome.Answered;
    }

    private static bool IsOpenOnOneFactor(string pattern) =>
        pattern is "/account/second-step" or "/sign-in" or "/sign-in/code" or "/sign-out" or "/theme" or "/health" or "/error" or "/status/{code}";

    private static Outcome Found(HttpResponseMessage answer, string pattern)
    {
        Assert.True((int)answer.StatusCode < 500 || pattern == "/error", $"{pattern}: {answer.StatusCode}");
        return answer.StatusCode switch
        {
            HttpStatusCode.Unauthorized => Outcome.ToldToSignIn,
            HttpStatusCode.Forbidden => Outcome.Forbidden,
            // Without a password before it, the code's own page leads there too.
            HttpStatusCode.Redirect when pattern != "/sign-in/code" && Person.Next(answer)!.StartsWith(SignInAddress.Page, StringComparison.Ordinal) => Outcome.LedToSignIn,
            HttpStatusCode.Redirect when Person.Next(answer) == Admission.SecondStepPage => Outcome.LedToSecondStep,
            _ => Outcome.Answered,
        };
    }

    private async Task<HttpClient> BrowserOfAsync(Who who)
    {
        var browser = guide.CreateClient(new() { AllowAutoRedirect = false });
        if (who == Who.Visitor)
            return browser;

        var role = who switch { Who.Admin => Role.Admin, Who.Warden or Who.WardenOnOneFactor => Role.Warden, _ => Role.Member };
        await guide.SignInAsync(browser, role, factors: who == Who.WardenOnOneFactor ? 1 : 2, then: member =>
        {
            if (who == Who.Removed)
                member.Remove(guide.Clock.GetCurrentInstant());
        });
        return browser;
    }

    /// <summary>What is sensitive, by who asks: whoever may know sees the place itself, everybody else its square and none of its stances.</summary>
    [Fact]
    public async Task A_sensitive_place_is_exact_for_its_author_those_named_wardens_and_admins()
    {
        await using var db = guide.Open();
        var place = await db.Locations.Include(l => l.Grants).Include(l => l.VantagePoints).ThenInclude(v => v.Compositions).SingleAsync(l => l.Visibility == Locations.Visibility.Sensitive);
        var stance = place.VantagePoints.First(v => v.Compositions.Count > 0);
        var (inPlace, inApi) = ($"/coast/{place.Slug}", $"/api/v1/compositions/{place.Slug}/{stance.Slug}/{stance.Compositions[0].Slug}");
        string[] deep = [$"{inPlace}/{stance.Slug}", $"{inPlace}/{stance.Slug}/{stance.Compositions[0].Slug}", $"{inApi}/season", $"{inApi}/alignments"];
        var exact = FormattableString.Invariant($"{place.Position.LatitudeDegrees:F4}")[..^1];
        Dictionary<string, (Role Role, bool MayKnow)> people = new()
        {
            ["visitor"] = (Role.Visitor, false),
            ["member"] = (Role.Member, false),
            ["removed author"] = (Role.Member, false),
            ["author"] = (Role.Member, true),
            ["named"] = (Role.Member, true),
            ["warden"] = (Role.Warden, true),
            ["admin"] = (Role.Admin, true),
        };
        foreach (var (who, (role, mayKnow)) in people)
        {
            using var browser = guide.CreateClient(new() { AllowAutoRedirect = false });
            if (role > Role.Visitor)
            {
                var id = await guide.SignInAsync(browser, role, then: member =>
                {
                    if (who == "removed author")
                        member.Remove(guide.Clock.GetCurrentInstant());
                });
                if (who.EndsWith("author", StringComparison.Ordinal))
                    place.ShowTo(Locations.Visibility.Sensitive, id);
                if (who == "named")
                    place.Grant(id);
                await db.SaveChangesAsync();
            }

            foreach (var address in new[] { inPlace, $"{inPlace}/tide", $"/api/v1/locations/{place.Slug}", "/api/v1/locations", "/" })
            {
                var text = await (await browser.GetAsync(address)).Content.ReadAsStringAsync();
                Assert.True(mayKnow || !text.Contains(exact, StringComparison.Ordinal), $"{who} {address}");
                if (address == inPlace)
                    Assert.Equal(mayKnow, text.Contains(exact, StringComparison.Ordinal));
            }

            foreach (var address in deep)
            {
                var seen = (await browser.GetAsync(address)).StatusCode;
                Assert.True((mayKnow ? HttpStatusCode.OK : HttpStatusCode.NotFound) == seen, $"{who} {address}: {seen}");
            }
        }
    }

    [Fact]
    public async Task Places_of_members_are_absent_for_visitors_and_kept_by_no_cache()
    {
        await using var db = guide.Open();
        var hidden = await db.Locations.Where(l => l.Visibility == Locations.Visibility.Members).Select(l => l.Slug).FirstAsync();
        using var visitor = guide.CreateClient();
        using var member = guide.CreateClient();
        await guide.SignInAsync(member, Role.Member);
        foreach (var address in new[] { $"/coast/{hidden}", $"/coast/{hidden}/tide", $"/api/v1/locations/{hidden}" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await visitor.GetAsync(address)).StatusCode);
            var seen = await member.GetAsync(address);
            Assert.Equal((HttpStatusCode.OK, "no-store, private"), (seen.StatusCode, seen.Headers.CacheControl!.ToString()));
            Assert.Equal(HttpStatusCode.NotFound, (await visitor.GetAsync(address)).StatusCode);
        }

        foreach (var list in new[] { "/", "/api/v1/locations", "/weekend", "/api/v1/weekend" })
        {
            Assert.DoesNotContain(hidden, await visitor.GetStringAsync(list), StringComparison.Ordinal);
            Assert.Contains(hidden, await member.GetStringAsync(list), StringComparison.Ordinal);
        }
    }

    /// <summary>Who it is costs one question more than the page does for a visitor.</summary>
    [Fact]
    public async Task A_page_takes_six_commands_at_most_when_signed_in()
    {
        using var admin = guide.CreateClient();
        await guide.SignInAsync(admin, Role.Admin);
        await admin.GetAsync("/");
        foreach (var (pattern, (_, address)) in Rows.Where(row => !row.Key.StartsWith("/sign-out", StringComparison.Ordinal)))
        {
            guide.Commands.Reset();
            await admin.GetAsync(address);
            // What a skyline's last job came to is a question of its own.
            var most = pattern.EndsWith("/skyline", StringComparison.Ordinal) ? 7 : 6;
            Assert.True(guide.Commands.Commands.Count <= most, $"{pattern}: {string.Join("\n", guide.Commands.Commands)}");
        }
    }

    private async Task LetVisitorsReadAsync(bool may)
    {
        await using var db = guide.Open();
        (await db.ClubSettings.SingleAsync()).LetVisitorsRead(may);
        await db.SaveChangesAsync();
        guide.Services.GetRequiredService<Shell.MastheadQueries>().Forget();
    }

    [GeneratedRegex(@":[a-z]+\}")]
    private static partial Regex Constraint();
}
