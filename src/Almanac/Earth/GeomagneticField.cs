namespace Foreshore.Almanac.Earth;

/// <summary>How far a compass can be trusted in the field at a place.</summary>
public enum CompassZone
{
    /// <summary>The horizontal field is strong enough.</summary>
    Usual,

    /// <summary>Horizontal field below 6,000 nT: a compass begins to fail (caution zone of the model's report).</summary>
    Caution,

    /// <summary>Horizontal field below 2,000 nT: a compass is not to be used (blackout zone of the model's report).</summary>
    Blackout,
}

/// <summary>
/// The Earth's magnetic field at a place and date, without what rock, iron and the sun's storms add.
/// </summary>
/// <param name="NorthNanotesla">X, toward true north along the ellipsoid.</param>
/// <param name="EastNanotesla">Y, toward east.</param>
/// <param name="DownNanotesla">Z, down.</param>
public readonly record struct GeomagneticField(double NorthNanotesla, double EastNanotesla, double DownNanotesla)
{
    private const double Degree = 180 / Math.PI;

    /// <summary>H, the horizontal part, nT.</summary>
    public double HorizontalNanotesla => Math.Sqrt(NorthNanotesla * NorthNanotesla + EastNanotesla * EastNanotesla);

    /// <summary>F, the whole, nT.</summary>
    public double TotalNanotesla => Math.Sqrt(HorizontalNanotesla * HorizontalNanotesla + DownNanotesla * DownNanotesla);

    /// <summary>I, degrees below level, −90…90.</summary>
    public double InclinationDegrees => Math.Atan2(DownNanotesla, HorizontalNanotesla) * Degree;

    /// <summary>D, degrees that magnetic north lies east of true north, −180…180; west is negative.</summary>
    public double DeclinationDegrees => Math.Atan2(EastNanotesla, NorthNanotesla) * Degree;

    /// <summary>
    /// One standard deviation of the declination, degrees: √(0.26² + (5417/H)²), the error model of the WMM2025 report
    /// (the formula from memory). A compass in the hand adds one or two degrees of its own.
    /// </summary>
    public double DeclinationUncertaintyDegrees
    {
        get
        {
            var fromStrength = 5417 / HorizontalNanotesla;
            return Math.Min(180, Math.Sqrt(0.26 * 0.26 + fromStrength * fromStrength));
        }
    }

    /// <summary>Whether a compass serves here; bounds of the WMM2025 report.</summary>
    public CompassZone Zone => HorizontalNanotesla < 2000 ? CompassZone.Blackout
        : HorizontalNanotesla < 6000 ? CompassZone.Caution
        : CompassZone.Usual;

    /// <summary>The true bearing of what a compass reads here.</summary>
    /// <param name="compass">Degrees clockwise from magnetic north.</param>
    public Bearing TrueOf(Bearing compass) => compass.Plus(DeclinationDegrees);

    /// <summary>What a compass reads here toward a true bearing.</summary>
    public Bearing CompassOf(Bearing truth) => truth.Plus(-DeclinationDegrees);
}
