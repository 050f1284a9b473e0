using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Foreshore.Almanac.Tides;

/// <summary>The two loops that take the time: sums of constituents at the knots, and heights of a curve at even steps.</summary>
internal static class TideKernel
{
    /// <summary>Knots of one block: four of the widest registers; the tables of 37 constituents then fit the first cache.</summary>
    internal const int BlockKnots = 32;

    /// <summary>An arrow is two numbers for the height and two for the slope.</summary>
    internal const int ArrowLength = 4;

    /// <summary>Adds up all waves at the knots of one block; several knots at once where the machine can, else one by one.</summary>
    internal static void Sum(ReadOnlySpan<double> cosines, ReadOnlySpan<double> sines, ReadOnlySpan<double> arrows, double metres0, Span<double> metres, Span<double> slopes)
    {
        if (Vector256.IsHardwareAccelerated) SumWide(cosines, sines, arrows, metres0, metres, slopes);
        else SumPlain(cosines, sines, arrows, metres0, metres, slopes);
    }

    // Eight lanes are halved by the compiler where the machine has no such wide registers.
    internal static void SumWide(ReadOnlySpan<double> cosines, ReadOnlySpan<double> sines, ReadOnlySpan<double> arrows, double metres0, Span<double> metres, Span<double> slopes)
    {
        var waves = arrows.Length / ArrowLength;
        if (cosines.Length < waves * BlockKnots || sines.Length < waves * BlockKnots || metres.Length < BlockKnots || slopes.Length < BlockKnots)
            throw new ArgumentException("A block is as long as its tables.", nameof(cosines));

        const int lanes = 8, half = BlockKnots / 2;
        ref double c = ref MemoryMarshal.GetReference(cosines), s = ref MemoryMarshal.GetReference(sines), a = ref MemoryMarshal.GetReference(arrows);
        ref double h = ref MemoryMarshal.GetReference(metres), v = ref MemoryMarshal.GetReference(slopes);
        for (nuint part = 0; part < BlockKnots; part += half)
        {
            Vector512<double> h0 = Vector512.Create(metres0), h1 = h0, v0 = Vector512<double>.Zero, v1 = v0;
            for (nuint wave = 0; wave < (nuint)waves; wave++)
            {
                nuint table = wave * BlockKnots + part, arrow = wave * ArrowLength;
                Vector512<double> x = Vector512.Create(System.Runtime.CompilerServices.Unsafe.Add(ref a, arrow)), y = Vector512.Create(-System.Runtime.CompilerServices.Unsafe.Add(ref a, arrow + 1));
                Vector512<double> dx = Vector512.Create(System.Runtime.CompilerServices.Unsafe.Add(ref a, arrow + 2)), dy = Vector512.Create(-System.Runtime.CompilerServices.Unsafe.Add(ref a, arrow + 3));
                Vector512<double> c0 = Vector512.LoadUnsafe(ref c, table), c1 = Vector512.LoadUnsafe(ref c, table + lanes), s0 = Vector512.LoadUnsafe(ref s, table), s1 = Vector512.LoadUnsafe(ref s, table + lanes);
                h0 = Vector512.FusedMultiplyAdd(y, s0, Vector512.FusedMultiplyAdd(x, c0, h0));
                h1 = Vector512.FusedMultiplyAdd(y, s1, Vector512.FusedMultiplyAdd(x, c1, h1));
                v0 = Vector512.FusedMultiplyAdd(dy, s0, Vector512.FusedMultiplyAdd(dx, c0, v0));
                v1 = Vector512.FusedMultiplyAdd(dy, s1, Vector512.FusedMultiplyAdd(dx, c1, v1));
            }

            h0.StoreUnsafe(ref h, part);
            h1.StoreUnsafe(ref h, part + lanes);
            v0.StoreUnsafe(ref v, part);
            v1.StoreUnsafe(ref v, part + lanes);
        }
    }

    internal static void SumPlain(ReadOnlySpan<double> cosines, ReadOnlySpan<double> sines, ReadOnlySpan<double> arrows, double metres0, Span<double> metres, Span<double> slopes)
    {
        metres[..BlockKnots].Fill(metres0);
        slopes[..BlockKnots].Clear();
        for (var wave = 0; wave < arrows.Length / ArrowLength; wave++)
        {
            var arrow = arrows.Slice(wave * ArrowLength, ArrowLength);
            for (var i = 0; i < BlockKnots; i++)
            {
                double cos = cosines[wave * BlockKnots + i], sin = sines[wave * BlockKnots + i];
                metres[i] += arrow[0] * cos - arrow[1] * sin;
                slopes[i] += arrow[2] * cos - arrow[3] * sin;
            }
        }
    }

    /// <summary>Heights at even steps: each piece's cubic once, then by Horner.</summary>
    internal static void Sample(TideKnots knots, double firstDays, double stepDays, Span<double> metres)
    {
        for (var done = 0; done < metres.Length;)
        {
            var days = firstDays + done * stepDays;
            var knot = knots.Before(days);
            double start = knots.TimeOf(knot), length = knots.TimeOf(knot + 1) - start;
            var (c0, c1, c2, c3) = knots.Piece(knot).Cubic;
            double u = (days - start) / length, du = stepDays / length;
            var count = (int)Math.Clamp(Math.Ceiling((1 - u) / du), 1, metres.Length - done);
            foreach (ref var height in metres.Slice(done, count))
            {
                height = c0 + u * (c1 + u * (c2 + u * c3));
                u += du;
            }

            done += count;
        }
    }
}
