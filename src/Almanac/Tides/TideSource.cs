using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// A place's tide as it can be asked: from constituents, from a reference station with offsets, or from a table. Immutable;
/// any number of threads may ask. What comes out is the tide of average weather: wind and air pressure change height and
/// time, by 10 to 50 cm as a rule. Not for navigation.
/// </summary>
public abstract class TideSource
{
    /// <summary>A year of tide is asked at a time; more at once would only fill the memory.</summary>
    internal const int MostDays = 1200;

    private protected TideSource() { }

    /// <summary>How the tide is computed, in words for the page: nodal model, offsets, the curve between the waters.</summary>
    public abstract string Method { get; }

    /// <summary>The nodal model behind it; null where there is none (a table).</summary>
    public abstract NodalModel? Model { get; }

    /// <summary>The time for which it answers.</summary>
    public abstract Interval Valid { get; }

    /// <summary>Whether the whole span can be asked for.</summary>
    public bool Covers(Instant from, Instant to) => from <= to && from >= Valid.Start && to <= Valid.End;

    /// <summary>
    /// The tide over one span, made ready for many cheap questions: about a millisecond for a year of 37 constituents.
    /// Whatever the span, the same instant has the same height.
    /// </summary>
    /// <param name="from">First instant that will be asked for.</param>
    /// <param name="to">Last one; at most 1,200 days later.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span is turned round, too long, or leaves <see cref="Valid"/>.</exception>
    public TideCurve Between(Instant from, Instant to)
    {
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A span of time ends no earlier than it begins.");
        if (to - from > Duration.FromDays(MostDays))
            throw new ArgumentOutOfRangeException(nameof(to), to, "A curve covers at most 1,200 days; ask for a year at a time.");
        if (!Covers(from, to))
            throw new ArgumentOutOfRangeException(nameof(from), from, FormattableString.Invariant($"This tide is known from {Valid.Start} to {Valid.End}; the span {from} to {to} leaves that."));
        return Curve(from, to);
    }

    private protected abstract TideCurve Curve(Instant from, Instant to);
}
