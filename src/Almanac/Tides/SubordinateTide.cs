using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// The tide of a place as differences from a reference station: the reference's high and low waters, in the reference's own
/// chart datum, moved in time and height. Serves a subordinate station of the tables, and a location's own corrections.
/// </summary>
public sealed class SubordinateTide : TideSource
{
    // Offsets of the tables stay within a few hours; three days more give each end a water before and after it.
    private const double MostMinutes = 24 * 60;
    private static readonly Duration Margin = Duration.FromDays(3);
    private readonly BetweenWaters between;

    /// <summary>Takes a reference and the offsets.</summary>
    /// <param name="reference">The reference station above its own chart datum: a ratio is of that height, never of one above mean sea level.</param>
    /// <param name="offsets">Minutes and heights for high and low waters.</param>
    /// <param name="between">The curve between the waters.</param>
    /// <exception cref="TideInputException">An offset is no number, more than a day, or a ratio is not above zero.</exception>
    public SubordinateTide(TideSource reference, TideOffsets offsets, BetweenWaters between = BetweenWaters.ReferenceCurve)
    {
        ArgumentNullException.ThrowIfNull(reference);
        if (!double.IsFinite(offsets.HighMinutes) || !double.IsFinite(offsets.LowMinutes) || !double.IsFinite(offsets.High) || !double.IsFinite(offsets.Low))
            throw new TideInputException("An offset from the reference station is not a number. Give minutes for time, and a ratio or metres for height.");
        if (Math.Abs(offsets.HighMinutes) > MostMinutes || Math.Abs(offsets.LowMinutes) > MostMinutes)
            throw new TideInputException(FormattableString.Invariant($"Time offsets of {offsets.HighMinutes} and {offsets.LowMinutes} minutes reach further than a day. Minutes are meant, not seconds: look whether the unit is right."));
        if (offsets.Kind == HeightOffset.Ratio && (offsets.High <= 0 || offsets.Low <= 0))
            throw new TideInputException(FormattableString.Invariant($"Height ratios of {offsets.High} and {offsets.Low}: a ratio is above zero. If metres are meant, say that the offset is fixed."));
        (Reference, Offsets, this.between) = (reference, offsets, between);
    }

    /// <summary>The station it hangs on.</summary>
    public TideSource Reference { get; }

    /// <summary>Its offsets.</summary>
    public TideOffsets Offsets { get; }

    /// <inheritdoc/>
    public override string Method =>
        $"high and low waters of a reference station ({Reference.Method}) moved by time and height offsets, {(between == BetweenWaters.HalfCosine ? "half a cosine" : "the reference's own curve, stretched,")} between them";

    /// <inheritdoc/>
    public override NodalModel? Model => Reference.Model;

    /// <summary>What the reference answers for, shorter by the larger time offset at both ends.</summary>
    public override Interval Valid
    {
        get
        {
            var reach = Duration.FromMinutes(Math.Max(Math.Abs(Offsets.HighMinutes), Math.Abs(Offsets.LowMinutes)));
            Instant start = Reference.Valid.Start + reach, end = Reference.Valid.End - reach;
            return start < end ? new Interval(start, end) : new Interval(start, start);
        }
    }

    private protected override TideCurve Curve(Instant from, Instant to)
    {
        var reference = Reference.Between(Instant.Max(Reference.Valid.Start, from - Margin), Instant.Min(Reference.Valid.End, to + Margin));
        return new TideCurve(from, to, StretchedKnots.Of(reference, Offsets, between), leastRiseMetres: 0);
    }
}
