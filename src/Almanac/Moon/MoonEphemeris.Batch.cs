using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Moon;

// Many instants of one place: one pass a segment, several instants at once, the turn of the Earth as a phasor multiplied
// on; the scalar form of the same is MoonPath. Eight lanes are halved by the compiler where registers are narrower.
public sealed partial class MoonEphemeris
{
    private const int Block = 512;

    /// <summary>
    /// Airless directions of the moon's centre at even steps, parallax counted: those of <see cref="MoonPath.At(Instant)"/>
    /// within 0.00001 degrees. Nothing is allocated.
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

    private void Directions(MoonPath path, double first, double step, Span<double> east, Span<double> north, Span<double> up)
    {
        for (var done = 0; done < east.Length;)
        {
            var days = first + done * step;
            ref readonly var segment = ref SegmentAt(days, out var u);
            var count = Math.Min(east.Length - done, (int)Math.Min(int.MaxValue / 2, Math.Ceiling((1 - u) / (step * MoonSegment.PerDay))));
            // Not worth filling the lanes for fewer.
            if (count >= 2 * Vector512<double>.Count)
            {
                count -= count % Vector512<double>.Count;
                WithinSegment(in segment, path, days, u, step, east.Slice(done, count), north.Slice(done, count), up.Slice(done, count));
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

    private static void WithinSegment(in MoonSegment s, in MoonPath path, double days, double u, double step, Span<double> east, Span<double> north, Span<double> up)
    {
        var lanes = Vector512<double>.Count;
        Span<double> cosines = stackalloc double[lanes], sines = stackalloc double[lanes], fractions = stackalloc double[lanes];
        var (sinStep, cosStep) = Math.SinCos(MoonPath.TurnRadiansPerDay * step);
        (sines[0], cosines[0]) = Math.SinCos(MoonPath.TurnRadiansPerDay * (days - Math.Floor(days)) + path.LongitudeRadians);
        fractions[0] = u;
        for (var lane = 1; lane < lanes; lane++)
        {
            cosines[lane] = cosines[lane - 1] * cosStep - sines[lane - 1] * sinStep;
            sines[lane] = sines[lane - 1] * cosStep + cosines[lane - 1] * sinStep;
            fractions[lane] = u + lane * step * MoonSegment.PerDay;
        }

        Vector512<double> cos = Vector512.Create<double>(cosines), sin = Vector512.Create<double>(sines), fraction = Vector512.Create<double>(fractions);
        var (sinTurn, cosTurn) = Math.SinCos(MoonPath.TurnRadiansPerDay * lanes * step);
        Vector512<double> turnCos = Vector512.Create(cosTurn), turnSin = Vector512.Create(sinTurn), fractionStep = Vector512.Create(lanes * step * MoonSegment.PerDay);
        Vector512<double> a0 = Vector512.Create(s.A0), a1 = Vector512.Create(s.A1), a2 = Vector512.Create(s.A2), a3 = Vector512.Create(s.A3);
        Vector512<double> b0 = Vector512.Create(s.B0), b1 = Vector512.Create(s.B1), b2 = Vector512.Create(s.B2), b3 = Vector512.Create(s.B3);
        Vector512<double> c0 = Vector512.Create(s.C0), c1 = Vector512.Create(s.C1), c2 = Vector512.Create(s.C2), c3 = Vector512.Create(s.C3);
        Vector512<double> sinLatitude = Vector512.Create(path.SinLatitude), cosLatitude = Vector512.Create(path.CosLatitude);
        Vector512<double> siteNorth = Vector512.Create(path.SiteNorth), siteUp = Vector512.Create(path.SiteUp);
        // The three are equally long (checked where they came in), and the loop ends before their end.
        ref var toEast = ref MemoryMarshal.GetReference(east);
        ref var toNorth = ref MemoryMarshal.GetReference(north);
        ref var toUp = ref MemoryMarshal.GetReference(up);

        for (var i = 0; i + lanes <= east.Length; i += lanes)
        {
            var a = Cubic(a0, a1, a2, a3, fraction);
            var b = Cubic(b0, b1, b2, b3, fraction);
            var c = Cubic(c0, c1, c2, c3, fraction);
            var meridian = Vector512.FusedMultiplyAdd(a, cos, -(b * sin));
            var x = -Vector512.FusedMultiplyAdd(a, sin, b * cos);
            var y = Vector512.FusedMultiplyAdd(cosLatitude, c, -Vector512.FusedMultiplyAdd(sinLatitude, meridian, siteNorth));
            var z = Vector512.FusedMultiplyAdd(sinLatitude, c, Vector512.FusedMultiplyAdd(cosLatitude, meridian, -siteUp));
            var shrink = Vector512<double>.One / Vector512.Sqrt(Vector512.FusedMultiplyAdd(x, x, Vector512.FusedMultiplyAdd(y, y, z * z)));
            (x * shrink).StoreUnsafe(ref toEast, (nuint)i);
            (y * shrink).StoreUnsafe(ref toNorth, (nuint)i);
            (z * shrink).StoreUnsafe(ref toUp, (nuint)i);

            (cos, sin) = (Vector512.FusedMultiplyAdd(cos, turnCos, -(sin * turnSin)), Vector512.FusedMultiplyAdd(sin, turnCos, cos * turnSin));
            fraction += fractionStep;
        }
    }

    private static Vector512<double> Cubic(Vector512<double> c0, Vector512<double> c1, Vector512<double> c2, Vector512<double> c3, Vector512<double> x) =>
        Vector512.FusedMultiplyAdd(Vector512.FusedMultiplyAdd(Vector512.FusedMultiplyAdd(c3, x, c2), x, c1), x, c0);
}
