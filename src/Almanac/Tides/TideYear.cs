using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>Where a range stands among those of its year. The thirds are a judgement of this guide, not a standard.</summary>
public enum RangeThird
{
    /// <summary>The lower third: neaps.</summary>
    Neaps,

    /// <summary>Between.</summary>
    Middle,

    /// <summary>The upper third: springs.</summary>
    Springs,
}

/// <summary>
/// What a year of tide amounts to: its highest and lowest water, and the thirds of its ranges. A range is that of
/// <see cref="TideCurve.RangeAt"/>, taken at each high and low water.
/// </summary>
/// <param name="Year">The year, on UTC.</param>
/// <param name="Highest">Its highest water.</param>
/// <param name="Lowest">Its lowest water.</param>
/// <param name="NeapsBelowMetres">Ranges below this are in the lower third; null where the tide has no waters.</param>
/// <param name="SpringsAboveMetres">Ranges above this are in the upper third; null where the tide has no waters.</param>
public sealed record TideYear(int Year, TideExtreme Highest, TideExtreme Lowest, double? NeapsBelowMetres, double? SpringsAboveMetres)
{
    /// <summary>The third that a range lies in; null where the year has none.</summary>
    public RangeThird? Third(double? rangeMetres) =>
        rangeMetres is not { } range || NeapsBelowMetres is not { } low || SpringsAboveMetres is not { } high ? null
        : range < low ? RangeThird.Neaps
        : range > high ? RangeThird.Springs
        : RangeThird.Middle;

    /// <summary>Works out a year on UTC: about two milliseconds. A table answers for the part that it covers.</summary>
    /// <param name="source">The tide.</param>
    /// <param name="year">1900 to 2100 for harmonic stations.</param>
    /// <exception cref="ArgumentOutOfRangeException">No part of the year is covered.</exception>
    public static TideYear Of(TideSource source, int year)
    {
        ArgumentNullException.ThrowIfNull(source);
        Instant from = Instant.Max(Instant.FromUtc(year, 1, 1, 0, 0), source.Valid.Start), to = Instant.Min(Instant.FromUtc(year + 1, 1, 1, 0, 0), source.Valid.End);
        if (from >= to)
            throw new ArgumentOutOfRangeException(nameof(year), year, FormattableString.Invariant($"This tide is known from {source.Valid.Start} to {source.Valid.End}."));
        var curve = source.Between(from, to);
        var ranges = curve.Extremes.Select(water => curve.RangeAt(water.Time)).OfType<double>().Order().ToList();
        return new TideYear(year, curve.Highest, curve.Lowest,
            ranges.Count == 0 ? null : ranges[ranges.Count / 3],
            ranges.Count == 0 ? null : ranges[ranges.Count - 1 - ranges.Count / 3]);
    }

    /// <summary>
    /// Highest and lowest of 19 years, one round of the moon's node: a station's own highest and lowest astronomical tide.
    /// About forty milliseconds.
    /// </summary>
    /// <param name="source">The tide.</param>
    /// <param name="firstYear">The first of the years, on UTC.</param>
    /// <exception cref="ArgumentOutOfRangeException">A year is not covered.</exception>
    public static (TideExtreme Highest, TideExtreme Lowest) OfNodalCycle(TideSource source, int firstYear)
    {
        var years = Enumerable.Range(firstYear, 19).Select(year => Of(source, year)).ToList();
        return (years.MaxBy(year => year.Highest.Metres)!.Highest, years.MinBy(year => year.Lowest.Metres)!.Lowest);
    }
}
