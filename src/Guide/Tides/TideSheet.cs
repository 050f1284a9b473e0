using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>A stance's tide limit as the curve can show it, or why it cannot, and when to turn back.</summary>
/// <param name="Stance">The stance asked for.</param>
/// <param name="DrawnMetres">The limit less the allowance, above chart datum of the place's station; null where nothing can be drawn.</param>
/// <param name="Words">What is drawn, or why nothing is.</param>
/// <param name="Turns">When one can be there on the days drawn.</param>
public sealed record StanceLimit(VantagePoint Stance, double? DrawnMetres, string Words, StanceTurns Turns)
{
    public static StanceLimit Of(StanceView view, TideRequest request, TideCurves curves, Instant now)
    {
        var (from, to) = TideDrawing.Span(request.Day, view.Place.Zone);
        var turns = StanceTurns.Of(view.Stance, view.Place, request.Day, PlaceWater.Of(view.Place, view.At.Tide, curves, from, to), now);
        // Where a closure or a note keeps one off, now or on one of the days, no height of the water makes the stance usable.
        var (drawn, words) = view.Stopping.Count > 0 ? (null, "Keep off: it is closed. No limit is drawn.")
            : view.KeepOff is { } why ? (null, $"Keep off {why}. No limit is drawn.")
            : turns.Stops.Count > 0 ? (null, "Keep off on the days named below. No limit is drawn.")
            : Of(view.Stance, view.Place);
        return new(view.Stance, drawn, words, view.Stopping.Count > 0 || view.KeepOff is not null ? turns with { Ways = [] } : turns);
    }

    private static (double?, string) Of(VantagePoint stance, Location place) => stance.HighestUsableTide switch
    {
        null => (null, "No highest usable tide is recorded for it, so no limit is drawn: ask before you go."),
        { } limit when limit.NeedsChecking(place.TideStationId) || limit.Datum != TideDatum.ChartDatum =>
            (null, $"Its limit is {limit.Words()}: it was judged by another station or datum and needs checking before it can be drawn."),
        { } limit => (limit.Metres - Allowance.LeastMetres,
            $"Usable below {TideWords.Metres(limit.Metres)}{(limit.IsRepeated ? "" : " (one member's figure, not yet repeated)")}, less {TideWords.Metres(Allowance.LeastMetres)} for weather."),
    };
}

/// <summary>A location's tide page.</summary>
/// <param name="At">The place, its cautions and its tide; no tide where it has no station.</param>
/// <param name="Now">Null where the tide is not known now.</param>
/// <param name="Drawing">Null where the tide is not known on the two days.</param>
/// <param name="Month">Null where it is not known in the month.</param>
/// <param name="Limit">Where a stance was asked for.</param>
/// <param name="Near">The nearest stations, where the place has none.</param>
public sealed record TideSheet(PlaceView At, TideRequest Request, TideNow? Now, TideDrawing? Drawing, TideMonth? Month, StanceLimit? Limit, IReadOnlyList<NearStation> Near)
{
    public Location Place => At.Place;

    public string Address => Place.TideAddress();

    /// <summary>What the hatching of the curve means, where there is any.</summary>
    public string Hatching => Drawing is not { NotUsable.Count: > 0 } ? ""
        : Limit?.Turns.Shown is null ? " Hatched: the water stands above that. One turns back earlier: walk, packing and a quarter of an hour come off, and any crossing on the way."
        : " Hatched: one cannot be there, by tide, way or daylight. Bars: turn back.";

    /// <summary>How far the station lies from the place, or from the centre of its cell.</summary>
    public double? StationMetres => At.Tide is { } tide ? Geodesic.Between(Place.Position, tide.Station.Position).Metres : null;
}

public static class TideSheetQueries
{
    public static string TideAddress(this Location place) => $"{place.Address()}/tide";

    /// <summary>Null: no such place, or not for this reader.</summary>
    public static async Task<TideSheet?> TideSheetAsync(
        this GuideDb db, string slug, Reader reader, IQueryCollection query, Instant now, TideCurves curves, CancellationToken cancel = default)
    {
        if (await db.PlaceAsync(slug, reader, now, Parts.All, cancel) is not { } view)
            return null;

        var place = view.Place;
        var request = TideRequest.From(query, view.Today);
        var stance = place.VantagePoints.FirstOrDefault(v => v.Slug == request.Stance);
        if (request.Stance is not null && stance is null)
            request = request with { Stance = null, Fault = request.Fault ?? "The vantage point in this address is none of this place's. Choose one from the list." };
        var limit = stance is null ? null : StanceLimit.Of(new StanceView(view, stance), request, curves, now);
        if (view.Tide is not { } tide)
            return new(view, request, null, null, null, limit, await db.StationsNearAsync(place.Position, 3, cancel));

        var (from, to) = TideDrawing.Span(request.Day, place.Zone);
        return new(view, request,
            TideNow.Of(curves.Around(tide, now), now),
            TideCurves.Between(tide, from, to) is { } curve ? TideDrawing.Of(curve, request.Day, place.Zone, now, limit?.DrawnMetres, limit?.Turns) : null,
            TideMonth.Of(tide, curves, request.Month, place.Zone), limit, []);
    }
}
