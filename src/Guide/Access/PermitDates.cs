using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>For hours by permit: the dates on which a letter is in force.</summary>
public static class PermitDates
{
    /// <summary>Letters that name a leg count for that leg alone.</summary>
    public static IReadOnlyList<DateInterval> PermitsFor(this Location place, Leg leg) =>
        [.. place.PermissionLetters.Where(letter => letter.Leg == leg || (letter.LegId is { } id && id == leg.Id)).Select(InForce)];

    /// <summary>Letters that name no leg count for the place and its car parks.</summary>
    public static IReadOnlyList<DateInterval> Permits(this Location place) =>
        [.. place.PermissionLetters.Where(letter => letter.Leg is null && letter.LegId is null).Select(InForce)];

    private static DateInterval InForce(PermissionLetter letter) => new(letter.Dated, letter.Until ?? LocalDate.MaxIsoValue);
}
