using System.Globalization;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>What another station, or other corrections, would do to a place's tide: its levels now and then, and which heights nobody has judged by it yet.</summary>
/// <param name="Rows">What, as it is, as it would be.</param>
/// <param name="Unjudged">Whose heights will read "needs checking".</param>
public sealed record LevelsChange(IReadOnlyList<(string What, string Before, string After)> Rows, IReadOnlyList<string> Unjudged)
{
    private const string NotKnown = "not known";

    /// <param name="place">With all its parts, as it is.</param>
    /// <param name="before">Its tide as it is; null where none is known.</param>
    /// <param name="after">Its tide as it would be.</param>
    /// <param name="meanSeaLevel">Above chart datum, metres, as it would be.</param>
    public static LevelsChange Of(Location place, PlaceTide? before, PlaceTide after, double? meanSeaLevel, TideCurves curves, Instant now)
    {
        var (was, becomes) = (Levels(before, curves, place.Zone, now), Levels(after, curves, place.Zone, now));
        return new(
            [
                ("Station", Name(before), Name(after)),
                ("Corrections", Corrections(before), Corrections(after)),
                ("Mean sea level above chart datum", Metres(place.MeanSeaLevelAboveChartDatumMetres), Metres(meanSeaLevel)),
                .. was.Zip(becomes, (one, other) => (one.What, one.Words, other.Words)),
            ],
            before?.Station.Id == after.Station.Id ? [] : [.. JudgedByAnother(place, after.Station.Id).Distinct()]);
    }

    private static IEnumerable<(string What, string Words)> Levels(PlaceTide? tide, TideCurves curves, DateTimeZone zone, Instant now)
    {
        var year = tide is null ? null : curves.Year(tide, now.InUtc().Year);
        var next = tide is null ? [] : curves.Around(tide, now) is { } curve ? curve.Extremes.SkipWhile(turn => turn.Time <= now).Take(2).ToList() : [];
        yield return ("Highest this year", year is null ? NotKnown : TideWords.Metres(year.Highest.Metres));
        yield return ("Lowest this year", year is null ? NotKnown : TideWords.Metres(year.Lowest.Metres));
        yield return ("Next high water", Words(next, isHigh: true));
        yield return ("Next low water", Words(next, isHigh: false));

        string Words(IReadOnlyList<TideExtreme> turns, bool isHigh) => turns.Where(turn => turn.IsHigh == isHigh).Select(turn => turn.Words(zone)).FirstOrDefault() ?? NotKnown;
    }

    private static IEnumerable<string> JudgedByAnother(Location place, string station)
    {
        return [.. place.VantagePoints.Where(IsJudged).Select(stance => stance.Name),
            .. place.Routes.SelectMany(route => route.Legs).Where(leg => Other(leg.Crossing?.PassableBelow)).Select(leg => leg.Name),
            .. place.Parking.Where(area => Other(area.FloodsAbove)).Select(area => area.Name)];

        bool Other(TideHeight? height) => height?.NeedsChecking(station) ?? false;
        bool IsJudged(Compositions.VantagePoint stance) => Other(stance.PathCutOff) || Other(stance.HighestUsableTide) || (stance.Ground?.NeedsChecking(station) ?? false)
            || stance.Compositions.Any(picture => picture.Tide?.NeedsChecking(station) ?? false);
    }

    private static string Name(PlaceTide? tide) => tide is null ? "none" : $"{tide.Station.Name} ({tide.Station.Id}), above {TideLevels.Words(tide.Station.ChartDatum)}";

    private static string Corrections(PlaceTide? tide) => tide?.Corrections is { } own ? StationWords.Of(own) : "none";

    private static string Metres(double? metres) => metres is { } level ? level.ToString("0.00", CultureInfo.InvariantCulture).Replace('-', '−') + " m" : "not recorded";
}
