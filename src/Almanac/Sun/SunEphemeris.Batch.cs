using System.Numerics;
using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Sun;

// Many instants of one place: one pass a day of the ephemeris, several instants at once. Within a day the turn of the
// Earth is a phasor multiplied on, the rest are parabolas; the scalar form of the same is SunPath.
public sealed partial class SunEphemeris
{
    private const int Block = 512;

    /// <summary>
    /// Airless directions of the sun's centre at even steps, parallax counted: those of <see cref="SunPath.At(Instant)"/>
    /// within 0.000002 degrees. Nothing is allocated.
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
        Directions(SeenFrom(position), first, stepDays, east, north, up);
    }

    /// <summary>
    /// Azimuths and airless altitudes at even steps, degrees, within 0.0001 degrees of arc of <see cref="At"/>. Nothing is
    /// allocated.
    /// </summary>
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
        Span<double> east = stackalloc double[Block], north = stackalloc double[Block], up = stackalloc double[Block];
        for (var done = 0; done < azimuthDegrees.Length; done += Block)
        {
            var count = Math.Min(Block, azimuthDegrees.Length - done);
            Directions(path, first + done * stepDays, stepDays, east[..count], north[..count], up[..count]);
            SkyAngles.Degrees(east[..count], north[..count], up[..count], azimuthDegrees.Slice(done, count), altitudeDegrees.Slice(done, count));
        }
    }

    private (double FirstDays, double StepDays) CheckSteps(Instant start, Duration step, int count)
    {
        if (step <= Duration.Zero)
            throw new ArgumentOutOfRangeException(nameof(step), step, "A step leads forward in time.");
        if (count > 0) DaysOf(start + step * (count - 1));
        return (DaysOf(start), step.TotalDays);
    }

    private void Directions(SunPath path, double first, double step, Span<double> east, Span<double> north, Span<double> up)
    {
        for (var done = 0; done < east.Length;)
        {
            var days = first + done * step;
            ref readonly var segment = ref SegmentAt(days, out var u);
            var count = Math.Min(east.Length - done, (int)Math.Min(int.MaxValue / 2, Math.Ceiling((1 - u) / step)));
            // Not worth filling the lanes for fewer.
            if (count >= 2 * Vector<double>.Count)
            {
                count -= count % Vector<double>.Count;
                WithinDay(in segment, path, days, u, step, east.Slice(done, count), north.Slice(done, count), up.Slice(done, count));
            }
            else
            {
                count = Math.Max(1, count);
                for (var i = done; i < done + count; i++)
                    (east[i], north[i], up[i]) = path.At(first + i * step);
            }

            done += count;
        }
    }

    private static void WithinDay(in SunSegment s, in SunPath path, double days, double u, double step, Span<double> east, Span<double> north, Span<double> up)
    {
        var lanes = Vector<double>.Count;
        var (a0, a1, a2) = Parabola(s.A0, s.A1, s.A2, s.A3);
        var (b0, b1, b2) = Parabola(s.B0, s.B1, s.B2, s.B3);
        var (c0, c1, c2) = Parabola(s.C0, s.C1, s.C2, s.C3);
        // Over one day the parallax changes by less than a millionth of a degree.
        var parallax = s.Parallax0 + s.Parallax1 / 2;
        double siteNorth = parallax * path.SiteNorth, siteUp = parallax * path.SiteUp;

        Span<double> cosines = stackalloc double[lanes], sines = stackalloc double[lanes], fractions = stackalloc double[lanes];
        for (var lane = 0; lane < lanes; lane++)
        {
            (sines[lane], cosines[lane]) = Math.SinCos(SunPath.TurnRadiansPerDay * (days - Math.Floor(days) + lane * step) + path.LongitudeRadians);
            fractions[lane] = u + lane * step;
        }

        Vector<double> cos = new(cosines), sin = new(sines), fraction = new(fractions);
        var (sinTurn, cosTurn) = Math.SinCos(SunPath.TurnRadiansPerDay * lanes * step);
        Vector<double> turnCos = new(cosTurn), turnSin = new(sinTurn), fractionStep = new(lanes * step);
        Vector<double> va0 = new(a0), va1 = new(a1), va2 = new(a2), vb0 = new(b0), vb1 = new(b1), vb2 = new(b2);
        Vector<double> n0 = new(path.CosLatitude * c0 - siteNorth), n1 = new(path.CosLatitude * c1), n2 = new(path.CosLatitude * c2);
        Vector<double> u0 = new(path.SinLatitude * c0 - siteUp), u1 = new(path.SinLatitude * c1), u2 = new(path.SinLatitude * c2);
        Vector<double> onNorth = new(-path.SinLatitude), onUp = new(path.CosLatitude), stretchNorth = new(siteNorth), stretchUp = new(siteUp);
        var one = Vector<double>.One;

        for (var i = 0; i + lanes <= east.Length; i += lanes)
        {
            var a = Vector.FusedMultiplyAdd(Vector.FusedMultiplyAdd(va2, fraction, va1), fraction, va0);
            var b = Vector.FusedMultiplyAdd(Vector.FusedMultiplyAdd(vb2, fraction, vb1), fraction, vb0);
            var meridian = Vector.FusedMultiplyAdd(a, cos, -(b * sin));
            var west = Vector.FusedMultiplyAdd(a, sin, b * cos);
            var y = Vector.FusedMultiplyAdd(onNorth, meridian, Vector.FusedMultiplyAdd(Vector.FusedMultiplyAdd(n2, fraction, n1), fraction, n0));
            var z = Vector.FusedMultiplyAdd(onUp, meridian, Vector.FusedMultiplyAdd(Vector.FusedMultiplyAdd(u2, fraction, u1), fraction, u0));
            // Brings the length back to one, to a few billionths.
            var stretch = Vector.FusedMultiplyAdd(z, stretchUp, Vector.FusedMultiplyAdd(y, stretchNorth, one));
            (-west * stretch).CopyTo(east[i..]);
            (y * stretch).CopyTo(north[i..]);
            (z * stretch).CopyTo(up[i..]);

            (cos, sin) = (Vector.FusedMultiplyAdd(cos, turnCos, -(sin * turnSin)), Vector.FusedMultiplyAdd(sin, turnCos, cos * turnSin));
            fraction += fractionStep;
        }
    }

    /// <summary>The parabola nearest to a cubic over 0…1: x³ becomes 3x²/2 − 9x/16 + 1/32 (Chebyshev), here good to 1e-8.</summary>
    private static (double, double, double) Parabola(double c0, double c1, double c2, double c3) =>
        (c0 + c3 / 32, c1 - c3 * 9 / 16, c2 + c3 * 3 / 2);
}
