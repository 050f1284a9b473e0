using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stars;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>
/// When the sky is dark: the sun's centre 18 degrees down or more (the end of astronomical twilight) and the moon down, or
/// giving less than a twentieth of a full moon's light. The cloud and other people's lamps are not counted.
/// </summary>
public static class DarkSky
{
    private const double DarkDegrees = -18;
    private const double Radian = Math.PI / 180;

    /// <summary>The dark windows in a stretch of time, by start.</summary>
    /// <param name="position">Where.</param>
    /// <param name="from">Beginning of the stretch.</param>
    /// <param name="to">End of the stretch; not before its beginning.</param>
    /// <param name="ephemeris">Covers the stretch.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch is turned round, or leaves the ephemeris.</exception>
    public static IReadOnlyList<Interval> Between(Position position, Instant from, Instant to, SkyEphemeris ephemeris) =>
        AsIntervals(Dark(position, from, to, ephemeris));

    /// <summary>The dark windows in which the galaxy's centre stands at an altitude or higher, wherever one looks, by start.</summary>
    /// <param name="observer">From where; the centre must stand over the skyline as well.</param>
    /// <param name="from">Beginning of the stretch.</param>
    /// <param name="to">End of the stretch; not before its beginning.</param>
    /// <param name="ephemeris">Covers the stretch.</param>
    /// <param name="leastDegrees">Airless altitude of the centre, degrees, −90…90.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch is turned round, or leaves the ephemeris.</exception>
    public static IReadOnlyList<Interval> CoreBetween(
        Observer observer, Instant from, Instant to, SkyEphemeris ephemeris, double leastDegrees = LightRow.CoreLowestDegrees)
    {
        ArgumentNullException.ThrowIfNull(observer);
        var dark = Dark(observer.Position, from, to, ephemeris);
        return AsIntervals(LightMarch.March(new CoreUpMargin(observer, ephemeris.Galaxy, leastDegrees), dark));
    }

    private static List<Stretch> Dark(Position position, Instant from, Instant to, SkyEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(ephemeris);
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A stretch of time ends no earlier than it begins.");
        var (start, end) = (ephemeris.Sun.DaysOf(from), ephemeris.Sun.DaysOf(to));
        var halves = SunHalves.Over(ephemeris.Sun.SeenFrom(position), start, end);
        return Moonlight.Dark(position, ephemeris, halves.Within(-90, -90, DarkDegrees, start, end));
    }

    private static Interval[] AsIntervals(IReadOnlyList<Stretch> stretches) =>
    [
        .. stretches.Select(stretch => stretch.As(WantedLight.StarTrails)).Select(run => new Interval(run.Start, run.End)),
    ];

    private readonly struct CoreUpMargin(Observer observer, GalaxyEphemeris galaxy, double leastDegrees) : IMargin
    {
        private readonly SkylineEdge edge = new(observer);
        private readonly StarSite site = new(observer.Position);

        public double FastestPerDay => 2 * Math.PI * 1.01;

        public double At(double days)
        {
            var core = galaxy.CentreAt(days, site);
            var altitude = Math.Asin(Math.Clamp(core.Up, -1, 1)) / Radian;
            var margin = (altitude - leastDegrees) * Radian;
            return margin < 0 ? margin : Math.Min(margin, edge.Above(core, Refraction.Apparent(altitude)));
        }
    }
}
