using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// Sums the constituents at even knots. Corrections and arguments are taken at marks ten days apart, counted from J2000
/// whatever the span; between two marks ln f, u and V run straight, so that each constituent is one growing or shrinking
/// cosine there and nothing jumps at a mark. Knots come in blocks: one arrow a constituent and block, turned by a table.
/// </summary>
internal static class HarmonicKnots
{
    internal const int DaysBetweenMarks = 10;
    private const double Degree = Math.PI / 180;
    private const double WidestStepDays = 1.0 / 96;
    // What the cubics between knots may miss; see WorstCubic.
    private const double MostCubicMetres = 0.0001;
    // Knots before and after the span, for the waters next to it.
    private const double MarginDays = 2;

    internal static TideCurve Over(HarmonicTide tide, Instant from, Instant to) =>
        new(from, to, Between(tide, JulianDay.DaysFromJ2000(from) - MarginDays, JulianDay.DaysFromJ2000(to) + MarginDays), TideCurve.LeastRiseMetres);

    internal static TideKnots Between(HarmonicTide tide, double from, double to)
    {
        var waves = tide.Constants.Where(constant => constant.AmplitudeMetres > 0).ToArray();
        var step = StepOf(waves);
        var blockDays = TideKernel.BlockKnots * step;
        long firstBlock = (long)Math.Floor(from / blockDays), lastBlock = (long)Math.Floor(to / blockDays);
        var count = checked((int)((lastBlock - firstBlock + 1) * TideKernel.BlockKnots));
        // Every block fills its part.
        double[] metres = GC.AllocateUninitializedArray<double>(count), slopes = GC.AllocateUninitializedArray<double>(count);

        var blocksBetweenMarks = (int)Math.Round(DaysBetweenMarks / blockDays);
        var sum = new TideSum(waves.Length);
        var mark = Mark.At(FloorDivide(firstBlock, blocksBetweenMarks), waves, tide.Model!.Value);
        for (var block = firstBlock; block <= lastBlock;)
        {
            var next = Mark.At(mark.Index + 1, waves, tide.Model!.Value);
            sum.Begin(waves, mark, next, step, block * blockDays);
            for (; block <= lastBlock && block < next.Index * blocksBetweenMarks; block++)
            {
                var at = (int)(block - firstBlock) * TideKernel.BlockKnots;
                sum.Block(tide.MeanSeaLevelMetres, metres.AsSpan(at, TideKernel.BlockKnots), slopes.AsSpan(at, TideKernel.BlockKnots));
            }

            mark = next;
        }

        return new TideKnots(firstBlock * blockDays, step, null, metres, slopes);
    }

    /// <summary>15 minutes, halved until the cubics miss less than 0.1 mm in the worst case.</summary>
    private static double StepOf(HarmonicConstant[] waves)
    {
        var step = WidestStepDays;
        while (step > WidestStepDays / 16 && WorstCubic(waves, step) > MostCubicMetres) step /= 2;
        return step;
    }

    /// <summary>Largest error of a cubic Hermite, h⁴/384 of the fourth derivative (de Boor), all constituents at their worst together and half as large again.</summary>
    private static double WorstCubic(HarmonicConstant[] waves, double step) =>
        waves.Sum(wave => 1.5 * wave.AmplitudeMetres * Math.Pow(wave.Constituent.SpeedDegreesPerHour * 24 * Degree * step, 4) / 384);

    private static long FloorDivide(long number, int by) => (long)Math.Floor((double)number / by);

    /// <summary>V − G, ln f and u of each wave at one mark, radians.</summary>
    internal sealed record Mark(long Index, double[] Argument, NodeFactor[] Node)
    {
        internal double Days => Index * DaysBetweenMarks;

        internal static Mark At(long index, HarmonicConstant[] waves, NodalModel model)
        {
            var arguments = AstronomicalArguments.At(index * DaysBetweenMarks);
            var factors = NodeFactors.At(model, arguments);
            var argument = new double[waves.Length];
            var node = new NodeFactor[waves.Length];
            for (var i = 0; i < waves.Length; i++)
            {
                argument[i] = (arguments.Of(waves[i].Constituent.Doodson) - waves[i].PhaseDegrees) * Degree;
                node[i] = factors.Of(waves[i].Constituent);
            }

            return new Mark(index, argument, node);
        }
    }
}
