namespace Foreshore.Almanac.Camera;

/// <summary>The light-catching rectangle, as built: width is the longer side.</summary>
/// <param name="WidthMm">Longer side, millimetres.</param>
/// <param name="HeightMm">Shorter side, millimetres.</param>
public readonly record struct Sensor(double WidthMm, double HeightMm)
{
    /// <summary>36 × 24 mm, the frame of 35 mm film.</summary>
    public static Sensor FullFrame { get; } = new(36, 24);

    /// <summary>23.5 × 15.6 mm, the usual size sold as APS-C (makers differ by 0.2 mm).</summary>
    public static Sensor ApsC { get; } = new(23.5, 15.6);

    /// <summary>17.3 × 13 mm, Four Thirds.</summary>
    public static Sensor FourThirds { get; } = new(17.3, 13);

    /// <summary>43.8 × 32.9 mm, the usual digital medium format.</summary>
    public static Sensor MediumFormat { get; } = new(43.8, 32.9);

    /// <summary>13.2 × 8.8 mm, sold as one inch.</summary>
    public static Sensor OneInch { get; } = new(13.2, 8.8);

    /// <summary>The formats offered by name.</summary>
    public static IReadOnlyList<(string Name, Sensor Sensor)> Presets { get; } =
    [
        ("Full frame 36 × 24", FullFrame),
        ("APS-C 23.5 × 15.6", ApsC),
        ("Four Thirds 17.3 × 13", FourThirds),
        ("Medium format 43.8 × 32.9", MediumFormat),
        ("One inch 13.2 × 8.8", OneInch),
    ];

    /// <summary>Corner to corner, millimetres.</summary>
    public double DiagonalMm => Math.Sqrt(WidthMm * WidthMm + HeightMm * HeightMm);
}
