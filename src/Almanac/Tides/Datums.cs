using System.Globalization;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// The levels of one station. Heights on two of them are compared through their offset or not at all: an unknown level gives
/// <c>null</c>, never zero.
/// </summary>
/// <param name="Metres">Each known level above one common zero (the gauge's, as a rule), metres. Only differences mean anything.</param>
/// <param name="ChartDatumIs">Which of them is the station's chart datum; null where that is not known.</param>
public sealed record Datums(IReadOnlyDictionary<Datum, double> Metres, Datum? ChartDatumIs)
{
    /// <summary>Nothing known.</summary>
    public static Datums Unknown { get; } = new(new Dictionary<Datum, double>(), null);

    /// <summary>How far one level lies above another, metres; null where either is unknown.</summary>
    /// <param name="upper">The level asked for.</param>
    /// <param name="lower">The level it is counted from.</param>
    public double? MetresBetween(Datum upper, Datum lower)
    {
        if (upper == lower) return 0;
        return Of(upper) is { } above && Of(lower) is { } below ? above - below : null;
    }

    /// <summary>A height turned from one datum to another, metres; null where their offset is unknown.</summary>
    /// <param name="heightMetres">Height above <paramref name="from"/>.</param>
    /// <param name="from">What it is counted from.</param>
    /// <param name="to">What it shall be counted from.</param>
    public double? Convert(double heightMetres, Datum from, Datum to) => MetresBetween(from, to) is { } offset ? heightMetres + offset : null;

    /// <summary>Mean sea level above chart datum, metres: the z0 of <see cref="HarmonicTide"/>; null where unknown.</summary>
    public double? MeanSeaLevelAboveChartDatum => MetresBetween(Datum.MeanSeaLevel, Datum.ChartDatum);

    /// <summary>The level as stored, above the common zero; null where unknown.</summary>
    private double? Of(Datum datum)
    {
        if (Metres.TryGetValue(datum, out var metres)) return double.IsFinite(metres) ? metres : throw Unusable(datum, metres);
        return datum == Datum.ChartDatum && ChartDatumIs is { } real && real != Datum.ChartDatum ? Of(real) : null;
    }

    private static TideInputException Unusable(Datum datum, double metres) =>
        new(string.Create(CultureInfo.InvariantCulture, $"The level {datum} is {metres}: a level is a number of metres. Leave it out where it is not known."));
}
