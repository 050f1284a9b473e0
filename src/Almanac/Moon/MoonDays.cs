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

/// <summary>The moon's events by local date, by crossings: exact to a millisecond against the ephemeris.</summary>
public static class MoonDays
{
    // Over a recorded skyline, while the moon is about as high as that: an appearance in a notch of less than this may be missed.
    private const double SkylineStep = 1.0 / 1440;

    // Near a pole the altitude does not swing by the day, and is looked at in steps.
    private const double PolarStep = 5.0 / 1440;

    // The band about a skyline's heights is taken a little wider than they are.
    private const double BandMarginDegrees = 0.001;

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
        var way = new Way(ephemeris.SeenFrom(observer.Position), start, end);

        var standard = way.Over(-MoonDisc.StandardRefractionDegrees);
        var own = way.Over(observer);
        var transit = way.Transit();
        return new MoonDay(
            date, ToInstant(standard.Rise), ToInstant(own.Rise), ToInstant(transit),
            transit is { } time ? way.Path.At(time).AltitudeDegrees : null, ToInstant(own.Set), ToInstant(standard.Set), standard.IsUpAtStart);
    }

    /// <summary>The moon from one instant to another: rise and set as for a date.</summary>
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
        var (isUp, rise, set) = new Way(ephemeris.SeenFrom(observer.Position), ephemeris.DaysOf(from), ephemeris.DaysOf(to)).Over(observer);
        return new MoonSpan(isUp, ToInstant(rise), ToInstant(set));
    }

    private static Instant? ToInstant(double? days) => days is { } known ? JulianDay.FromDays(known) : null;

    /// <summary>The moon's way over one stretch, its turning points found once for all that is asked of it.</summary>
    private sealed class Way
    {
        private readonly double start, end;
        private readonly MoonSwing swing;
        private readonly List<(double Days, double LimbDegrees)> ends;

        internal Way(MoonPath path, double start, double end)
        {
            (Path, this.start, this.end, swing) = (path, start, end, new MoonSwing(path));
            ends = swing.Pieces(start, end) ?? Steps();
        }

        internal MoonPath Path { get; }

        /// <summary>Over a level edge: the first time the limb, without air, comes over an altitude, and the last it goes below it.</summary>
        internal (bool IsUpAtStart, double? Rise, double? Set) Over(double airlessDegrees)
        {
            double? rise = null, set = null;
            for (var i = 1; i < ends.Count; i++)
            {
                var (before, after) = (ends[i - 1], ends[i]);
                if (before.LimbDegrees > airlessDegrees == after.LimbDegrees > airlessDegrees) continue;
                var time = swing.Root(before.Days, before.LimbDegrees, after.Days, after.LimbDegrees, airlessDegrees);
                if (after.LimbDegrees > airlessDegrees) rise ??= time;
                else set = time;
            }

            return (ends[0].LimbDegrees > airlessDegrees, rise, set);
        }

        /// <summary>Over the observer's own skyline, as seen.</summary>
        internal (bool IsUpAtStart, double? Rise, double? Set) Over(Observer observer) =>
            observer.Skyline.LevelDegrees(observer.DipDegrees) is { } edge ? Over(Refraction.Airless(edge)) : OverSkyline(observer);

        /// <summary>When the geocentric moon crosses the upper meridian; from the surface it crosses at the same moment.</summary>
        internal double? Transit()
        {
            var turned = -swing.HourAngle(start) / MoonPath.TurnRadiansPerDay;
            var time = start + (turned - Math.Floor(turned)) * MoonPath.TurnRadiansPerDay / MoonSwing.GainRadiansPerDay;
            for (var round = 0; round < 8; round++)
            {
                var step = Math.IEEERemainder(swing.HourAngle(time), 2 * Math.PI) / MoonSwing.GainRadiansPerDay;
                time -= step;
                if (Math.Abs(step) < 1e-10) break;
            }

            return time >= start && time < end ? time : null;
        }

        private (bool IsUpAtStart, double? Rise, double? Set) OverSkyline(Observer observer)
        {
            double? rise = null, set = null;
            var (lowest, highest) = observer.Skyline.RangeDegrees(observer.DipDegrees);
            foreach (var (from, to) in Within(Refraction.Airless(lowest) - BandMarginDegrees, Refraction.Airless(highest) + BandMarginDegrees))
            {
                // Minutes are counted from the beginning of the stretch: whether one is looked at does not move the others.
                var time = start + Math.Floor((from - start) / SkylineStep) * SkylineStep;
                var before = IsSeen(time);
                while (time < to)
                {
                    var next = Math.Min(end, time + SkylineStep);
                    var seen = IsSeen(next);
                    if (seen && !before) rise ??= Halve(time, next, seen);
                    if (!seen && before) set = Halve(time, next, seen);
                    (time, before) = (next, seen);
                }
            }

            return (IsSeen(start), rise, set);

            bool IsSeen(double days)
            {
                var moon = Path.At(days, out var radii);
                return Refraction.Apparent(moon.AltitudeDegrees + MoonPath.SemidiameterDegrees(radii))
                    > observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(moon.AzimuthDegrees), observer.DipDegrees);
            }

            double Halve(double a, double b, bool seenAtEnd)
            {
                while (b - a > 1e-8)
                {
                    var middle = a + (b - a) / 2;
                    if (IsSeen(middle) == seenAtEnd) b = middle;
                    else a = middle;
                }

                return b;
            }
        }

        /// <summary>While the limb's altitude lies between two values; elsewhere no skyline between them can hide or show it.</summary>
        private IEnumerable<(double From, double To)> Within(double low, double high)
        {
            for (var i = 1; i < ends.Count; i++)
            {
                var (before, after) = (ends[i - 1], ends[i]);
                var (least, most) = (Math.Min(before.LimbDegrees, after.LimbDegrees), Math.Max(before.LimbDegrees, after.LimbDegrees));
                if (most < low || least > high) continue;
                var (atLow, atHigh) = (least < low ? Passing(low) : (double?)null, most > high ? Passing(high) : (double?)null);
                yield return after.LimbDegrees > before.LimbDegrees
                    ? (atLow ?? before.Days, atHigh ?? after.Days)
                    : (atHigh ?? before.Days, atLow ?? after.Days);

                double Passing(double level) => swing.Root(before.Days, before.LimbDegrees, after.Days, after.LimbDegrees, level);
            }
        }

        private List<(double Days, double LimbDegrees)> Steps()
        {
            var all = new List<(double, double)> { (start, swing.LimbAt(start)) };
            for (var time = start; time < end;)
            {
                time = Math.Min(end, time + PolarStep);
                all.Add((time, swing.LimbAt(time)));
            }

            return all;
        }
    }
}
