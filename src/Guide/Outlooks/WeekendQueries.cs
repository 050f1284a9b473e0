using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>The board, with the cautions of the countries it shows.</summary>
internal sealed record WeekendView(WeekendBoard Board, IReadOnlyList<(string? CountryCode, Shell.Cautions Cautions)> Cautions);

internal static class WeekendQueries
{
    /// <summary>Loads the coast once and judges every composition for the weekend asked for.</summary>
    public static async Task<WeekendView> WeekendAsync(
        this GuideDb db, Reader reader, WeekendRequest request, Position? home, Instant now, SharedSky shared, TideCurves curves, CancellationToken cancel = default)
    {
        var places = await db.CoastAsync(reader, Parts.Stay | Parts.Routes | Parts.Compositions | Parts.Hazards, now: now, cancel: cancel);
        var zone = places.Count > 0 ? places[0].Zone : DateTimeZone.Utc;
        var current = Weekend.Default(now, zone, date => DuskEnd(places, date, shared.For(now).Sun));
        var first = request.From ?? current;
        // Blurred places are not judged, and their stations not asked for.
        var judged = places.Where(place => !place.IsBlurred).ToList();
        var (tides, cautions) = await db.TidesAndCautionsAsync(judged.Select(place => place.TideStationId), places.Select(place => place.CountryCode), cancel);
        var (from, to) = (Midnight(first), Midnight(first.PlusDays(4)));
        var board = WeekendBoard.Of(places, first, now, request.Filter, home, SkyOver(first, shared.For(now)), request.Session,
            place => PlaceWater.Of(place, tides.Of(place), curves, from, to)) with
        { IsCurrent = first == current };
        return new(board, cautions.ToPrint(board.Rows.Select(row => row.Place.CountryCode).Distinct().ToArray()));
    }

    private static Instant? DuskEnd(IReadOnlyList<Location> places, LocalDate date, SunEphemeris sun) =>
        places.Max(place => Almanac.Light.Sessions.On(date, place.Position, place.Zone, sun).Dusk?.End);

    /// <summary>The shared table, or for a weekend beyond it one of its own: four days and a day's margin each side.</summary>
    public static SkyEphemeris SkyOver(LocalDate first, SkyEphemeris shared)
    {
        var (from, to) = (Midnight(first.PlusDays(-2)), Midnight(first.PlusDays(7)));
        return shared.From <= from && to <= shared.To ? shared : SkyEphemeris.Covering(from, to);
    }

    private static Instant Midnight(LocalDate date) => date.AtMidnight().InUtc().ToInstant();
}
