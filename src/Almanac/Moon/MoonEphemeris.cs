using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Moon;

/// <summary>
/// The moon's way over a span of time, worked out once and shared by all places: its geocentric vector in a frame that
/// turns once a day of UT, four cubics a day, within 0.00001 degrees of <see cref="MoonPosition"/>. A place then costs one
/// rotation and its own vector taken off: see <see cref="SeenFrom"/>.
/// </summary>
public sealed partial class MoonEphemeris
{
    private const int PaddingDays = 3;
    private const int MostDays = 366 * 250;

    private readonly MoonSegment[] segments;
    private readonly double firstDay;

    private MoonEphemeris(Instant from, Instant to, MoonSegment[] segments, double firstDay)
    {
        (From, To) = (from, to);
        (this.segments, this.firstDay) = (segments, firstDay);
    }

    /// <summary>First instant that may be asked for.</summary>
    public Instant From { get; }

    /// <summary>Last instant that may be asked for.</summary>
    public Instant To { get; }

    /// <summary>Works out the moon's way from one instant to another: about 12 microseconds a day.</summary>
    /// <param name="from">First instant that will be asked for.</param>
    /// <param name="to">Last one; not before the first, at most 250 years after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span is turned round or too long.</exception>
    public static MoonEphemeris Covering(Instant from, Instant to)
    {
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A span of time ends no earlier than it begins.");
        if ((to - from).TotalDays > MostDays)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A span covers at most 250 years.");

        var firstDay = Math.Floor(JulianDay.DaysFromJ2000(from)) - PaddingDays;
        var count = MoonSegment.PerDay * (int)(Math.Floor(JulianDay.DaysFromJ2000(to)) + PaddingDays + 1 - firstDay);

        // Slopes at the nodes come from two neighbours on each side. A node and its neighbours are told in the frame of
        // one unbroken turn: whole days turn by whole circles.
        var nodes = new MoonNode[count + 5];
        for (var i = 0; i < nodes.Length; i++)
            nodes[i] = MoonNode.At(firstDay + (i - 2) / (double)MoonSegment.PerDay);

        var segments = new MoonSegment[count];
        for (var i = 0; i < count; i++)
            segments[i] = MoonSegment.Between(nodes.AsSpan(i, 6));
        return new MoonEphemeris(from, to, segments, firstDay);
    }

    /// <summary>The moon's way over one place's sky. Costs nothing to make.</summary>
    public MoonPath SeenFrom(Position position) => new(this, position);

    /// <summary>Azimuth and airless altitude of the moon's centre, parallax of a place at sea level counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public Horizontal At(Instant instant, Position position) => SeenFrom(position).At(instant).Horizontal;

    /// <summary>Distance between the centres of Earth and moon, kilometres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The instant lies outside the span.</exception>
    public double DistanceKmAt(Instant instant) => DistanceKmAt(DaysOf(instant));

    internal double DistanceKmAt(double days)
    {
        var (a, b, c) = VectorAt(days);
        return Math.Sqrt(a * a + b * b + c * c) * (Ellipsoid.EquatorialMetres / 1000);
    }

    /// <summary>The geocentric moon in the turning frame, equatorial radii of the Earth.</summary>
    internal (double A, double B, double C) VectorAt(double days)
    {
        ref readonly var s = ref SegmentAt(days, out var u);
        return (
            s.A0 + u * (s.A1 + u * (s.A2 + u * s.A3)),
            s.B0 + u * (s.B1 + u * (s.B2 + u * s.B3)),
            s.C0 + u * (s.C1 + u * (s.C2 + u * s.C3)));
    }

    internal double DaysOf(Instant instant)
    {
        if (instant < From || instant > To)
            throw new ArgumentOutOfRangeException(nameof(instant), instant, FormattableString.Invariant($"This ephemeris covers {From} to {To}."));
        return JulianDay.DaysFromJ2000(instant);
    }

    internal ref readonly MoonSegment SegmentAt(double days, out double u)
    {
        var along = (days - firstDay) * MoonSegment.PerDay;
        var index = Math.Clamp((int)along, 0, segments.Length - 1);
        u = along - index;
        return ref segments[index];
    }
}
