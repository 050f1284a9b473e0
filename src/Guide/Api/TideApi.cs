using System.ComponentModel;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Api;

/// <summary>Tide stations and their tide.</summary>
internal static class TideApi
{
    public static void MapTides(this IEndpointRouteBuilder api)
    {
        api.MapGet("/tides/stations", StationsAsync).Describe<StationsAnswer>("Tide", "Tide stations near a position",
            "Nearest first, with distance and what speaks against each. A station far away or behind a headland can have another tide.", 400);
        api.MapGet("/tides/{station}", HeightsAsync).Describe<TideHeightsAnswer>("Tide", "Heights of tide at a station",
            $"At even steps, at most {TideQuestion.MostHeights} heights. Times are UTC, heights are metres above the datum named in the answer. {TideWords.Disclaimer}", 400, 404);
        api.MapGet("/tides/{station}/extremes", ExtremesAsync).Describe<TideExtremesAnswer>("Tide", "High and low waters at a station",
            $"For at most {TideQuestion.MostDays} days. Times are UTC, heights are metres above the datum named in the answer. {TideWords.Disclaimer}", 400, 404);
    }

    private static async Task<IResult> StationsAsync(
        [Description("Latitude and longitude in degrees, parted by a comma, for example 44.90,-66.98.")] string? near,
        [Description("How many, 1 to 50; 10 when left out.")] string? count,
        IDbContextFactory<GuideDb> database, MastheadQueries heads, CancellationToken cancel)
    {
        if (!TideQuestion.TryReadPosition(near, out var at, out var fault) || !TideQuestion.TryReadCount(count, out var most, out fault))
            return ApiProblem.Refused(fault);
        await using var db = await database.CreateDbContextAsync(cancel);
        return new Answer<StationsAnswer>(StationsAnswer.Of(at, await db.StationsNearAsync(at, most, cancel), (await heads.CurrentAsync(cancel)).DemoLine));
    }

    private static Task<IResult> HeightsAsync(
        [Description("The station's name in addresses, for example noaa-8410140.")] string station,
        [Description("Beginning: a time with its offset, for example 2026-11-25T05:00:00Z, or a date (midnight UTC).")] string? from,
        [Description("End; a day after the beginning when left out.")] string? to,
        [Description("Minutes from one height to the next, 1 to 1440; 10 when left out.")] string? step,
        IDbContextFactory<GuideDb> database, MastheadQueries heads, CancellationToken cancel) =>
        TideAsync(station, from, to, step, hasSteps: true, database, async (tide, curve, asked) =>
            new Answer<TideHeightsAnswer>(TideHeightsAnswer.Of(tide, curve, asked, (await heads.CurrentAsync(cancel)).DemoLine)), cancel);

    private static Task<IResult> ExtremesAsync(
        [Description("The station's name in addresses, for example noaa-8410140.")] string station,
        [Description("Beginning: a time with its offset, for example 2026-11-25T05:00:00Z, or a date (midnight UTC).")] string? from,
        [Description("End; a day after the beginning when left out.")] string? to,
        IDbContextFactory<GuideDb> database, MastheadQueries heads, CancellationToken cancel) =>
        TideAsync(station, from, to, step: null, hasSteps: false, database, async (tide, curve, asked) =>
            new Answer<TideExtremesAnswer>(TideExtremesAnswer.Of(tide, curve, asked, (await heads.CurrentAsync(cancel)).DemoLine)), cancel);

    private static async Task<IResult> TideAsync(string station, string? from, string? to, string? step, bool hasSteps,
        IDbContextFactory<GuideDb> database,
        Func<PlaceTide, Almanac.Tides.TideCurve, TideQuestion, Task<IResult>> answer, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if ((await db.StationBySlugAsync(station, cancel)).Tide is not { } tide)
            return ApiProblem.Missing("There is no such station. /api/v1/tides/stations?near=lat,lon lists those near a position.");
        return TideQuestion.TryRead(from, to, step, hasSteps, tide, out var asked, out var fault)
            ? await answer(tide, TideCurves.Between(tide, asked.From, asked.To)!, asked)
            : ApiProblem.Refused(fault);
    }
}
