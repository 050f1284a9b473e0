namespace Foreshore.Almanac.Moon;

/// <summary>
/// The altitude of the moon's upper limb along time, without air. It swings once up and once down a lunar day, so its turning
/// points part time into pieces on which it only climbs or only sinks: each passes a level once at most.
/// </summary>
internal readonly struct MoonSwing(MoonPath path)
{
    /// <summary>Half a lunar day. The moon's own motion shifts a turning point by less than half an hour of it.</summary>
    private const double HalfLunarDay = 0.5175;

    /// <summary>The hour angle's gain, radians a day: 348 degrees, give or take 5.</summary>
    internal const double GainRadiansPerDay = MoonPath.TurnRadiansPerDay * 0.9661368;

    private const double Radian = Math.PI / 180;
    private const double LeastStep = 2e-9;

    private readonly MoonPath path = path;

    /// <summary>The limb's altitude, degrees.</summary>
    internal double LimbAt(double days) => LimbAt(days, out _);

    /// <summary>
    /// The beginning, every turning point and the end of a stretch; null where the altitude does not swing by the day, within
    /// some two degrees of a pole.
    /// </summary>
    internal List<(double Days, double LimbDegrees)>? Pieces(double start, double end)
    {
        var ends = new List<(double, double)>(6) { (start, LimbAt(start)) };
        var guess = start - SinceHighest(start) - HalfLunarDay;
        while (guess < end + HalfLunarDay / 2)
        {
            if (Turning(guess) is not { } turning) return null;
            if (turning > start && turning < end) ends.Add((turning, LimbAt(turning)));
            guess = turning + HalfLunarDay;
        }

        ends.Add((end, LimbAt(end)));
        return ends;
    }

    /// <summary>When the limb passes a level between two times on either side of it, to a tenth of a millisecond: Newton's rule, kept in its bracket.</summary>
    internal double Root(double start, double startDegrees, double end, double endDegrees, double levelDegrees)
    {
        var rising = endDegrees > startDegrees;
        // Half a cosine between two turning points; elsewhere a fair guess.
        var balance = Math.Clamp((startDegrees + endDegrees - 2 * levelDegrees) / (endDegrees - startDegrees), -1, 1);
        var days = start + (end - start) * (Math.Acos(balance) / Math.PI);
        for (var round = 0; round < 60; round++)
        {
            var off = LimbAt(days, out var slope) - levelDegrees;
            if (off < 0 == rising) start = days;
            else end = days;
            var next = days - off / slope;
            if (!(next > start && next < end)) next = start + (end - start) / 2;
            if (Math.Abs(next - days) < LeastStep) return next;
            days = next;
        }

        return days;
    }

    /// <summary>Geocentric hour angle over the place's meridian, radians.</summary>
    internal double HourAngle(double days)
    {
        var (a, b, _) = path.Ephemeris.VectorAt(days);
        return Math.Atan2(b, a) + MoonPath.TurnRadiansPerDay * (days - Math.Floor(days)) + path.LongitudeRadians;
    }

    private double SinceHighest(double days)
    {
        var turned = HourAngle(days) / MoonPath.TurnRadiansPerDay;
        return (turned - Math.Floor(turned)) * MoonPath.TurnRadiansPerDay / GainRadiansPerDay;
    }

    private double? Turning(double near)
    {
        var days = near;
        for (var round = 0; round < 12; round++)
        {
            Sine(days, out _, out var slope, out var bend);
            var step = -slope / bend;
            if (!(Math.Abs(step) < 0.2)) return null;
            days += step;
            if (Math.Abs(days - near) > 0.24) return null;
            // The height at a turning point is off by the square of this.
            if (Math.Abs(step) < 1e-5) return days;
        }

        return null;
    }

    private double LimbAt(double days, out double degreesPerDay)
    {
        var sine = Sine(days, out var radii, out var slope, out _);
        degreesPerDay = slope / Math.Sqrt(Math.Max(1e-12, 1 - sine * sine)) / Radian;
        return Math.Asin(Math.Clamp(sine, -1, 1)) / Radian + MoonPath.SemidiameterDegrees(radii);
    }

    /// <summary>Sine of the centre's altitude, with its slope and bend by the day (the bend without the moon's own motion).</summary>
    private double Sine(double days, out double radii, out double slope, out double bend)
    {
        const double turn = MoonPath.TurnRadiansPerDay;
        ref readonly var s = ref path.Ephemeris.SegmentAt(days, out var u);
        var (sin, cos) = Math.SinCos(turn * (days - Math.Floor(days)) + path.LongitudeRadians);
        var a = s.A0 + u * (s.A1 + u * (s.A2 + u * s.A3));
        var b = s.B0 + u * (s.B1 + u * (s.B2 + u * s.B3));
        var c = s.C0 + u * (s.C1 + u * (s.C2 + u * s.C3));
        var aSlope = MoonSegment.PerDay * (s.A1 + u * (2 * s.A2 + u * 3 * s.A3));
        var bSlope = MoonSegment.PerDay * (s.B1 + u * (2 * s.B2 + u * 3 * s.B3));
        var cSlope = MoonSegment.PerDay * (s.C1 + u * (2 * s.C2 + u * 3 * s.C3));

        double meridian = a * cos - b * sin, west = a * sin + b * cos;
        double meridianSlope = aSlope * cos - bSlope * sin - turn * west, westSlope = aSlope * sin + bSlope * cos + turn * meridian;
        var north = path.CosLatitude * c - path.SinLatitude * meridian - path.SiteNorth;
        var up = path.SinLatitude * c + path.CosLatitude * meridian - path.SiteUp;
        double northSlope = path.CosLatitude * cSlope - path.SinLatitude * meridianSlope, upSlope = path.SinLatitude * cSlope + path.CosLatitude * meridianSlope;

        radii = Math.Sqrt(west * west + north * north + up * up);
        var shrink = 1 / radii;
        var sine = up * shrink;
        slope = (upSlope - sine * (west * westSlope + north * northSlope + up * upSlope) * shrink) * shrink;
        bend = -GainRadiansPerDay * GainRadiansPerDay * path.CosLatitude * meridian * shrink;
        return sine;
    }
}
