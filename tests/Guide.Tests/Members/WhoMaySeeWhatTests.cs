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
        ["/admin/tides"] = (Open.ToAdmins, "/admin/tides"),
        ["/admin/tides/new"] = (Open.ToAdmins, "/admin/tides/new"),
        ["/admin/elevation"] = (Open.ToAdmins, "/admin/elevation"),
        ["/admin/members"] = (Open.ToAdmins, "/admin/members"),
        ["/admin/log"] = (Open.ToAdmins, "/admin/log"),
        ["/about"] = (Open.ToAll, "/about"),
        ["/sign-in"] = (Open.ToAll, "/sign-in"),
        ["/sign-in/code"] = (Open.ToAll, "/sign-in/code"),
        ["/sign-out"] = (Open.ToAll, "/sign-out"),
        ["/invitation/{token}"] = (Open.ToAll, "/invitation/made-up"),
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
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText?.TrimStart('/'))
            .Where(pattern => pattern == "/openapi/{documentName}.json" || !Path.HasExtension(pattern))
            .Where(pattern => !pattern.StartsWith("/lib/", StringComparison.Ordinal) && !pattern.StartsWith("/_", StringComparison.Ordinal))
            .Select(pattern => Constraint().Replace(pattern, "}").ToLowerInvariant()).Distinct();

        Assert.Equal(Rows.Keys.Order(), patterns.Order());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Each_answers_each_as_its_row_says(bool visitorsMayRead)
    {
        await LetVisitorsReadAsync(visitorsMayRead);
        var (reader, gone) = visitorsMayRead ? ("reader-open@example.org", "gone-open@example.org") : ("reader-shut@example.org", "gone-shut@example.org");
        using var member = new Person(guide);
        await member.JoinAsync(reader);
        Assert.Equal(HttpStatusCode.Redirect, (await member.SignInAsync(reader)).StatusCode);
        using var removed = new Person(guide);
        await removed.JoinAsync(gone);
        await removed.SignInAsync(gone);
        await using (var db = guide.Open())
        {
            (await db.Members.SingleAsync(m => m.Email == gone)).Remove(guide.Clock.GetCurrentInstant());
            await db.SaveChangesAsync();
        }

        using var visitor = new Person(guide);
        foreach (var (pattern, (to, address)) in Rows)
        {
            var isShut = to >= Open.ToMembers || (to == Open.ToReaders && !visitorsMayRead);
            foreach (var outsider in new[] { visitor, removed })
                Assert.Equal(isShut, IsShut(await outsider.GetAsync(address), pattern));
            var inside = await member.GetAsync(address);
            Assert.False(IsShut(inside, pattern), pattern);
            Assert.Equal(to > Open.ToMembers, inside.StatusCode == HttpStatusCode.Forbidden);
        }

        await LetVisitorsReadAsync(true);
    }

    [Fact]
    public async Task Members_see_the_places_of_members_and_wardens_the_sensitive_ones_exactly()
    {
        await using var db = guide.Open();
        var hidden = await db.Locations.Where(l => l.Visibility == Locations.Visibility.Members).Select(l => l.Slug).FirstAsync();
        var sensitive = await db.Locations.FirstAsync(l => l.Visibility == Locations.Visibility.Sensitive);
        var exact = FormattableString.Invariant($"{sensitive.Position.LatitudeDegrees:F4}");
        using var visitor = new Person(guide);
        using var member = new Person(guide);
        using var granted = new Person(guide);
        await member.JoinAsync("plain@example.org");
        await member.SignInAsync("plain@example.org");
        await granted.JoinAsync("granted@example.org");
        await granted.SignInAsync("granted@example.org");
        var id = await db.Members.Where(m => m.Email == "granted@example.org").Select(m => m.Id).SingleAsync();
        (await db.Locations.Include(l => l.Grants).SingleAsync(l => l.Id == sensitive.Id)).Grant(id);
        await db.SaveChangesAsync();

        Assert.Equal(HttpStatusCode.NotFound, (await visitor.GetAsync($"/coast/{hidden}")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await member.GetAsync($"/coast/{hidden}")).StatusCode);
        foreach (var address in new[] { $"/coast/{sensitive.Slug}", $"/api/v1/locations/{sensitive.Slug}" })
        {
            Assert.DoesNotContain(exact[..^1], await (await visitor.GetAsync(address)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
            Assert.DoesNotContain(exact[..^1], await (await member.GetAsync(address)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
            var seen = await granted.GetAsync(address);
            Assert.Contains(exact[..^1], await seen.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            Assert.Equal("no-store, private", seen.Headers.CacheControl!.ToString());
        }

        Assert.DoesNotContain(exact[..^1], await (await visitor.GetAsync($"/coast/{sensitive.Slug}")).Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    /// <summary>Led to sign in, or told to.</summary>
    private static bool IsShut(HttpResponseMessage answer, string pattern)
    {
        Assert.True((int)answer.StatusCode < 500 || pattern == "/error", $"{pattern}: {answer.StatusCode}");
        return answer.StatusCode == HttpStatusCode.Unauthorized
            || (answer.StatusCode == HttpStatusCode.Redirect && pattern != "/sign-in/code" && Person.Next(answer)!.StartsWith(SignInAddress.Page, StringComparison.Ordinal));
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
