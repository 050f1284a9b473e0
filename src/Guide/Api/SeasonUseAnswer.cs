using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Tides;

namespace Foreshore.Guide.Api;

/// <summary>The season's second layer: the light that wished tide and ground, the limits and the way back leave.</summary>
/// <param name="Counts">What of tide and way limits it.</param>
/// <param name="Way">The club's first way, which it goes by on every date on which that is open; null where there is none.</param>
/// <param name="Station">The tide station it goes by; null where none is chosen.</param>
/// <param name="AllowanceMetres">Taken off every limit, for wind and air pressure: the least of the rules.</param>
/// <param name="LeftOut">What is not in it, in words.</param>
/// <param name="Months">The twelve months by usable minutes: shares, minutes and ranks as above.</param>
/// <param name="BestHours">Up to three clock hours with the greatest share of usable minutes.</param>
internal sealed record SeasonUseAnswer(IReadOnlyList<UseAsk> Counts, string? Way, string? Station, double AllowanceMetres, string LeftOut,
    IReadOnlyList<SeasonMonthAnswer> Months, IReadOnlyList<SeasonHourAnswer> BestHours)
{
    public static SeasonUseAnswer? Of(SeasonUse? counted, PictureUse use, PlaceTide? tide) => counted is null ? null : new(
        use.Asks, use.FirstWay, tide?.Station.Id, Allowance.Usual.TideMetres,
        $"Sea and surge are left out; it holds for one person at the measured pace. Closures known now are in it. {Words.SeaUnknown}",
        SeasonAnswer.Monthly(counted.Months), SeasonAnswer.Hourly(counted.BestHours));
}
