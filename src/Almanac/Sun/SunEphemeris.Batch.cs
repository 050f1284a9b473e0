using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Sun;

// Many instants of one place: one pass a day of the ephemeris, several instants at once. Within a day the turn of the
// Earth is a phasor multiplied on, the rest are parabolas; the scalar form of the same is SunPath. Eight lanes are halved
// by the compiler where the machine has no such wide registers.
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
            if (count >= 2 * Vector512<double>.Count)
            {
                count -= count % Vector512<double>.Count;
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
        var lanes = Vector512<double>.Count;
        var (a0, a1, a2) = Parabola(s.A0, s.A1, s.A2, s.A3);
        var (b0, b1, b2) = Parabola(s.B0, s.B1, s.B2, s.B3);
        var (c0, c1, c2) = Parabola(s.C0, s.C1, s.C2, s.C3);
        // Over one day the parallax changes by less than a millionth of a degree.
        var parallax = s.Parallax0 + s.Parallax1 / 2;
        double siteNorth = parallax * path.SiteNorth, siteUp = parallax * path.SiteUp;

        Span<double> cosines = stackalloc double[lanes], sines = stackalloc double[lanes], fractions = stackalloc double[lanes];
        var (sinStep, cosStep) = Math.SinCos(SunPath.TurnRadiansPerDay * step);
        (sines[0], cosines[0]) = Math.SinCos(SunPath.TurnRadiansPerDay * (days - Math.Floor(days)) + path.LongitudeRadians);
        fractions[0] = u;
        for (var lane = 1; lane < lanes; lane++)
        {
            cosines[lane] = cosines[lane - 1] * cosStep - sines[lane - 1] * sinStep;
            sines[lane] = sines[lane - 1] * cosStep + cosines[lane - 1] * sinStep;
            fractions[lane] = u + lane * step;
        }

        Vector512<double> cos = Vector512.Create<double>(cosines), sin = Vector512.Create<double>(sines), fraction = Vector512.Create<double>(fractions);
        var (sinTurn, cosTurn) = Math.SinCos(SunPath.TurnRadiansPerDay * lanes * step);
        Vector512<double> turnCos = Vector512.Create(cosTurn), turnSin = Vector512.Create(sinTurn), fractionStep = Vector512.Create(lanes * step);
        Vector512<double> va0 = Vector512.Create(a0), va1 = Vector512.Create(a1), va2 = Vector512.Create(a2), vb0 = Vector512.Create(b0), vb1 = Vector512.Create(b1), vb2 = Vector512.Create(b2);
        Vector512<double> n0 = Vector512.Create(path.CosLatitude * c0 - siteNorth), n1 = Vector512.Create(path.CosLatitude * c1), n2 = Vector512.Create(path.CosLatitude * c2);
        Vector512<double> u0 = Vector512.Create(path.SinLatitude * c0 - siteUp), u1 = Vector512.Create(path.SinLatitude * c1), u2 = Vector512.Create(path.SinLatitude * c2);
        Vector512<double> onNorth = Vector512.Create(-path.SinLatitude), onUp = Vector512.Create(path.CosLatitude), stretchNorth = Vector512.Create(siteNorth), stretchUp = Vector512.Create(siteUp);
        var one = Vector512<double>.One;
        // The three are equally long (checked where they came in), and the loop ends before their end.
        ref var toEast = ref MemoryMarshal.GetReference(east);
        ref var toNorth = ref MemoryMarshal.GetReference(north);
        ref var toUp = ref MemoryMarshal.GetReference(up);

        for (var i = 0; i + lanes <= east.Length; i += lanes)
        {
            var a = Vector512.FusedMultiplyAdd(Vector512.FusedMultiplyAdd(va2, fraction, va1), fraction, va0);
            var b = Vector512.FusedMultiplyAdd(Vector512.FusedMultiplyAdd(vb2, fraction, vb1), fraction, vb0);
            var meridian = Vector512.FusedMultiplyAdd(a, cos, -(b * sin));
            var west = Vector512.FusedMultiplyAdd(a, sin, b * cos);
            var y = Vector512.FusedMultiplyAdd(onNorth, meridian, Vector512.FusedMultiplyAdd(Vector512.FusedMultiplyAdd(n2, fraction, n1), fraction, n0));
            var z = Vector512.FusedMultiplyAdd(onUp, meridian, Vector512.FusedMultiplyAdd(Vector512.FusedMultiplyAdd(u2, fraction, u1), fraction, u0));
            // Brings the length back to one, to a few billionths.
            var stretch = Vector512.FusedMultiplyAdd(z, stretchUp, Vector512.FusedMultiplyAdd(y, stretchNorth, one));
            (-west * stretch).StoreUnsafe(ref toEast, (nuint)i);
            (y * stretch).StoreUnsafe(ref toNorth, (nuint)i);
            (z * stretch).StoreUnsafe(ref toUp, (nuint)i);

            (cos, sin) = (Vector512.FusedMultiplyAdd(cos, turnCos, -(sin * turnSin)), Vector512.FusedMultiplyAdd(sin, turnCos, cos * turnSin));
            fraction += fractionStep;
        }
    }

    /// <summary>The parabola nearest to a cubic over 0…1: x³ becomes 3x²/2 − 9x/16 + 1/32 (Chebyshev), here good to 1e-8.</summary>
    private static (double, double, double) Parabola(double c0, double c1, double c2, double c3) =>
        (c0 + c3 / 32, c1 - c3 * 9 / 16, c2 + c3 * 3 / 2);
}
