using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Moon;

/// <summary>One local date's moon at one place. What does not happen on the date is null: about once a month each is missing.</summary>
/// <param name="Date">Local date, from its midnight to the next.</param>
/// <param name="StandardRise">The upper limb rises over a level horizon with 34′ of air, as in the printed tables.</param>
/// <param name="Rise">The upper limb as seen comes over the observer's own skyline, dip counted, for the first time that date.</param>
/// <param name="Transit">It crosses the meridian above the pole.</param>
/// <param name="TransitAltitudeDegrees">Airless altitude of the centre then, degrees.</param>
/// <param name="Set">The upper limb as seen goes below the observer's own skyline, for the last time that date.</param>
/// <param name="StandardSet">As in the printed tables.</param>
/// <param name="IsUpAtStart">Whether it stands over the level horizon as the date begins: with no rise and no set it stays so.</param>
public sealed record MoonDay(
    LocalDate Date,
    Instant? StandardRise,
    Instant? Rise,
    Instant? Transit,
    double? TransitAltitudeDegrees,
    Instant? Set,
    Instant? StandardSet,
    bool IsUpAtStart);

/// <summary>The moon over one stretch of time, over the observer's own skyline.</summary>
/// <param name="IsUpAtStart">Whether the upper limb as seen stands over the skyline as the stretch begins.</param>
/// <param name="Rise">The first time it comes over it; null: not in the stretch.</param>
/// <param name="Set">The last time it goes below it; null: not in the stretch.</param>
public readonly record struct MoonSpan(bool IsUpAtStart, Instant? Rise, Instant? Set);

/// <summary>The moon's events by local date.</summary>
public static class MoonDays
{
    // Grazing appearances of less than this may be missed; over a recorded skyline the steps are a minute.
    private const double LevelStep = 5.0 / 1440;
    private const double SkylineStep = 1.0 / 1440;
    private const double Radian = Math.PI / 180;

    /// <summary>The moon of a date.</summary>
    /// <param name="date">Local date.</param>
    /// <param name="observer">Where, how high, and over which skyline.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="ephemeris">Covers the date.</param>
    /// <exception cref="ArgumentOutOfRangeException">The date leaves the ephemeris.</exception>
    public static MoonDay On(LocalDate date, Observer observer, DateTimeZone zone, MoonEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(observer);
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(ephemeris);
        var start = ephemeris.DaysOf(zone.AtStartOfDay(date).ToInstant());
        var end = ephemeris.DaysOf(zone.AtStartOfDay(date.PlusDays(1)).ToInstant());
        var path = ephemeris.SeenFrom(observer.Position);

        var standard = Events(path, start, end, LevelStep, OverStandard);
        var (over, step) = Own(observer);
        var own = Events(path, start, end, step, over);
        var transit = Transit(path, start, end);

        return new MoonDay(
            date, ToInstant(standard.Rise), ToInstant(own.Rise), ToInstant(transit),
            transit is { } time ? path.At(time).AltitudeDegrees : null, ToInstant(own.Set), ToInstant(standard.Set),
            OverStandard(path.At(start, out var there), there) > 0);
    }

    /// <summary>The moon from one instant to another: rise and set as for a date, to a thousandth of a second.</summary>
    /// <param name="from">Beginning of the stretch.</param>
    /// <param name="to">End of the stretch; not before its beginning.</param>
    /// <param name="observer">Where, how high, and over which skyline.</param>
    /// <param name="ephemeris">Covers the stretch.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch is turned round, or leaves the ephemeris.</exception>
    public static MoonSpan Between(Instant from, Instant to, Observer observer, MoonEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(observer);
        ArgumentNullException.ThrowIfNull(ephemeris);
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A stretch of time ends no earlier than it begins.");
        var (start, end) = (ephemeris.DaysOf(from), ephemeris.DaysOf(to));
        var path = ephemeris.SeenFrom(observer.Position);
        var (over, step) = Own(observer);
        var (rise, set) = Events(path, start, end, step, over);
        return new MoonSpan(over(path.At(start, out var radii), radii) > 0, ToInstant(rise), ToInstant(set));
    }

    /// <summary>How far the upper limb as seen stands over the observer's own skyline, and the steps to look at it in.</summary>
    private static (Func<Sun.Direction, double, double> Over, double Step) Own(Observer observer) =>
        observer.Skyline.LevelDegrees(observer.DipDegrees) is { } edge
            ? ((moon, radii) => Limb(moon, radii) - edge, LevelStep)
            : ((moon, radii) => Limb(moon, radii) - observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(moon.AzimuthDegrees), observer.DipDegrees), SkylineStep);

    private static double OverStandard(Sun.Direction moon, double radii) =>
        moon.AltitudeDegrees + MoonPath.SemidiameterDegrees(radii) + MoonDisc.StandardRefractionDegrees;

    private static double Limb(Sun.Direction moon, double radii) => Refraction.Apparent(moon.AltitudeDegrees + MoonPath.SemidiameterDegrees(radii));

    private static (double? Rise, double? Set) Events(MoonPath path, double start, double end, double step, Func<Sun.Direction, double, double> over)
    {
        double? rise = null, set = null;
        var (time, before) = (start, ValueAt(start));
        while (time < end)
        {
            var next = Math.Min(end, time + step);
            var value = ValueAt(next);
            if (before <= 0 && value > 0) rise ??= Halve(time, next, above: true);
            if (before > 0 && value <= 0) set = Halve(time, next, above: false);
            (time, before) = (next, value);
        }

        return (rise, set);

        double ValueAt(double days) => over(path.At(days, out var radii), radii);

        double Halve(double a, double b, bool above)
        {
            while (b - a > 1e-8)
            {
                var middle = a + (b - a) / 2;
                if (ValueAt(middle) > 0 == above) b = middle;
                else a = middle;
            }

            return b;
        }
    }

    /// <summary>When the geocentric moon crosses the upper meridian; from the surface it crosses at the same moment.</summary>
    private static double? Transit(MoonPath path, double start, double end)
    {
        // The hour angle gains 348 degrees a day, give or take 5.
        const double gain = 2 * Math.PI * 0.9661368;
        var time = start + Bearing.FromDegrees(-HourAngle(start) / Radian).Degrees * Radian / gain;
        for (var round = 0; round < 8; round++)
            time -= Math.IEEERemainder(HourAngle(time), 2 * Math.PI) / gain;
        return time >= start && time < end ? time : null;

        double HourAngle(double days)
        {
            var (a, b, _) = path.Ephemeris.VectorAt(days);
            return Math.Atan2(b, a) + MoonPath.TurnRadiansPerDay * (days - Math.Floor(days)) + path.LongitudeRadians;
        }
    }

    private static Instant? ToInstant(double? days) => days is { } known ? JulianDay.FromDays(known) : null;
}
