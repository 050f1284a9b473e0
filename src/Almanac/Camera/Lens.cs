namespace Foreshore.Almanac.Camera;

/// <summary>How the camera is held.</summary>
public enum Orientation
{
    /// <summary>Longer side level.</summary>
    Landscape,

    /// <summary>Longer side upright.</summary>
    Portrait,
}

/// <summary>A rectilinear lens focused at infinity in front of a sensor.</summary>
public readonly record struct Lens
{
    /// <summary>Checks and keeps a lens.</summary>
    /// <param name="focalLengthMm">Real focal length, millimetres, above 0.</param>
    /// <param name="sensor">The sensor as built; both sides above 0.</param>
    /// <param name="orientation">How the camera is held.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is not a finite number above zero.</exception>
    public Lens(double focalLengthMm, Sensor sensor, Orientation orientation)
    {
        Check(focalLengthMm, nameof(focalLengthMm), "A focal length is above 0 mm.");
        Check(sensor.WidthMm, nameof(sensor), "A sensor's width is above 0 mm.");
        Check(sensor.HeightMm, nameof(sensor), "A sensor's height is above 0 mm.");
        (FocalLengthMm, Sensor, Orientation) = (focalLengthMm, sensor, orientation);
    }

    /// <summary>Real focal length, millimetres.</summary>
    public double FocalLengthMm { get; }

    /// <summary>The sensor behind it.</summary>
    public Sensor Sensor { get; }

    /// <summary>How the camera is held.</summary>
    public Orientation Orientation { get; }

    /// <summary>Width of the picture on the sensor as held, millimetres.</summary>
    public double FrameWidthMm => Orientation == Orientation.Portrait ? Sensor.HeightMm : Sensor.WidthMm;

    /// <summary>Height of the picture on the sensor as held, millimetres.</summary>
    public double FrameHeightMm => Orientation == Orientation.Portrait ? Sensor.WidthMm : Sensor.HeightMm;

    /// <summary>Angle of view from left to right as held, degrees: 2 atan(d / 2f), the geometry of a pinhole.</summary>
    public double HorizontalAngleDegrees => Angle(FrameWidthMm);

    /// <summary>Angle of view from bottom to top as held, degrees.</summary>
    public double VerticalAngleDegrees => Angle(FrameHeightMm);

    /// <summary>Angle of view from corner to corner, degrees.</summary>
    public double DiagonalAngleDegrees => Angle(Sensor.DiagonalMm);

    private double Angle(double lengthMm) => 2 * Math.Atan(lengthMm / (2 * FocalLengthMm)) * (180 / Math.PI);

    private static void Check(double lengthMm, string name, string message)
    {
        if (!(lengthMm > 0) || !double.IsFinite(lengthMm))
            throw new ArgumentOutOfRangeException(name, lengthMm, message);
    }
}
