using System.ComponentModel;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Outlooks;
using Foreshore.Guide.Tides;
using Foreshore.Guide.Shell;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>The read API: the same places, slugs and visibility as the pages, as JSON.</summary>
public static class ReadApi
{
    public const string Root = "/api/v1";

    public static IEndpointRouteBuilder MapReadApi(this IEndpointRouteBuilder routes)
    {
        var api = routes.MapGroup(Root);
        api.MapGet("/locations", LocationsAsync).Describe<LocationsAnswer>("Guide", "All places in coast order",
            "Places as the reader may see them: members-only ones are absent, sensitive ones stand at the centre of a fixed 1 km cell.");
        api.MapGet("/locations/{location}", LocationAsync).Describe<LocationAnswer>("Guide", "One place with all that is known of it",
            "Ways in with their legal status, parking, overnight rules, hazards, closures, emergency block, vantage points and compositions. An old slug answers 301.", 404);
        api.MapGet("/compositions/{location}/{vantage}/{composition}/season", SeasonAsync).Describe<SeasonAnswer>("Guide", "In which months and hours a composition has its light",
            "Twelve whole local months from the current one; for each the share of its days on which the wanted light holds in each clock hour; beside it, where tide or the way back limit it, what they leave. The sea is not judged.", 404);
        api.MapGet("/compositions/{location}/{vantage}/{composition}/alignments", AlignmentsAsync).Describe<AlignmentsAnswer>("Guide", "When sun or moon stands behind the subject",
            "Passages of the disc's centre within a tolerance of the line from the subject's foot to its top, for at most five years; and moons near full at dusk and dawn.", 301, 400, 404);
        api.MapGet("/weekend", WeekendAsync).Describe<WeekendAnswer>("Guide", "What suits from one dusk to the dusk two days later",
            "Nine sessions of every composition the reader may see exactly, judged by light and the way there. Where water can reach, the verdict is \"not judged\".", 400);
        api.MapGet("/almanac/day", AlmanacDayAsync).Describe<AlmanacDayAnswer>("Almanac", "The day of sun and moon at any place",
            "Sunrise, sunset, twilights, sessions, moon, Milky Way and dark windows of one local date, 1950 to 2100. No event is null, with the reason beside it.", 400);
        api.MapGet("/almanac/declination", Declination).Describe<DeclinationAnswer>("Almanac", "The compass's declination at any place",
            "By the World Magnetic Model 2025, for dates from 2025 to 2029; other dates are refused, not reckoned on.", 400);
        api.MapTides();
        routes.Map("/api/{**rest}", (HttpRequest request) => ApiProblem.Missing($"There is nothing at {request.Path}. The description is at /openapi/v1.json.")).ExcludeFromDescription();
        return routes;
    }

    private static async Task<IResult> LocationsAsync(HttpContext http, IDbContextFactory<GuideDb> database, MastheadQueries heads, IClock clock, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var coast = await db.CoastAsync(http.Reader(), Parts.Routes | Parts.Hazards, now: clock.GetCurrentInstant(), cancel: cancel);
        var head = await heads.CurrentAsync(cancel);
        return new Answer<LocationsAnswer>(new(head.DemoLine, Words.NotForNavigation,
            [.. coast.Select(place => LocationLine.Of(place, clock.GetCurrentInstant()))]));
    }

