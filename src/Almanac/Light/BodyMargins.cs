using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Stars;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Light;

/// <summary>The sun's part of a row.</summary>
internal readonly struct SunMargin(LightMargin margin, SunPath path, double semidiameterDegrees) : IMargin
{
    // The sky turns once a day; the sun's own creep, parallax and the air add less than one part in a hundred.
    public double FastestPerDay => 2 * Math.PI * 1.01;

    public double At(double days) => margin.At(path.At(days), semidiameterDegrees);
}

/// <summary>What a row asks of the moon's place.</summary>
internal readonly struct MoonMargin : IMargin
{
    private const double Radian = Math.PI / 180;

    private readonly MoonTerms terms;
    private readonly SkylineEdge edge;
    private readonly PictureEdges picture;
    private readonly MoonPath path;

    internal MoonMargin(MoonTerms terms, Scene scene, SkylineEdge edge, MoonEphemeris moon)
    {
        (this.terms, this.edge) = (terms, edge);
        picture = new PictureEdges(scene.Frame);
        path = moon.SeenFrom(scene.Observer.Position);
    }

    // It creeps against the sky's turn, but by up to 7 degrees a day across it, and parallax swings it by a degree.
    public double FastestPerDay => 2 * Math.PI * 1.04;

    public double At(double days)
    {
        var moon = path.At(days, out var radii);
        var altitude = Math.Asin(Math.Clamp(moon.Up, -1, 1)) / Radian;
        var margin = double.PositiveInfinity;
        if (terms.LowestDegrees is { } lowest) margin = (altitude - lowest) * Radian;
        if (terms.HighestDegrees is { } highest) margin = Math.Min(margin, (highest - altitude) * Radian);
        if (margin < 0) return margin;

        var seen = Refraction.Apparent(altitude);
        if (terms.Frame != FrameNeed.Any)
        {
            var inside = picture.Margin(LightMargin.Lifted(moon, seen));
            margin = Math.Min(margin, terms.Frame == FrameNeed.Inside ? inside : -inside);
        }

        if (margin < 0) return margin;
        if (terms.IsSeen)
            margin = Math.Min(margin, edge.Above(moon, Refraction.Apparent(altitude + MoonPath.SemidiameterDegrees(radii))));
        if (terms.MostOverSkylineDegrees is { } most)
            margin = Math.Min(margin, Math.Min(edge.Above(moon, seen), -edge.Above(moon, seen - most)));
        return margin;
    }
}

/// <summary>The moon below a level horizon: its upper limb, with the printed tables' 34′ of air.</summary>
internal readonly struct MoonDownMargin(MoonPath path) : IMargin
{
    private const double Radian = Math.PI / 180;

    public double FastestPerDay => 2 * Math.PI * 1.04;

    public double At(double days)
    {
        var moon = path.At(days, out var radii);
        return -(Math.Asin(Math.Clamp(moon.Up, -1, 1)) + (MoonPath.SemidiameterDegrees(radii) + MoonDisc.StandardRefractionDegrees) * Radian);
    }
}

/// <summary>The galaxy's centre in the picture's span, high enough, over the skyline.</summary>
internal readonly struct CoreMargin : IMargin
{
    private const double Radian = Math.PI / 180;

    private readonly SkylineEdge edge;
    private readonly Wedge span;
    private readonly bool lowOverSea;
    private readonly GalaxyEphemeris galaxy;
    private readonly StarSite site;

    internal CoreMargin(Scene scene, SkylineEdge edge, GalaxyEphemeris galaxy)
    {
        (this.edge, this.galaxy) = (edge, galaxy);
        span = Wedge.AtMost(scene.Frame.Facing, scene.Frame.Lens.HorizontalAngleDegrees / 2);
        lowOverSea = scene.IsCoreLowOverSea;
        site = new StarSite(scene.Observer.Position);
    }

    public double FastestPerDay => 2 * Math.PI * 1.01;

    public double At(double days)
    {
        var core = galaxy.CentreAt(days, site);
        var altitude = Math.Asin(Math.Clamp(core.Up, -1, 1)) / Radian;
        var margin = (altitude - LightRow.CoreLowestDegrees) * Radian;
        if (lowOverSea)
            margin = Math.Max(margin, Math.Min((altitude - LightRow.CoreLowestOverSeaDegrees) * Radian, edge.OverSea(core)));
        if (margin < 0) return margin;
        margin = Math.Min(margin, span.Margin(core));
        return margin < 0 ? margin : Math.Min(margin, edge.Above(core, Refraction.Apparent(altitude)));
    }
}

