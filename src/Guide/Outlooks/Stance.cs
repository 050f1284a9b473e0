using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>Reads off a place what an outlook must know besides the light.</summary>
public static class Stance
{
    public const string SeaNotComputed = "tide and sea not computed yet";

    public static StanceFacts FactsOn(this Composition composition, VantagePoint vantagePoint, Location place, LocalDate date) =>
        new(Stops(place, vantagePoint, date),
            place.HasRecommendedWayIn(date) ? null : "no way in that the club may recommend",
            NotKnown(composition, vantagePoint, place, date),
            Doubts(place, vantagePoint, date),
            Remarks(place, vantagePoint, date));

    private static List<string> Stops(Location place, VantagePoint vantagePoint, LocalDate date)
    {
        List<string> stops = [.. place.ClosuresThatStop(vantagePoint, date).Select(InWords)];
        if (place.Parking.Count > 0 && place.Parking.All(area => place.IsClosed(area, date)))
            stops.Add("every car park is closed");

        stops.AddRange(place.NotesShown(date, vantagePoint).Where(note => note.KeepsOff).Select(InWords));
        if (vantagePoint.Cliff is { IsTooNear: true } cliff)
            stops.Add($"{cliff.DistanceMetres:0} m from the foot of a {cliff.HeightMetres:0} m cliff");
        return stops;
    }

    /// <summary>Until tide and sea are computed, everything that water decides is not judged.</summary>
    private static List<string> NotKnown(Composition composition, VantagePoint vantagePoint, Location place, LocalDate date)
    {
        List<string> unknown = [];
        if (vantagePoint.Reach != Reach.None || vantagePoint.HighestUsableTide is not null || vantagePoint.Sea is not null
            || vantagePoint.PathCutOff is not null || HasWish(composition))
            unknown.Add(SeaNotComputed);

        if (place.OpenRoutes(date) is { Count: > 0 } routes && routes.All(route => route.Legs.Any(leg => leg.Crossing is not null)))
            unknown.Add("the way in is cut off by the tide, which is not computed yet");

        if (!vantagePoint.WalkedInTheDark && (vantagePoint.WalkInMinutes is null || vantagePoint.WalkOutMinutes is null))
            unknown.Add("nobody has timed the walk");
        return unknown;
    }

    private static bool HasWish(Composition composition) =>
        composition.Tide is not null || composition.Sea is not null || composition.Ground is { State: not GroundState.Any };

    private static List<string> Doubts(Location place, VantagePoint vantagePoint, LocalDate date)
    {
        List<string> doubts =
            [.. place.NotesShown(date, vantagePoint).Where(note => note is { IsSevere: true, KeepsOff: false }).Select(InWords)];
        if (vantagePoint.Edge != EdgeDistance.None)
            doubts.Add("within 5 m of an edge, and gusts are not known");
        return doubts;
    }

    private static List<string> Remarks(Location place, VantagePoint vantagePoint, LocalDate date)
    {
        List<string> remarks = [];
        if (vantagePoint.Skyline.IsAssumed)
            remarks.Add("a sea horizon is assumed: no skyline drawn yet");
        else if (vantagePoint.Skyline.HasUnknown)
            remarks.Add("part of the skyline is unknown and counts as level");
        remarks.AddRange(place.NotesShown(date, vantagePoint).Where(note => !note.IsSevere).Take(1).Select(InWords));
        return remarks;
    }

    /// <summary>Ways in that the club may recommend and that are not closed that day, the preferred one first.</summary>
    public static IReadOnlyList<AccessRoute> OpenRoutes(this Location place, LocalDate date) =>
        [.. place.Routes.OrderBy(route => route.Order)
            .Where(route => route.MayBeRecommended && !route.Legs.Any(leg => place.IsClosed(leg, date)))];

    private static string InWords(Closure closure) => closure.State switch
    {
        ClosureState.UnderReview => $"closed, under review: {closure.Reason}",
        _ => $"closed: {closure.Reason}",
    };

    private static string InWords(HazardNote note) =>
        note.IsUnchecked ? $"{note.Text} (reported, not yet checked)" : note.Text;
}
