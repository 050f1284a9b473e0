using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

internal static class HarmonicKnots
{
    internal static TideCurve Over(HarmonicTide tide, Instant from, Instant to)
    {
        const double step = 1.0 / 96;
        var first = (Math.Floor(JulianDay.DaysFromJ2000(from) * 96) - 192) * step;
        var count = (int)((JulianDay.DaysFromJ2000(to) - first) / step) + 194;
        double[] metres = new double[count], slopes = new double[count];
        for (var i = 0; i < count; i++)
        {
            var days = first + i * step;
            var args = AstronomicalArguments.At(days);
            metres[i] = tide.MeanSeaLevelMetres;
            foreach (var c in tide.Constants)
            {
                var w = c.Constituent.SpeedDegreesPerHour * 24 * Math.PI / 180;
                var (sin, cos) = Math.SinCos((args.Of(c.Constituent.Doodson) - c.PhaseDegrees) * Math.PI / 180);
                metres[i] += c.AmplitudeMetres * cos;
                slopes[i] -= c.AmplitudeMetres * w * sin;
            }
        }

        return new TideCurve(from, to, new TideKnots(first, step, null, metres, slopes), TideCurve.LeastRiseMetres);
    }
}
