using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// The tide over one span, made ready for many cheap questions; immutable, for any number of threads. Heights are metres above
/// the datum of its source, chart datum as a rule. Between its knots (every 15 minutes or less) it is a cubic: within 0.1 mm
/// of the sum of all constituents with node corrections blended between ten-day marks, within 1 mm of the sum with corrections
/// of each instant.
/// </summary>
public sealed partial class TideCurve
{
    private const int FixedBytes = 600, WatersADay = 4, BytesOfWater = 48;

    private readonly TideKnots knots;
    private readonly double leastRiseMetres;
    private readonly Lazy<Waters> waters;

    internal TideCurve(Instant from, Instant to, TideKnots knots, double leastRiseMetres)
    {
        (From, To, this.knots, this.leastRiseMetres) = (from, to, knots, leastRiseMetres);
        waters = new Lazy<Waters>(() => Waters.Of(knots, leastRiseMetres));
    }

    /// <summary>
    /// A rise or fall smaller than this between two waters is a stand, not a tide: the pair is left out, the smallest first, so
    /// that what stays alternates. A judgement: the accuracy of constants and arguments. Double waters that differ by more stay.
    /// </summary>
    public const double LeastRiseMetres = 0.01;

    /// <summary>First instant that may be asked for.</summary>
    public Instant From { get; }

    /// <summary>Last instant that may be asked for.</summary>
    public Instant To { get; }

    /// <summary>What it takes in memory, bytes, its high and low waters counted: for whoever keeps curves.</summary>
    public long Bytes => FixedBytes + (long)knots.Count * (knots.Times is null ? 2 : 3) * sizeof(double) + (long)((To - From).TotalDays * WatersADay) * BytesOfWater;

    /// <summary>Height, metres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public double MetresAt(Instant instant)
    {
        var days = DaysOf(instant);
        return knots.Piece(knots.Before(days)).Metres(days);
    }

    /// <summary>Whether the water rises; at the very turn, whether it has risen.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public bool RisingAt(Instant instant) => MetresPerHourAt(instant) > 0;

    /// <summary>How fast the water rises, metres an hour; below zero where it falls.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public double MetresPerHourAt(Instant instant)
    {
        var days = DaysOf(instant);
        return knots.Piece(knots.Before(days)).Slope(days) / 24;
    }

    /// <summary>Heights at even steps, metres; nothing is allocated.</summary>
    /// <param name="start">The first instant.</param>
    /// <param name="step">From one instant to the next, above zero.</param>
    /// <param name="metres">Takes the heights; its length says how many.</param>
    /// <exception cref="ArgumentOutOfRangeException">An instant lies outside the span, or the step is not above zero.</exception>
    public void Metres(Instant start, Duration step, Span<double> metres)
    {
        if (step <= Duration.Zero)
            throw new ArgumentOutOfRangeException(nameof(step), step, "A step leads forward in time.");
        if (metres.Length == 0) return;
        DaysOf(start + step * (metres.Length - 1));
        TideKernel.Sample(knots, DaysOf(start), step.TotalDays, metres);
    }

    /// <summary>The same tide counted from another datum.</summary>
    internal TideCurve Shifted(double metres) => new(From, To, knots.Shifted(metres), leastRiseMetres);

    internal TideKnots Knots => knots;

    internal Waters AllWaters => waters.Value;

    private double DaysOf(Instant instant)
    {
        if (instant < From || instant > To)
            throw new ArgumentOutOfRangeException(nameof(instant), instant, FormattableString.Invariant($"This curve covers {From} to {To}."));
        return JulianDay.DaysFromJ2000(instant);
    }
}
