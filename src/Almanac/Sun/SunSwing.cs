namespace Foreshore.Almanac.Sun;

/// <summary>
/// A straight-line function of the sun's direction, east·E + north·N + up·U − level, along time. Altitude, azimuth and the
/// edges of a picture all have this form; each swings once up and once down a day, so its turning points part time into
/// pieces with at most one crossing of zero.
/// </summary>
internal readonly struct SunSwing
{
    private readonly SunPath path;
    private readonly double east, north, up, level;
    // The same function over the meridian, west and pole axes of the turning frame.
    private readonly double onMeridian, onWest, onPole;

    internal SunSwing(SunPath path, Direction normal, double level)
    {
        this.path = path;
        (east, north, up) = (normal.East, normal.North, normal.Up);
        this.level = level;
        onMeridian = up * path.CosLatitude - north * path.SinLatitude;
        onWest = -east;
        onPole = up * path.SinLatitude + north * path.CosLatitude;
    }

    /// <summary>The same swing measured from another level.</summary>
    private SunSwing(in SunSwing other, double level)
    {
        this = other;
        this.level = level;
    }

    internal SunSwing AtLevel(double otherLevel) => new(in this, otherLevel);

    /// <summary>Value at a time, with its slope and bend by the day (the bend without the sun's slow creep).</summary>
    internal double At(double days, out double slope, out double bend)
    {
        const double turn = SunPath.TurnRadiansPerDay;
        ref readonly var s = ref path.Ephemeris.SegmentAt(days, out var u);
        var (sin, cos) = Math.SinCos(turn * (days - Math.Floor(days)) + path.LongitudeRadians);
        var a = s.A0 + u * (s.A1 + u * (s.A2 + u * s.A3));
        var b = s.B0 + u * (s.B1 + u * (s.B2 + u * s.B3));
        var c = s.C0 + u * (s.C1 + u * (s.C2 + u * s.C3));
        var aSlope = s.A1 + u * (2 * s.A2 + u * 3 * s.A3);
        var bSlope = s.B1 + u * (2 * s.B2 + u * 3 * s.B3);
        var cSlope = s.C1 + u * (2 * s.C2 + u * 3 * s.C3);

        var meridian = a * cos - b * sin;
        var west = a * sin + b * cos;
        var swing = onMeridian * meridian + onWest * west;
        slope = onMeridian * (aSlope * cos - bSlope * sin - turn * west) + onWest * (aSlope * sin + bSlope * cos + turn * meridian) + onPole * cSlope;
        bend = -turn * turn * swing;

        // Parallax: the place's own vector taken off, and the length brought back to one.
        var parallax = s.Parallax0 + u * s.Parallax1;
        var towardsSite = parallax * (path.SiteNorth * (path.CosLatitude * c - path.SinLatitude * meridian)
            + path.SiteUp * (path.SinLatitude * c + path.CosLatitude * meridian));
        var site = parallax * (north * path.SiteNorth + up * path.SiteUp);
        return (swing + onPole * c - site) * (1 + towardsSite) - level;
    }

    internal double At(double days) => At(days, out _, out _);

    /// <summary>
    /// A guess, for <see cref="Turning"/>, of a time when the swing stands highest: so far before the one given that the
    /// turning point itself, which lies within a quarter of a day of its guess, comes before it too.
    /// </summary>
    internal double HighestBefore(double days)
    {
        var hour = (Math.Atan2(onWest, onMeridian) - path.LongitudeRadians) / SunPath.TurnRadiansPerDay;
        var earliest = days - 1.25;
        return earliest + (hour - earliest - Math.Floor(hour - earliest));
    }

    /// <summary>
    /// The turning point near a time. Within 0.1 degrees of a pole the sun's creep outweighs the swing and nothing
    /// turns: then the time itself comes back, which still parts the day.
    /// </summary>
    internal double Turning(double near)
    {
        var days = near;
        for (var round = 0; round < 12; round++)
        {
            At(days, out var slope, out var bend);
            var step = -slope / bend;
            if (!(Math.Abs(step) < 0.2)) return near;
            days += step;
            if (Math.Abs(days - near) > 0.24) return near;
            // The height at a turning point is off by the square of this.
            if (Math.Abs(step) < 1e-5) break;
        }

        return days;
    }

    /// <summary>The one crossing of zero between two times whose values differ in sign.</summary>
    internal double Root(double start, double startValue, double end, double endValue)
    {
        var rising = endValue > startValue;
        // Half a cosine between two turning points; elsewhere a fair guess.
        var balance = Math.Clamp((startValue + endValue) / (endValue - startValue), -1, 1);
        var days = start + (end - start) * (Math.Acos(balance) / Math.PI);

        for (var round = 0; round < 60; round++)
        {
            var value = At(days, out var slope, out _);
            if (value == 0) return days;
            if (value < 0 == rising) start = days;
            else end = days;

            var step = -value / slope;
            var next = days + step;
            if (!(next > start && next < end)) next = start + (end - start) / 2;
            else if (step * step * (2 * Math.PI * Math.PI) < 1e-11 * Math.Abs(slope)) return next;
            if (Math.Abs(next - days) < 1e-11) return next;
            days = next;
        }

        return days;
    }
}
