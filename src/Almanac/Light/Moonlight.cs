using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;

namespace Foreshore.Almanac.Light;

/// <summary>When the moon is lit so much, and when it gives little or no light.</summary>
internal static class Moonlight
{
    // The lit part changes by a tenth of the disc a day at most, and stays within any of the table's bounds for days.
    private const double Step = 0.5;
    private const double Fine = 0.5 / 86400;

    /// <summary>The parts in which the lit fraction lies within a row's bounds.</summary>
    internal static IReadOnlyList<Stretch> Lit(MoonTerms terms, SkyEphemeris sky, IReadOnlyList<Stretch> within)
    {
        if (terms is { LeastLit: null, MostLit: null } || within.Count == 0) return within;
        var (least, most) = (terms.LeastLit ?? -1, terms.MostLit ?? 2);
        return Stretch.Intersection(within, Holding(within[0].Start, within[^1].End, days =>
        {
            var lit = sky.MoonlightAt(days).Fraction;
            return Math.Min(lit - least, most - lit);
        }));
    }

    /// <summary>The parts in which the moon is down or gives little light: <see cref="MoonBrightness.Little"/>.</summary>
    internal static List<Stretch> Dark(Position position, SkyEphemeris sky, IReadOnlyList<Stretch> within)
    {
        if (within.Count == 0) return [];
        var dim = Holding(within[0].Start, within[^1].End, days => MoonBrightness.Little - sky.MoonlightAt(days).Brightness);
        var down = LightMarch.March(new MoonDownMargin(sky.Moon.SeenFrom(position)), Stretch.Without(within, dim));
        return Stretch.Union([Stretch.Intersection(within, dim), down]);
    }

    private static List<Stretch> Holding(double from, double to, Func<double, double> margin)
    {
        var found = new List<Stretch>();
        var (start, time, value) = (from, from, margin(from));
        while (time < to)
        {
            var next = Math.Min(to, time + Step);
            var nextValue = margin(next);
            if (value >= 0 != nextValue >= 0)
            {
                var edge = Narrow(margin, time, value, next, nextValue);
                if (value >= 0) found.Add(new Stretch(start, edge));
                start = edge;
            }

            (time, value) = (next, nextValue);
        }

        if (value >= 0 && to > start) found.Add(new Stretch(start, to));
        return found;
    }

    private static double Narrow(Func<double, double> margin, double a, double valueA, double b, double valueB)
    {
        while (b - a > Fine)
        {
            // Nearly straight over half a day: a secant, kept off the ends so that both close in.
            var share = Math.Clamp(valueA / (valueA - valueB), 0.02, 0.98);
            var middle = a + (b - a) * share;
            var there = margin(middle);
            if (there >= 0 == valueA >= 0) (a, valueA) = (middle, there);
            else (b, valueB) = (middle, there);
        }

        return a + (b - a) / 2;
    }
}
