using Foreshore.Almanac.Earth;
using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;

namespace Foreshore.Guide.Locations;

/// <summary>What of a place goes onto its sketch. A blurred place comes without stances, parking and ways, so nothing does.</summary>
public static class PlaceSketches
{
    /// <summary>A car park across the bay, by the pier of the boat, would shrink all else to a dot.</summary>
    private const double FarthestParkingMetres = 3000;

    public static IReadOnlyList<SketchPlace> SketchPlaces(this PlaceView view) =>
    [
        .. view.Place.VantagePoints.Select((stance, i) => new SketchPlace(SketchMarkKind.Vantage, $"{i + 1}", stance.Name, stance.Position,
            [.. stance.Compositions.Select(c => new SketchFacing(c.Facing, c.Lens.HorizontalAngleDegrees))])),
        .. view.Place.Parking.Where(area => Geodesic.Between(view.Place.Position, area.Position).Metres <= FarthestParkingMetres)
            .Select(area => new SketchPlace(SketchMarkKind.Parking, "P", area.Name, area.Position, [])),
        .. view.Notes.Where(note => note.Position is not null)
            .Select(note => new SketchPlace(SketchMarkKind.Hazard, "!", $"{note.Kind.Words()}, {HazardWords.SeverityWords(note.Severity)}", note.Position!.Value, [])),
    ];

    public static IReadOnlyList<SketchWay> SketchWays(this PlaceView view) =>
        [.. view.Place.Routes.SelectMany(route => route.Legs).Where(leg => leg.Line.Count > 1).Select(leg => new SketchWay(Kind(view, leg), leg.Name, leg.Line))];

    private static SketchWayKind Kind(PlaceView view, Leg leg) => view.Place.IsClosed(leg, view.Today) ? SketchWayKind.Closed : leg.LegalStatus switch
    {
        LegalStatus.Customary => SketchWayKind.Used,
        LegalStatus.Private or LegalStatus.Unknown => SketchWayKind.AskFirst,
        LegalStatus.Closed => SketchWayKind.Closed,
        _ => SketchWayKind.Right,
    };
}
