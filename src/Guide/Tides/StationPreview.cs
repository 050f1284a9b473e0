using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>A posted station as it would be, to be looked at before it is stored.</summary>
/// <param name="Drawing">Two days from now on, or the first two that its table holds.</param>
/// <param name="Next">The first waters of what is drawn and a little more.</param>
/// <param name="Doubts">What speaks against it.</param>
/// <param name="Neighbour">The waters of the next station of the catalogue of the same time, to be held against it; null where none lies near.</param>
public sealed record StationPreview(
    PlaceTide Tide, DateTimeZone Zone, TideDrawing Drawing, IReadOnlyList<TideExtreme> Next, TideYear? Year, IReadOnlyList<string> Doubts, string? Neighbour)
{
    private const int Waters = 8;

    private TideStation Station => Tide.Station;

    /// <summary>What was read of the file, by name and in words.</summary>
    public IEnumerable<(string Name, string Words)> Read()
    {
        yield return ("Station", $"{Station.Name} ({Station.Id}), {Station.ToLine().Where()}");
        yield return Tide.Source is TableTide table
            ? ("High and low waters", $"{table.Waters.Count.ToString(CultureInfo.InvariantCulture)}, from {Moment(table.Valid.Start)} to {Moment(table.Valid.End)}")
            : ("Constituents", $"{Station.ConstituentNames.Length.ToString(CultureInfo.InvariantCulture)}; the largest are {string.Join(", ", Largest.Take(4).Select(one => $"{one.Name} {one.Metres} m"))}");
        yield return ("Heights", $"above {Tide.DatumWords}; mean sea level {(Tide.MeanSeaLevelMetres is { } level ? $"lies {Metres(level)} m above it" : "is not recorded")}");
        if (Year is { } year)
            yield return ($"In {year.Year.ToString(CultureInfo.InvariantCulture)}", $"from {TideWords.Metres(year.Lowest.Metres)} to {TideWords.Metres(year.Highest.Metres)}");
        yield return ("Method", StationWords.Sentence(Tide.Source.Method));
        yield return ("Times", Tide.Source is TableTide ? $"without an offset were read in {Zone.Id}" : $"phases on Greenwich and UTC; the curve is drawn in {Zone.Id}");
        yield return ("Licence", $"{Station.Licence}{(Station.LicenceLink is { } link ? $", {link}" : "")}");
        yield return ("Printed beside it", Station.Attribution);
    }

    /// <summary>Constituents as they were read, the largest first.</summary>
    public IEnumerable<(string Name, string Metres, string Degrees)> Largest => Station.ConstituentNames
        .Select((name, i) => (name, Station.AmplitudesMetres[i], Station.PhasesDegrees[i])).OrderByDescending(one => one.Item2)
        .Select(one => (one.name, Metres(one.Item2), one.Item3.ToString("0.0", CultureInfo.InvariantCulture)));

    internal static async Task<StationPreview> OfAsync(GuideDb db, PlaceTide tide, DateTimeZone zone, Instant now, CancellationToken cancel)
    {
        var source = tide.Source;
        var first = (source.Covers(now, now + Duration.FromDays(TideDrawing.DaysDrawn)) ? now : source.Valid.Start).InZone(zone).Date;
        var (from, to) = TideDrawing.Span(first, zone);
        var curve = source.Between(Instant.Max(from, source.Valid.Start), Instant.Min(to, source.Valid.End));
        var thisYear = now.InUtc().Year;
        var year = source.Covers(Instant.FromUtc(thisYear, 1, 1, 0, 0), Instant.FromUtc(thisYear + 1, 1, 1, 0, 0)) ? TideYear.Of(source, thisYear) : null;
        var places = await db.Locations.AsNoTracking().Select(place => new { place.Name, place.LatitudeDegrees, place.LongitudeDegrees }).ToListAsync(cancel);
        return new(tide, zone, TideDrawing.Of(curve, first, zone, now), [.. curve.Extremes.Where(turn => curve.To <= now || turn.Time > now).Take(Waters)], year,
            StationDoubts.Of(tide, [.. places.Select(place => (place.Name, new Position(place.LatitudeDegrees, place.LongitudeDegrees)))], year, zone, now),
            await NeighbourAsync(db, tide.Station, curve, zone, cancel));
    }

    private static async Task<string?> NeighbourAsync(GuideDb db, TideStation station, TideCurve curve, DateTimeZone zone, CancellationToken cancel)
    {
        // The club's own figures would say again what the club typed.
        if ((await db.StationsNearAsync(station.Position, 5, cancel)).FirstOrDefault(near => !near.Station.IsOfClub && near.Metres < NearStation.HeadlandMetres) is not { } near
            || (await db.StationBySlugAsync(near.Station.Slug, cancel)).Tide is not { } other || !other.Source.Covers(curve.From, curve.To))
            return null;
        var waters = other.Source.Between(curve.From, curve.To).Extremes.Take(Waters / 2).Select(water => water.Words(zone));
        return $"{near.Station.Name} ({near.Station.Id}), {PlaceWords.Distance(near.Metres)} away, has above {other.DatumWords}: {string.Join(", ", waters)}.";
    }

    private string Moment(Instant time) => string.Create(CultureInfo.InvariantCulture,
        $"{TideWords.DayAndMonth(time.InZone(Zone).Date)} {time.InZone(Zone).Year} {TideWords.Clock(time, Zone)}");

    private static string Metres(double metres) => metres.ToString("0.00#", CultureInfo.InvariantCulture).Replace('-', '−');
}
