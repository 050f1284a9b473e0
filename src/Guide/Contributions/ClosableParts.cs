using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>What of a place can be shut by itself, as a list to choose from.</summary>
internal static class ClosableParts
{
    public static IEnumerable<(string Value, string Words)> Of(Location place) =>
    [
        .. place.VantagePoints.Select(stance => ($"stance:{stance.Id}", $"Vantage point: {stance.Name}")),
        .. place.Routes.SelectMany(route => route.Legs).Select(leg => ($"leg:{leg.Id}", $"Way in: {leg.Name}")),
        .. place.Parking.Select(area => ($"parking:{area.Id}", $"Parking: {area.Name}")),
    ];
}
