using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>Whether the water comes to the car: a night with a high water above the flood height less the allowance keeps off.</summary>
/// <param name="Words">One for each car park; none where a car can stay dry.</param>
/// <param name="KeepsOff">A night in which it is certain for all of them; else a doubt.</param>
internal sealed record Flood(IReadOnlyList<string> Words, bool KeepsOff)
{
    private static readonly Flood None = new([], false);

    /// <summary>What the tide does to the car parks that are open on a session's dates.</summary>
    public static Flood In(Session span, Location place, IReadOnlyList<LocalDate> dates, PlaceWater water)
    {
        var lots = place.OpenParking(dates);
        var floods = lots.Select(lot => Of(lot, span, water, place.Zone)).ToList();
        // One that stays dry, or of which nobody has said that it floods, is enough.
        return lots.Count == 0 || floods.Exists(flood => flood is null) ? None
            : new([.. floods.Select(flood => flood!.Value.Words)], span.Kind == SessionKind.Night && floods.TrueForAll(flood => flood!.Value.IsCertain));
    }

    public StanceFacts AddedTo(StanceFacts facts) => Words.Count == 0 ? facts
        : KeepsOff ? facts with { Stops = [.. facts.Stops, .. Words] } : facts with { Doubts = [.. facts.Doubts, .. Words] };

    private static (string Words, bool IsCertain)? Of(ParkingArea lot, Session span, PlaceWater water, DateTimeZone zone)
    {
        if (lot.FloodsAbove is not { } height)
            return null;
        if (water.Metres(height) is not { } metres || water.Over(span) is not { } tide)
            return ($"{lot.Name} floods at high tides, and whether it does then is not known", false);
        var above = tide.Above(metres - Allowance.LeastMetres).Where(one => one.Start < span.End && one.End > span.Start).ToList();
        if (above.Count == 0)
            return null;
        TideExtreme? high = tide.Extremes.Where(turn => turn.IsHigh && turn.Time >= above[0].Start && turn.Time <= above[0].End).Cast<TideExtreme?>().FirstOrDefault();
        return ($"{lot.Name} floods from {above[0].Start.Clock(zone)}{(high is { } top ? $", high water {TideWords.Metres(top.Metres)} at {top.Time.Clock(zone)}" : "")}", true);
    }
}
