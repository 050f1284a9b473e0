using Foreshore.Almanac.Camera;

namespace Foreshore.Guide.Compositions;

/// <summary>The picture's plane in drawing units: the longer side is 360, the origin is the upper left corner, y runs down.</summary>
public sealed class FramePicture(Frame frame)
{
    public const double LongSide = 360;

    // Nearer than this to the plane through the eye a corner runs off so far that its line is better left out.
    private const double FarthestCorner = 6 * LongSide;

    private readonly double scale = LongSide / Math.Max(frame.Lens.FrameWidthMm, frame.Lens.FrameHeightMm);

    public Frame Frame => frame;
    public double Width => frame.Lens.FrameWidthMm * scale;
    public double Height => frame.Lens.FrameHeightMm * scale;

    /// <summary>Where a direction falls, inside or outside the edges; null behind the camera or far outside.</summary>
    public (double X, double Y)? At(double azimuthDegrees, double altitudeDegrees) =>
        frame.Project(azimuthDegrees, altitudeDegrees) is { } p
        && Math.Abs(p.XMm * scale) < FarthestCorner && Math.Abs(p.YMm * scale) < FarthestCorner
            ? (Width / 2 + p.XMm * scale, Height / 2 - p.YMm * scale)
            : null;

    public bool Holds((double X, double Y) point) =>
        point.X >= 0 && point.X <= Width && point.Y >= 0 && point.Y <= Height;

    /// <summary>The direction that falls on a place of the picture: the way back of <see cref="Frame.Project"/>.</summary>
    public (double Turn, double Altitude) DirectionAt(double x, double y)
    {
        var (right, up) = ((x - Width / 2) / scale, (Height / 2 - y) / scale);
        var (sinTilt, cosTilt) = Math.SinCos(frame.TiltDegrees * Math.PI / 180);
        var focal = frame.Lens.FocalLengthMm;
        var (level, high) = (focal * cosTilt - up * sinTilt, focal * sinTilt + up * cosTilt);
        return (Math.Atan2(right, level) * 180 / Math.PI, Math.Atan2(high, Math.Sqrt(right * right + level * level)) * 180 / Math.PI);
    }

    /// <summary>The frame's border as directions, clockwise from the upper left corner; turns are from the facing.</summary>
    public IEnumerable<(double Turn, double Altitude)> Border(int piecesPerSide = 12)
    {
        for (var i = 0; i < piecesPerSide; i++) yield return DirectionAt(Width * i / piecesPerSide, 0);
        for (var i = 0; i < piecesPerSide; i++) yield return DirectionAt(Width, Height * i / piecesPerSide);
        for (var i = 0; i < piecesPerSide; i++) yield return DirectionAt(Width - Width * i / piecesPerSide, Height);
        for (var i = 0; i <= piecesPerSide; i++) yield return DirectionAt(0, Height - Height * i / piecesPerSide);
    }

    /// <summary>How far to either side of the facing something may stand and still be in the picture, degrees.</summary>
    public double ReachDegrees => Math.Min(89, Border().Max(d => Math.Abs(d.Turn)) + 2);
}
