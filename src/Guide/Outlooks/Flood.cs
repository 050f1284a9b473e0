using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
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
        var floods = lots.Select(lot => LotFlood.In(lot, span.Span, water.Over(span), water, place.Zone)).ToList();
        // One that stays dry, or of which nobody has said that it floods, is enough.
        return lots.Count == 0 || floods.Exists(flood => flood is null) ? None
            : new([.. floods.Select(flood => flood!.Value.Words)], span.Kind == SessionKind.Night && floods.TrueForAll(flood => flood!.Value.IsCertain));
    }

    public StanceFacts AddedTo(StanceFacts facts) => Words.Count == 0 ? facts
        : KeepsOff ? facts with { Stops = [.. facts.Stops, .. Words] } : facts with { Doubts = [.. facts.Doubts, .. Words] };
}
