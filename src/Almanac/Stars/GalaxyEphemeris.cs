using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stars;

/// <summary>
/// Where the galaxy's centre and pole are seen over a span of time, worked out once and shared by all places: apparent
/// places every eight days joined by straight lines, within 0.3″ of <see cref="ApparentPlace"/>.
/// </summary>
public sealed class GalaxyEphemeris
{
    private const double StepDays = 8;
    private const double Radian = Math.PI / 180;

    private readonly Node[] nodes;
    private readonly double first;

    private GalaxyEphemeris(Node[] nodes, double first) => (this.nodes, this.first) = (nodes, first);

    /// <summary>Works out the places for a span: about a microsecond a day.</summary>
    /// <param name="from">First instant that will be asked for.</param>
    /// <param name="to">Last one; not before the first.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span is turned round.</exception>
    public static GalaxyEphemeris Covering(Instant from, Instant to)
    {
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A span of time ends no earlier than it begins.");
        var first = JulianDay.DaysFromJ2000(from) - StepDays;
        var nodes = new Node[(int)((JulianDay.DaysFromJ2000(to) - first) / StepDays) + 3];
        for (var i = 0; i < nodes.Length; i++)
            nodes[i] = Node.At(first + i * StepDays);
        return new GalaxyEphemeris(nodes, first);
    }

    /// <summary>Azimuth and airless altitude of the galaxy's centre.</summary>
    public Horizontal CentreAt(Instant instant, Position position) => CentreAt(JulianDay.DaysFromJ2000(instant), new StarSite(position)).Horizontal;

    /// <summary>Azimuth and airless altitude of the galaxy's north pole: its plane is the great circle 90 degrees from there.</summary>
    public Horizontal PoleAt(Instant instant, Position position) => PoleAt(JulianDay.DaysFromJ2000(instant), new StarSite(position)).Horizontal;

    /// <summary>Azimuth and airless altitude of a place of the galaxy's own coordinates, within 0.012 degrees: aberration there is taken as at centre and pole.</summary>
    /// <param name="instant">When.</param>
    /// <param name="position">Where.</param>
    /// <param name="longitudeDegrees">Galactic longitude, degrees from the centre.</param>
    /// <param name="latitudeDegrees">Galactic latitude, degrees, −90…90.</param>
    public Horizontal At(Instant instant, Position position, double longitudeDegrees, double latitudeDegrees)
    {
        var (days, site) = (JulianDay.DaysFromJ2000(instant), new StarSite(position));
        var (centre, pole) = (CentreAt(days, site), PoleAt(days, site));
        // A quarter turn along the plane from the centre: pole × centre.
        var (east, north, up) = (pole.North * centre.Up - pole.Up * centre.North, pole.Up * centre.East - pole.East * centre.Up, pole.East * centre.North - pole.North * centre.East);
        var (sinLongitude, cosLongitude) = Math.SinCos(longitudeDegrees * Radian);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitudeDegrees * Radian);
        return new Direction(
            cosLatitude * (cosLongitude * centre.East + sinLongitude * east) + sinLatitude * pole.East,
            cosLatitude * (cosLongitude * centre.North + sinLongitude * north) + sinLatitude * pole.North,
            cosLatitude * (cosLongitude * centre.Up + sinLongitude * up) + sinLatitude * pole.Up).Horizontal;
    }

    internal Direction CentreAt(double days, in StarSite site)
    {
        ref readonly var node = ref NodeAt(days, out var next, out var u);
        return site.See(days, node.Equinoxes + u * (next.Equinoxes - node.Equinoxes),
            node.X + u * (next.X - node.X), node.Y + u * (next.Y - node.Y), node.Z + u * (next.Z - node.Z));
    }

    internal Direction PoleAt(double days, in StarSite site)
    {
        ref readonly var node = ref NodeAt(days, out var next, out var u);
        return site.See(days, node.Equinoxes + u * (next.Equinoxes - node.Equinoxes),
            node.PoleX + u * (next.PoleX - node.PoleX), node.PoleY + u * (next.PoleY - node.PoleY), node.PoleZ + u * (next.PoleZ - node.PoleZ));
    }

    private ref readonly Node NodeAt(double days, out Node next, out double u)
    {
        var along = (days - first) / StepDays;
        var index = Math.Clamp((int)along, 0, nodes.Length - 2);
        u = along - index;
        next = nodes[index + 1];
        return ref nodes[index];
    }

    private readonly record struct Node(double X, double Y, double Z, double PoleX, double PoleY, double PoleZ, double Equinoxes)
    {
        internal static Node At(double days)
        {
            var centuries = (days + DeltaT.Seconds(2000 + (days + 0.5) / 365.2425) / 86400) / 36525;
            var nutation = Nutation.At(centuries);
            var (x, y, z) = ApparentPlace.VectorOf(Galactic.Centre, centuries, nutation);
            var (poleX, poleY, poleZ) = ApparentPlace.VectorOf(Galactic.NorthPole, centuries, nutation);
            return new Node(x, y, z, poleX, poleY, poleZ, nutation.EquationOfEquinoxesDegrees * Radian);
        }
    }
}

/// <summary>One place's turn from the equator to its horizon.</summary>
internal readonly struct StarSite
{
    private const double Radian = Math.PI / 180;

    private readonly double longitude, sinLatitude, cosLatitude;

    internal StarSite(Position position)
    {
        longitude = position.LongitudeDegrees * Radian;
        (sinLatitude, cosLatitude) = Math.SinCos(position.LatitudeDegrees * Radian);
    }

    /// <summary>A direction of the true equator and equinox in this place's sky.</summary>
    internal Direction See(double days, double equinoxes, double x, double y, double z)
    {
        var (sin, cos) = Math.SinCos(SiderealTime.MeanDegrees(days) * Radian + equinoxes + longitude);
        var meridian = x * cos + y * sin;
        var west = x * sin - y * cos;
        return new Direction(-west, cosLatitude * z - sinLatitude * meridian, sinLatitude * z + cosLatitude * meridian);
    }
}
