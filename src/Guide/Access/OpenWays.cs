using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>What of a place's ways in and car parks is open. No dates: closures, which may be lifted, are left out.</summary>
public static class OpenWays
{
    /// <summary>Ways in that the club may recommend and that are closed on none of the dates, the preferred one first.</summary>
    public static IReadOnlyList<AccessRoute> OpenRoutes(this Location place, IReadOnlyList<LocalDate> dates) =>
        [.. place.Routes.OrderBy(route => route.Order)
            .Where(route => route.MayBeRecommended && !route.Legs.Any(leg => dates.Any(date => place.IsClosed(leg, date))))];

    /// <summary>Car parks that are closed on none of the dates.</summary>
    public static IReadOnlyList<ParkingArea> OpenParking(this Location place, IReadOnlyList<LocalDate> dates) =>
        [.. place.Parking.Where(area => !dates.Any(date => place.IsClosed(area, date)))];
}
