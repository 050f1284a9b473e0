using System.Globalization;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>The tide of a printed table of high and low waters, with half a cosine between them; before the first and after the last there is no answer.</summary>
public sealed class TableTide : TideSource
{
    private readonly TideKnots knots;

    /// <summary>Takes the table.</summary>
    /// <param name="waters">High and low waters in the order of time, alternating, at least two.</param>
    /// <exception cref="TideInputException">Fewer than two rows, out of order, two high or two low waters in a row, a high water that is not higher than the low water beside it, or no number.</exception>
    public TableTide(IReadOnlyList<TideExtreme> waters)
    {
        ArgumentNullException.ThrowIfNull(waters);
        Check(waters);
        Waters = [.. waters];
        Valid = new Interval(waters[0].Time, waters[^1].Time);
        knots = HalfCosines.Through([.. waters.Select(water => (JulianDay.DaysFromJ2000(water.Time), water.Metres))]);
    }

    /// <summary>The rows.</summary>
    public IReadOnlyList<TideExtreme> Waters { get; }

    /// <inheritdoc/>
    public override string Method => string.Create(CultureInfo.InvariantCulture, $"a table of {Waters.Count} high and low waters, half a cosine between them");

    /// <inheritdoc/>
    public override NodalModel? Model => null;

    /// <summary>From the first row to the last.</summary>
    public override Interval Valid { get; }

    private protected override TideCurve Curve(Instant from, Instant to) => new(from, to, knots, leastRiseMetres: 0);

    private static void Check(IReadOnlyList<TideExtreme> waters)
    {
        if (waters.Count < 2)
            throw new TideInputException($"A table needs at least a high and a low water, and it has {(waters.Count == 0 ? "none" : "one")}. Between them lies the tide: give two rows or more.");
        for (var i = 0; i < waters.Count; i++)
        {
            var water = waters[i];
            if (!double.IsFinite(water.Metres))
                throw new TideInputException($"{Named(i, water)} has no height. Give metres above chart datum.");
            if (i == 0) continue;
            var before = waters[i - 1];
            if (water.Time <= before.Time)
                throw new TideInputException($"{Named(i, water)} is not later than the row before, {before.Time:g}. Put the rows in the order of time, each once.");
            if (water.IsHigh == before.IsHigh)
                throw new TideInputException($"{Named(i, water)} is a {(water.IsHigh ? "high" : "low")} water after another. What the water does between them is not known: add the {(water.IsHigh ? "low" : "high")} water that is missing, or take one of the two out.");
            if (water.Metres > before.Metres != water.IsHigh)
                throw new TideInputException(string.Create(CultureInfo.InvariantCulture, $"{Named(i, water)} stands at {water.Metres} m and the {(before.IsHigh ? "high" : "low")} water before it at {before.Metres} m. A high water is the higher of two: look whether high and low are changed over, or a figure is."));
        }
    }

    private static string Named(int index, TideExtreme water) =>
        string.Create(CultureInfo.InvariantCulture, $"Row {index + 1}, {water.Time:g},");
}
