using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>What keeps one off a stance on a date, whatever light and tide do, in words ready to print.</summary>
public static class StopWords
{
    public const string NoWayIn = "no way in that the club may recommend";

    /// <summary>Closures, severe notes that keep one off, a cliff's foot that is too near; none where nothing does.</summary>
    public static IReadOnlyList<string> StopsOn(this Location place, VantagePoint vantagePoint, LocalDate date)
    {
        List<string> stops = [.. place.ClosuresThatStop(vantagePoint, date).Select(InWords)];
        if (place.Parking.Count > 0 && place.Parking.All(area => place.IsClosed(area, date)))
            stops.Add("every car park is closed");

        stops.AddRange(place.NotesShown(date, vantagePoint).Where(note => note.KeepsOff).Select(InWords));
        if (vantagePoint.Cliff is { IsTooNear: true } cliff)
            stops.Add($"{cliff.DistanceMetres:0.#} m from the foot of a {cliff.HeightMetres:0.#} m cliff");
        return stops;
    }

    public static string InWords(Closure closure) => closure.State switch
    {
        ClosureState.UnderReview => $"closed, under review: {closure.Reason}",
        _ => $"closed: {closure.Reason}",
    };

    public static string InWords(HazardNote note) =>
        note.IsUnchecked ? $"{note.Text} (reported, not yet checked)" : note.Text;
}
