using Foreshore.Almanac.Earth;

namespace Foreshore.Almanac.Camera;

/// <summary>A place on the picture, millimetres on the sensor from its centre, as the picture is looked at.</summary>
/// <param name="XMm">To the right.</param>
/// <param name="YMm">Upwards.</param>
public readonly record struct FramePoint(double XMm, double YMm);

/// <summary>Where a camera points and what its picture holds: rectilinear, level from side to side.</summary>
/// <param name="Facing">Direction of the optical axis over the ground.</param>
/// <param name="TiltDegrees">Altitude of the optical axis, degrees, upwards positive, −90…90.</param>
/// <param name="Lens">The lens.</param>
public readonly record struct Frame(Bearing Facing, double TiltDegrees, Lens Lens)
{
    /// <summary>
    /// Where a direction falls on the picture's plane, inside or outside its edges; null when it lies 90 degrees or more
    /// off the axis. Pinhole geometry.
    /// </summary>
    /// <param name="azimuthDegrees">Degrees clockwise from true north.</param>
    /// <param name="altitudeDegrees">Altitude as seen (with refraction), degrees.</param>
    public FramePoint? Project(double azimuthDegrees, double altitudeDegrees)
    {
        const double radian = Math.PI / 180;
        var (sinTurn, cosTurn) = Math.SinCos((azimuthDegrees - Facing.Degrees) * radian);
        var (sinAltitude, cosAltitude) = Math.SinCos(altitudeDegrees * radian);
        var (sinTilt, cosTilt) = Math.SinCos(TiltDegrees * radian);

        var right = cosAltitude * sinTurn;
        var level = cosAltitude * cosTurn;
        var forward = level * cosTilt + sinAltitude * sinTilt;
        var up = sinAltitude * cosTilt - level * sinTilt;
        // At the very edge of the half-space the point runs off to infinity.
        if (forward <= 1e-12) return null;

        return new FramePoint(Lens.FocalLengthMm * right / forward, Lens.FocalLengthMm * up / forward);
    }

    /// <summary>Whether a direction lies within the picture's edges (the edges included).</summary>
    /// <param name="azimuthDegrees">Degrees clockwise from true north.</param>
    /// <param name="altitudeDegrees">Altitude as seen (with refraction), degrees.</param>
    public bool Contains(double azimuthDegrees, double altitudeDegrees) =>
        Project(azimuthDegrees, altitudeDegrees) is { } point
        && Math.Abs(point.XMm) <= Lens.FrameWidthMm / 2
        && Math.Abs(point.YMm) <= Lens.FrameHeightMm / 2;
}
