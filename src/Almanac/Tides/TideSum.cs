namespace Foreshore.Almanac.Tides;

/// <summary>The waves between two marks, each as exp((growth + i·speed)·t), ready to be summed block by block.</summary>
internal sealed class TideSum(int count)
{
    // Turning tables of one block, counted from its middle; arrows of the block at hand, of height and of slope; and the turn to the next block.
    private readonly double[] cosines = new double[count * TideKernel.BlockKnots], sines = new double[count * TideKernel.BlockKnots];
    private readonly double[] arrows = new double[count * TideKernel.ArrowLength];
    private readonly (double Growth, double Speed, double NextCos, double NextSin)[] waves = new (double, double, double, double)[count];

    /// <summary>Makes ready for the blocks from one that begins at a time, days from J2000.</summary>
    internal void Begin(HarmonicConstant[] constants, HarmonicKnots.Mark from, HarmonicKnots.Mark to, double step, double firstBlockDays)
    {
        const double days = HarmonicKnots.DaysBetweenMarks;
        var middle = firstBlockDays - from.Days + (TideKernel.BlockKnots - 1) / 2.0 * step;
        for (var i = 0; i < count; i++)
        {
            var mean = constants[i].Constituent.SpeedDegreesPerHour * 24 * Math.PI / 180;
            // The two differences are whole turns and a little; the little is what mean motion and u add.
            var speed = mean + (Folded(to.Argument[i] - from.Argument[i] - mean * days) + Folded(to.Node[i].U - from.Node[i].U)) / days;
            var growth = (to.Node[i].LogF - from.Node[i].LogF) / days;

            var size = constants[i].AmplitudeMetres * Math.Exp(from.Node[i].LogF + growth * middle);
            var (sin, cos) = Math.SinCos(from.Argument[i] + from.Node[i].U + speed * middle);
            var (sinNext, cosNext) = Math.SinCos(speed * TideKernel.BlockKnots * step);
            var grow = Math.Exp(growth * TideKernel.BlockKnots * step);
            waves[i] = (growth, speed, cosNext * grow, sinNext * grow);
            Point(i, size * cos, size * sin);
            Fill(i, growth, speed, step);
        }
    }

    /// <summary>Heights and slopes of one block; then the arrows stand for the next.</summary>
    internal void Block(double meanSeaLevelMetres, Span<double> metres, Span<double> slopes)
    {
        TideKernel.Sum(cosines, sines, arrows, meanSeaLevelMetres, metres, slopes);
        for (var i = 0; i < count; i++)
        {
            double x = arrows[i * TideKernel.ArrowLength], y = arrows[i * TideKernel.ArrowLength + 1];
            var (_, _, cos, sin) = waves[i];
            Point(i, x * cos - y * sin, x * sin + y * cos);
        }
    }

    private void Point(int i, double x, double y)
    {
        var (growth, speed, _, _) = waves[i];
        var arrow = arrows.AsSpan(i * TideKernel.ArrowLength, TideKernel.ArrowLength);
        (arrow[0], arrow[1], arrow[2], arrow[3]) = (x, y, growth * x - speed * y, growth * y + speed * x);
    }

    private void Fill(int i, double growth, double speed, double step)
    {
        var first = -(TideKernel.BlockKnots - 1) / 2.0 * step;
        var (sin, cos) = Math.SinCos(speed * first);
        var size = Math.Exp(growth * first);
        (sin, cos) = (sin * size, cos * size);
        var (sinStep, cosStep) = Math.SinCos(speed * step);
        size = Math.Exp(growth * step);
        (sinStep, cosStep) = (sinStep * size, cosStep * size);
        for (var at = i * TideKernel.BlockKnots; at < (i + 1) * TideKernel.BlockKnots; at++)
        {
            (cosines[at], sines[at]) = (cos, sin);
            (cos, sin) = (cos * cosStep - sin * sinStep, sin * cosStep + cos * sinStep);
        }
    }

    private static double Folded(double radians) => radians - 2 * Math.PI * Math.Round(radians / (2 * Math.PI));
}
