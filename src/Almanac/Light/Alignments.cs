using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>The two discs that can stand behind something.</summary>
public enum SkyBody
{
    /// <summary>The sun.</summary>
    Sun,

    /// <summary>The moon.</summary>
    Moon,
}

/// <summary>Something upright, as seen: a line in one direction from its foot to its top.</summary>
/// <param name="Bearing">Its direction.</param>
/// <param name="FootDegrees">Altitude as seen of its foot, degrees.</param>
/// <param name="TopDegrees">Altitude as seen of its top, degrees, not below the foot.</param>
public readonly record struct Upright(Bearing Bearing, double FootDegrees, double TopDegrees);

/// <summary>A body standing behind something upright.</summary>
/// <param name="Body">Which.</param>
/// <param name="Time">When its centre comes nearest to the line from foot to top.</param>
/// <param name="OffDegrees">How far the centre then is from that line, degrees.</param>
/// <param name="AzimuthDegrees">Its azimuth then, degrees.</param>
/// <param name="SeenDegrees">Altitude of its centre as seen, degrees.</param>
/// <param name="IsRising">Whether it climbs then.</param>
/// <param name="IlluminatedFraction">The moon's lit part, 0…1; null for the sun.</param>
/// <param name="SunDegrees">Airless altitude of the sun's centre then, degrees.</param>
public sealed record Alignment(
    SkyBody Body, Instant Time, double OffDegrees, double AzimuthDegrees, double SeenDegrees, bool IsRising, double? IlluminatedFraction, double SunDegrees)
{
    /// <summary>Above this the sun makes it day for a moon, degrees: where golden light ends. Common practice, no source.</summary>
    public const double DaytimeSunDegrees = 6;

    /// <summary>A moon while the sun stands high: pale in a bright sky.</summary>
    public bool IsDaytimeMoon => Body == SkyBody.Moon && SunDegrees > DaytimeSunDegrees;
}

/// <summary>When sun or moon stands behind a subject.</summary>
public static class Alignments
{
    private const double Radian = Math.PI / 180;

    /// <summary>
    /// The passages at which the centre as seen comes within a tolerance of the upright line, some part of the disc over the
    /// horizon (sea level, with dip), by time. About 2 milliseconds a year and body.
    /// </summary>
    /// <param name="body">Sun or moon.</param>
    /// <param name="observer">From where.</param>
    /// <param name="subject">What it passes behind.</param>
    /// <param name="toleranceDegrees">How near is near enough, degrees, above 0 and at most 10.</param>
    /// <param name="from">Beginning of the search.</param>
    /// <param name="to">End of the search; not before its beginning.</param>
    /// <param name="ephemeris">Covers the search.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range, or the search leaves the ephemeris.</exception>
    public static IReadOnlyList<Alignment> Between(
        SkyBody body, Observer observer, Upright subject, double toleranceDegrees, Instant from, Instant to, SkyEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(observer);
        ArgumentNullException.ThrowIfNull(ephemeris);
        if (!(toleranceDegrees is > 0 and <= 10))
            throw new ArgumentOutOfRangeException(nameof(toleranceDegrees), toleranceDegrees, "A tolerance is above 0 and at most 10 degrees.");
        if (subject.TopDegrees < subject.FootDegrees)
            throw new ArgumentOutOfRangeException(nameof(subject), subject.TopDegrees, "A top lies no lower than its foot.");
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A search ends no earlier than it begins.");

        var margin = new BehindMargin(body, observer, subject, toleranceDegrees, ephemeris);
        var within = LightMarch.March(margin, [new Stretch(ephemeris.Sun.DaysOf(from), ephemeris.Sun.DaysOf(to))]);
        return [.. within.Select(stretch => margin.Nearest(stretch))];
    }

    private readonly struct BehindMargin : IMargin
    {
        private readonly SkyBody body;
        private readonly SkyEphemeris ephemeris;
        private readonly SunPath sun;
        private readonly MoonPath moon;
        private readonly double sinBearing, cosBearing, foot, top, tolerance, dip;
        private readonly Direction footEnd, topEnd;

        internal BehindMargin(SkyBody body, Observer observer, Upright subject, double toleranceDegrees, SkyEphemeris ephemeris)
        {
            (this.body, this.ephemeris, tolerance) = (body, ephemeris, toleranceDegrees * Radian);
            (sun, moon) = (ephemeris.Sun.SeenFrom(observer.Position), ephemeris.Moon.SeenFrom(observer.Position));
            dip = observer.DipDegrees;
            (sinBearing, cosBearing) = Math.SinCos(subject.Bearing.Degrees * Radian);
            (foot, top) = (subject.FootDegrees * Radian, subject.TopDegrees * Radian);
            footEnd = Direction.Of(subject.Bearing.Degrees, subject.FootDegrees);
            topEnd = Direction.Of(subject.Bearing.Degrees, subject.TopDegrees);
        }

        public double FastestPerDay => 2 * Math.PI * (body == SkyBody.Moon ? 1.04 : 1.01);

        public double At(double days)
        {
            var seen = Seen(days, out var semidiameter);
            return Math.Min(tolerance - Off(seen), Math.Asin(Math.Clamp(seen.Up, -1, 1)) + (dip + semidiameter) * Radian);
        }

        /// <summary>The nearest moment of a stretch within the tolerance: thirds are cut off while it nears there.</summary>
        internal Alignment Nearest(Stretch within)
        {
            var (a, b) = (within.Start, within.End);
            while (b - a > 1.0 / 86400)
            {
                var (third, other) = (a + (b - a) / 3, b - (b - a) / 3);
                if (Off(Seen(third)) <= Off(Seen(other))) b = other;
                else a = third;
            }

            var time = a + (b - a) / 2;
            var seen = Seen(time);
            return new Alignment(
                body, JulianDay.FromDays(time), Off(seen) / Radian, seen.AzimuthDegrees, seen.AltitudeDegrees,
                Seen(time + 0.001).Up > seen.Up, body == SkyBody.Moon ? ephemeris.MoonlightAt(time).Fraction : null,
                sun.At(time).AltitudeDegrees);
        }

        private Direction Seen(double days) => Seen(days, out _);

        private Direction Seen(double days, out double semidiameterDegrees)
        {
            Direction place;
            if (body == SkyBody.Sun)
                (place, semidiameterDegrees) = (sun.At(days), sun.SemidiameterDegrees(days));
            else
            {
                place = moon.At(days, out var radii);
                semidiameterDegrees = MoonPath.SemidiameterDegrees(radii);
            }

            return LightMargin.Lifted(place, Refraction.Apparent(Math.Asin(Math.Clamp(place.Up, -1, 1)) / Radian));
        }

        /// <summary>The angle to the line from foot to top, radians.</summary>
        private double Off(in Direction seen)
        {
            var along = seen.East * sinBearing + seen.North * cosBearing;
            var foots = Math.Atan2(seen.Up, along);
            return foots >= foot && foots <= top
                ? Math.Abs(Math.Asin(Math.Clamp(seen.East * cosBearing - seen.North * sinBearing, -1, 1)))
                : Math.Min(Angle(seen, footEnd), Angle(seen, topEnd));
        }

        private static double Angle(in Direction a, in Direction b)
        {
            double east = a.East - b.East, north = a.North - b.North, up = a.Up - b.Up;
            return 2 * Math.Asin(Math.Min(1, Math.Sqrt(east * east + north * north + up * up) / 2));
        }
    }
}
