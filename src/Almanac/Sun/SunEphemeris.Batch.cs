using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Sun;

public sealed partial class SunEphemeris
{
    /// <summary>
    /// Airless directions of the sun's centre at even steps, parallax counted: the same numbers as <see cref="SunPath.At(Instant)"/>.
    /// Nothing is allocated.
    /// </summary>
    /// <param name="position">Where.</param>
    /// <param name="start">The first instant.</param>
    /// <param name="step">From one instant to the next, above zero.</param>
    /// <param name="east">Takes the parts towards the east; its length says how many.</param>
    /// <param name="north">Takes the parts towards true north; as long as <paramref name="east"/>.</param>
    /// <param name="up">Takes the parts towards the zenith; as long as <paramref name="east"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An instant lies outside the span, or the step is not above zero.</exception>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    public void Directions(Position position, Instant start, Duration step, Span<double> east, Span<double> north, Span<double> up)
    {
        if (north.Length != east.Length || up.Length != east.Length)
            throw new ArgumentException("East, north and up are equally long.", nameof(east));
        var (first, stepDays) = CheckSteps(start, step, east.Length);
        var path = SeenFrom(position);
        for (var i = 0; i < east.Length; i++)
            (east[i], north[i], up[i]) = path.At(first + i * stepDays);
    }

    /// <summary>Azimuths and airless altitudes at even steps, degrees. Nothing is allocated.</summary>
    /// <param name="position">Where.</param>
    /// <param name="start">The first instant.</param>
    /// <param name="step">From one instant to the next, above zero.</param>
    /// <param name="azimuthDegrees">Takes degrees clockwise from true north, [0, 360); its length says how many.</param>
    /// <param name="altitudeDegrees">Takes degrees above level; as long as <paramref name="azimuthDegrees"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An instant lies outside the span, or the step is not above zero.</exception>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    public void AzimuthsAltitudes(Position position, Instant start, Duration step, Span<float> azimuthDegrees, Span<float> altitudeDegrees)
    {
        if (altitudeDegrees.Length != azimuthDegrees.Length)
            throw new ArgumentException("Azimuths and altitudes are equally long.", nameof(altitudeDegrees));
        var (first, stepDays) = CheckSteps(start, step, azimuthDegrees.Length);
        var path = SeenFrom(position);
        for (var i = 0; i < azimuthDegrees.Length; i++)
        {
            var sun = path.At(first + i * stepDays);
            azimuthDegrees[i] = (float)sun.AzimuthDegrees;
            altitudeDegrees[i] = (float)sun.AltitudeDegrees;
        }
    }

    private (double FirstDays, double StepDays) CheckSteps(Instant start, Duration step, int count)
    {
        if (step <= Duration.Zero)
            throw new ArgumentOutOfRangeException(nameof(step), step, "A step leads forward in time.");
        if (count > 0) DaysOf(start + step * (count - 1));
        return (DaysOf(start), step.TotalDays);
    }
}
