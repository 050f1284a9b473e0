using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>The sun's events by local date.</summary>
public static class SunDays
{
    private const double Radian = Math.PI / 180;

    /// <summary>
    /// The solar day of a date: the one whose noon lies nearest to twelve by the place's clock. (Clocks keep within a few
    /// hours of the sun, so that noon falls on the date; a date that a zone skipped is answered all the same.)
    /// </summary>
    /// <param name="date">Local date.</param>
    /// <param name="observer">Where, how high, and over which skyline.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="ephemeris">Covers the date and 36 hours on each side.</param>
    /// <exception cref="ArgumentOutOfRangeException">The day leaves the ephemeris.</exception>
    public static SunDay On(LocalDate date, Observer observer, DateTimeZone zone, SunEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(observer);
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(ephemeris);

        var clockNoon = ephemeris.DaysOf(zone.AtLeniently(date + LocalTime.Noon).ToInstant());
        var path = ephemeris.SeenFrom(observer.Position);
        var number = Math.Round(clockNoon + path.LongitudeRadians / SunPath.TurnRadiansPerDay);
        var before = path.Transit(number - 0.5);
        var noon = path.Transit(number);
        var after = path.Transit(number + 0.5);
        // Both ends must lie inside the span that was promised, not only inside its padding.
        ephemeris.DaysOf(JulianDay.FromDays(before));
        ephemeris.DaysOf(JulianDay.FromDays(after));

        var day = new HalfDays(path, before, noon, after);
        var (rise, set) = SkylineEvents(day, path, observer);
        return new SunDay(
            date, JulianDay.FromDays(before), JulianDay.FromDays(noon), JulianDay.FromDays(after),
            path.At(noon).AltitudeDegrees, path.At(after).AltitudeDegrees,
            day.Rising(-18), day.Rising(-12), day.Rising(-6), day.Rising(SunDisc.StandardAltitudeDegrees), rise,
            set, day.Setting(SunDisc.StandardAltitudeDegrees), day.Setting(-6), day.Setting(-12), day.Setting(-18));
    }

    private static (Instant? Rise, Instant? Set) SkylineEvents(HalfDays day, SunPath path, Observer observer)
    {
        var semidiameter = path.SemidiameterDegrees(day.Highest);
        var skyline = observer.Skyline;
        if (skyline.LevelDegrees(observer.DipDegrees) is not { } edge)
            return SkylineScan.Of(day, path, observer, semidiameter);

        var altitude = Refraction.Airless(edge) - semidiameter;
        return (day.Rising(altitude), day.Setting(altitude));
    }

    /// <summary>A climb and a descent between turning points of the altitude.</summary>
    internal readonly struct HalfDays
    {
        private readonly SunSwing swing;
        private readonly double lowestValue, highestValue, nextLowestValue;

        internal HalfDays(SunPath path, double before, double noon, double after)
        {
            swing = new SunSwing(path, new Direction(0, 0, 1), 0);
            (Lowest, Highest, NextLowest) = (swing.Turning(before), swing.Turning(noon), swing.Turning(after));
            (lowestValue, highestValue, nextLowestValue) = (swing.At(Lowest), swing.At(Highest), swing.At(NextLowest));
        }

        internal double Lowest { get; }

        internal double Highest { get; }

        internal double NextLowest { get; }

        internal Instant? Rising(double altitudeDegrees) => Passing(altitudeDegrees, Lowest, lowestValue, Highest, highestValue, true);

        internal Instant? Setting(double altitudeDegrees) => Passing(altitudeDegrees, Highest, highestValue, NextLowest, nextLowestValue, false);

        private Instant? Passing(double altitudeDegrees, double start, double startValue, double end, double endValue, bool rising)
        {
            var level = Math.Sin(altitudeDegrees * Radian);
            var (below, above) = rising ? (startValue, endValue) : (endValue, startValue);
            if (!(below < level && above >= level)) return null;
            return JulianDay.FromDays(swing.AtLevel(level).Root(start, startValue - level, end, endValue - level));
        }
    }
}
