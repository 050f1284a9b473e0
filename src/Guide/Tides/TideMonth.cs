using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>A day of the month table.</summary>
/// <param name="Date">By the place's clock.</param>
/// <param name="Turns">High and low waters in order.</param>
/// <param name="Third">Where the range about noon stands in the station's year.</param>
/// <param name="Moon">A principal phase that falls on the date.</param>
public sealed record TideDay(LocalDate Date, IReadOnlyList<TideExtreme> Turns, RangeThird? Third, PrincipalPhase? Moon)
{
    public IEnumerable<TideExtreme> Highs => Turns.Where(turn => turn.IsHigh);

    public IEnumerable<TideExtreme> Lows => Turns.Where(turn => !turn.IsHigh);
}

/// <summary>High and low waters of a local month, day by day.</summary>
public sealed record TideMonth(YearMonth Month, IReadOnlyList<TideDay> Days)
{
    /// <summary>Null where nothing of the tide is known in that month.</summary>
    public static TideMonth? Of(PlaceTide tide, TideCurves curves, YearMonth month, DateTimeZone zone)
    {
        var first = month.OnDayOfMonth(1);
        var next = first.PlusMonths(1);
        var (from, to) = (zone.AtStartOfDay(first).ToInstant(), zone.AtStartOfDay(next).ToInstant());
        if (TideCurves.Between(tide, from, to) is not { } curve)
            return null;

        var turns = curve.Extremes.ToLookup(turn => turn.Time.InZone(zone).Date);
        var moons = MoonPhases.Between(from, to).ToLookup(phase => phase.Time.InZone(zone).Date, phase => (PrincipalPhase?)phase.Phase);
        return new(month, [.. Enumerable.Range(0, Period.DaysBetween(first, next)).Select(i => first.PlusDays(i)).Select(date => new TideDay(date, [.. turns[date]], Third(date), moons[date].FirstOrDefault()))]);

        RangeThird? Third(LocalDate date)
        {
            var noon = zone.AtLeniently(date.At(LocalTime.Noon)).ToInstant();
            return noon < curve.From || noon > curve.To ? null : curves.Year(tide, noon.InUtc().Year)?.Third(curve.RangeAt(noon));
        }
    }
}
