using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>The same tide counted from another datum.</summary>
public sealed class ShiftedTide : TideSource
{
    private readonly TideSource source;
    private readonly double metres;

    /// <summary>Adds a constant to each height.</summary>
    /// <param name="source">The tide.</param>
    /// <param name="metres">How far its own datum lies above the new one, see <see cref="Datums.MetresBetween"/>.</param>
    /// <exception cref="TideInputException">The offset is no number.</exception>
    public ShiftedTide(TideSource source, double metres)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (!double.IsFinite(metres))
            throw new TideInputException("The offset between the two datums is not a number, so heights cannot be turned from one to the other. Give metres.");
        (this.source, this.metres) = (source, metres);
    }

    /// <inheritdoc/>
    public override string Method => FormattableString.Invariant($"{source.Method}; heights moved by {metres:+0.000;-0.000;0} m to another datum");

    /// <inheritdoc/>
    public override NodalModel? Model => source.Model;

    /// <inheritdoc/>
    public override Interval Valid => source.Valid;

    private protected override TideCurve Curve(Instant from, Instant to) => source.Between(from, to).Shifted(metres);
}
