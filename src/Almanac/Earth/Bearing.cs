namespace Foreshore.Almanac.Earth;

/// <summary>A direction along the ground: degrees clockwise from true north, 0 (included) to 360 (excluded).</summary>
public readonly record struct Bearing
{
    private Bearing(double degrees) => Degrees = degrees;

    /// <summary>Degrees clockwise from true north, in [0, 360).</summary>
    public double Degrees { get; }

    /// <summary>Brings any finite number of degrees into [0, 360).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public static Bearing FromDegrees(double degrees)
    {
        if (!double.IsFinite(degrees))
            throw new ArgumentOutOfRangeException(nameof(degrees), degrees, "A bearing is a finite number of degrees.");

        var folded = degrees % 360;
        if (folded < 0) folded += 360;
        // A tiny negative number rounds up to 360 itself; adding zero turns −0 into 0.
        return new Bearing(folded >= 360 ? 0 : folded + 0.0);
    }

    /// <summary>The smaller angle between two bearings, degrees, 0…180.</summary>
    public double AngleTo(Bearing other) => Math.Abs(SignedTo(other));

    /// <summary>The turn from this bearing to the other, degrees, clockwise positive, in (−180, 180].</summary>
    public double SignedTo(Bearing other)
    {
        var turn = other.Degrees - Degrees;
        return turn > 180 ? turn - 360 : turn <= -180 ? turn + 360 : turn;
    }

    /// <summary>This bearing turned clockwise by some degrees (anticlockwise when negative).</summary>
    public Bearing Plus(double degrees) => FromDegrees(Degrees + degrees);
}
