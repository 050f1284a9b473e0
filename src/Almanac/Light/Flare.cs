using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>What may throw flare into a lens.</summary>
[Flags]
public enum FlareCauses
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The sun inside the frame.</summary>
    SunInFrame = 1,

    /// <summary>The sun beside the frame, near enough to the axis to light the front lens.</summary>
    SunBesideFrame = 2,

    /// <summary>The low sun's path of glitter on the water, in the frame or near it.</summary>
    GlitterPath = 4,
}

/// <summary>When to mind flare. All numbers are common practice without a source.</summary>
public static class Flare
{
    /// <summary>Beside the frame a source within this angle of the axis counts, degrees.</summary>
    public const double NearAxisDegrees = 30;

    /// <summary>The sun throws a glitter path up to this airless altitude, degrees: as high as the sun in the frame is wanted.</summary>
    public const double LowSunDegrees = 6;

    /// <summary>What may throw flare at one moment.</summary>
    /// <param name="frame">The picture.</param>
    /// <param name="observer">Whose eye; its skyline says where water lies.</param>
    /// <param name="sun">Airless direction of the sun's centre.</param>
    /// <param name="isLensShaded">Whether hood, hand or rock shades the front lens from sources outside the frame.</param>
    /// <param name="isCloudOverSun">Whether cloud covers the sun; null when nobody knows, which lifts nothing.</param>
    /// <param name="sunDistanceAu">Distance, astronomical units.</param>
    public static FlareCauses Causes(Frame frame, Observer observer, Horizontal sun, bool isLensShaded, bool? isCloudOverSun, double sunDistanceAu = 1)
    {
        ArgumentNullException.ThrowIfNull(observer);
        var towards = Bearing.FromDegrees(sun.AzimuthDegrees);
        var edge = observer.Skyline.AltitudeDegreesAt(towards, observer.DipDegrees);
        var lowerLimb = Refraction.Apparent(sun.AltitudeDegrees - SunDisc.SemidiameterDegrees(sunDistanceAu));
        // A disc that touches the horizon is dimmed by the air; below it there is none.
        if (isCloudOverSun is true || lowerLimb <= edge) return FlareCauses.None;

        var seen = Refraction.Apparent(sun.AltitudeDegrees);
        var causes = FlareCauses.None;
        if (frame.Contains(sun.AzimuthDegrees, seen))
            causes = FlareCauses.SunInFrame;
        else if (!isLensShaded && OffAxisDegrees(frame, sun.AzimuthDegrees, seen) <= NearAxisDegrees)
            causes = FlareCauses.SunBesideFrame;

        return causes | Glitter();

        FlareCauses Glitter()
        {
            if (sun.AltitudeDegrees > LowSunDegrees || observer.Skyline.KindAt(towards) != SkylineKind.Sea) return FlareCauses.None;
            // From the horizon down to the mirror image of the sun and as far again, as waves tilt the mirrors.
            for (var altitude = edge; altitude >= edge - 2 * seen; altitude -= 0.25)
            {
                if (frame.Contains(sun.AzimuthDegrees, altitude)) return FlareCauses.GlitterPath;
                if (!isLensShaded && OffAxisDegrees(frame, sun.AzimuthDegrees, altitude) <= NearAxisDegrees) return FlareCauses.GlitterPath;
            }

            return FlareCauses.None;
        }
    }

    private static double OffAxisDegrees(Frame frame, double azimuthDegrees, double altitudeDegrees)
    {
        var axis = Direction.Of(frame.Facing.Degrees, frame.TiltDegrees);
        var source = Direction.Of(azimuthDegrees, altitudeDegrees);
        var cosine = axis.East * source.East + axis.North * source.North + axis.Up * source.Up;
        return Math.Acos(Math.Clamp(cosine, -1, 1)) * (180 / Math.PI);
    }
}
