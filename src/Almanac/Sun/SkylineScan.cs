using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>
/// Rise and set over a skyline that is not level: minute by minute, then halving. A notch or a stack that the sun passes
/// in under a minute may be missed.
/// </summary>
internal static class SkylineScan
{
    private const double Minute = 1.0 / 1440;

    internal static (Instant? Rise, Instant? Set) Of(SunDays.HalfDays day, SunPath path, Observer observer, double semidiameterDegrees)
    {
        double? rise = null, set = null;
        var steps = (int)Math.Ceiling((day.NextLowest - day.Lowest) / Minute);
        var step = (day.NextLowest - day.Lowest) / steps;
        var seenBefore = IsSeen(day.Lowest);
        for (var i = 1; i <= steps; i++)
        {
            var time = day.Lowest + i * step;
            var seen = IsSeen(time);
            if (seen && !seenBefore) rise ??= Halve(time - step, time, seen);
            if (!seen && seenBefore) set = Halve(time - step, time, seen);
            seenBefore = seen;
        }

        return (ToInstant(rise), ToInstant(set));

        bool IsSeen(double days)
        {
            var sun = path.At(days);
            var limb = Refraction.Apparent(sun.AltitudeDegrees + semidiameterDegrees);
            return limb > observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(sun.AzimuthDegrees), observer.DipDegrees);
        }

        double Halve(double start, double end, bool seenAtEnd)
        {
            while (end - start > 1e-9)
            {
                var middle = start + (end - start) / 2;
                if (IsSeen(middle) == seenAtEnd) end = middle;
                else start = middle;
            }

            return end;
        }
    }

    private static Instant? ToInstant(double? days) => days is { } known ? JulianDay.FromDays(known) : null;
}
