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
    /// <param name="water">The place's.</param>
    /// <param name="zone">The place's.</param>
    public static LotFlood? In(ParkingArea lot, Interval span, PlaceWater water, DateTimeZone zone)
    {
        if (lot.FloodsAbove is null)
            return null;
        if (FloodsAt(lot, water) is not { } metres || water.Curve is not { } tide || tide.From > span.Start || tide.To < span.End)
            return new($"{lot.Name} floods at high tides, and whether it does then is not known", false);
        var above = tide.Above(metres).Where(one => one.Start < span.End && one.End > span.Start).ToList();
        if (above.Count == 0)
            return null;
        TideExtreme? high = tide.Extremes.Where(turn => turn.IsHigh && turn.Time >= above[0].Start && turn.Time <= above[0].End).Cast<TideExtreme?>().FirstOrDefault();
        return new($"{lot.Name} floods from {above[0].Start.Clock(zone)}{(high is { } top ? $", high water {TideWords.Metres(top.Metres)} at {top.Time.Clock(zone)}" : "")}", true);
    }

    /// <summary>When the car stands dry; null where nobody has said that it floods, or where it can't be told.</summary>
    public static IReadOnlyList<Interval>? Dry(ParkingArea lot, Interval span, PlaceWater water)
    {
        if (FloodsAt(lot, water) is not { } metres || water.Curve is not { } tide)
            return null;
        var dry = tide.Below(metres).Where(one => one.Start < span.End && one.End > span.Start).ToList();
        return dry.Count == 1 && dry[0].Start <= tide.From && dry[0].End >= tide.To ? null : dry;
    }

    /// <summary>The tide at which it floods, the allowance taken off; null where none is recorded or it is not current.</summary>
    private static double? FloodsAt(ParkingArea lot, PlaceWater water) =>
        lot.FloodsAbove is { } height && water.Metres(height) is { } metres ? metres - Allowance.Usual.TideMetres : null;
}
