using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>
/// The sun's way over a span of time, worked out once and shared by all places. The geocentric direction is kept in a
/// frame that turns once a day of UT, where it creeps by a degree a day: one cubic a day holds it within 0.000001
/// degrees of <see cref="SunPosition"/>. A place then costs one rotation and its parallax: see <see cref="SeenFrom"/>.
/// </summary>
public sealed partial class SunEphemeris
{
    // Searches look up to a day and a half past the ends: for the noon and midnights round an event.
    private const int PaddingDays = 3;
    private const int MostDays = 366 * 250;

    private readonly SunSegment[] segments;
    private readonly double firstDay;

    private SunEphemeris(Instant from, Instant to, SunSegment[] segments, double firstDay)
    {
        (From, To) = (from, to);
        (this.segments, this.firstDay) = (segments, firstDay);
    }

    /// <summary>First instant that may be asked for.</summary>
    public Instant From { get; }

    /// <summary>Last instant that may be asked for.</summary>
    public Instant To { get; }

    /// <summary>Works out the sun's way from one instant to another: about 4 microseconds a day.</summary>
    /// <param name="from">First instant that will be asked for.</param>
    /// <param name="to">Last one; not before the first, at most 250 years after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span is turned round or too long.</exception>
    public static SunEphemeris Covering(Instant from, Instant to)
    {
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A span of time ends no earlier than it begins.");
        if ((to - from).TotalDays > MostDays)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A span covers at most 250 years.");

        var firstDay = Math.Floor(JulianDay.DaysFromJ2000(from)) - PaddingDays;
        var count = (int)(Math.Floor(JulianDay.DaysFromJ2000(to)) + PaddingDays + 1 - firstDay);

        // Slopes at the nodes come from two neighbours on each side, so two more nodes stand at each end.
        var nodes = new SunNode[count + 5];
        for (var i = 0; i < nodes.Length; i++)
            nodes[i] = SunNode.At(firstDay + i - 2);

        var segments = new SunSegment[count];
        for (var i = 0; i < count; i++)
            segments[i] = SunSegment.Between(nodes.AsSpan(i, 6));
        return new SunEphemeris(from, to, segments, firstDay);
    }

    /// <summary>The sun's way over one place's sky. Costs nothing to make.</summary>
    public SunPath SeenFrom(Position position) => new(this, position);

    /// <summary>Azimuth and airless altitude of the sun's centre, parallax of a place at sea level counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public Horizontal At(Instant instant, Position position) => SeenFrom(position).At(instant).Horizontal;

    /// <summary>Distance of the sun, astronomical units.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public double DistanceAuAt(Instant instant)
    {
        var days = DaysOf(instant);
        ref readonly var segment = ref SegmentAt(days, out var u);
        return SunSegment.EquatorialParallaxRadians / (segment.Parallax0 + segment.Parallax1 * u);
    }

    /// <summary>The geocentric direction in the turning frame, and the distance, astronomical units.</summary>
    internal (double A, double B, double C, double DistanceAu) VectorAt(double days)
    {
        ref readonly var s = ref SegmentAt(days, out var u);
        return (
            s.A0 + u * (s.A1 + u * (s.A2 + u * s.A3)),
            s.B0 + u * (s.B1 + u * (s.B2 + u * s.B3)),
            s.C0 + u * (s.C1 + u * (s.C2 + u * s.C3)),
            SunSegment.EquatorialParallaxRadians / (s.Parallax0 + s.Parallax1 * u));
    }

    internal double DaysOf(Instant instant)
    {
        if (instant < From || instant > To)
            throw new ArgumentOutOfRangeException(nameof(instant), instant, FormattableString.Invariant($"This ephemeris covers {From} to {To}."));
        return JulianDay.DaysFromJ2000(instant);
    }

    internal ref readonly SunSegment SegmentAt(double days, out double u)
    {
        var along = days - firstDay;
        var index = Math.Clamp((int)along, 0, segments.Length - 1);
        u = along - index;
        return ref segments[index];
    }
}
