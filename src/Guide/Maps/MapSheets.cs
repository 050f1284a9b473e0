using System.Globalization;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Maps;

/// <summary>
/// Makes map sheets from places as <see cref="LocationQueries"/> gives them to a reader: what is withheld there cannot get onto
/// a map. Of a blurred place only its cell is drawn.
/// </summary>
public static class MapSheets
{
    /// <summary>The coast, or the places on it that a search leaves: one mark or cell for each, with what would stop one there.</summary>
    public static MapSheet OfCoast(IReadOnlyList<Location> coast, IClock clock, string title = "The whole coast") => new(title,
    [
        new("Places in coast order",
        [
            .. coast.Select(place => place.IsBlurred ? Cell(place) : (MapItem)PlaceMark(place, TodayAt(place, clock))),
        ]),
    ]);

    /// <summary>One place with its vantage points, ways, parking, hazards and closures.</summary>
    public static MapSheet Of(Location place, IClock clock)
    {
        if (place.IsBlurred)
            return new(place.Name, [new("Where it is, as far as it is shown", [Cell(place)])]);
        var today = TodayAt(place, clock);
        return new(place.Name,
        [
            new("Hazards and closures", [.. place.ClosuresThatStop(today).Where(c => c.Target == ClosureTarget.Location).Select((c, i) => ClosureMark(place, c, i)), .. place.NotesShown(today).Select((n, i) => Hazard(place, n, i))]),
            new("Vantage points", [.. place.VantagePoints.Select(v => Stance(place, v, today))]),
            new("Ways in", [.. place.Routes.SelectMany(r => r.Legs).Where(leg => leg.Line.Count > 1).Select((leg, i) => Way(place, leg, today, i))]),
            new("Parking", [.. place.Parking.Select((p, i) => Parking(place, p, today, i))]),
        ]);
    }

    private static LocalDate TodayAt(Location place, IClock clock) => clock.GetCurrentInstant().InZone(place.Zone).Date;

    private static MapCell Cell(Location place) => new($"cell-{place.Slug}", place.Name, place.Address(),
        "Sensitive: somewhere within this square; the exact place is not shown.", place.Position, Blur.CellMetres);

    private static MapMark PlaceMark(Location place, LocalDate today)
    {
        var closed = place.ClosuresThatStop(today).Count > 0;
        var severe = place.NotesShown(today).FirstOrDefault(n => n.IsSevere);
        var stop = (closed ? "Closed now. " : "") + (severe is null ? "" : $"Severe: {severe.Kind.Words()}. ");
        return new($"place-{place.Slug}", MapMarkKind.Place, place.Name, place.Address(), stop + place.Summary, place.Position, [],
            closed ? "closed" : severe is null ? null : "severe hazard", closed);
    }

    private static MapMark ClosureMark(Location place, Closure closure, int index) => new($"closure-{index}", MapMarkKind.Closure, place.Name, null,
        $"Closed {closure.When()}: {closure.Reason}", place.Position, [], "closed");

    private static MapMark Hazard(Location place, HazardNote note, int index)
    {
        var severity = HazardWords.SeverityWords(note.Severity);
        var review = note.IsUnchecked ? " – reported, not yet checked" : "";
        return new($"hazard-{index}", MapMarkKind.Hazard, Capital(note.Kind.Words()), null, $"{Capital(severity)}{review}. {note.Text}",
            note.Position ?? note.VantagePoint?.Position ?? place.Position, [], severity);
    }

    private static MapMark Stance(Location place, VantagePoint point, LocalDate today)
    {
        var closed = place.ClosuresThatStop(point, today).Count > 0;
        var looks = string.Join("; ", point.Compositions.Select(c => string.Create(CultureInfo.InvariantCulture,
            $"{c.Name} {VantageWords.Degrees(c.FacingDegrees)} true")));
        return new($"stance-{point.Slug}", MapMarkKind.Stance, point.Name, point.Address(place),
            $"{(closed ? "Closed now. " : "")}{Capital(point.Kind.Words())}; footing: {point.Footing.Words()}. Water: {point.Reach.Words()}.{(looks.Length > 0 ? $" Looks at: {looks}." : "")}",
            point.Position, [.. point.Compositions.Select(c => new Wedge(c.FacingDegrees, c.Lens.HorizontalAngleDegrees))],
            closed ? "closed" : null, closed);
    }

    private static MapWay Way(Location place, Leg leg, LocalDate today, int index)
    {
        var closed = place.IsClosed(leg, today);
        var crossing = leg.Crossing is null ? "" : " Cut off by the tide: read the crossing first.";
        return new($"way-{index}", leg.Name, null, $"{(closed ? "Closed now. " : "")}{Capital(leg.Kind.Words())}, {leg.LegalStatus.Words()}.{crossing}",
            leg.Line, leg.LegalStatus, closed);
    }

    private static MapMark Parking(Location place, ParkingArea area, LocalDate today, int index)
    {
        var closed = place.IsClosed(area, today);
        var cars = area.Capacity is { } capacity ? $", {capacity} cars" : "";
        var floods = area.FloodsAbove is null ? "" : " Floods at high tides.";
        return new($"parking-{index}", MapMarkKind.Parking, area.Name, null, $"{(closed ? "Closed now. " : "")}{Capital(area.Surface)}{cars}.{floods}",
            area.Position, [], closed ? "closed" : null, closed);
    }

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
