using System.Globalization;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Keeping;
using Foreshore.Guide.Members;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>What the page's module draws from: the sun's way today as [azimuth, apparent altitude, "HH:mm"], and where it comes up and goes down on each month's 21st.</summary>
public sealed record SkyOverSpot(IReadOnlyList<object[]> Today, IReadOnlyList<double?> Rises, IReadOnlyList<double?> Sets, string Zone);

/// <summary>
/// What follows a facing while it is turned. The module draws ruler and frame itself from one answer for the spot; only the season
/// table is asked for again. Two plain requests, no circuit: a phone that slept or lost its signal has nothing to mend.
/// </summary>
internal static class LiveLight
{
    private static readonly Duration Step = Duration.FromMinutes(4);

    public static void MapLiveLight(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/contribute/sky", [OpenTo(Role.Member)] (string? at, string? zone, SharedSky sky, IClock clock) =>
            Spot(at, zone) is var (spot, clockZone) && spot is { } place ? Results.Json(Sky(place, clockZone, sky, clock.GetCurrentInstant())) : Results.BadRequest());
        routes.MapGet("/contribute/season", [OpenTo(Role.Member)] async (HttpRequest request, SharedSky sky, ComputeTurns turns, IClock clock, CancellationToken cancel) =>
        {
            using var turn = await turns.TakeAsync(cancel);
            return Season(request.Query, sky, clock.GetCurrentInstant()) is { } season ? Results.Extensions.Season(season) : Results.BadRequest();
        });
    }

    private static SkyOverSpot Sky(Position spot, DateTimeZone zone, SharedSky shared, Instant now)
    {
        var sun = shared.For(now).Sun;
        var observer = new Observer(spot, null, Skyline.AssumedSea);
        var today = now.InZone(zone).Date;
        var start = today.AtStartOfDayInZone(zone).ToInstant();
        var end = today.PlusDays(1).AtStartOfDayInZone(zone).ToInstant();
        List<object[]> track = [];
        for (var time = start; time < end; time += Step)
        {
            var at = sun.At(time, spot);
            var seen = Refraction.Apparent(at.AltitudeDegrees);
            if (seen > -1)
                track.Add([Math.Round(at.AzimuthDegrees, 3), Math.Round(seen, 3), Shell.SiteTimes.Clock(time, zone)]);
        }
        var frame = new Frame(Bearing.FromDegrees(0), 0, new Lens(24, Sensor.FullFrame, Orientation.Landscape));
        var edges = HorizonDrawing.Of(observer, frame, null, new YearMonth(today.Year, today.Month), zone, sun).Edges.OrderBy(edge => edge.Date.Month).ToList();
        return new(track, [.. edges.Where(edge => edge.Rises).Select(edge => edge.Bearing?.Degrees)], [.. edges.Where(edge => !edge.Rises).Select(edge => edge.Bearing?.Degrees)], zone.Id);
    }

    /// <summary>The season of the picture as the form holds it; null while it cannot be read.</summary>
    private static LiveSeasonView? Season(IQueryCollection query, SharedSky shared, Instant now)
    {
        try
        {
            var answers = new Answers(query.ToDictionary(pair => pair.Key, pair => pair.Value.ToString()));
            if (Spot(answers.Text("at"), answers.Text("zone")) is not ({ } spot, var zone) || answers.Number("facing") is not (>= 0 and < 360 and var facing))
                return null;
            var wanted = answers.Several<WantedLight>("wanted");
            if (wanted.Count == 0)
                return null;
            var scene = new Scene(new Observer(spot, null, Skyline.AssumedSea), new Frame(Bearing.FromDegrees(facing), Math.Clamp(answers.Number("tilt") ?? 0, -80, 80), CompositionSheet.OfLens(answers)), wanted);
            var today = now.InZone(zone).Date;
            var table = SeasonTables.For(scene, zone, new YearMonth(today.Year, today.Month), HoursOut.Unrestricted, shared.For(now));
            return new(SeasonDrawing.Of(table), string.Create(CultureInfo.InvariantCulture, $"{facing:0}°"));
        }
        catch (AnswerException)
        {
            return null;
        }
    }

    private static (Position? Spot, DateTimeZone Zone) Spot(string? at, string? zone) =>
        (Locations.TypedPosition.Read(at).Position, DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone ?? "") ?? DateTimeZone.Utc);

    private static RazorComponentResult<LiveSeason> Season(this IResultExtensions results, LiveSeasonView view) => new(new Dictionary<string, object?> { [nameof(LiveSeason.View)] = view });
}

/// <param name="Drawing">Light alone: tide, limits and the way are judged once it is in the guide.</param>
/// <param name="FacingWords">The facing it was computed for.</param>
public sealed record LiveSeasonView(SeasonDrawing Drawing, string FacingWords);