/// <summary>
/// The galaxy's band in the picture. Seen from the galaxy's pole the picture's part above level is a shape with arcs for
/// sides, whose least and greatest galactic latitude lie at corners unless the plane itself runs through it.
/// </summary>
internal readonly struct BandMargin : IMargin
{
    private const double HalfWidth = Galactic.BandHalfWidthDegrees * (Math.PI / 180);

    private readonly Direction[] corners;
    private readonly GalaxyEphemeris galaxy;
    private readonly StarSite site;

    internal BandMargin(Scene scene, GalaxyEphemeris galaxy)
    {
        corners = PictureCorners.AboveLevel(scene.Frame);
        this.galaxy = galaxy;
        site = new StarSite(scene.Observer.Position);
    }

    public double FastestPerDay => 2 * Math.PI * 1.01;

    public double At(double days)
    {
        if (corners.Length == 0) return -1;
        var pole = galaxy.PoleAt(days, site);
        double lowest = 2, highest = -2;
        foreach (ref readonly var corner in corners.AsSpan())
        {
            var sine = corner.East * pole.East + corner.North * pole.North + corner.Up * pole.Up;
            (lowest, highest) = (Math.Min(lowest, sine), Math.Max(highest, sine));
        }

        return Math.Min(HalfWidth - Math.Asin(Math.Clamp(lowest, -1, 1)), Math.Asin(Math.Clamp(highest, -1, 1)) + HalfWidth);
    }
}

/// <summary>The corners of a picture's part above the level horizon, in order round it.</summary>
internal static class PictureCorners
{
    internal static Direction[] AboveLevel(Frame frame)
    {
        const double radian = Math.PI / 180;
        var (sinFacing, cosFacing) = Math.SinCos(frame.Facing.Degrees * radian);
        var (sinTilt, cosTilt) = Math.SinCos(frame.TiltDegrees * radian);
        double wide = Math.Tan(frame.Lens.HorizontalAngleDegrees / 2 * radian), high = Math.Tan(frame.Lens.VerticalAngleDegrees / 2 * radian);
        Direction[] all = [Corner(-wide, -high), Corner(wide, -high), Corner(wide, high), Corner(-wide, high)];

        var above = new List<Direction>(5);
        for (var i = 0; i < all.Length; i++)
        {
            var (here, next) = (all[i], all[(i + 1) % all.Length]);
            if (here.Up >= 0) above.Add(here);
            if (here.Up >= 0 != next.Up >= 0)
            {
                // Where the side's arc crosses level: a mixture of its ends without a part upwards.
                var share = here.Up / (here.Up - next.Up);
                above.Add(Unit(here.East + share * (next.East - here.East), here.North + share * (next.North - here.North), 0));
            }
        }

        return [.. above];

        Direction Corner(double right, double up) => Unit(
            sinFacing * (cosTilt - up * sinTilt) + right * cosFacing,
            cosFacing * (cosTilt - up * sinTilt) - right * sinFacing,
            sinTilt + up * cosTilt);
    }

    private static Direction Unit(double east, double north, double up)
    {
        var length = Math.Sqrt(east * east + north * north + up * up);
        return new Direction(east / length, north / length, up / length);
    }
}
