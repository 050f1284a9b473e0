using Foreshore.Almanac.Stays;
using Foreshore.Guide.Compositions;

namespace Foreshore.Guide.Access;

/// <summary>
/// The walk of one way, in and out. Measured whole where somebody did; else from the car park to the route, its legs on foot, and
/// from its end to the stance, never under the stance's own figure. What is missing is said.
/// </summary>
/// <param name="In">Null where a part is missing.</param>
/// <param name="Out">Null where a part is missing.</param>
/// <param name="Missing">In words ready to print.</param>
internal sealed record WayWalks(Walk? In, Walk? Out, IReadOnlyList<string> Missing)
{
    private const string Untimed = "nobody has timed the walk";

    /// <param name="isFirst">The first way of the stance, along which its own figures were taken.</param>
    /// <param name="placeHasParking">Whether the place has any car park.</param>
    public static WayWalks Of(VantagePoint stance, StanceWay? own, AccessRoute? route, RouteParking? lot, bool isFirst, bool placeHasParking)
    {
        List<string> missing = [];
        var extra = route is null ? 0 : route.Legs.Where(OnFoot).Sum(leg => (leg.Minutes ?? 0) * (GroundOf(leg) - 1));
        var summed = Summed(own, route, lot, placeHasParking, out var why);
        var (walkIn, walkOut) = (Whole(own?.WalkInMinutes, stance.WalkInMinutes), Whole(own?.WalkOutMinutes, stance.WalkOutMinutes));
        if (walkIn is null || walkOut is null) missing.Add(why ?? Untimed);
        return new(WithGround(walkIn), WithGround(walkOut), missing);

        double? Whole(double? measured, double? ofStance)
        {
            // The stance's own figure stands in where parts of its first way are not timed, and shortens none that are.
            var minutes = (measured ?? (isFirst && summed is null ? ofStance : null)) is { } whole ? whole + Offset() : summed;
            return minutes is { } told ? Math.Max(told, ofStance ?? 0) : null;
        }

        // Measured from the route's first car park: another one stands nearer or farther by the difference of their walks.
        double? Offset()
        {
            if (lot is null || lot == route!.Parking[0]) return 0;
            if (lot.WalkMinutes - route.Parking[0].WalkMinutes is { } difference) return difference;
            why = $"nobody has timed the walk from {lot.ParkingArea.Name}";
            return null;
        }

        Walk? WithGround(double? minutes) => minutes is { } told ? new Walk(told, told > 0 ? 1 + Math.Min(extra / told, Party.WetRockFactor - 1) : 1) : null;
    }

    /// <summary>From the stance to beyond a crossing: over that leg and what lies between.</summary>
    public static Walk? Beyond(Crossing crossing, IReadOnlyList<Leg> fromCrossing) =>
        crossing.MinutesFromStance is { } minutes ? new Walk(minutes, MeanGround(fromCrossing)) : null;

    /// <summary>Off the stance, over the ground of the way's last leg on foot.</summary>
    public static Walk? OffStance(double? minutes, IReadOnlyList<Leg> legs) =>
        minutes is { } told ? new Walk(told, legs.LastOrDefault(OnFoot) is { } last ? GroundOf(last) : 1) : null;

    private static double? Summed(StanceWay? own, AccessRoute? route, RouteParking? lot, bool placeHasParking, out string? why)
    {
        why = null;
        if (route is null) return null;
        var fromCar = lot is not null ? lot.WalkMinutes : placeHasParking ? null : 0;
        if (fromCar is null) why = lot is null ? $"nobody has said where to leave the car for \"{route.Name}\"" : $"nobody has timed the walk from {lot.ParkingArea.Name}";
        else if (route.Legs.FirstOrDefault(leg => OnFoot(leg) && leg.Minutes is null) is { } untimed) why = $"nobody has timed \"{untimed.Name}\"";
        else if (own?.EndMinutes is null) why = $"nobody has timed the walk from the end of \"{route.Name}\"";
        return why is null ? fromCar + route.Legs.Where(OnFoot).Sum(leg => leg.Minutes) + own!.EndMinutes : null;
    }

    private static bool OnFoot(Leg leg) => leg.Kind == LegKind.Walk;

    private static double MeanGround(IReadOnlyList<Leg> legs)
    {
        var walked = legs.Where(leg => OnFoot(leg) && leg.Minutes > 0).ToList();
        return walked.Count == 0 ? legs.Select(GroundOf).DefaultIfEmpty(1).Max() : walked.Sum(leg => leg.Minutes!.Value * GroundOf(leg)) / walked.Sum(leg => leg.Minutes!.Value);
    }

    /// <summary>What a leg's ground multiplies a walk over it by.</summary>
    public static double GroundOf(Leg leg) => leg.Ground switch
    {
        LegGround.WetRock or LegGround.Weed or LegGround.Boulders => Party.WetRockFactor,
        LegGround.SoftGround => Party.SoftGroundFactor,
        _ => 1,
    };
}
