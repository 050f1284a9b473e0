using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>
/// The sun's part of one row over one scene. Bounds of altitude are kept apart, since they are solved for; the rest is a
/// margin: above zero while it holds, and as large as an arc, radians, which the sun may travel without a change.
/// </summary>
internal sealed class LightMargin
{
    private const double Radian = Math.PI / 180;

    private readonly LightRow row;
    private readonly SkylineEdge edge;
    private readonly PictureEdges picture;
    private readonly Wedge most, least;
    private readonly bool looksForDisc;

    internal LightMargin(LightRow row, Scene scene, SkylineEdge edge)
    {
        (this.row, this.edge) = (row, edge);
        picture = new PictureEdges(scene.Frame);
        most = Wedge.AtMost(scene.Frame.Facing, row.MostRelDegrees ?? 180);
        least = Wedge.AtLeast(scene.Frame.Facing, row.LeastRelDegrees ?? 0);

        (LowestDegrees, HighestDegrees) = (row.LowestDegrees ?? -90, row.HighestDegrees ?? 90);
        looksForDisc = row.Disc switch
        {
            DiscNeed.Visible => !edge.IsLevel,
            // Over a level edge the disc is always seen while its centre is above level without air.
            DiscNeed.VisibleWhenAboveLevel => edge.HighestDegrees > 0,
            _ => false,
        };
        DiscLowestDegrees = row.Disc == DiscNeed.Visible ? Refraction.Airless(edge.LowestDegrees) : -90;
        if (row.WithinLandSkylineDegrees is { } width)
        {
            LowestDegrees = Math.Max(LowestDegrees, Refraction.Airless(edge.LowestLandDegrees - width));
            HighestDegrees = Math.Min(HighestDegrees, Refraction.Airless(edge.HighestLandDegrees + width));
        }
    }

    /// <summary>No lower than this, degrees, airless.</summary>
    internal double LowestDegrees { get; }

    /// <summary>The disc's upper edge no lower than this, degrees, airless.</summary>
    internal double DiscLowestDegrees { get; }

    /// <summary>No higher than this, degrees, airless.</summary>
    internal double HighestDegrees { get; }

    /// <summary>Whether it can't hold at any time.</summary>
    internal bool IsHopeless => row.WithinLandSkylineDegrees is not null && !edge.HasLand;

    /// <summary>Whether altitude alone decides.</summary>
    internal bool IsAltitudeAlone =>
        row.MostRelDegrees is null && row.LeastRelDegrees is null && row.Frame == FrameNeed.Any
        && row.WithinLandSkylineDegrees is null && !looksForDisc;

    internal double At(in Direction sun, double semidiameterDegrees)
    {
        var margin = double.PositiveInfinity;
        if (row.MostRelDegrees is not null) margin = most.Margin(sun);
        if (row.LeastRelDegrees is not null) margin = Math.Min(margin, least.Margin(sun));
        if (margin < 0 || (row.Frame == FrameNeed.Any && !looksForDisc && row.WithinLandSkylineDegrees is null)) return margin;

        var altitude = Math.Asin(Math.Clamp(sun.Up, -1, 1)) / Radian;
        if (row.Frame != FrameNeed.Any)
        {
            var inside = picture.Margin(Lifted(sun, Refraction.Apparent(altitude)));
            margin = Math.Min(margin, row.Frame == FrameNeed.Inside ? inside : -inside);
        }

        if (margin < 0) return margin;
        if (looksForDisc) margin = Math.Min(margin, Disc(sun, altitude, semidiameterDegrees));
        if (row.WithinLandSkylineDegrees is { } width) margin = Math.Min(margin, edge.Near(sun, Refraction.Apparent(altitude), width));
        return margin;
    }

    private double Disc(in Direction sun, double altitude, double semidiameterDegrees)
    {
        var below = row.Disc == DiscNeed.VisibleWhenAboveLevel ? -altitude * Radian : double.NegativeInfinity;
        // A tenth of a degree below level is far enough: the bounds of altitude end the stretch.
        return below > 0.002 ? below : Math.Max(below, edge.Above(sun, Refraction.Apparent(altitude + semidiameterDegrees)));
    }

    /// <summary>The direction in which a body is seen: lifted by the air.</summary>
    internal static Direction Lifted(in Direction body, double seenDegrees)
    {
        var (sin, cos) = Math.SinCos(seenDegrees * Radian);
        var stretch = cos / Math.Max(1e-9, Math.Sqrt(1 - body.Up * body.Up));
        return new Direction(body.East * stretch, body.North * stretch, sin);
    }
}