    private static async Task<IResult> LocationAsync(HttpContext http,
        [Description("The place's slug, as in the address of its page.")] string location,
        IDbContextFactory<GuideDb> database, IClock clock, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.LocationAsync(location, http.Reader(), now: clock.GetCurrentInstant(), cancel: cancel) is not { } place)
            return await MovedAsync(db, http.Reader(), m => $"{Root}/locations/{m.Location}", location, null, null, cancel);
        var words = await db.ClubSettings.AsNoTracking().Select(club => new
        {
            club.IsDemo,
            Cautions = db.CountryCautions.Where(c => c.CountryCode == place.CountryCode || c.CountryCode == null)
                .OrderBy(c => c.CountryCode == null).FirstOrDefault(),
        }).SingleOrDefaultAsync(cancel);
        return new Answer<LocationAnswer>(LocationAnswer.Of(place, clock.GetCurrentInstant(),
            words is { IsDemo: true } ? ClubSettings.DemoBanner : null, words?.Cautions));
    }

    private static async Task<IResult> SeasonAsync(HttpContext http,
        [Description("The place's slug.")] string location, [Description("The vantage point's slug.")] string vantage, [Description("The composition's slug.")] string composition,
        IDbContextFactory<GuideDb> database, MastheadQueries heads, LightCache kept, TideCurves curves, IClock clock, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var now = clock.GetCurrentInstant();
        if (await db.PictureAsync(location, vantage, composition, http.Reader(), now, cancel) is not { } view)
            return await MovedAsync(db, http.Reader(), m => $"{Root}/compositions/{m.Location}/{m.VantagePoint}/{m.Composition}/season", location, vantage, composition, cancel);
        var (use, head) = (PictureUse.Of(view.From, view.Picture, curves, now), await heads.CurrentAsync(cancel));
        return new Answer<SeasonAnswer>(SeasonAnswer.Of(view, use, head, await kept.SeasonAsync(view.Place, view.Stance, view.Picture, use, head.Hours, now, cancel)));
    }

    private static async Task<IResult> WeekendAsync(HttpRequest http,
        [Description("Local date of the first evening, for example 2026-11-27; this weekend when left out.")] string? from,
        [Description("The hardest footing: anyone, steady, surefooted or scramble.")] string? footing,
        IDbContextFactory<GuideDb> database, MastheadQueries heads, SharedSky sky, TideCurves curves, IClock clock, CancellationToken cancel)
    {
        var request = WeekendRequest.Read(http.Query);
        if (request.Faults.Count > 0)
            return ApiProblem.Refused(string.Join(" ", request.Faults.Select(fault => $"{fault.FieldId}: {fault.Words}")));
        await using var db = await database.CreateDbContextAsync(cancel);
        var (board, cautions) = await db.WeekendAsync(http.HttpContext.Reader(), request, home: null, clock.GetCurrentInstant(), sky, curves, cancel);
        return new Answer<WeekendAnswer>(WeekendAnswer.Of(board, (await heads.CurrentAsync(cancel)).DemoLine, cautions.SelectMany(one => one.Cautions.Lines)));
    }

    private static async Task<IResult> AlignmentsAsync(HttpContext http,
        [Description("The place's slug.")] string location, [Description("The vantage point's slug.")] string vantage, [Description("The composition's slug.")] string composition,
        [Description("First local date; today when left out.")] string? from,
        [Description("Last local date; a year after the first when left out, at most five.")] string? to,
        [Description("Degrees, 0.05 to 5; half a degree when left out.")] string? tolerance,
        [Description("sun or moon; both when left out.")] string? body,
        [Description("false leaves out moons while the sun stands more than 6 degrees up; true when left out.")] string? daytimeMoon,
        IDbContextFactory<GuideDb> database, LightCache kept, IClock clock, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var (place, now) = (await db.LocationAsync(location, http.Reader(), Parts.Compositions, cancel: cancel), clock.GetCurrentInstant());
        var point = place?.VantagePoints.SingleOrDefault(v => v.Slug == vantage);
        if (point?.Compositions.SingleOrDefault(c => c.Slug == composition) is not { } picture)
            return await MovedAsync(db, http.Reader(), m => $"{Root}/compositions/{m.Location}/{m.VantagePoint}/{m.Composition}/alignments", location, vantage, composition, cancel);
        if (!AlignmentsQuestion.TryRead(from, to, tolerance, body, daytimeMoon, now.InZone(place!.Zone).Date, out var question, out var fault))
            return ApiProblem.Refused(fault);
        var club = await db.ClubSettings.AsNoTracking().SingleOrDefaultAsync(cancel);
        var cautions = await db.CautionsAsync(place.CountryCode, cancel);
        return new Answer<AlignmentsAnswer>(AlignmentsAnswer.Of(place, point, picture, question.ToleranceDegrees,
            await kept.BehindAsync(place, point, picture, question, now, cancel), club, cautions));
    }

    private static async Task<IResult> AlmanacDayAsync(
        [Description("Latitude in degrees, −90 to 90, north positive.")] string? lat,
        [Description("Longitude in degrees, −180 to 180, east positive.")] string? lon,
        [Description("Local date, for example 2026-11-25; from 1950 to 2100.")] string? date,
        [Description("IANA time zone, for example America/New_York; UTC when left out.")] string? zone,
        [Description("Eye height above mean sea level in metres, 0 to 9000; without it the horizon has no dip.")] string? heightMetres,
        MastheadQueries heads, CancellationToken cancel)
    {
        if (!AlmanacQuestion.TryRead(lat, lon, date, zone, heightMetres, out var question, out var fault))
            return ApiProblem.Refused(fault);
        var head = await heads.CurrentAsync(cancel);
        // Nothing but the question goes in, apart from the notice: a copy stays right for as long as the code does.
        return new Answer<AlmanacDayAnswer>(AlmanacDayAnswer.To(question, head.DemoLine), "public, max-age=86400");
    }

    private static IResult Declination(
        [Description("Latitude in degrees, −90 to 90, north positive.")] string? lat,
        [Description("Longitude in degrees, −180 to 180, east positive.")] string? lon,
        [Description("Date, for example 2026-11-25; from 2025-01-01 to 2029-12-31.")] string? date)
    {
        if (!AlmanacQuestion.TryRead(lat, lon, date, zone: null, heightMetres: null, out var question, out var fault))
            return ApiProblem.Refused(fault);
        return Almanac.Earth.MagneticField.On(question.Date, question.Position) is { } field
            ? new Answer<DeclinationAnswer>(DeclinationAnswer.Of(question, field), "public, max-age=86400")
            : ApiProblem.Refused(Compositions.Declination.OutsideYears(question.Date));
    }

    private static async Task<IResult> MovedAsync(GuideDb db, Reader reader, Func<(string Location, string? VantagePoint, string? Composition), string> address,
        string location, string? vantage, string? composition, CancellationToken cancel) =>
        await db.MovedToAsync(reader, location, vantage, composition, cancel) is { } moved
            ? Results.Redirect(address(moved), permanent: true)
            : ApiProblem.Missing("There is no such place for you to see. /api/v1/locations lists those there are.");

    internal static void Describe<T>(this RouteHandlerBuilder endpoint, string tag, string summary, string description, params int[] problems)
    {
        endpoint.WithTags(tag).WithSummary(summary).WithDescription($"{description} {Words.NotForNavigation}").Produces<T>();
        foreach (var status in problems) endpoint.ProducesProblem(status);
    }
}
