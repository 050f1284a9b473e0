using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>What the tide does to a car park.</summary>
/// <param name="Words">Ready to print.</param>
/// <param name="IsCertain">It floods; else whether it does is not known.</param>
internal readonly record struct LotFlood(string Words, bool IsCertain)
{
    /// <summary>Null where the car park stays dry over the span, or nobody has said that it floods.</summary>
    /// <param name="lot">The car park.</param>
    /// <param name="span">Both ends set.</param>
    /// <param name="tide">Covers the span; null where the tide is not known over all of it.</param>
    /// <param name="water">The place's.</param>
    /// <param name="zone">The place's.</param>
    public static LotFlood? In(ParkingArea lot, Interval span, TideCurve? tide, PlaceWater water, DateTimeZone zone)
    {
        if (lot.FloodsAbove is not { } height)
            return null;
        if (water.Metres(height) is not { } metres || tide is null)
            return new($"{lot.Name} floods at high tides, and whether it does then is not known", false);
        var above = tide.Above(metres - Allowance.LeastMetres).Where(one => one.Start < span.End && one.End > span.Start).ToList();
        if (above.Count == 0)
            return null;
        TideExtreme? high = tide.Extremes.Where(turn => turn.IsHigh && turn.Time >= above[0].Start && turn.Time <= above[0].End).Cast<TideExtreme?>().FirstOrDefault();
        return new($"{lot.Name} floods from {above[0].Start.Clock(zone)}{(high is { } top ? $", high water {TideWords.Metres(top.Metres)} at {top.Time.Clock(zone)}" : "")}", true);
    }
}
